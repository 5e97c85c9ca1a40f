import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { demoLedger } from '../../src/data/demo-ledger'
import { axeFaults } from '../browser/axe'
import { type Open, pageTest } from '../browser/page-test'
import type { Look } from '../browser/watched-page'
import { field, SOON, solved } from './brief-page'
import { untilKept } from './kept'
import { pngSize, rowsOf, saved } from './saved'
import { overflow, smallTargets, sticksOut } from './sideways'

const LIST = readFileSync(
  fileURLToPath(new URL('../cases/files/prices.csv', import.meta.url)),
  'utf8',
)

/** Rows of the example's prices: one for each step. */
const DEMO_ROWS = demoLedger.book.offers.reduce((sum, { steps }) => sum + steps.length, 0)

async function openLedger(open: Open, look: Look = {}): Promise<Page> {
  const page = await open('', { reducedMotion: true, ...look })
  await solved(page)
  await goToPart(page, 'prices')
  await page.getByRole('heading', { name: 'Ledger' }).waitFor()
  return page
}

async function goToPart(page: Page, part: 'prices' | 'buying' | 'cost' | 'quote'): Promise<void> {
  await page.evaluate((name) => (location.hash = `ledger/${name}`), part)
}

async function fillIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Fill in an example' }).click()
  await page.getByRole('heading', { name: 'Price book' }).waitFor()
}

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const found = (page: Page) => page.getByText('nothing cheaper exists at these prices').waitFor()

/** A figure of money in a row of a table, by its head. */
async function money(page: Page, row: string): Promise<number> {
  const cell = page.getByRole('row', { name: row }).getByRole('cell').last()
  return Number((await cell.innerText()).replace(/[^\d.]/gu, ''))
}

pageTest('the Ledger comes when it is asked for, and not with the first page', async ({ open }) => {
  const page = await open()
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  await solved(page)
  const scripts = await page.evaluate(() =>
    performance.getEntriesByType('resource').map(({ name }) => name),
  )
  expect(scripts.filter((name) => /Ledger/u.test(name))).toEqual([])
  await goToPart(page, 'prices')
  await page.getByRole('heading', { name: 'No prices yet' }).waitFor()
  expect(asked.some((name) => /LedgerPage/u.test(name))).toBe(true)
})

pageTest('an empty Ledger says what it is for; an example can be undone', async ({ open }) => {
  const page = await openLedger(open)
  await page.getByText(/reckons from packs as you buy them/u).waitFor()
  for (const part of ['buying', 'cost', 'quote'] as const) {
    await goToPart(page, part)
    await page.getByText(/needs prices first/u).waitFor()
  }
  await goToPart(page, 'prices')
  await fillIn(page)
  await page
    .getByText('467 days, ask anew')
    .or(page.getByText(/days, ask anew/u))
    .first()
    .waitFor()
  await page.keyboard.press('Control+z')
  await page.getByRole('heading', { name: 'No prices yet' }).waitFor()
})

pageTest(
  'a pasted list is read, reported, kept over a reload and put into the book',
  async ({ open }) => {
    const page = await openLedger(open)
    await button(page, 'Paste a price list').click()
    await field(page, 'The list').fill(LIST)
    await page.getByText('6 rows understood, 2 not').waitFor()
    const unread = page.getByRole('list', { name: 'Not understood' })
    expect(await unread.innerText()).toMatch(/Row 7[\s\S]*Moon dust[\s\S]*not known/u)
    await page.getByText(/^kept on this machine/u).waitFor()
    await expect.poll(() => page.getByText('not kept', { exact: true }).count()).toBe(0)
    await untilKept(page, 'Moon dust')
    await page.reload()
    await page.getByText('6 rows understood, 2 not').waitFor()

    // The supplier's own numbers are no material: another column can be left out too.
    await page.getByLabel('What column 6 holds').selectOption('leave out')
    await page.getByText(/without a date are taken as seen on/u).waitFor()
    await page.getByLabel('What column 6 holds').selectOption('Date')
    await page.getByLabel(/take names that the library does not know/u).check()
    await button(page, 'Put 7 prices into the book').click()
    await page.getByRole('row', { name: /^Moon dust/u }).waitFor()
    const olive = page.getByRole('row', { name: /^Olive oil/u })
    // By hand: 36.50 / (5 × 0.911) = 8.0132 a kg.
    expect(await olive.innerText()).toMatch(/€36\.50, from 4: €33\.90\s+€8\.01 a kg/u)
  },
)

pageTest('a list without headings is matched by hand', async ({ open }) => {
  const page = await openLedger(open)
  await button(page, 'Paste a price list').click()
  await field(page, 'The list').fill('Olive oil\t5 kg\t1,250\nCastor oil\t5 kg\t1,300')
  await page.getByText('Say which column holds material, pack size, price of a pack.').waitFor()
  for (const [at, name] of ['Material', 'Pack size', 'Price of a pack'].entries())
    await page.getByLabel(`What column ${at + 1} holds`).selectOption(name)
  await page.getByText('0 rows understood, 2 not').waitFor()
  await page.getByLabel('a comma', { exact: true }).check()
  await field(page, 'Supplier of rows that name none').fill('North')
  await page.getByText('2 rows understood, 0 not').waitFor()
  expect(await page.getByRole('list', { name: 'Understood' }).innerText()).toContain('€1.25')
})

pageTest('exported prices can not run as formulas, and come back', async ({ open }) => {
  const page = await openLedger(open)
  await fillIn(page)
  await page.getByRole('button', { name: /^Change Babassu oil/u }).click()
  await page.getByRole('textbox', { name: 'Supplier', exact: true }).fill('=HYPERLINK("x")')
  const csv = await saved(page, 'All prices as CSV for spreadsheets', 'price-book.csv')
  const text = csv.toString('utf8')
  expect(text).toContain(`"'=HYPERLINK(""x"")"`)
  await button(page, 'Paste a list').click()
  await field(page, 'The list').fill(text)
  await page.getByText(`${DEMO_ROWS} rows understood, 0 not`).waitFor()
  expect(await page.getByRole('list', { name: 'Understood' }).innerText()).toContain(
    '=HYPERLINK("x")',
  )
})

pageTest(
  'a pack is added by hand, with a name that is not known and its own currency',
  async ({ open }) => {
    const page = await openLedger(open)
    await button(page, 'Add a pack').click()
    const form = page.getByRole('group', { name: /^Pack of/u })
    await form.getByRole('combobox', { name: 'Material' }).fill('Pumice')
    await page.keyboard.press('Tab')
    await button(page, 'Take it as a material of my own').click()
    await form.getByRole('textbox', { name: 'Supplier' }).fill('East')
    await field(page, 'What a pack holds').fill('2')
    await field(page, 'Step 1, price of a pack').fill('9.90')
    await form.getByRole('textbox', { name: 'Currency' }).fill('USD')
    await field(page, 'Rate of USD in EUR').fill('0.9')
    await button(page, 'Close').last().click()
    // By hand: 9.90 × 0.9 / 2 = 4.455, a pack rounded first: 8.91 / 2.
    expect(await page.getByRole('row', { name: /^Pumice/u }).innerText()).toMatch(
      /\$9\.90\s+€4\.4[56] a kg/u,
    )
  },
)

pageTest(
  'the buying list covers the batches, adds up, and asks for less where there is stock',
  async ({ open }) => {
    const page = await openLedger(open)
    await fillIn(page)
    await goToPart(page, 'buying')
    await field(page, 'Times the batch in hand').fill('6')
    await found(page)
    await expect.poll(() => money(page, 'To pay'), SOON).toBeGreaterThan(100)
    const before = await money(page, 'To pay')
    expect(before).toBeCloseTo((await money(page, 'Goods')) + (await money(page, 'Freight')), 2)
    await field(page, 'In stock of Carton, pieces').fill('1000')
    await page.getByText('enough is there').waitFor()
    await expect.poll(() => money(page, 'To pay'), SOON).toBeLessThan(before)

    await button(page, 'Keep it on the list').click()
    await field(page, 'Times the batch in hand').fill('0')
    await found(page)
    const csv = rowsOf(
      await saved(page, 'The list as CSV', 'kitchen-bar-for-the-harbour-shop-buying.csv'),
    )
    expect(csv[0]).toMatch(/^Material,Supplier,Packs/u)
    expect(csv.at(-1)).toMatch(/^To pay/u)
  },
)

pageTest(
  'a bar’s cost is told for a bar, a batch and a kg, and saved as picture and table',
  async ({ open }) => {
    const page = await openLedger(open)
    await fillIn(page)
    await goToPart(page, 'cost')
    const sentence = page.getByText(/^A bar of/u)
    const bar = /costs €([\d.]+), a batch of (\d+) bars €([\d.]+)/u
    const [, perBar = '', , perBatch = ''] = bar.exec(await sentence.innerText()) ?? []
    expect(Number(perBar)).toBeGreaterThan(1)
    await page.getByRole('button', { name: 'a batch', exact: true }).click()
    const chart = page.locator('svg.waterfall')
    expect(await chart.innerHTML()).toContain(`€${perBatch}`)
    await page.getByRole('button', { name: 'a kg', exact: true }).click()
    await expect.poll(() => chart.innerHTML()).toContain('Dried off in the cure')

    await field(page, 'Minutes a batch').fill('220')
    await expect
      .poll(async () => Number(bar.exec(await sentence.innerText())?.[1]))
      .toBeGreaterThan(Number(perBar))
    await page.keyboard.press('Control+z')
    await expect.poll(async () => bar.exec(await sentence.innerText())?.[1]).toBe(perBar)

    const stem = 'kitchen-bar-for-the-harbour-shop-cost'
    const svg = (await saved(page, 'The picture as SVG', `${stem}.svg`)).toString('utf8')
    expect(svg).toContain('Labour')
    const [width] = pngSize(await saved(page, 'The picture as PNG', `${stem}.png`))
    expect(width).toBeGreaterThan(1000)
    const rows = rowsOf(await saved(page, 'The table as CSV', `${stem}.csv`))
    expect(rows).toContain(`Sum,,,${Number(perBatch)}`)
  },
)

pageTest(
  'a quote earns its margin, survives a reload, and prints without costs',
  async ({ open }) => {
    const page = await openLedger(open, { theme: 'dark' })
    await fillIn(page)
    await goToPart(page, 'quote')
    await field(page, 'Numbers of bars').fill('500, 48')
    await field(page, 'A bar earns, %').fill('60')
    await field(page, 'Your name').fill('The maker of bars')
    await field(page, 'For').fill('A shop by the harbour')
    const row = page.getByRole('row', { name: /^48/u }).first()
    const margin = async () => Number(/([\d.]+)\s*%/u.exec(await row.innerText())?.[1])
    await expect.poll(margin).toBeGreaterThanOrEqual(60)
    expect(await margin()).toBeLessThan(61)
    await field(page, 'Numbers of bars').fill('many')
    await page.getByText(/Give whole numbers of bars/u).waitFor()
    await untilKept(page, 'A shop by the harbour')
    await page.reload()
    await page.getByRole('row', { name: /^48/u }).first().waitFor()
    expect(await field(page, 'A bar earns, %').inputValue()).toBe('60')

    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
    expect(pdf.match(/\/Type\s*\/Page\b/gu)).toHaveLength(1)
    await page.emulateMedia({ media: 'print' })
    const printed = await page.locator('body').innerText()
    expect(printed).toMatch(
      /The maker of bars[\s\S]*For A shop by the harbour[\s\S]*Retail, with tax/u,
    )
    expect(printed).not.toMatch(/margin|markup|cost|break-even|undo/iu)
  },
)

pageTest('the brief takes over the prices of the book', async ({ open }) => {
  const page = await openLedger(open)
  await fillIn(page)
  await button(page, 'Use in the brief').click()
  await page.getByText(/oils of the brief now cost what the book says/u).waitFor()
  await page.evaluate(() => (location.hash = 'map'))
  await solved(page)
  // By hand: under 2 kg are bought as 5 kg at 19.90, 3.98 a kg; / 0.99 for waste = 4.0202.
  expect(Number(await field(page, 'Price of Coconut, per kg').inputValue())).toBeCloseTo(4.02, 2)
})

interface State {
  readonly name: string
  readonly reach: (page: Page) => Promise<unknown>
}

const STATES: readonly State[] = [
  { name: 'nothing yet', reach: (page) => page.getByText('No prices yet').waitFor() },
  {
    name: 'paste',
    reach: async (page) => {
      await button(page, 'Paste a price list').click()
      await field(page, 'The list').fill(`${LIST}\nOlive oil;x;1.250;5/4/26`)
      await page.getByText(/rows understood/u).waitFor()
    },
  },
  {
    name: 'prices',
    reach: async (page) => {
      await button(page, 'Cancel').click()
      await fillIn(page)
    },
  },
  {
    name: 'a pack',
    reach: (page) =>
      page
        .getByRole('button', { name: /^Change Olive/u })
        .first()
        .click(),
  },
  {
    name: 'buying',
    reach: async (page) => {
      await goToPart(page, 'buying')
      await found(page)
    },
  },
  {
    name: 'cost',
    reach: async (page) => {
      await goToPart(page, 'cost')
      await page.locator('svg.waterfall').waitFor()
    },
  },
  {
    name: 'quote',
    reach: async (page) => {
      await goToPart(page, 'quote')
      await page.getByRole('article', { name: 'The quote' }).waitFor()
    },
  },
]

pageTest.for(['desktop', 'phone'] as const)(
  'axe finds nothing at fault in the Ledger in either theme and nothing sticks out: %s',
  async (size, { open }) => {
    const page = await openLedger(open, { size })
    for (const { name, reach } of STATES) {
      await reach(page)
      expect([name, await axeFaults(page)]).toEqual([name, []])
      expect([name, await overflow(page), await sticksOut(page)]).toEqual([name, 0, []])
      const small = size === 'phone' ? await smallTargets(page) : []
      expect([name, small]).toEqual([name, []])
    }
  },
)
