import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, figure, landed, map, SOON, solved } from './brief-page'

/** Picks one of the choices that stand in the sentence. */
async function pick(page: Page, label: string, choice: string): Promise<void> {
  await page.locator(`[aria-label^="${label}:"]`).click()
  await page.getByRole('option', { name: choice, exact: true }).click()
}

const stop = (page: Page) => map(page).locator('..').getByRole('button', { name: 'Stop' })
const known = (page: Page) => page.getByText(/exact (?:on|of|, of)/u)

pageTest('the map under rules says what is exact so far, until all is', async ({ open }) => {
  const page = await open()
  const cost = await solved(page)
  await landed(page)
  await pick(page, 'Oils at most', '4')
  await expect.poll(() => known(page).innerText(), SOON).toMatch(/exact on 60 × 60 points/u)
  await expect.poll(() => known(page).innerText(), SOON).toMatch(/edge exact on their lines/u)
  expect(await stop(page).count()).toBe(0)
  // Fewer oils can't be cheaper.
  expect(await figure(page)).toBeGreaterThanOrEqual(cost - 1e-9)
  expect(await page.locator('.map .edge').getAttribute('d')).toMatch(/^M/u)
})

pageTest('a long search for the map is stopped without moving the page', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  // The finest steps are the slowest rule: the last grid takes seconds.
  await pick(page, 'Steps of shares', '0.5 % steps')
  const hint = page.getByText('Point at the land')
  await stop(page).waitFor()
  const there = await hint.boundingBox()
  await stop(page).click()
  await page.getByText('stopped there').waitFor()
  expect(await stop(page).count()).toBe(0)
  expect((await hint.boundingBox())?.y).toBe(there?.y)
})

pageTest('a long search for the map is overtaken by what is typed', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  await pick(page, 'Steps of shares', '0.5 % steps')
  await stop(page).waitFor()
  const before = await figure(page)
  await field(page, 'Hardness, at least').fill('40')
  await expect.poll(() => figure(page), SOON).toBeGreaterThan(before)
  await pick(page, 'Steps of shares', 'no steps')
  await pick(page, 'Oils at most', '4')
  await expect.poll(() => known(page).innerText(), SOON).toMatch(/Heights exact on 60 × 60 points/u)
  await expect.poll(() => stop(page).count(), SOON).toBe(0)
})
