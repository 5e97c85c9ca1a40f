import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { TypedField } from '../../src/data/typed-field'
import { readAtOnce, readTyped } from '../../src/data/typed-number'

/** Olive oil, g/ml, as data/oils.json has it: 0.911 in the table of the design. */
const OLIVE = 0.911

/** Every kind of field there is. */
const FIELDS = {
  points: {},
  wish: { ends: { about: 2.5 } },
  percent: { unit: '%' },
  grams: { unit: 'g' },
  ounces: { unit: 'oz' },
  price: { currency: 'EUR' },
  perKg: { currency: 'EUR', perKg: { densityGPerMl: OLIVE } },
  perKgNoDensity: { currency: 'EUR', perKg: { densityGPerMl: null } },
} satisfies Record<string, TypedField>

type Kind = keyof typeof FIELDS
type Row = Partial<Record<Kind, unknown>> & { readonly typed: string; readonly all?: unknown }

const number = (value: number, understood?: string) => ({
  status: 'number',
  value: expect.closeTo(value, 6) as number,
  ...(understood === undefined ? {} : { understood }),
})
const no = (message: RegExp) => ({
  status: 'invalid',
  message: expect.stringMatching(message) as string,
})
const ends = (min: number | undefined, max: number | undefined, understood: string) => ({
  status: 'ends',
  ...(min !== undefined && { min }),
  ...(max !== undefined && { max }),
  understood,
})
const NOT = no(/^Not a number\. Try/u)
const MONEY = no(/is money, and this is in/u)
const ONE = no(/^One figure here\. 38 or 44\?$/u)
const PACK = no(/^Not a number\. A price of a pack/u)
const CUP = no(/^A cup is no weight\. Type grams or ounces$/u)

/** The reader's table: what each kind of field makes of each text; `all` where nothing else is said. */
const TABLE: readonly Row[] = [
  {
    typed: '€6.20',
    all: number(6.2, '6.2, without “€”'),
    percent: MONEY,
    grams: MONEY,
    ounces: MONEY,
    price: number(6.2, '6.20 EUR'),
    perKg: number(6.2, '6.20 EUR per kg'),
    perKgNoDensity: number(6.2, '6.20 EUR per kg'),
  },
  {
    typed: '7,40 €',
    all: number(7.4, '7.4, without “€”'),
    percent: MONEY,
    grams: MONEY,
    ounces: MONEY,
    price: number(7.4, '7.40 EUR'),
    perKg: number(7.4, '7.40 EUR per kg'),
    perKgNoDensity: number(7.4, '7.40 EUR per kg'),
  },
  {
    typed: '7.40 EUR',
    all: number(7.4, '7.4, without “EUR”'),
    percent: MONEY,
    grams: MONEY,
    ounces: MONEY,
    price: number(7.4, '7.40 EUR'),
    perKg: number(7.4, '7.40 EUR per kg'),
    perKgNoDensity: number(7.4, '7.40 EUR per kg'),
  },
  {
    typed: '$6.20',
    all: number(6.2, '6.2, without “$”'),
    percent: MONEY,
    grams: MONEY,
    ounces: MONEY,
    price: no(/^Prices here are in EUR, and \$ is another money/u),
    perKg: no(/another money/u),
    perKgNoDensity: no(/another money/u),
  },
  {
    // By hand: 38.50 / (5 × 0.911) = 8.4523.
    typed: '38.50/5l',
    all: NOT,
    price: PACK,
    perKg: number(8.45, '8.45 EUR per kg, at 0.911 kg a litre'),
    perKgNoDensity: no(/^What a litre of it weighs is not known/u),
  },
  {
    typed: '€38,50 / 5 kg',
    all: NOT,
    price: PACK,
    percent: MONEY,
    grams: MONEY,
    ounces: MONEY,
    perKg: number(7.7, '7.70 EUR per kg'),
    perKgNoDensity: number(7.7, '7.70 EUR per kg'),
  },
  {
    typed: '6.20 €/kg',
    all: NOT,
    price: PACK,
    perKg: number(6.2, '6.20 EUR per kg'),
    perKgNoDensity: number(6.2, '6.20 EUR per kg'),
  },
  {
    typed: '38%',
    all: number(38, '38, without “%”'),
    percent: number(38, '38 %'),
    grams: no(/^38% is no amount in g/u),
    ounces: no(/^38% is no amount in oz/u),
    price: no(/is no price/u),
    perKg: no(/is no price/u),
    perKgNoDensity: no(/is no price/u),
  },
  ...['38–44', '38-44', '38 to 44', '38 - 44', '38 … 44'].map((typed): Row => ({
    typed,
    all: ONE,
    wish: ends(38, 44, '38 to 44'),
  })),
  { typed: '44-38', all: ONE, wish: ends(38, 44, '38 to 44') },
  { typed: '>38', all: no(/^One figure here\. 38\?$/u), wish: ends(38, undefined, 'at least 38') },
  { typed: 'at least 38', all: no(/One figure/u), wish: ends(38, undefined, 'at least 38') },
  { typed: '≤ 44', all: no(/^One figure here\. 44\?$/u), wish: ends(undefined, 44, 'at most 44') },
  {
    typed: 'about 40',
    all: number(40, '40, without “about”'),
    wish: ends(37.5, 42.5, '37.5 to 42.5, within a tie'),
  },
  {
    // By hand: 12 × 28.349523125 g.
    typed: '12 oz',
    all: NOT,
    grams: number(340.1942775, '340.1943 g'),
    ounces: number(12, '12 oz'),
  },
  {
    typed: '1 lb 4 oz',
    all: NOT,
    grams: number(566.9904625, '566.9905 g'),
    ounces: number(20, '20 oz'),
  },
  {
    typed: '1/2 kg',
    all: NOT,
    grams: number(500, '500 g'),
    ounces: number(17.636981, '17.637 oz'),
    price: PACK,
    perKg: number(0.5, '0.50 EUR per kg'),
    perKgNoDensity: number(0.5, '0.50 EUR per kg'),
  },
  {
    typed: '1/2 lb',
    all: NOT,
    grams: number(226.796185, '226.7962 g'),
    ounces: number(8, '8 oz'),
    price: PACK,
    perKg: number(1.1, '1.10 EUR per kg'),
    perKgNoDensity: number(1.1, '1.10 EUR per kg'),
  },
  {
    typed: '½ lb',
    all: NOT,
    grams: number(226.796185, '226.7962 g'),
    ounces: number(8, '8 oz'),
  },
  {
    typed: '1½ lb',
    all: NOT,
    grams: number(680.388555, '680.3886 g'),
    ounces: number(24, '24 oz'),
  },
  {
    typed: '38 °',
    all: number(38, '38, without “°”'),
    percent: number(38, '38 %, without “°”'),
    grams: no(/^38 ° is no amount in g/u),
    ounces: no(/no amount in oz/u),
    price: no(/is no price/u),
    perKg: no(/is no price/u),
    perKgNoDensity: no(/is no price/u),
  },
  {
    typed: '5,5',
    all: number(5.5, '5.5'),
    percent: number(5.5, '5.5 %'),
    grams: number(5.5, '5.5 g'),
    ounces: number(5.5, '5.5 oz'),
    price: number(5.5, '5.50 EUR'),
    perKg: number(5.5, '5.50 EUR per kg'),
    perKgNoDensity: number(5.5, '5.50 EUR per kg'),
  },
  {
    typed: '1.234,50',
    all: number(1234.5, '1234.5'),
    percent: number(1234.5, '1234.5 %'),
    grams: number(1234.5, '1234.5 g'),
    ounces: number(1234.5, '1234.5 oz'),
    price: number(1234.5, '1234.50 EUR'),
    perKg: number(1234.5, '1234.50 EUR per kg'),
    perKgNoDensity: number(1234.5, '1234.50 EUR per kg'),
  },
  { typed: '３８', all: { status: 'number', value: 38 } },
  {
    typed: '20+18',
    all: number(38, '38, added up'),
    grams: number(38, '38 g, added up'),
    ounces: number(38, '38 oz, added up'),
  },
  {
    typed: '2 × 19',
    all: number(38, '38'),
    grams: number(38, '38 g'),
    ounces: number(38, '38 oz'),
  },
  {
    typed: '1/2 cup',
    all: NOT,
    grams: CUP,
    ounces: CUP,
    price: PACK,
    perKg: no(/^A cup is no weight\. Give the price of g/u),
    perKgNoDensity: no(/^A cup is no weight/u),
  },
  {
    typed: '4 tbsp',
    all: NOT,
    grams: no(/^A tablespoon is no weight/u),
    ounces: no(/^A tablespoon is no weight/u),
  },
  { typed: '40 - 2 + 3', all: no(/^Not a number\. A minus between two figures is a range/u) },
  { typed: 'six', all: NOT },
]

const kinds = Object.keys(FIELDS) as Kind[]

describe.each(kinds)('a field of %s', (kind) => {
  test.each(TABLE)('takes “$typed”', async (row) => {
    expect(await readTyped(row.typed, FIELDS[kind])).toEqual(
      kind in row ? row[kind] : (row.all ?? 'a row of the table'),
    )
  })

  test.each(TABLE)(
    'says the same of “$typed” while it is typed, or leaves it for a sum',
    async (row) => {
      const now = readAtOnce(row.typed, FIELDS[kind])
      if (now.status !== 'sum') expect(now).toEqual(await readTyped(row.typed, FIELDS[kind]))
    },
  )
})

test('a minus between figures is never worked out', async () => {
  for (const typed of ['38-44', '38 - 44', '38−44', '500 g - 20 g', '3-1+2', '(9 - 3)'])
    for (const kind of kinds)
      expect((await readTyped(typed, FIELDS[kind])).status, `${kind} ${typed}`).not.toBe('number')
})

test('the density of the table is that of the library', () => {
  expect(library.oils.get('olive')?.densityGPerMl).toBeCloseTo(OLIVE, 2)
})
