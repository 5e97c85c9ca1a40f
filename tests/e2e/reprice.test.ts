import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { axeFaults } from '../browser/axe'
import { pageTest } from '../browser/page-test'
import { field, SOON, solved } from './brief-page'
import { overflow } from './sideways'

async function openChange(page: Page): Promise<void> {
  await solved(page)
  await page.evaluate(() => (location.hash = 'ledger/change'))
  await panel(page).waitFor()
}

const panel = (page: Page) => page.getByRole('region', { name: 'If prices change' })
const kind = (page: Page, name: string) =>
  panel(page).getByRole('button', { name, exact: true }).click()
const told = (page: Page) => panel(page).getByRole('status')

pageTest(
  'one price moves: where formulas switch, and what holding costs there',
  async ({ open }) => {
    const page = await open()
    await openChange(page)
    await expect.poll(() => told(page).innerText(), SOON).toMatch(/The cheapest formula switches/u)
    const rows = panel(page).getByRole('table').locator('tbody tr')
    const switches = (await rows.count()) - 1
    expect(await told(page).innerText()).toContain(switches === 1 ? 'once' : `${switches} times`)

    const readout = panel(page).locator('.readout')
    const slider = panel(page).getByRole('slider')
    await slider.focus()
    await page.keyboard.press('End')
    await expect.poll(() => readout.innerText(), SOON).toContain('(+200 %)')
    const more = async () => Number(/([\d.]+) more\.$/u.exec(await readout.innerText())?.[1])
    expect(await more()).toBeGreaterThan(0)

    await field(page, 'Most change of the price, percent').fill('20')
    await page.keyboard.press('Enter')
    await expect.poll(() => readout.innerText(), SOON).not.toContain('(+200 %)')
    await slider.focus()
    await page.keyboard.press('End')
    await expect.poll(() => readout.innerText(), SOON).toContain('(+20 %)')
  },
)

pageTest('all prices move: the same seed draws the same, another seed anew', async ({ open }) => {
  const page = await open()
  await openChange(page)
  await kind(page, 'All prices move')
  await expect.poll(() => told(page).innerText(), SOON).toMatch(/^Of 1\u2009000 draws/u)
  const first = await told(page).innerText()
  await page.getByRole('button', { name: 'Draw anew' }).click()
  await expect.poll(() => told(page).innerText(), SOON).not.toBe(first)
  const spread = panel(page).getByRole('textbox', { name: /^Spread of the price of coconut/u })
  await spread.fill('0')
  await page.keyboard.press('Enter')
  await expect.poll(() => spread.inputValue(), SOON).toBe('0')
})

pageTest('an oil is gone: a replacement goes to the Bench', async ({ open }) => {
  const page = await open()
  await openChange(page)
  await kind(page, 'An oil is gone')
  await expect.poll(() => told(page).innerText(), SOON).toMatch(/must be replaced/u)
  await panel(page).getByRole('region', { name: 'Lye caution' }).waitFor()
  const put = panel(page).getByRole('button', { name: /^To the Bench: /u })
  const offered = await put.count()
  expect(offered).toBeGreaterThan(0)
  await put.first().click()
  await expect.poll(() => put.count(), SOON).toBe(offered - 1)
  await page.evaluate(() => (location.hash = 'bench'))
  await page.locator('#bench-candidate-A').waitFor()
  expect(await page.locator('table').innerText()).toMatch(/ for shea/u)
})

pageTest.for(['desktop', 'phone'] as const)(
  'the panel has nothing that axe finds at fault in either theme, nor sticks out: %s',
  async (size, { open }) => {
    const page = await open('', { size, reducedMotion: true })
    await openChange(page)
    for (const name of ['One price moves', 'All prices move', 'An oil is gone']) {
      await kind(page, name)
      await told(page).waitFor()
      expect([name, await axeFaults(page)]).toEqual([name, []])
      expect([name, await overflow(page)]).toEqual([name, 0])
    }
  },
)
