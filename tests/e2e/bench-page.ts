import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { SOON, solved } from './brief-page'

/** Opens the Bench once the brief has its blend, so that there is one in hand. */
export async function openBench(page: Page): Promise<void> {
  await solved(page)
  await page.evaluate(() => (location.hash = 'bench'))
  await page.getByRole('heading', { level: 1 }).waitFor()
}

/** Puts something from the menu, or from the list of an empty Bench, on the Bench. */
export async function put(page: Page, what: string): Promise<void> {
  const first = page.getByRole('button', { name: `Put on the Bench: ${what}` })
  if ((await first.count()) > 0) return first.click()
  await page.getByRole('button', { name: 'Add', exact: true }).click()
  await page.getByRole('menuitem', { name: what }).click()
}

/** The button at the head of a candidate's column. */
export const head = (page: Page, letter: string): Locator =>
  page.locator(`#bench-candidate-${letter}`)

/** Letters of the columns from left to right. */
export async function letters(page: Page): Promise<string> {
  const ids = page.locator('th[data-candidate]')
  const all = await ids.evaluateAll((heads) =>
    heads.map((one) => one.getAttribute('data-candidate') ?? ''),
  )
  return all.map((id) => id.replace('candidate-', '')).join(' ')
}

export const expectLetters = (page: Page, expected: string) =>
  expect.poll(() => letters(page), SOON).toBe(expected)

/** Texts of a row's cells, candidate by candidate. */
export async function cells(page: Page, row: string): Promise<string[]> {
  const texts = await page
    .getByRole('row', { name: row })
    .locator('td:not(.second)')
    .allInnerTexts()
  return texts.map((text) => text.replace(/\s+/gu, ' ').trim())
}

/** Four bars that differ: the blend in hand and three reference bars. */
export async function putFour(page: Page): Promise<void> {
  for (const what of ['Vegetable, no palm', 'The blend in hand', 'Tallow and coconut', 'All olive'])
    await put(page, what)
  await expectLetters(page, 'A B C D')
}
