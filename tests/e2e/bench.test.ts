import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { axeFaults } from '../browser/axe'
import { pageTest } from '../browser/page-test'
import { cells, expectLetters, head, letters, openBench, put, putFour } from './bench-page'
import { SOON } from './brief-page'
import { saved } from './saved'

const find = (page: Page) => page.getByRole('button', { name: 'Find', exact: true }).click()
const ask = async (page: Page, kind: string) => {
  await page.getByRole('button', { name: kind, exact: true }).click()
}

pageTest('an empty Bench says what it is for and offers what there is', async ({ open }) => {
  const page = await open()
  await openBench(page)
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Nothing to compare yet')
  await put(page, 'All olive')
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(
    'All olive, alone on the Bench',
  )
})

pageTest(
  'eight candidates are put side by side, compared, and one goes to Batch',
  async ({ open }) => {
    const page = await open()
    await openBench(page)
    await putFour(page)
    await head(page, 'B').click()
    await page.getByRole('button', { name: 'Ask for more from B' }).click()
    await ask(page, 'More like it')
    await find(page)
    await expectLetters(page, 'A B C D E F G H')
    await page
      .getByRole('heading', { name: 'Seven candidates against vegetable, no palm' })
      .waitFor()

    const hardness = await cells(page, 'Hardness')
    expect(hardness).toHaveLength(8)
    expect(hardness[0]).toMatch(/^[\d.]+ reference$/u)
    // Olive alone is far softer than any blend with coconut and butters; ties are told as ties.
    expect(hardness[3]).toMatch(/^[\d.]+ −[\d.]+ softer$/u)
    for (const cell of hardness.slice(1))
      expect(cell).toMatch(/ (tie \([+−]?\d\.\d\)|[+−]\d+\.\d (softer|harder))$/u)
    expect(await page.locator('table').innerText()).not.toMatch(/better|worse/iu)

    await page.getByRole('button', { name: 'Hardness', exact: true }).click()
    const order = await cells(page, 'Hardness')
    const values = order.slice(1).map((cell) => Number.parseFloat(cell))
    expect(values).toEqual(values.toSorted((a, b) => b - a))
    expect(await page.getByRole('rowheader', { name: 'Hardness' }).getAttribute('aria-sort')).toBe(
      'descending',
    )

    await head(page, 'E').click()
    await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Trial for spring')
    await page.getByRole('link', { name: 'Take E to Batch' }).click()
    const back = page.getByText('E, Trial for spring, from the Bench.')
    await back.waitFor()
    await page.getByRole('link', { name: 'Back to the Bench' }).click()
    await head(page, 'E').waitFor()
    expect(await head(page, 'E').innerText()).toMatch(/E\s*Trial for spring\s*, the blend in hand/u)
  },
)

pageTest('a study says what it trades, and what it holds ties with its base', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await put(page, 'The blend in hand')
  await page.getByRole('button', { name: 'Ask for more from A' }).click()
  await ask(page, 'More of one measure')
  await find(page)
  await expect.poll(() => letters(page), SOON).toMatch(/^A B/u)
  const [first = ''] = await page
    .getByRole('listitem')
    .filter({ hasText: 'Harder' })
    .allInnerTexts()
  expect(first).toMatch(/Harder by \d+\.\d/u)
  for (const measure of ['Lather', 'Conditioning', 'Mildness', 'Wear', 'Keeping'])
    expect((await cells(page, measure))[1]).toMatch(/tie/u)
})

pageTest('an oil is replaced, and the best replacements stand on the Bench', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await put(page, 'The blend in hand')
  await page.getByRole('button', { name: 'Ask for more from A' }).click()
  await ask(page, 'Without an oil')
  await find(page)
  await expectLetters(page, 'A B C D')
  const replaced = await page
    .locator('tr.oil')
    .filter({ hasText: 'Shea' })
    .locator('td')
    .allInnerTexts()
  expect(replaced.slice(1).map((text) => text.trim().charAt(0))).toEqual(['–', '–', '–'])
})

pageTest('columns are chosen, moved and taken off by keyboard alone', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await putFour(page)
  await head(page, 'D').focus()
  await page.keyboard.press('Alt+ArrowLeft')
  await expectLetters(page, 'A B D C')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('bench-candidate-D')
  await page.keyboard.press('Alt+ArrowLeft')
  await expectLetters(page, 'A D B C')
  await page.keyboard.press('Alt+ArrowLeft')
  await expectLetters(page, 'A D B C')
  await page.keyboard.press('ArrowRight')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('bench-candidate-B')
  await page.keyboard.press('r')
  await expectLetters(page, 'B A D C')
  await page.keyboard.press('End')
  await page.keyboard.press('Delete')
  await expectLetters(page, 'B A D')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('bench-candidate-D')
  await page.keyboard.press('Control+z')
  await expectLetters(page, 'B A D C')
})

pageTest(
  'a column is dragged to another place, and the first stays the reference',
  async ({ open }) => {
    const page = await open()
    await openBench(page)
    await putFour(page)
    await drag(page, 'D', 'B')
    await expectLetters(page, 'A D B C')
    await drag(page, 'C', 'A')
    await expectLetters(page, 'A C D B')
  },
)

async function drag(page: Page, from: string, to: string): Promise<void> {
  const middle = async (letter: string) => {
    const box = await head(page, letter).boundingBox()
    if (!box) throw new Error(`No column ${letter}`)
    return [box.x + box.width / 2, box.y + box.height / 2] as const
  }
  const [start, end] = [await middle(from), await middle(to)]
  await page.mouse.move(...start)
  await page.mouse.down()
  await page.mouse.move(...end, { steps: 8 })
  await page.mouse.up()
}

pageTest('what was taken off is offered back, and comes back with all it had', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await putFour(page)
  await head(page, 'C').click()
  await page.getByRole('textbox', { name: 'Note', exact: true }).fill('needs tallow')
  await page.getByRole('button', { name: 'Take C off' }).click()
  await expectLetters(page, 'A B D')
  await page.getByText('C, Tallow and coconut, is off the Bench.').waitFor()
  await page.getByRole('button', { name: 'Put it back' }).click()
  await expectLetters(page, 'A B C D')
  expect(await page.getByRole('textbox', { name: 'Note', exact: true }).inputValue()).toBe(
    'needs tallow',
  )
})

pageTest('rows in which nothing can be told apart are hidden, and come back', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await put(page, 'Vegetable, no palm')
  await put(page, 'The blend in hand')
  // These two tie on every measure of the example but differ in cost and oils.
  expect(await page.getByRole('row', { name: 'Hardness' }).count()).toBe(1)
  await page.getByRole('button', { name: 'Show differences only' }).click()
  expect(await page.getByRole('row', { name: 'Hardness' }).count()).toBe(0)
  expect(await page.getByRole('rowheader', { name: 'Cost', exact: false }).count()).toBeGreaterThan(
    0,
  )
  await page.getByText(/rows are hidden: nothing there can be told apart/u).waitFor()
  await page.getByRole('button', { name: 'Show every row' }).click()
  expect(await page.getByRole('row', { name: 'Hardness' }).count()).toBe(1)
})

pageTest('the Bench is there again after a reload', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await putFour(page)
  await page.getByText(/kept on this machine/u).waitFor()
  await page.reload()
  await expectLetters(page, 'A B C D')
})

pageTest('the table and the axes are saved as files', async ({ open }) => {
  const page = await open()
  await openBench(page)
  await putFour(page)
  await head(page, 'D').click()
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('=HYPERLINK("x")')

  const csv = (
    await saved(page, 'The table as CSV', 'kitchen-bar-for-the-harbour-shop-bench.csv')
  ).toString('utf8')
  const rows = csv.replace('\uFEFF', '').split('\r\n')
  expect(rows[0]).toBe('Letter,,A,B,C,D')
  expect(rows[1]).toContain(`"'=HYPERLINK(""x"")"`)
  expect(rows.find((row) => row.startsWith('Hardness,'))).toMatch(/^Hardness,points,\d[\d.]*,/u)
  expect(rows.find((row) => row.startsWith('"Hardness, beside'))).toMatch(
    /,,[\d.-]+,[\d.-]+,[\d.-]+$/u,
  )

  const svg = (
    await saved(page, 'The axes as SVG', 'kitchen-bar-for-the-harbour-shop-bench.svg')
  ).toString('utf8')
  expect(svg).toContain('@font-face')
  expect(svg).not.toMatch(/var\(--|class=/u)
  expect(svg).toContain('Three candidates against vegetable, no palm')

  const png = await saved(page, 'The axes as PNG', 'kitchen-bar-for-the-harbour-shop-bench.png')
  // PNG signature and size (ISO/IEC 15948): two dots a px.
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG')
  expect(png.readUInt32BE(16)).toBeGreaterThan(800)
})

pageTest('on a phone the letters set the figures beside each axis', async ({ open }) => {
  const page = await open('', { size: 'phone' })
  await openBench(page)
  for (const what of ['Vegetable, no palm', 'The blend in hand', 'All olive']) await put(page, what)
  await page.getByRole('button', { name: 'C, All olive' }).click()
  await expect.poll(() => figures(page, 'Hardness'), SOON).toMatch(/^C [\d.]+ −[\d.]+ softer$/u)
  await page.getByRole('button', { name: 'A, Vegetable, no palm, the reference' }).click()
  await expect.poll(() => figures(page, 'Hardness'), SOON).toMatch(/^A [\d.]+$/u)
})

const figures = async (page: Page, measure: string) => {
  const row = page.locator('.measure').filter({ has: page.getByRole('heading', { name: measure }) })
  return (await row.locator('.figures').innerText()).replace(/\s+/gu, ' ')
}

pageTest.for(['desktop', 'phone'] as const)(
  'axe finds nothing on the Bench in either theme: %s',
  async (size, { open }) => {
    const page = await open('', { size, reducedMotion: true })
    await openBench(page)
    expect(await axeFaults(page)).toEqual([])
    for (const what of ['Vegetable, no palm', 'The blend in hand', 'All olive'])
      await put(page, what)
    await page.getByRole('button', { name: /^Ask for more/u }).click()
    expect(await axeFaults(page)).toEqual([])
    for (const kind of ['More of one measure', 'Without an oil']) {
      await ask(page, kind)
      await find(page)
      await page.locator('.outcome').waitFor()
      expect(await axeFaults(page)).toEqual([])
    }
  },
)
