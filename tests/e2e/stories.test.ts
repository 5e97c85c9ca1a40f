import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { library } from '../../src/data/library'
import { blendValue } from '../../src/domain/blend/values'
import { pageTest } from '../browser/page-test'
import { cells, expectLetters, head, letters, openBench, put } from './bench-page'
import { field, figure, nowText, SOON, shares, solved, typed } from './brief-page'

const goTo = (page: Page, place: string) =>
  page.getByRole('navigation', { name: 'Places' }).getByRole('link', { name: place }).click()

const ask = (page: Page, kind: string) =>
  page.getByRole('button', { name: kind, exact: true }).click()

/** What the sheet has to weigh, once it is there. */
async function weighed(page: Page): Promise<string[]> {
  await page.locator('[data-weigh="naoh"]').waitFor()
  const rows = page.locator('[data-weigh]')
  return rows.evaluateAll((all) => all.map((row) => row.getAttribute('data-weigh') ?? ''))
}

pageTest('a disputed oil is replaced, and the bar stays the bar people like', async ({ open }) => {
  const page = await open()
  const cost = await solved(page)
  const old = await shares(page)
  expect(old['shea']).toBeGreaterThan(0)
  await openBench(page)
  await put(page, 'The blend in hand')

  // On the Brief: without shea the wishes clash, and the least change is offered and taken.
  await goTo(page, 'Map')
  await page.getByRole('button', { name: 'Ban Shea', exact: true }).click()
  const changes = page.getByRole('region', { name: 'Smallest changes' })
  await changes
    .getByRole('button', { name: /^Set to / })
    .first()
    .click()
  await expect.poll(async () => (await shares(page))['shea'] ?? 0, SOON).toBe(0)
  const fresh = await solved(page)
  expect(fresh).toBeGreaterThan(cost)
  for (const measure of library.measures.filter(({ shown, unit }) => shown && unit === 'points')) {
    const now = Number(await nowText(page, measure.name))
    const [min, max] = [
      await typed(page, `${measure.name}, at least`),
      await typed(page, `${measure.name}, at most`),
    ]
    expect(now).toBeGreaterThanOrEqual((min ?? -Infinity) - 0.05)
    expect(now).toBeLessThanOrEqual((max ?? Infinity) + 0.05)
  }

  // On the Bench: what the study finds without shea comes close to the old bar.
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await expect.poll(async () => (await shares(page))['shea'] ?? 0, SOON).toBeGreaterThan(0)
  await goTo(page, 'Bench')
  await page.getByRole('button', { name: 'Ask for more from A' }).click()
  await ask(page, 'Without an oil')
  await page.getByRole('button', { name: 'Find', exact: true }).click()
  await expectLetters(page, 'A B C D')
  const shea = page.locator('tr.oil').filter({ hasText: 'Shea' }).locator('td')
  for (const text of (await shea.allInnerTexts()).slice(1)) expect(text.trim()).toMatch(/^–/u)

  await head(page, 'B').click()
  await page.getByRole('link', { name: 'Take B to Batch' }).click()
  expect(await weighed(page)).not.toContain('shea')
})

pageTest('a harder bar is found with the same lather, as far as can be told', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await put(page, 'The blend in hand')
  await page.getByRole('button', { name: 'Ask for more from A' }).click()
  await ask(page, 'More of one measure')
  await page.getByRole('button', { name: 'Find', exact: true }).click()
  await expect.poll(() => letters(page), SOON).toMatch(/^A B/u)
  const [base = NaN, harder = NaN] = (await cells(page, 'Hardness')).map(Number.parseFloat)
  expect(harder).toBeGreaterThan(base)
  const tie = library.measures.find(({ id }) => id === 'lather')?.tie ?? NaN
  const [was = NaN, is = NaN] = (await cells(page, 'Lather')).map(Number.parseFloat)
  expect(Math.abs(is - was)).toBeLessThanOrEqual(tie)
  expect((await cells(page, 'Lather'))[1]).toMatch(/tie/u)
  await head(page, 'B').click()
  await page.getByRole('link', { name: 'Take B to Batch' }).click()
  await page.getByText('from the Bench').waitFor()
  expect(await weighed(page)).toContain('naoh')
})

/** Cost per kg of the first column; NaN until it is there. */
async function costOnBench(page: Page): Promise<number> {
  const [first = ''] = await cells(page, 'Cost')
  return Number.parseFloat(first.replace(/^\D+/u, ''))
}

pageTest('a wholesale formula is costed, and follows a price to the cent', async ({ open }) => {
  const page = await open()
  await solved(page)
  const blend = await shares(page)
  // The cost is the shares times the prices on the shelf, by hand.
  const prices: Record<string, number> = {}
  for (const oil of Object.keys(blend)) {
    const name = library.oils.get(oil)?.shortName ?? oil
    prices[oil] = (await typed(page, `Price of ${name}, per kg`)) ?? NaN
  }
  const byHand = Object.entries(blend).reduce(
    (sum, [oil, share]) => sum + (share / 100) * (prices[oil] ?? NaN),
    0,
  )
  expect(await figure(page)).toBeCloseTo(byHand, 6)
  expect(blendValue(library, prices, 'cost', blend)).toBeCloseTo(byHand, 9)

  await openBench(page)
  await put(page, 'The blend in hand')
  await expect.poll(() => costOnBench(page), SOON).toBeCloseTo(byHand, 2)

  await goTo(page, 'Map')
  await field(page, 'Price of Coconut, per kg').fill('6.20')
  await expect.poll(() => figure(page), SOON).toBeGreaterThan(byHand)
  await goTo(page, 'Bench')
  // The old bar at the new price: 27.5 % coconut, 3.10 dearer per kg.
  const dearer = byHand + ((blend['coconut'] ?? NaN) / 100) * (6.2 - (prices['coconut'] ?? NaN))
  await expect.poll(() => costOnBench(page), SOON).toBeCloseTo(dearer, 2)
})
