import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Open, pageTest } from '../browser/page-test'
import type { Look } from '../browser/watched-page'
import { goOn, goToView, openBatch, pick } from './batch-page'
import { field, SOON } from './brief-page'

const where = (page: Page) => page.locator('.where').innerText()
const asked = async (page: Page) =>
  Number(await page.locator('[data-big]').getAttribute('data-big'))
const typed = (page: Page) => page.locator('.typed input')

/** The workshop at the screen whose step has this name, all before it weighed as asked. */
async function workAt(open: Open, step: string, look?: Look): Promise<Page> {
  const page = await openBatch(open, look)
  await goToView(page, 'Step by step')
  while (!(await where(page)).includes(step)) await goOn(page)
  return page
}

const LOOKS = [
  { size: 'tablet', theme: 'light' },
  { size: 'tablet', theme: 'dark' },
  { size: 'phone', theme: 'light' },
  { size: 'phone', theme: 'dark' },
] satisfies Look[]

/** Whether the way into the oils is on the screen. */
const atOils = (page: Page) =>
  page.getByRole('heading', { level: 1, name: /Lye into the oils/u }).count()

pageTest.for(LOOKS)(
  'no key or touch leads past hydroxide that is too much: $size, $theme',
  async (look, { open }) => {
    const page = await workAt(open, 'make the lye', look)
    const naoh = await asked(page)
    for (const over of [3, 40, 400, 4000]) {
      await typed(page).fill(String(naoh + over))
      await page.getByRole('alertdialog', { name: /^Stop\. Do not pour\./u }).waitFor()
      await typed(page).press('Enter')
      const focused = await page.evaluate(() => document.activeElement?.id)
      expect(focused).toBe('stop-head')
      const keys = [
        'Enter',
        ' ',
        'ArrowRight',
        'PageDown',
        'End',
        'ArrowDown',
        'Escape',
        'ArrowRight',
      ]
      for (const key of keys) await page.keyboard.press(key)
      await page.keyboard.press('PageDown')
      expect(await where(page)).toMatch(/^9 of 14: make the lye/u)
      // Tab and Enter on the sticky foot: all there is there is Back.
      expect(await page.locator('.acts .main').count()).toBe(0)
      expect(await page.locator('.shut').innerText()).toBe(
        'Lye into the oils is shut until this is mended',
      )
      await page.evaluate(() => {
        const touch = (clientX: number) =>
          new Touch({ identifier: 1, target: document.body, clientX, clientY: 300 })
        const send = (name: string, touches: Touch[], changedTouches: Touch[]) =>
          window.dispatchEvent(new TouchEvent(name, { touches, changedTouches }))
        send('touchstart', [touch(300)], [touch(300)])
        send('touchend', [], [touch(60)])
      })
      expect(await where(page)).toMatch(/^9 of 14/u)
      expect(await atOils(page)).toBe(0)
    }
    const across = await page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement
      return scrollWidth - clientWidth
    })
    expect(across).toBeLessThanOrEqual(0)
  },
)

pageTest(
  'every control of the stop, by Tab and Enter, leaves lye out of the oils',
  async ({ open }) => {
    const page = await workAt(open, 'make the lye', { size: 'tablet' })
    const naoh = await asked(page)
    await typed(page).fill(String(naoh + 118))
    const controls = await page.locator('.work button, .work [tabindex]').count()
    for (let stop = 0; stop < controls + 6; stop++) {
      await page.keyboard.press('Tab')
      const name = await page.evaluate(() => document.activeElement?.textContent.trim() ?? '')
      // What mends it is not tried here, nor what leaves the workshop.
      if (/^(It is|All of it|The sheet|Undo|Redo|File|Brief|Bench|Batch|Ledger)/u.test(name))
        continue
      if (await page.evaluate(() => document.activeElement?.closest('.work') === null)) continue
      if (name === 'Back') continue
      await page.keyboard.press('Enter')
      expect(await atOils(page)).toBe(0)
      expect(await where(page)).toMatch(/^9 of 14/u)
    }
  },
)

pageTest(
  'dry it is weighed again; in the water only a part is used, and the rest told',
  async ({ open }) => {
    const page = await workAt(open, 'make the lye', { size: 'tablet' })
    const naoh = await asked(page)
    await typed(page).fill(String(naoh + 118))
    await page.getByRole('button', { name: 'It is dry: weigh again' }).click()
    await expect.poll(() => typed(page).inputValue(), SOON).toBe('')
    await typed(page).fill(String(naoh + 118))
    const way = page.getByRole('button', { name: /^It is in the water: use/u })
    const use = Number((await way.innerText()).replace(/[^\d]/gu, ''))
    await way.click()
    await page.locator('.acts .main').click()
    expect(await where(page)).toContain('all of it together')
    await page.locator('.acts .main').click()
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(
      'Part of the lye into the oils',
    )
    expect(await asked(page)).toBe(use)
    // More than that is in the oils: only oil mends it.
    await typed(page).fill(String(use + 300))
    await page.getByRole('alertdialog').waitFor()
    expect(await page.locator('.acts .main').count()).toBe(0)
    await typed(page).fill(String(use))
    await typed(page).press('Enter')
    await expect.poll(() => where(page), SOON).toMatch(/into the mould/u)
  },
)

pageTest(
  'an oil left too heavy changes the lye, and the old figure is struck',
  async ({ open }) => {
    const page = await workAt(open, 'melt the hard fats', { size: 'tablet' })
    const grams = await asked(page)
    await typed(page).fill(String(grams + 162))
    await typed(page).press('Enter')
    expect(await page.locator('.shut').innerText()).toMatch(
      /while the weight is off by more than 2/u,
    )
    await page.getByRole('button', { name: 'Leave it, new lye' }).click()
    while (!(await where(page)).includes('make the lye')) await goOn(page)
    const [now, before] = [await asked(page), await page.locator('.card s').innerText()]
    expect(now).toBeGreaterThan(Number(before.replace(/[^\d.]/gu, '')))
    // Back keeps what was typed.
    await page.keyboard.press('Escape')
    expect(await typed(page).inputValue()).not.toBe('')
  },
)

pageTest('an oil may be passed over, hydroxide not', async ({ open }) => {
  const page = await workAt(open, 'melt the hard fats', { size: 'tablet' })
  await page.keyboard.press('Enter')
  expect(await where(page)).toMatch(/^3 of/u)
  await page.getByRole('button', { name: /^No weight: take/u }).click()
  expect(await where(page)).toMatch(/^4 of/u)
  while (!(await where(page)).includes('make the lye')) await goOn(page)
  expect(await page.getByRole('button', { name: /^No weight/u }).count()).toBe(0)
  await page.keyboard.press('Enter')
  expect(await where(page)).toMatch(/^9 of/u)
  await goOn(page)
  expect(await page.locator('.work').innerText()).toMatch(/Assumed as asked: shea/u)
})

pageTest(
  'cook clock, stirs, temperature and the weighed pot outlive a reload; the record has them',
  async ({ open }) => {
    const page = await openBatch(open)
    await pick(page, 'Process', 'hot process')
    await goToView(page, 'Step by step')
    while (!(await where(page)).includes(': cook')) await goOn(page)
    await page.getByRole('button', { name: 'The cook begins now' }).click()
    await page.getByRole('button', { name: 'Stirred' }).click()
    await field(page, 'Pot now, °C').fill('86')
    await page.keyboard.press('Enter')
    await page.getByText(/86 °C at .*within/u).waitFor()
    await page.getByText(/^kept on this machine/u).waitFor()
    await page.clock.install({ time: Date.now() + 38 * 60_000 })
    await page.reload()
    await expect.poll(() => page.getByRole('timer').innerText(), SOON).toMatch(/^38:/u)
    await page.getByText(/86 °C at/u).waitFor()
    await page.locator('.acts .main').click()
    await field(page, 'The pot alone, g').fill('2000')
    const inPot = await page.locator('.work dl').innerText()
    const before = Number((/cook\s+([\d\s\u2009]+)g/u.exec(inPot)?.[1] ?? '').replace(/\D/gu, ''))
    await field(page, 'Pot and soap after the cook, g').fill(String(before + 2000 - 282))
    await page.getByText(/282.g of water have gone/u).waitFor()
    await page.getByRole('button', { name: /^In: /u }).click()
    while ((await page.locator('.where').count()) > 0) await goOn(page)
    const record = await page.locator('.work').innerText()
    expect(record).toMatch(/Water gone in the cook/u)
    expect(record).toMatch(/Temperature, pot/u)
    expect(record).not.toMatch(/Free lye/u)
  },
)
