import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { axeFaults } from '../browser/axe'
import { pageTest } from '../browser/page-test'
import { field, shares, solved, SOON } from './brief-page'

/** The demo's batch: 5 000 g of oils. */
const BATCH_G = 5000

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('region', { name: 'Shelf' }).getByRole('button', { name, exact: true })
const isFocused = (element: HTMLElement) => element === document.activeElement
const row = (page: Page, oil: string) =>
  page.getByRole('row').filter({ has: page.getByRole('rowheader', { name: oil, exact: true }) })
const pick = async (page: Page, name: RegExp, option: string) => {
  await page.getByRole('combobox', { name }).click()
  await page.getByRole('option', { name: option, exact: true }).click()
}
const pickFrom = async (page: Page, menu: string, item: RegExp) => {
  await button(page, menu).press('Enter')
  await page.getByRole('menuitem', { name: item }).press('Enter')
}
const expectShare = (page: Page, oil: string) =>
  expect.poll(async () => (await shares(page))[oil] ?? 0, SOON)
const names = (page: Page) => page.getByRole('rowheader').allInnerTexts()

async function add(page: Page, name: string, price: string, shown: string): Promise<void> {
  await page.getByRole('combobox', { name: /^Add an oil/u }).fill(name)
  await page.getByRole('option').first().waitFor()
  await page.keyboard.press('Enter')
  await field(page, `Price of ${shown}, per kg`).fill(price)
}

pageTest(
  'a pack in pounds gives the price per kg, and typing that lets it go',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    await button(page, 'Coconut').press('Enter')
    await field(page, 'Pack of Coconut, size in kg').fill('50')
    await pick(page, /^Unit of the pack of Coconut/u, 'lb')
    await field(page, 'Pack of Coconut, price').fill('90')
    // By hand: 90 / (50 × 0.45359237) = 3.968 per kg.
    await expect.poll(() => field(page, 'Price of Coconut, per kg').inputValue(), SOON).toBe('3.97')
    await row(page, 'Coconut').waitFor()
    await page.getByText('comes to €3.97 per kg').waitFor()
    await page.reload()
    expect(await field(page, 'Price of Coconut, per kg').inputValue()).toBe('3.97')

    await field(page, 'Price of Coconut, per kg').fill('3.50')
    await button(page, 'Coconut').press('Enter')
    expect(await field(page, 'Pack of Coconut, size in kg').inputValue()).toBe('')
    expect(await page.getByText('comes to').count()).toBe(0)
  },
)

pageTest('what is there of an oil limits it, is used up, or is bought beyond', async ({ open }) => {
  const page = await open()
  await solved(page)
  await button(page, 'Shea').press('Enter')
  const stock = field(page, 'Stock of Shea, g')
  await stock.fill('0.6 kg')
  await stock.press('Enter')
  // By hand: 600 g of 5 000 g are 12 %.
  await row(page, 'Shea').getByText('only 600 g: at most 12 %').waitFor()
  await expectShare(page, 'shea').toBeCloseTo(12, 6)

  await pick(page, /^How the stock of Shea is used/u, 'buy more if need be')
  await expectShare(page, 'shea').toBeGreaterThan(20)
  const share = (await shares(page))['shea'] ?? NaN
  const missing = Math.round((share / 100) * BATCH_G - 600)
  await row(page, 'Shea').getByText(`${missing} g more to buy`).waitFor()

  await stock.fill('250')
  await pick(page, /^How the stock of Shea is used/u, 'use it up')
  await row(page, 'Shea').getByText('uses up 250 g: 5 %').waitFor()

  await page.getByRole('link', { name: 'Batch', exact: true }).click()
  await page
    .getByRole('textbox', { name: /weight/iu })
    .first()
    .fill('2500')
  await page.getByRole('link', { name: 'Map', exact: true }).click()
  // Of half the batch the same stock is twice the share.
  await row(page, 'Shea').getByText('uses up 250 g: 10 %').waitFor()
})

pageTest('a stock under the least that is asked says so and what to do', async ({ open }) => {
  const page = await open()
  await solved(page)
  await button(page, 'Olive').press('Enter')
  await field(page, 'Stock of Olive, g').fill('500')
  await page.getByText(/500.g in stock are 10.%, under this least; lower it or buy more/u).waitFor()
})

pageTest('oils with a tag are limited together and the blend keeps it', async ({ open }) => {
  const page = await open()
  await solved(page)
  await pickFrom(page, 'Limit together', /^all butter/u)
  // The most of the new group is what is typed next.
  await expect.poll(() => field(page, 'butter, at most, %').evaluate(isFocused), SOON).toBe(true)
  await page.keyboard.type('24')
  await expectShare(page, 'shea').toBeLessThan(24 + 1e-6)
  const blend = await shares(page)
  expect((blend['shea'] ?? 0) + (blend['cocoa-butter'] ?? 0)).toBeLessThanOrEqual(24 + 1e-6)
  const group = page.getByRole('group', { name: 'butter' })
  await group.getByText('at its most').waitFor()

  await field(page, 'Name of the group').fill('dear butters')
  await page.getByRole('group', { name: 'dear butters' }).waitFor()
  await page.getByRole('button', { name: 'Remove the group dear butters' }).press('Enter')
  await expectShare(page, 'shea').toBeGreaterThan(20)
  await page.keyboard.press('Control+z')
  await page.getByRole('group', { name: 'dear butters' }).waitFor()
})

pageTest('oils are ticked into a group by keyboard', async ({ open }) => {
  const page = await open()
  await solved(page)
  await pickFrom(page, 'Limit together', /^oils that I tick/u)
  const first = page.getByRole('checkbox', { name: 'Shea' })
  await expect.poll(() => first.evaluate(isFocused), SOON).toBe(true)
  await page.keyboard.press('Space')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Space')
  await button(page, /^Oils of own group: Shea, Coconut$/u).waitFor()
  await field(page, 'own group, at most, %').fill('30')
  await expect
    .poll(async () => {
      const { shea = 0, coconut = 0 } = await shares(page)
      return shea + coconut
    }, SOON)
    .toBeLessThanOrEqual(30 + 1e-6)
})

pageTest('a ban by tag tells of stearic acid, which may be of it', async ({ open }) => {
  const page = await open()
  await solved(page)
  await add(page, 'lard', '2.50', 'Lard')
  await add(page, 'stearic acid, triple', '4', 'Stearic acid TP')
  await expectShare(page, 'lard').toBeGreaterThan(5)
  await pickFrom(page, 'Leave out by tag', /^animal/u)
  await expectShare(page, 'lard').toBe(0)
  const doubt = page.getByRole('status').filter({ hasText: 'Stearic acid, triple pressed' })
  expect(await doubt.innerText()).toContain('may be made of palm or of animal fat')
  await row(page, 'Stearic acid TP').getByText('may be animal or palm-derived: ask').waitFor()
  await doubt.getByRole('button', { name: 'Leave out Stearic acid TP too' }).press('Enter')
  await expect.poll(() => doubt.count(), SOON).toBe(0)
  await expectShare(page, 'stearic-acid-triple-pressed').toBe(0)
  await pickFrom(page, 'Leave out by tag', /^animal, back in/u)
  await expectShare(page, 'lard').toBeGreaterThan(5)
})

pageTest('where only stearic acid may be of a tag, the tag leaves it out', async ({ open }) => {
  const page = await open()
  await solved(page)
  await add(page, 'stearic acid, triple', '4', 'Stearic acid TP')
  await pickFrom(page, 'Leave out by tag', /^animal.*1 oil that may be/u)
  await row(page, 'Stearic acid TP').getByText('banned').waitFor()
})

pageTest('the shelf is ordered by share, by name or by price, and stays so', async ({ open }) => {
  const page = await open()
  await solved(page)
  await expect.poll(async () => (await names(page))[0], SOON).toBe('Shea')
  await pick(page, /^Order of the shelf/u, 'by name')
  expect((await names(page)).slice(0, 3)).toEqual(['Babassu', 'Castor', 'Cocoa butter'])
  await pick(page, /^Order of the shelf/u, 'by price')
  expect((await names(page)).slice(0, 2)).toEqual(['Rapeseed', 'Sunflower HO'])
  expect((await names(page)).at(-1)).toBe('Palm')
  await page.getByText(/^kept on this machine/u).waitFor()
  await page.reload()
  await page.getByRole('combobox', { name: 'Order of the shelf: by price' }).waitFor()
})

pageTest('the shelf leads to the paper for a formula', async ({ open }) => {
  const page = await open()
  await solved(page)
  await page.getByRole('link', { name: 'Paste a formula' }).press('Enter')
  await page.getByRole('textbox', { name: /^Your formula/u }).waitFor()
})

pageTest('axe finds nothing in the opened parts of the shelf in either theme', async ({ open }) => {
  const page = await open('', { reducedMotion: true })
  await solved(page)
  await button(page, 'Shea').press('Enter')
  await field(page, 'Stock of Shea, g').fill('600')
  await add(page, 'stearic acid, triple', '4', 'Stearic acid TP')
  await pickFrom(page, 'Limit together', /^oils that I tick/u)
  await page.getByRole('button', { name: 'File', exact: true }).press('Enter')
  await page.getByRole('menuitem').first().waitFor()
  expect(await axeFaults(page)).toEqual([])
})

pageTest('the shelf of ten oils ends within the window under the wishes', async ({ open }) => {
  const page = await open()
  await solved(page)
  const end = await page.getByRole('table', { name: 'Oils on the shelf' }).evaluate((table) => {
    const { bottom } = table.getBoundingClientRect()
    return { bottom, window: innerHeight, oils: table.querySelectorAll('[role=rowheader]').length }
  })
  expect(end.oils).toBe(10)
  expect(end.bottom).toBeLessThanOrEqual(end.window)
})
