import type { Locator, Page } from 'playwright-core'
import type { Open } from '../browser/page-test'
import type { Look } from '../browser/watched-page'

/** Opens the Batch with the weights of the demo's blend. */
export async function openBatch(open: Open, look?: Look): Promise<Page> {
  const page = await open('#batch', look)
  await row(page, 'naoh').waitFor()
  return page
}

/** The row of something to weigh. */
export const row = (page: Page, id: string): Locator => page.locator(`[data-weigh="${id}"]`).first()

/** The weight of something, g, as planned. */
export async function gramsOf(page: Page, id: string): Promise<number> {
  const text = await row(page, id).locator('[data-grams]').getAttribute('data-grams')
  return Number(text)
}

/** Opens a foldable group by the beginning of its name, where it is closed, and gives its panel. */
export async function group(page: Page, name: string): Promise<Locator> {
  const button = page.getByRole('button', { name: new RegExp(`^${name}`, 'u'), expanded: false })
  if ((await button.count()) > 0) await button.click()
  const panel = page.getByRole('region', { name, exact: true })
  await panel.waitFor()
  return panel
}

/** Picks from a list by the beginning of its label. */
export async function pick(page: Page, label: string, option: string | RegExp): Promise<void> {
  await page.getByRole('combobox', { name: new RegExp(`^${label}:`, 'u') }).click()
  await page.getByRole('option', { name: option }).first().click()
}

/** Takes an entry of a menu. */
export async function addFrom(page: Page, menu: string, entry: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: menu }).click()
  await page.getByRole('menuitem', { name: entry }).first().click()
}

/** A figure of the list of figures, as written. */
export const figureOf = (page: Page, name: string): Promise<string> =>
  page
    .getByRole('region', { name: 'Figures' })
    .locator('.row', { has: page.getByText(name, { exact: true }) })
    .locator('dd')
    .innerText()

/** Goes to a view of the batch by its link. */
export async function goToView(page: Page, name: 'Sheet' | 'Step by step' | 'Label') {
  await page.getByRole('navigation', { name: 'Batch' }).getByRole('link', { name }).click()
}

/** Pages of a PDF and their sizes in points, from its page objects (ISO 32000-1, 7.7.3.3). */
export function pagesOf(pdf: Buffer): string[] {
  const text = pdf.toString('latin1')
  const pages = text.match(/\/Type\s*\/Page\b(?!s)/gu) ?? []
  const boxes = [...text.matchAll(/\/MediaBox\s*\[([^\]]+)\]/gu)].map(([, box = '']) =>
    box.trim().split(/\s+/u).slice(2).map(Number).map(Math.round).join(' by '),
  )
  return pages.map((_, index) => boxes[index] ?? boxes[0] ?? '')
}

/** Goes on in the workshop; where something is asked to be weighed it is weighed as asked. */
export async function goOn(page: Page): Promise<void> {
  const asked = page.locator('[data-big]')
  const typed = page.locator('.typed input')
  if ((await asked.count()) > 0 && (await typed.inputValue()) === '')
    await typed.fill((await asked.getAttribute('data-big')) ?? '')
  await page.locator('.acts .main').click()
}
