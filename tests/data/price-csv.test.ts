import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ImportChoices, type PriceImport, readPriceList } from '../../src/data/price-csv'
import { guarded, unguarded } from '../../src/data/csv'
import { priceListOf } from '../../src/data/price-export'
import { materialsWith } from '../../src/data/price-materials'
import { type Offer, packAmount } from '../../src/domain/cost/offer'
import { bookOf, offer } from '../domain/cost/books'

const SETTING = { currency: 'EUR', materials: [], today: '2026-11-25' }
const read = (text: string, choices?: ImportChoices): PriceImport =>
  readPriceList(text, SETTING, choices)
const inShort = ({ offers }: PriceImport) =>
  offers.map(({ material, size, unit, steps }) => [
    material,
    size,
    unit,
    steps.map(({ priceMinor }) => priceMinor),
  ])

describe('what parts cells and decimals', () => {
  test.each([
    ['commas', 'Oil,Pack,Price,Supplier\nOlive oil,5 kg,31.50,North\n'],
    ['semicolons and decimal commas', 'Oil;Pack;Price;Supplier\nOlive oil;5 kg;31,50;North\n'],
    ['tabs', 'Oil\tPack\tPrice\tSupplier\nOlive oil\t5 kg\t31,50\tNorth\n'],
    ['upright strokes', 'Oil|Pack|Price|Supplier\nOlive oil|5 kg|31.50|North'],
    [
      'a byte order mark and carriage returns',
      '\uFEFFOil;Pack;Price;Supplier\r\nOlive oil;5 kg;31,50;North\r\n',
    ],
    [
      'quotes around everything',
      '"Oil","Pack","Price","Supplier"\n"Olive oil","5 kg","31,50","North"',
    ],
    ['empty lines between', '\n\nOil,Pack,Price,Supplier\n\n\nOlive oil,5 kg,31.50,North\n\n'],
    [
      'columns in another order, and one too many',
      'Note;Price;Vendor;Oil;Size;Unit\n;31,50;North;Olive oil;5;kg',
    ],
    [
      'headings in brackets and capitals',
      'OIL (name);PACK SIZE;PRICE (EUR);SUPPLIER\nOlive oil;5 kg;31,50;North',
    ],
    ['signs of money', 'Oil;Pack;Price;Supplier\nOlive oil;5 kg;€ 31,50;North'],
    ['letters of money', 'Oil;Pack;Price;Supplier\nOlive oil;5 kg;31,50 EUR;North'],
    ['several packs in one', 'Oil;Pack;Price;Supplier\nOlive oil;10 x 500 g;31,50;North'],
  ])('%s are understood', (_, text) => {
    const list = read(text)
    expect(list.unread).toEqual([])
    expect(list.offers.map(({ material, steps }) => [material, steps])).toEqual([
      ['olive', [{ fromPacks: 1, priceMinor: 3150 }]],
    ])
    const amounts = list.offers.map((one) => packAmount(one, undefined))
    expect(amounts).toEqual([5000])
    expect(list.offers[0]?.supplier).toBe('North')
  })

  test.each([
    ['1,250.00', 125_000],
    ['1.250,00', 125_000],
    ['1 250,00', 125_000],
    ['1\u00a0250.00', 125_000],
    ['1’250.00', 125_000],
    ['1250', 125_000],
    ['0,999', 100],
    ['12.5', 1250],
    ['.5', 50],
  ])('a price of %s is %d cents', (price, cents) => {
    const list = read(`Oil;Pack;Price;Supplier\nOlive oil;5 kg;${price};North`)
    expect(list.offers[0]?.steps[0]?.priceMinor).toBe(cents)
  })

  test('a price that can be read two ways is read as the other rows show', () => {
    const rows = ['Olive oil;5 kg;1.250;North', 'Castor oil;5 kg;12,50;North']
    expect(inShort(read(['Oil;Pack;Price;Supplier', ...rows].join('\n')))).toEqual([
      ['olive', 5, 'kg', [125_000]],
      ['castor', 5, 'kg', [1250]],
    ])
  })

  test('or is reported where nothing shows it, until a person says', () => {
    const text = 'Oil;Pack;Price;Supplier\nOlive oil;5 kg;1.250;North'
    expect(read(text).unread).toEqual([
      {
        row: 2,
        text: 'Olive oil | 5 kg | 1.250 | North',
        reason:
          'Price of a pack “1.250” can be read two ways. Say whether a comma or a point parts decimals',
      },
    ])
    expect(inShort(read(text, { decimal: 'point' }))).toEqual([['olive', 5, 'kg', [125]]])
    expect(inShort(read(text, { decimal: 'comma' }))).toEqual([['olive', 5, 'kg', [125_000]]])
  })
})

describe('days', () => {
  const dated = (...days: string[]) =>
    read(
      [
        'Oil;Pack;Price;Supplier;Date',
        ...days.map((day, i) => `Olive oil;${i + 1} kg;9;North;${day}`),
      ].join('\n'),
    )

  test.each([
    ['2026-03-04', '2026-03-04'],
    ['2026-03-04T10:00:00Z', '2026-03-04'],
    ['4.3.2026', '2026-03-04'],
    ['04.03.26', '2026-03-04'],
    ['25/3/2026', '2026-03-25'],
    ['3/25/2026', '2026-03-25'],
    ['5/5/2026', '2026-05-05'],
  ])('%s is %s', (typed, day) => {
    expect(dated(typed).offers[0]?.on).toBe(day)
  })

  test('a day that can be read two ways follows the other rows, or is reported', () => {
    expect(dated('3/4/2026', '3/25/2026').offers.map(({ on }) => on)).toEqual([
      '2026-03-04',
      '2026-03-25',
    ])
    expect(dated('3/4/2026').unread[0]?.reason).toMatch(/can be read two ways/u)
    expect(dated('31.2.2026').unread[0]?.reason).toMatch(/no day of the calendar/u)
  })

  test('a row without one was seen today, and that is said', () => {
    const list = read('Oil,Pack,Price,Supplier\nOlive oil,5 kg,31.50,North')
    expect(list.offers[0]?.on).toBe('2026-11-25')
    expect(list.notes).toEqual(['Rows without a date are taken as seen on 2026-11-25.'])
  })
})

describe('rows not understood', () => {
  const row = (cells: string) =>
    read(`Oil;Pack;Price;Supplier;From;Tax\n${cells}`).unread[0]?.reason

  test.each([
    [
      'Unobtainium;5 kg;9;North',
      /“Unobtainium” is not known\. Correct it, or take it as one of your own/u,
    ],
    [';5 kg;9;North', /names no material/u],
    ['Olive oil;;9;North', /Pack size is empty/u],
    ['Olive oil;5;9;North', /Pack size “5” has no unit/u],
    ['Olive oil;5 gal;9;North', /unit “gal”; use g, kg/u],
    ['Olive oil;0 kg;9;North', /not above 0/u],
    ['Olive oil;5 kg;;North', /Price of a pack is empty/u],
    ['Olive oil;5 kg;on request;North', /“on request” is no number/u],
    ['Olive oil;5 kg;-9;North', /is below zero/u],
    ['Olive oil;5 kg;1e9;North', /is no number/u],
    ['Olive oil;5 kg;9;', /names no supplier/u],
    ['Olive oil;5 kg;9;North;2.5', /no whole number of packs/u],
    ['Olive oil;5 kg;9;North;1;210', /over 100 %/u],
    ['=HYPERLINK("x");5 kg;9;North', /is not known/u],
  ])('%s is reported', (cells, reason) => {
    expect(row(cells)).toMatch(reason)
  })

  test('a second price of the same pack and day is reported, and no row is lost', () => {
    const list = read(
      'Oil;Pack;Price;Supplier\nOlive oil;5 kg;9;North\nOlive oil;5 kg;8;north\nrubbish',
    )
    expect(list.readRows).toBe(1)
    expect(list.unread.map(({ row: at }) => at)).toEqual([4, 3])
  })

  test('a name that can be two oils is not guessed', () => {
    expect(row('Helianthus Annuus Seed Oil;5 kg;9;North')).toMatch(
      /can be Sunflowerseed oil or Sunflowerseed oil, high oleic\. Name the one that is meant/u,
    )
  })

  test('headings that are missing are named, and nothing is read', () => {
    const list = read('Olive oil;5 kg;31,50')
    expect(list.lacking).toEqual(['material', 'size', 'price'])
    expect(list.preview).toEqual([['Olive oil', '5 kg', '31,50']])
    expect(
      inShort(
        read('Olive oil;5 kg;31,50;North', { columns: ['material', 'size', 'price', 'supplier'] }),
      ),
    ).toEqual([['olive', 5, 'kg', [3150]]])
  })

  test('rows beyond the longest list are reported, not dropped', () => {
    const rows = Array.from({ length: 2003 }, (_, i) => `Olive oil;${i + 1} g;9;North`)
    const list = read(['Oil;Pack;Price;Supplier', ...rows].join('\n'))
    expect([list.readRows, list.unread.length]).toEqual([2000, 3])
    expect(list.unread[0]?.reason).toMatch(/up to 2000 rows/u)
  })

  test('every row of any text is read or reported', () => {
    const cell = fc.string({ maxLength: 12 })
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { maxLength: 6 }), { maxLength: 12 }),
        fc.constantFrom(',', ';', '\t'),
        (rows, sign) => {
          const text = [
            'Oil,Pack,Price,Supplier'.replaceAll(',', sign),
            ...rows.map((cells) => cells.join(sign)),
          ].join('\n')
          const list = read(text)
          for (const { steps, size } of list.offers) {
            expect(size).toBeGreaterThan(0)
            expect(steps.every(({ priceMinor }) => Number.isSafeInteger(priceMinor))).toBe(true)
          }
          expect(list.offers.reduce((sum, { steps }) => sum + steps.length, 0)).toBe(list.readRows)
        },
      ),
      { numRuns: 300 },
    )
  })
})

test('rows of one pack with several quantities become price steps', () => {
  const list = read(
    'Oil,Pack,Price,Supplier,From,Date\nShea butter,1 kg,9.20,North,10,2026-11-01\nShea butter,1 kg,9.90,North,,2026-11-01',
  )
  expect(list.offers[0]?.steps).toEqual([
    { fromPacks: 1, priceMinor: 990 },
    { fromPacks: 10, priceMinor: 920 },
  ])
})

test('tax, freight and another currency are read, with its own decimals', () => {
  const [one] = read(
    'Oil,Pack,Price,Supplier,Currency,VAT,VAT included,Freight,Date\nCastor oil,1 l,2500,East,JPY,10%,yes,120,2026-11-01',
  ).offers
  expect(one).toMatchObject({
    currency: 'JPY',
    unit: 'l',
    steps: [{ priceMinor: 2500 }],
    tax: { percent: 10, included: true },
    freightMinor: 120,
  })
})

test('things sold by the piece become materials of one’s own, others when asked', () => {
  const text = 'What,Pack,Price,Supplier\nCarton 8 cm,100 pcs,12,North\nGlitter,1 kg,30,North'
  const list = read(text)
  expect(list.materials).toEqual([{ id: 'carton-8-cm', name: 'Carton 8 cm' }])
  expect(list.unread).toHaveLength(1)
  expect(read(text, { takeUnknown: true }).materials.map(({ id }) => id)).toEqual([
    'carton-8-cm',
    'glitter',
  ])
})

describe('an exported list', () => {
  const materials = [{ id: 'carton', name: '=Carton, "large"' }]
  const offers: readonly Offer[] = [
    offer('olive', 5, 'l', [
      { fromPacks: 1, priceMinor: 3150 },
      { fromPacks: 4, priceMinor: 2999 },
    ]),
    offer('coconut', 0.5, 'kg', 405, {
      supplier: '=cmd|"/c calc"!A1',
      tax: { percent: 7.5, included: false },
    }),
    offer('naoh', 25, 'kg', 6100, {
      supplier: '+49 Chemicals',
      currency: 'KWD',
      freightMinor: 1234,
    }),
    offer('carton', 100, 'piece', 1200, { supplier: '@home; "the shop"\nnext door' }),
    offer('shea', 1, 'kg', 990, { supplier: "'=twice" }),
  ]
  const book = bookOf(offers, { materials })
  const text = priceListOf(book, materialsWith(materials))

  test('comes back as it was', () => {
    const list = readPriceList(text, { ...SETTING, materials })
    expect(list.unread).toEqual([])
    const bare = (of: readonly Offer[]) => of.map(({ id: _, ...rest }) => rest)
    expect(bare(list.offers)).toEqual(bare(offers))
  })

  test('holds no cell that a spreadsheet would run', () => {
    const cells = text
      .replace('\uFEFF', '')
      .split(/[,\n]/u)
      .map((cell) => cell.replace(/^"/u, ''))
    expect(cells.filter((cell) => /^[=+\-@\t\r]/u.test(cell))).toEqual([])
    expect(text).toContain(`"'=Carton, ""large"""`)
    expect(text).toContain(`"'=cmd|""/c calc""!A1"`)
  })

  test('guards any text so that it comes back', () => {
    const risky = fc.string({
      unit: fc.constantFrom('=', '+', '-', '@', '\t', '\r', "'", '"', 'a', ','),
    })
    fc.assert(
      fc.property(risky, (cell) => {
        expect(unguarded(guarded(cell))).toBe(cell)
        expect(guarded(cell)).not.toMatch(/^[=+\-@\t\r]/u)
      }),
    )
  })
})
