import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { lyeCautions } from '../../src/data/cautions'
import { pageTest } from '../browser/page-test'
import { batchOnPage, barwright } from './command-line'
import { goTo, shares, solved } from './brief-page'

/** The cautions that can be seen, in their order. */
async function seenCautions(page: Page): Promise<string[]> {
  const items = await page.getByRole('region', { name: 'Lye caution' }).getByRole('listitem').all()
  const seen = []
  for (const item of items) if (await item.isVisible()) seen.push(await item.innerText())
  return seen
}

const top = async (page: Page, selector: string) => {
  const boxes = await page
    .locator(selector)
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).filter((b) => b.height > 0))
  return Math.min(...boxes.map(({ top }) => top))
}

pageTest.for([1440, 1024, 390])(
  'cautions stand where the lye is weighed, %d px wide',
  async (width, { open }) => {
    const page = await open('#batch')
    await page.setViewportSize({ width, height: 900 })
    await page.locator('[data-weigh="naoh"]').waitFor()
    expect(await seenCautions(page)).toEqual([...lyeCautions])
    expect(await top(page, '[aria-label="Lye caution"]')).toBeLessThan(
      await top(page, '[data-weigh="naoh"]'),
    )
  },
)

pageTest(
  'the printed sheet has the cautions above the weights, and no controls',
  async ({ open }) => {
    const page = await open('#batch')
    await page.locator('[data-weigh="naoh"]').waitFor()
    await page.emulateMedia({ media: 'print' })
    expect(await seenCautions(page)).toEqual([...lyeCautions])
    expect(await top(page, '[aria-label="Lye caution"]')).toBeLessThan(
      await top(page, '[data-weigh]'),
    )
    for (const what of await page.locator('[data-weigh]').all())
      expect(await what.locator('[data-grams]').isVisible()).toBe(true)
    expect(await page.getByRole('navigation').isVisible()).toBe(false)
    expect(await page.getByRole('button', { name: 'Print sheet' }).isVisible()).toBe(false)
  },
)

/** Pages of a PDF and their sizes in points, from its page objects (ISO 32000-1, 7.7.3.3). */
function pagesOf(pdf: Buffer): string[] {
  const text = pdf.toString('latin1')
  const pages = text.match(/\/Type\s*\/Page\b(?!s)/gu) ?? []
  const boxes = [...text.matchAll(/\/MediaBox\s*\[([^\]]+)\]/gu)].map(([, box = '']) =>
    box.trim().split(/\s+/u).slice(2).map(Number).map(Math.round).join(' by '),
  )
  return pages.map((_, index) => boxes[index] ?? boxes[0] ?? '')
}

pageTest.for(['light', 'dark'] as const)(
  'the sheet of five oils prints on one page of A4, from %s',
  async (theme, { open }) => {
    const page = await open('#batch', { theme })
    await page.locator('[data-weigh="naoh"]').waitFor()
    const pages = pagesOf(await page.pdf({ preferCSSPageSize: true }))
    expect(pages).toHaveLength(1)
    // 210 by 297 mm in points of 1/72 inch, to the whole points that Chromium writes.
    expect(['595 by 842', '596 by 842']).toContain(pages[0])
  },
)

pageTest('nothing of the sheet is wider than the paper', async ({ open }) => {
  const page = await open('#batch')
  await page.locator('[data-weigh="naoh"]').waitFor()
  // 210 mm less two margins of 13 mm, at 96 px an inch.
  const paperPx = ((210 - 26) * 96) / 25.4
  await page.emulateMedia({ media: 'print' })
  await page.setViewportSize({ width: Math.floor(paperPx), height: 1000 })
  const wide = await page.evaluate(
    (most) =>
      [...document.querySelectorAll('main *')].flatMap((element) =>
        element.getBoundingClientRect().right > most ? [element.outerHTML.slice(0, 80)] : [],
      ),
    paperPx,
  )
  expect(wide).toEqual([])
})

pageTest('the command line gives the cautions that the page shows', async ({ open }) => {
  const page = await open()
  await solved(page)
  const blend = await shares(page)
  await goTo(page, 'batch')
  await page.locator('[data-weigh="naoh"]').waitFor()
  const { output } = await barwright<{ cautions: string[] }>(
    'batch',
    await batchOnPage(page, { ...blend }),
  )
  expect(output.cautions).toEqual(await seenCautions(page))
})
