import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { expectNow, shares, solved, SOON, typed } from './brief-page'

/** Presses of Tab after which a thing that was not found is not on the page. */
const MOST_TABS = 120

interface Focus {
  /** As it is said. */
  readonly name: string
  /** One can see that it has the focus. */
  readonly seen: boolean
  readonly inSight: boolean
  /** After the last thing on the page the focus goes to the browser's own controls. */
  readonly beyond: boolean
}

function focused(page: Page): Promise<Focus> {
  return page.evaluate(() => {
    const at = document.activeElement ?? document.body
    const own = getComputedStyle(at)
    const ring = at.querySelector('.ring')
    const outlined = own.outlineStyle !== 'none' && Number.parseFloat(own.outlineWidth) >= 2
    const ringed = ring !== null && getComputedStyle(ring).stroke !== 'none'
    const { x, y, width, height } = at.getBoundingClientRect()
    const onTop = document.elementFromPoint(x + width / 2, y + height / 2)
    return {
      name: at.getAttribute('aria-label') ?? at.textContent.trim(),
      seen: outlined || ringed,
      inSight: onTop !== null && (at.contains(onTop) || onTop.contains(at)),
      beyond: at === document.body,
    }
  })
}

/** Goes on by Tab to something; each stop on the way shows that it has the focus and is in sight. */
async function tabTo(page: Page, name: RegExp, key = 'Tab'): Promise<void> {
  for (let presses = 0; presses < MOST_TABS; presses++) {
    await page.keyboard.press(key)
    const at = await focused(page)
    if (at.beyond) continue
    expect(at).toEqual({ name: at.name, seen: true, inSight: true, beyond: false })
    if (name.test(at.name)) return
  }
  throw new Error(`Tab comes by nothing named ${name}`)
}

/** Opens the menu in focus and takes what some keys lead to. */
async function pickFromMenu(page: Page, ...keys: readonly string[]): Promise<void> {
  await page.keyboard.press('Enter')
  await page.getByRole('listbox').waitFor()
  for (const key of keys) await page.keyboard.press(key)
  await page.keyboard.press('Enter')
  await page.getByRole('listbox').waitFor({ state: 'hidden' })
}

pageTest(
  'the whole job, from the sentence to the printed sheet, by keyboard alone',
  async ({ open }) => {
    const page = await open()
    await page.evaluate(() => {
      document.documentElement.dataset['printed'] = '0'
      window.print = () => (document.documentElement.dataset['printed'] = '1')
    })
    await solved(page)
    const first = await shares(page)

    await tabTo(page, /^Goal/u)
    await pickFromMenu(page, 'm', 'i', 'l')
    await expect.poll(() => page.locator('.answer').innerText(), SOON).toContain('mildness')
    expect(await shares(page)).not.toEqual(first)
    await pickFromMenu(page, 'Home')
    await expect.poll(() => shares(page), SOON).toEqual(first)

    await tabTo(page, /^Hardness, at least$/u)
    await page.keyboard.press('ArrowRight')
    await expectNow(page, 'Hardness', '39.0')
    await tabTo(page, /^Lather, at least$/u)
    await tabTo(page, /^Lather, at least$/u)
    await page.keyboard.press('Control+a')
    await page.keyboard.type('35,5')
    await page.keyboard.press('Enter')
    await expectNow(page, 'Lather', '35.5')

    await tabTo(page, /^Map of/u)
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await expectNow(page, 'Lather', '35.0')

    await tabTo(page, /^Batch$/u)
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Print sheet' }).waitFor()
    await tabTo(page, /^Superfat, %$/u)
    await page.keyboard.press('Control+a')
    await page.keyboard.type('8')
    await page.keyboard.press('Enter')
    expect(await typed(page, 'Superfat, %')).toBe(8)
    await tabTo(page, /^Scale step/u)
    await pickFromMenu(page, '5')
    await expect.poll(() => page.getByLabel(/^Scale step/u).innerText(), SOON).toBe('5 g')
    const grams = await page.locator('[data-weigh="naoh"] [data-grams]').getAttribute('data-grams')
    expect(Number(grams) % 5).toBe(0)
    await tabTo(page, /^Sodium hydroxide weighed$/u)
    await page.keyboard.press('Space')
    expect(await page.getByLabel('Sodium hydroxide weighed').isChecked()).toBe(true)
    await tabTo(page, /^Print sheet$/u)
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.documentElement.dataset['printed'])).toBe('1')
  },
)

pageTest(
  'a flag moves by keys in the steps they are known for, and Escape takes back',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const flag = page.getByRole('slider', { name: 'Keeping, at least' })
    await flag.focus()
    const seen: (number | undefined)[] = []
    for (const key of [
      'ArrowUp',
      'ArrowLeft',
      'Shift+ArrowRight',
      'PageUp',
      'PageDown',
      'Escape',
    ]) {
      await page.keyboard.press(key)
      seen.push(await typed(page, 'Keeping, at least'))
    }
    // By hand from 92: one up, one down, a tenth up, five up, five down, and back.
    expect(seen).toEqual([93, 92, 92.1, 97.1, 92.1, 92])
    expect(await flag.getAttribute('aria-valuetext')).toMatch(
      /^at least 92\.0, within reach [\d.]+ to/u,
    )
    await page.keyboard.press('Delete')
    expect(await typed(page, 'Keeping, at least')).toBeUndefined()
    expect(await flag.count()).toBe(0)
    // The flag goes, and the keyboard is where the next figure would be typed.
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))
    expect(await focused()).toBe('Keeping, at least')
  },
)

pageTest('Home and End take a flag to the ends of what is within reach', async ({ open }) => {
  const page = await open()
  await solved(page)
  const flag = page.getByRole('slider', { name: 'Conditioning, at least' })
  const text = (await flag.getAttribute('aria-valuetext')) ?? ''
  const [, least, most] = /within reach ([\d.]+) to ([\d.]+)/u.exec(text) ?? []
  await flag.press('End')
  expect(await typed(page, 'Conditioning, at least')).toBe(Number(most))
  await flag.press('Home')
  expect(await typed(page, 'Conditioning, at least')).toBe(Number(least))
})
