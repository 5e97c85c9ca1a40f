import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { library } from '../../src/data/library'
import type { Blend } from '../../src/domain/blend/blend'

/** Answers come in a fraction of a second; a busy machine may take much longer. */
export const SOON = { timeout: 60_000 }

/** A number field by its whole name. */
export const field = (page: Page, name: string): Locator =>
  page.getByRole('textbox', { name, exact: true })

/** A flag of a wish by its whole name, such as "Lather, at least". */
export const flag = (page: Page, name: string): Locator =>
  page.getByRole('slider', { name, exact: true })

/** The row of a wish. */
export const wish = (page: Page, measure: string): Locator =>
  page.getByRole('region', { name: 'Wishes' }).getByRole('group', { name: measure, exact: true })

export const map = (page: Page): Locator => page.getByRole('application')

/** Waits until the map has its land. */
export const landed = (page: Page): Promise<void> => map(page).locator('.edge').waitFor()

/** Opens a place by its address, as the links do. */
export async function goTo(page: Page, place: 'bar' | 'map' | 'batch'): Promise<void> {
  await page.evaluate((hash) => (location.hash = hash), place)
}

/** The figure of the answer, unrounded; NaN while there is none. */
export async function figure(page: Page): Promise<number> {
  const answers = page.locator('[data-figure]')
  if ((await answers.count()) === 0) return NaN
  return Number(await answers.getAttribute('data-figure'))
}

/** Waits until the page has an answer, and gives its figure. */
export async function solved(page: Page): Promise<number> {
  await page.locator('[data-figure]').waitFor()
  return figure(page)
}

/** What a measure is now, as the page writes it. */
export async function nowText(page: Page, measure: string): Promise<string> {
  const text = await wish(page, measure).locator('.now').innerText()
  return text.split('\n')[0] ?? ''
}

export async function expectNow(page: Page, measure: string, text: string): Promise<void> {
  await expect.poll(() => nowText(page, measure), SOON).toBe(text)
}

/** Unrounded shares of the strip at the top. */
export async function shares(page: Page): Promise<Blend> {
  const segments = await page.locator('.hand [data-oil]').all()
  const entries = segments.map(async (segment) => [
    await segment.getAttribute('data-oil'),
    Number(await segment.getAttribute('data-share')),
  ])
  return Object.fromEntries(await Promise.all(entries)) as Blend
}

/** What stands in a field, as a number; undefined where it is empty. */
export async function typed(page: Page, name: string): Promise<number | undefined> {
  const text = await field(page, name).inputValue()
  return text === '' ? undefined : Number(text)
}

/** Names of the oils that are on the shelf and not banned, as their rows write them. */
export async function shelfNames(page: Page): Promise<string[]> {
  const bans = page.getByRole('button', { name: /^Ban /u, pressed: false })
  const labels = await bans.evaluateAll((buttons) =>
    buttons.map((button) => button.getAttribute('aria-label') ?? ''),
  )
  return labels.map((label) => label.replace('Ban ', ''))
}

/** The id of the oil that a row names. */
export function oilId(shortName: string): string {
  const oil = [...library.oils.values()].find((one) => one.shortName === shortName)
  if (!oil) throw new Error(`No oil is called ${shortName}`)
  return oil.id
}
