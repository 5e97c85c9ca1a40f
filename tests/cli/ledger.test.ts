import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { barwright, withInput } from './run-cli'

const path = (name: string) => fileURLToPath(new URL(`../cases/files/${name}`, import.meta.url))
const read = (name: string) =>
  JSON.parse(readFileSync(path(name), 'utf8')) as Record<string, unknown>
const told = async (args: readonly string[], input = '') => {
  const { exitCode, output, errors } = await barwright(args, input)
  expect(errors).toBe('')
  return { exitCode, told: JSON.parse(output) as Record<string, unknown> }
}

const EXAMPLES = [
  ['cost', 'cost.json', 'ready'],
  ['buy', 'buying.json', 'ready'],
  ['quote', 'quote.json', 'ready'],
  ['prices', 'prices.json', 'ready'],
] as const

describe.each(EXAMPLES)('%s of the example file %s', (command, name, status) => {
  test('is answered', async () => {
    const answer = await told([command, path(name)])
    expect(answer.exitCode).toBe(0)
    expect(answer.told).toMatchObject({ status, currency: 'EUR' })
    expect(JSON.stringify(answer.told)).not.toMatch(/NaN|Infinity/u)
  })

  test('fits the JSON Schema', async () => {
    const { told: json } = await told([command, '--schema'])
    const schema = z.fromJSONSchema(json)
    expect(schema.safeParse(read(name)).error).toBeUndefined()
  })

  test('is refused with 2 where a price is below zero', async () => {
    const text = readFileSync(path(name), 'utf8').replace(/"priceMinor": \d+/u, '"priceMinor": -5')
    const { exitCode, told: wrong } = await told([command, '-'], text)
    expect(exitCode).toBe(2)
    expect(JSON.stringify(wrong)).toMatch(/offers\[\d+\]\.steps\[0\]\.priceMinor/u)
  })
})

interface Line {
  readonly id: string
  readonly amount: number
  readonly minor: number
}

test('cost: lines add up to the total, and olive costs what its litres weigh', async () => {
  const { told: cost } = await told(['cost', path('cost.json')])
  const lines = cost['lines'] as readonly Line[]
  expect(lines.reduce((sum, { minor }) => sum + minor, 0)).toBe(cost['totalMinor'])
  const olive = lines.find(({ id }) => id === 'olive')
  expect(olive?.amount).toBe(2940)
  // By hand: 36.50 for 5 l at 0.911 kg/l are 8.013172 a kg; × 2.94 kg / 0.99 for waste = 23.79669.
  expect(olive?.minor).toBe(2380)
})

test('cost: what has no price makes it incomplete, and is named', async () => {
  const file = read('cost.json')
  const { offers, ...rest } = file['prices'] as { offers: readonly { material: string }[] }
  const prices = { ...rest, offers: offers.filter(({ material }) => material !== 'naoh') }
  const { output, exitCode } = await withInput('cost', { ...file, prices })
  expect(exitCode).toBe(0)
  expect(JSON.parse(output)).toMatchObject({
    status: 'incomplete',
    missing: [{ material: 'naoh' }],
  })
})

test('cost: a batch that is not cut is refused', async () => {
  const file = read('cost.json')
  const batch = { ...(file['batch'] as object), cut: undefined }
  const { output, exitCode } = await withInput('cost', { ...file, batch })
  expect(exitCode).toBe(2)
  expect(output).toMatch(/not cut into bars/u)
})

test('buy: packs cover the needs less stock, and the money adds up', async () => {
  const { told: list } = await told(['buy', path('buying.json')])
  const lines = list['lines'] as readonly {
    material: string
    need: number
    stock: number
    minor: number
    packs: readonly { amount: number }[]
  }[]
  for (const { need, stock, packs } of lines)
    expect(packs.reduce((sum, { amount }) => sum + amount, stock)).toBeGreaterThanOrEqual(
      need - 1e-6,
    )
  const goods = lines.reduce((sum, { minor }) => sum + minor, 0)
  expect(list).toMatchObject({ proved: true, goodsMinor: goods })
  expect(list['totalMinor']).toBe(goods + (list['freightMinor'] as number))
  // By hand: 6 × 588 g × 5 + 2 × 700 g × 3 = 17.64 + 4.2 = 21.84 kg of olive, / 0.99.
  expect(lines.find(({ material }) => material === 'olive')?.need).toBeCloseTo(21_840 / 0.99, 6)
})

test('quote --html is a page in the maker’s name that says nothing of costs', async () => {
  const file = read('quote.json')
  const papers = { ...(file['papers'] as object), maker: '<b>Bars & Co</b>' }
  const { exitCode, output } = await barwright(
    ['quote', '--html', '-'],
    JSON.stringify({ ...file, papers }),
  )
  expect(exitCode).toBe(0)
  expect(output).toContain('&lt;b&gt;Bars &amp; Co&lt;/b&gt;')
  expect(output).toContain('valid until 25 December 2026')
  expect(output.split('</head>')[1]).not.toMatch(/margin|markup|cost|break/iu)
  const german = await barwright(['quote', '--html', '--locale', 'de-DE', path('quote.json')])
  expect(german.output).toMatch(/\d,\d\d\s€/u)
})

test('quote is refused where a margin would need an endless price', async () => {
  const file = read('quote.json')
  const quote = { ...(file['quote'] as object), aim: { margin: 100 } }
  const { exitCode, output } = await withInput('quote', { ...file, quote })
  expect(exitCode).toBe(2)
  expect(output).toMatch(/runs from 0 to under 100 %/u)
})

test('prices reads a list with semicolons and decimal commas, and reports the rest', async () => {
  const { exitCode, told: list } = await told(['prices', path('prices.csv')])
  expect(exitCode).toBe(0)
  expect(list).toMatchObject({
    readRows: 6,
    unread: [{ row: 7 }, { row: 8 }],
    book: { format: 'barwright-prices/1', currency: 'EUR', materials: [{ name: 'Carton 8 cm' }] },
  })
})

test('prices: a book written as a list and read again is the same book', async () => {
  const { output: csv } = await barwright(['prices', '--csv', path('prices.json')])
  const { told: list } = await told(['prices', '-'], csv)
  const again = list['book'] as { offers: readonly object[] }
  const book = read('prices.json') as { offers: readonly object[] }
  const bare = (offers: readonly object[]) =>
    offers.map((one) => Object.fromEntries(Object.entries(one).filter(([key]) => key !== 'id')))
  expect(bare(again.offers)).toEqual(bare(book.offers))
})

test('prices tells ages and what was paid before', async () => {
  const { told: list } = await told(['prices', '--on', '2026-11-25', path('prices.json')])
  const prices = list['prices'] as readonly {
    material: string
    age: string
    before: readonly object[]
  }[]
  expect(prices.find(({ material }) => material === 'rice-bran')?.age).toBe('old')
  expect(prices.find(({ material }) => material === 'coconut')?.before).toEqual([
    { on: '2025-09-30', steps: [{ fromPacks: 1, priceMinor: 7400 }] },
  ])
})

test('prices --need sets parted packs against whole ones', async () => {
  const { told: answer } = await told([
    'prices',
    '--on',
    '2026-11-25',
    '--need',
    'coconut=7kg,carton=300',
    path('prices.json'),
  ])
  // By hand: 5 kg at 19.90 twice is 39.80, less than 25 kg at 83.00; 3.98 a kg, 27.86 for 7 kg; 3 kg are over,
  // 39.80 × 0.3 = 11.94; (39.80 − 11.94) / 7 = 3.98; 39.80 / 7 = 5.685714. Two boxes of 45.00.
  expect(answer['needs']).toMatchObject([
    { boughtMinor: 3980, proRataMinor: 2786, leftover: 3000, leftoverMinor: 1194 },
    { boughtMinor: 9000, leftover: 200, marginalMinorPerPiece: 18 },
  ])
  const [coconut] = answer['needs'] as readonly { allBoughtMinorPerKg: number }[]
  expect(coconut?.allBoughtMinorPerKg).toBeCloseTo(568.5714, 4)
})

test('prices --need of what nobody knows says how to write it', async () => {
  const { exitCode, output } = await barwright([
    'prices',
    '--need',
    'gold=1kg',
    path('prices.json'),
  ])
  expect(exitCode).toBe(2)
  expect(output).toMatch(/is no need\. Write it as olive=12kg/u)
})

test('prices of a list without a column that is needed says which', async () => {
  const { exitCode, output } = await barwright(['prices', '-'], 'a;b\n1;2')
  expect(exitCode).toBe(2)
  expect(output).toMatch(/No column is headed as material, size, price/u)
})
