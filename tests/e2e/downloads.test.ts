import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { landed, solved } from './brief-page'
import { pngSize, rowsOf, saved } from './saved'

const NAME = 'kitchen-bar-for-the-harbour-shop'
const part = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

/** A picture that stands alone: with its fonts, and free of the page's style sheets. */
function expectWhole(svg: string): void {
  expect(svg).toContain('@font-face')
  expect(svg).not.toMatch(/var\(--|class=/u)
}

pageTest('the map, its lines and its corners are saved as files', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  const map = part(page, 'Map')
  const svg = (await saved(page, 'The map as SVG', `${NAME}-map.svg`, map)).toString('utf8')
  expectWhole(svg)
  expect(svg).toContain('hardness across, lather up; height: least cost')
  expect(svg).toContain('Off the map')
  const [width, height] = pngSize(await saved(page, 'The map as PNG', `${NAME}-map.png`, map))
  // Two dots a px.
  expect(width).toBeGreaterThan(1400)
  expect(height).toBeGreaterThan(900)

  await map.getByRole('button', { name: 'lines', exact: true }).click()
  await map.locator('canvas').waitFor()
  const lines = (await saved(page, 'The lines as SVG', `${NAME}-lines.svg`, map)).toString('utf8')
  expectWhole(lines)
  expect(lines).toContain('data:image/png;base64,')

  await map.getByRole('button', { name: 'table', exact: true }).click()
  const shown = await map.locator('tbody tr').count()
  const corners = rowsOf(await saved(page, 'The corners as CSV', `${NAME}-table.csv`, map))
  expect(corners).toHaveLength(shown + 1)
  expect(corners.some((row) => row.startsWith('yes,'))).toBe(true)
})

pageTest('the curves of why and the shelf are saved as files', async ({ open }) => {
  const page = await open()
  await solved(page)
  const why = part(page, 'Why')
  await why.waitFor()
  const svg = (await saved(page, 'The curves as SVG', `${NAME}-why.svg`, why)).toString('utf8')
  expectWhole(svg)
  for (const caption of await why.locator('figcaption b').allInnerTexts())
    expect(svg).toContain(caption)

  const shelf = part(page, 'Shelf')
  const rows = rowsOf(await saved(page, 'The shelf as CSV', `${NAME}-shelf.csv`, shelf))
  expect(rows[0]).toBe('oil,"price, EUR per kg","least, %","most, %",banned,"found, %"')
  expect(rows).toHaveLength(11)
  const shares = rows.slice(1).map((row) => Number(row.split(',').at(-1)))
  expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 2)
})

pageTest('what changes of prices do is saved as files', async ({ open }) => {
  const page = await open()
  await solved(page)
  await page.evaluate(() => (location.hash = 'ledger/change'))
  const panel = part(page, 'If prices change')
  await panel.getByRole('table').waitFor()
  const oil = await panel.getByRole('columnheader').first().innerText()
  const file = `${NAME}-price-of-${oil.replace(' a kg', '')}`
  expectWhole((await saved(page, 'The picture as SVG', `${file}.svg`, panel)).toString('utf8'))
  const formulas = rowsOf(await saved(page, 'The formulas as CSV', `${file}.csv`, panel))
  expect(formulas).toHaveLength((await panel.locator('tbody tr').count()) + 1)

  await panel.getByRole('button', { name: 'An oil is gone', exact: true }).click()
  await panel.getByRole('region', { name: 'Replacements' }).waitFor()
  const without = `${NAME}-without-${oil.replace(' a kg', '')}.csv`
  const replacements = rowsOf(await saved(page, 'The replacements as CSV', without, panel))
  expect(replacements).toHaveLength((await panel.locator('tbody tr').count()) + 1)
})
