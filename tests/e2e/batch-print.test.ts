import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { lyeCautions } from '../../src/data/cautions'
import { pageTest } from '../browser/page-test'
import { addFrom, goToView, group, openBatch, pagesOf, pick, row } from './batch-page'
import { field, SOON } from './brief-page'

/** Widths of paper without its margins of 13 mm, px at 96 an inch. */
const PAPERS = {
  A4: { widthPx: ((210 - 26) * 96) / 25.4, points: ['595 by 842', '596 by 842'] },
  // 8.5 by 11 inches of 72 points.
  Letter: { widthPx: (8.5 - (2 * 13) / 25.4) * 96, points: ['612 by 792'] },
} as const

/** A hot process with milk, acid, fat kept back, fragrance and a mould: a long sheet. */
async function longBatch(page: Page): Promise<void> {
  await pick(page, 'Process', 'hot process')
  await group(page, 'Size and scales')
  await pick(page, 'Size by', 'mould to fill')
  await pick(page, 'Cut', 'slices')
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /^Citric acid, anhydrous/u)
  await addFrom(page, 'Add an additive', /lactate/u)
  await group(page, 'Water and liquids')
  await addFrom(page, 'Add milk, tea, purée …', /^Goat/u)
  await group(page, 'Fragrance')
  await addFrom(page, 'Add an essential oil', /^Lavender oil/u)
  await group(page, 'Cook and cure')
  await pick(page, 'Extra fat', /kept back/u)
  await group(page, 'Papers and prices')
  await field(page, 'Made on').fill('2026-11-25')
  await field(page, 'Product code').fill('KB')
}

async function printOn(page: Page, paper: 'A4' | 'Letter'): Promise<Buffer> {
  await group(page, 'Papers and prices')
  if (paper !== 'A4') await pick(page, 'Print on', paper)
  return page.pdf({ preferCSSPageSize: true })
}

/** What a printer would be given, as text. */
async function printedText(page: Page): Promise<string> {
  await page.emulateMedia({ media: 'print' })
  const text = await page.locator('main').innerText()
  await page.emulateMedia({ media: null })
  return text
}

pageTest.for(['A4', 'Letter'] as const)(
  'a plain sheet prints on one side or two of %s, whatever the theme',
  async (paper, { open }) => {
    const page = await openBatch(open, { theme: 'dark' })
    const pages = pagesOf(await printOn(page, paper))
    expect(pages.length).toBeLessThanOrEqual(paper === 'A4' ? 1 : 2)
    for (const size of pages) expect(PAPERS[paper].points).toContain(size)
  },
)

pageTest.for(['A4', 'Letter'] as const)(
  'a long sheet prints on two sides of %s with all that the bench needs',
  async (paper, { open }) => {
    const page = await openBatch(open)
    await longBatch(page)
    const pages = pagesOf(await printOn(page, paper))
    expect(pages).toHaveLength(2)
    for (const size of pages) expect(PAPERS[paper].points).toContain(size)
    const text = await printedText(page)
    for (const caution of lyeCautions) expect(text).toContain(caution)
    for (const words of [
      'Batch 261125-KB-01',
      'ready on 2026-12-09',
      '50 to 65',
      '70 to 90',
      'kept back, after the cook',
      'Is it done?',
      'It comes to about',
      'were no heat lost, and boils at',
      'Net weight to declare',
      'Allergens to name:',
      'Linalool',
      'Materials cost',
      'Weighed by',
      'Free alkali tested, result',
    ])
      expect(text, words).toContain(words)
    expect(text).toMatch(/Cut 10 bars of about \d+ g/u)
    expect(text).not.toMatch(/Papers and prices|Undo|Step by step|NaN|undefined/u)
  },
)

pageTest(
  'the printed sheet has a box to tick and room for the weight in every row',
  async ({ open }) => {
    const page = await openBatch(open)
    await page.emulateMedia({ media: 'print' })
    for (const line of await page.locator('[data-weigh]').all()) {
      expect(await line.getByRole('checkbox').isVisible()).toBe(true)
      expect((await line.locator('.blank').boundingBox())?.width).toBeGreaterThan(60)
      // 20 pt, to be read at arm's length; Chromium keeps px to a few decimals.
      const px = await line
        .locator('[data-grams]')
        .evaluate((cell) => Number.parseFloat(getComputedStyle(cell).fontSize))
      expect((px * 72) / 96).toBeCloseTo(20, 2)
    }
  },
)

pageTest.for(['A4', 'Letter'] as const)(
  'nothing of a long sheet is wider than %s',
  async (paper, { open }) => {
    const page = await openBatch(open)
    await longBatch(page)
    await page.emulateMedia({ media: 'print' })
    await page.setViewportSize({ width: Math.floor(PAPERS[paper].widthPx), height: 1000 })
    const wide = await page.evaluate(
      (most) =>
        [...document.querySelectorAll('main *')].flatMap((element) =>
          element.getBoundingClientRect().right > most ? [element.outerHTML.slice(0, 80)] : [],
        ),
      PAPERS[paper].widthPx,
    )
    expect(wide).toEqual([])
  },
)

pageTest('what is ticked or typed on the screen is left blank on paper', async ({ open }) => {
  const page = await openBatch(open)
  await field(page, 'Coconut oil, weighed, g').fill('1400')
  const before = await row(page, 'coconut').locator('[data-grams]').innerText()
  await page.emulateMedia({ media: 'print' })
  expect(await field(page, 'Coconut oil, weighed, g').isVisible()).toBe(false)
  expect(await row(page, 'coconut').locator('[data-grams]').innerText()).toBe(before)
  expect(await page.getByText('As really weighed').isVisible()).toBe(false)
})

pageTest(
  'a blocked batch prints its refusal and the cautions, and no weights',
  async ({ open }) => {
    const page = await openBatch(open)
    await field(page, 'Superfat, %').fill('1')
    await expect
      .poll(() => page.getByRole('button', { name: 'Print sheet' }).isDisabled(), SOON)
      .toBe(true)
    const text = await printedText(page)
    expect(text).toContain('No sheet is printed:')
    for (const caution of lyeCautions) expect(text).toContain(caution)
    expect(text).not.toMatch(/Sodium hydroxide\n/u)
    await page.emulateMedia({ media: 'print' })
    for (const line of await page.locator('[data-weigh]').all())
      expect(await line.isVisible()).toBe(false)
  },
)

pageTest('the label prints both lists and what is still to settle', async ({ open }) => {
  const page = await openBatch(open)
  await goToView(page, 'Label')
  await page.getByRole('region', { name: 'Ingredients, as made' }).waitFor()
  expect(pagesOf(await page.pdf({ preferCSSPageSize: true })).length).toBeLessThanOrEqual(2)
  const text = await printedText(page)
  expect(text).toContain('Cocos Nucifera Oil')
  expect(text).toContain('Sodium Cocoate')
  expect(text).not.toContain('Copy')
})
