import { describe, expect, test } from 'vitest'
import { FormulaReader, type MixedMeaning } from '../../src/data/formula-text'
import { library } from '../../src/data/library'

const reader = new FormulaReader(library.oils.values())

/** Shares to two decimals by oil, or the outcome where there is no blend. */
function blendOf(text: string, mixed?: MixedMeaning): Record<string, number> | string {
  const { outcome } = reader.read(text, mixed)
  if (outcome.status !== 'blend') return outcome.status
  return Object.fromEntries(
    Object.entries(outcome.blend).map(([oil, share]) => [oil, Number(share.toFixed(2))]),
  )
}

const oilsOf = (text: string) => reader.read(text).lines.map(({ oil }) => oil.id)
const oilOf = (name: string) => oilsOf(`${name}: 10 g`)[0]
const notesOf = (text: string) => reader.read(text).lines.flatMap(({ note }) => note ?? [])
const reasonsOf = (text: string) => reader.read(text).unread.map(({ reason }) => reason)

const THREE = { olive: 60, coconut: 25, shea: 15 }

describe('shapes of a list', () => {
  test.each([
    ['commas', 'olive 60, coconut 25, shea 15'],
    ['commas without spaces', 'olive 60,coconut 25,shea 15'],
    ['figures first', '60 olive, 25 coconut, 15 shea'],
    ['percent', 'olive 60 %, coconut 25%, shea 15 percent'],
    ['lines', 'olive 60\ncoconut 25\nshea 15'],
    ['Windows lines', 'olive 60\r\ncoconut 25\r\n\r\nshea 15\r\n'],
    ['semicolons', 'olive 60; coconut 25; shea 15'],
    ['tabs', 'Olive oil\t60\nCoconut oil\t25\nShea butter\t15'],
    ['colons', 'olive: 60, coconut: 25, shea: 15'],
    ['equals signs', 'olive=60, coconut=25, shea=15'],
    ['brackets', 'olive (60%), coconut (25%), shea (15%)'],
    ['dots up to the figure', 'olive ..... 60\ncoconut ... 25\nshea ..... 15'],
    ['bullets', '• olive 60\n• coconut 25\n• shea 15'],
    ['dashes as bullets', '- olive 60\n- coconut 25\n- shea 15'],
    ['stars as bullets', '*60 olive\n*25 coconut\n*15 shea'],
    ['numbers as bullets', '1. olive 60\n2. coconut 25\n3) shea 15'],
    ['and', '60 % olive, 25 % coconut and 15 % shea'],
    ['one row without commas', 'olive 60 coconut 25 shea 15'],
    ['one row without commas, figures first', '60% olive 25% coconut 15% shea'],
    ['a table of commas', 'olive,60\ncoconut,25\nshea,15'],
    ['cells under each other', 'Olive oil\n60 %\nCoconut oil\n25 %\nShea butter\n15 %'],
    ['HTML', '<ul><li>olive 60</li>\n<li>coconut 25</li>\n<li>shea 15</li></ul>'],
    ['figures right behind the name', 'Olive oil60%, Coconut oil25%, Shea15%'],
    ['dashes before the figures', 'olive – 60, coconut — 25, shea - 15'],
    ['full-width signs', 'olive ６０％, coconut ２５％, shea １５％'],
    ['parts', '12 parts olive, 5 parts coconut, 3 parts shea'],
  ])('%s', (_, text) => {
    expect(reader.read(text).unread).toEqual([])
    expect(blendOf(text)).toEqual(THREE)
  })

  test('a name with a comma of its own stays whole', () => {
    expect(
      oilsOf('Tallow, beef 50, Shea butter, unrefined 40, Stearic acid, 65 % grade 10'),
    ).toEqual(['tallow-beef', 'shea', 'stearic-acid-65'])
    expect(oilsOf('Sunflower oil, high oleic 20, olive 80')).toEqual([
      'sunflower-high-oleic',
      'olive',
    ])
  })

  test.each([...library.oils.values()].map(({ name, id }) => [name, id]))(
    'the library’s own name “%s” is read as itself',
    (name, id) => {
      expect(blendOf(`${name} 250 g`)).toEqual({ [id]: 100 })
    },
  )
})

describe('amounts', () => {
  test('grams, kilograms, ounces and pounds share one scale', () => {
    // By hand: 453.59237 g + 226.796185 g + 1000 g + 319.611445 g = 2 000 g.
    const { outcome } = reader.read('1 lb olive, 8 oz lard, 1 kg coconut, 319.611445 g shea')
    expect(outcome).toMatchObject({ status: 'blend' })
    expect(outcome.status === 'blend' && outcome.grams).toBeCloseTo(2000, 6)
    expect(outcome.status === 'blend' && outcome.blend['olive']).toBeCloseTo(22.6796185, 6)
    expect(outcome.status === 'blend' && outcome.blend['coconut']).toBeCloseTo(50, 6)
  })

  test.each([
    ['250 g olive oil, 750 grams lard', { olive: 25, lard: 75 }],
    ['0.25 kilo olive, 750 gm lard', { olive: 25, lard: 75 }],
    ['4 oz. olive, 12 ounces lard', { olive: 25, lard: 75 }],
    ['1 lb 4 oz olive, 3.75 lbs lard', { olive: 25, lard: 75 }],
    ['½ lb olive, 1½ pounds lard', { olive: 25, lard: 75 }],
    ['1/2 lb olive, 1 1/2 lb lard', { olive: 25, lard: 75 }],
    ['12,5 % olive; 37,5 % lard; 50 % palm', { olive: 12.5, lard: 37.5, palm: 50 }],
    ['olive 33,333 %, lard 66,667 %', { olive: 33.33, lard: 66.67 }],
    ['olive .25, lard .75', { olive: 25, lard: 75 }],
    ['olive 1,000.5 g, lard 1.000,5 g', { olive: 50, lard: 50 }],
    ['olive 5\u2009000 g, lard 15\u2009000 g', { olive: 25, lard: 75 }],
    ['olive 1’000 g, lard 3’000 g', { olive: 25, lard: 75 }],
  ])('%s', (text, blend) => {
    expect(reader.read(text).unread).toEqual([])
    expect(blendOf(text)).toEqual(blend)
  })

  test('percent and weight of the same oil count once', () => {
    expect(blendOf('olive 60 % 600 g, lard 40 % 400 g')).toEqual({ olive: 60, lard: 40 })
    expect(blendOf('16 oz (454 g) olive, 8 oz (227 g) lard')).toEqual({ olive: 66.67, lard: 33.33 })
  })

  test('figures without a unit take that of the others, and that is said', () => {
    const { notes } = reader.read('olive 300 g, lard 100')
    expect(blendOf('olive 300 g, lard 100')).toEqual({ olive: 75, lard: 25 })
    expect(notes).toEqual(['Figures without a unit are read as g.'])
    expect(blendOf('olive 60 %, lard 40')).toEqual({ olive: 60, lard: 40 })
  })

  test('a figure without a unit beside several units is asked about', () => {
    expect(reasonsOf('olive 300 g, lard 8 oz, palm 30')).toEqual([
      'The figure has no unit, and the others have g and oz. Add one',
    ])
  })

  test('shares that do not add to 100 % are scaled, and that is said', () => {
    expect(blendOf('olive 48 %, lard 32 %')).toEqual({ olive: 60, lard: 40 })
    expect(reader.read('olive 48 %, lard 32 %').notes).toEqual([
      'The shares add to 80 %; they are scaled to 100 %.',
    ])
    expect(reader.read('olive 33,3 %, lard 33,3 %, palm 33,3 %').notes).toEqual([])
  })

  test('an oil named twice is added up, and that is said', () => {
    expect(blendOf('olive 30, lard 40, extra virgin olive oil 30')).toEqual({ olive: 60, lard: 40 })
    expect(reader.read('olive 30, lard 40, olive 30').notes).toEqual([
      'An oil named twice is added up.',
    ])
  })

  test('a number in a name is no amount', () => {
    expect(blendOf('76 degree coconut oil 25, olive 75')).toEqual({ coconut: 25, olive: 75 })
    expect(blendOf('coconut 76 degree 25 %, olive 75 %')).toEqual({ coconut: 25, olive: 75 })
    expect(blendOf('stearic acid 65 3 %, olive 97 %')).toEqual({ 'stearic-acid-65': 3, olive: 97 })
  })
})

describe('percent beside weights is a question', () => {
  const TEXT = 'olive 300 g, lard 100 g, coconut 20 %'

  test('it is asked, with what each comes to', () => {
    expect(reader.read(TEXT).outcome).toEqual({
      status: 'question',
      ask: 'mixed',
      percent: 20,
      grams: 400,
      meanings: ['rest', 'weights', 'percents'],
    })
    expect(reader.read(TEXT).lines.map(({ sharePercent }) => sharePercent)).toEqual([
      undefined,
      undefined,
      undefined,
    ])
  })

  test.each<[MixedMeaning, Record<string, number>]>([
    // By hand: the weights share 80 % as 3 to 1.
    ['rest', { olive: 60, lard: 20, coconut: 20 }],
    ['weights', { olive: 75, lard: 25 }],
    ['percents', { coconut: 100 }],
  ])('meant as “%s”', (mixed, blend) => {
    expect(blendOf(TEXT, mixed)).toEqual(blend)
  })

  test('percents that leave no rest can not be meant so', () => {
    const text = 'olive 300 g, coconut 60 %, lard 40 %'
    expect(reader.read(text, 'rest').outcome).toMatchObject({
      status: 'question',
      meanings: ['weights', 'percents'],
    })
  })
})

describe('names', () => {
  test.each([
    ['EVOO', 'olive'],
    ['Extra Virgin Olive Oil (organic)', 'olive'],
    ['olives', 'olive'],
    ['oil of olive', 'olive'],
    ['canola', 'rapeseed-low-erucic'],
    ['soybean oil', 'soya'],
    ['soy bean', 'soya'],
    ['Karité', 'shea'],
    ['KARITE BUTTER', 'shea'],
    ['raw shea butter', 'shea'],
    ['cupuaçu', 'cupuacu'],
    ['tallow', 'tallow-beef'],
    ['rendered beef tallow', 'tallow-beef'],
    ['PKO', 'palm-kernel'],
    ['palm kernel', 'palm-kernel'],
    ['HO sunflower', 'sunflower-high-oleic'],
    ['sunflower (high oleic)', 'sunflower-high-oleic'],
    ['sunflower', 'sunflower'],
    ['avocado', 'avocado'],
    ['coco', 'coconut'],
    ['sweet almonds', 'almond'],
    ['hemp seed', 'hemp'],
    ['cacao butter', 'cocoa-butter'],
    ['stearic acid', 'stearic-acid-triple-pressed'],
    ['Cocos Nucifera Oil', 'coconut'],
    ['RSPO sustainable palm oil', 'palm'],
    ['fractionated coconut oil', 'coconut-fractionated'],
    ['refined shea butter', 'shea-refined'],
    ['lauric acid', 'lauric-acid'],
  ])('“%s” is %s', (name, id) => {
    expect(oilOf(name)).toBe(id)
    expect(notesOf(`${name}: 10 g`)).toEqual([])
  })

  test.each([
    ['cocnut oil', 'coconut'],
    ['oilve', 'olive'],
    ['live oil', 'olive'],
    ['alomnd', 'almond'],
    ['avacado oil', 'avocado'],
    ['babussu', 'babassu'],
    ['sunflwer', 'sunflower'],
    ['shae butter', 'shea'],
    ['mccadamia nut oil', 'macadamia'],
  ])('the slip “%s” is read as %s, and that is said', (name, id) => {
    expect(oilOf(name)).toBe(id)
    expect(notesOf(`${name}: 10 g`)).toEqual([`read as ${library.oils.get(id)?.name}`])
  })

  test('a butter of an oil is said to be another fat when hardened', () => {
    expect(oilOf('avocado butter')).toBe('avocado')
    expect(notesOf('avocado butter 10')[0]).toMatch(/a hardened “butter” of it is another fat/u)
    expect(notesOf('shea butter 10, cocoa butter 5, babassu butter 5')).toEqual([])
  })

  test.each(['fractionated palm kernel oil', 'hydrogenated palm oil', 'turkey red castor'])(
    '“%s” is another fat and is not taken for the plain one',
    (name) => {
      expect(oilOf(name)).toBeUndefined()
      expect(reasonsOf(`${name} 10`)[0]).toMatch(
        /^There is no oil “.*If .* is meant, write only that$/u,
      )
    },
  )

  test('a label name that two oils share is asked about', () => {
    expect(reasonsOf('Olea europaea fruit oil 50 g')).toEqual([
      '“Olea europaea fruit oil” can be Olive oil or Olive-pomace oil. Say which',
    ])
  })

  test.each(['sa', 'oil', 'fat', 'seed', 'butter', 'oi', 'palms away', 'salt', 'soap', 'xxxxxxxx'])(
    '“%s” is not guessed at',
    (name) => {
      expect(oilOf(name)).toBeUndefined()
      expect(reasonsOf(`${name}: 10 g`)).toHaveLength(1)
    },
  )
})

describe('what is not understood has its reason', () => {
  test.each([
    ['olive', /^There is no figure beside it$/u],
    ['dragon fat 10', /^There is no oil “dragon fat” in the library\. Check its spelling/u],
    ['olive 0', /^There is none of it in the formula$/u],
    ['olive -60', /^-60 is below zero\./u],
    ['olive: −60 g', /below zero/u],
    ['olive 120 %', /^That is more than 100 %$/u],
    ['olive 50-60 %', /^Two ends of a range stand here\. Give one figure$/u],
    ['olive 50 to 60', /range/u],
    ['5 cups olive', /^A cup is no weight\. Type grams or ounces$/u],
    ['olive 3 fl oz', /^A fluid ounce is no weight/u],
    ['olive 250 ml', /^A millilitre is no weight/u],
    ['olive 1/2 cup', /^A cup is no weight/u],
    ['olive 4 tbsp', /^A tablespoon is no weight/u],
    ['olive 1,250 g', /^1,250 can be read two ways\./u],
    ['olive 1 250 g', /^1 250 can be read two ways\./u],
    ['olive 1.2.3', /^1\.2\.3 is no number$/u],
    ['olive 99999999999999999999', /is too large/u],
    [`olive ${'9'.repeat(400)}`, /is (no number|too large)/u],
    ['olive 300 g 500 g', /^Two weights stand here that are not the same\. Give one$/u],
    ['olive 30 (of) 50', /^Two figures stand here\. Give one$/u],
    ['60 %', /^No oil is named beside the figure$/u],
    ['🫒 60', /^No oil is named beside the figure$/u],
    ['water 300 g', /^That is no fat; lye and water are reckoned on Batch$/u],
    ['NaOH 120 g', /lye and water are reckoned on Batch/u],
    ['lavender essential oil 30 g', /^That is no fat, so it has no share of the oils$/u],
    ['goat milk 100 g', /That is no fat/u],
    ['superfat 5 %', /^That is about the whole batch, not an oil$/u],
    ['total oils 1000 g', /the whole batch/u],
    ['<script>alert(1)</script> 60', /no oil “alert/u],
  ])('%s', (text, reason) => {
    const { unread, lines } = reader.read(text)
    expect(lines).toEqual([])
    expect(unread).toEqual([
      { text: expect.any(String) as string, reason: expect.stringMatching(reason) as string },
    ])
  })

  test('the rest of the formula is read all the same', () => {
    const text = 'My bar\nolive 60 %\ndragon fat 10 %\ncoconut 40 %\nlavender EO 2 %'
    expect(blendOf(text)).toEqual({ olive: 60, coconut: 40 })
    expect(reader.read(text).unread.map((one) => one.text)).toEqual([
      'My bar',
      'dragon fat 10 %',
      'lavender EO 2 %',
    ])
  })
})

describe('hostile texts', () => {
  test.each(['', ' ', '\n\n', ',,,;;;', '\t', '—', '%', '🧼🫒', '\u0000\uE000\uE001', '()', '<>'])(
    '%j is nothing',
    (text) => {
      expect(blendOf(text)).toBe('nothing')
    },
  )

  test('ten thousand lines are cut, said so, and read soon', () => {
    const text = Array.from({ length: 10_000 }, (_, n) => `olvie oyl number${n} ${n + 1} g`).join(
      '\n',
    )
    const { result, cpuMs } = timed(() => reader.read(text))
    expect(cpuMs).toBeLessThan(ENDLESS_MS)
    const { unread, notes } = result
    expect(unread).toHaveLength(300)
    expect(notes).toEqual(['Only the first 300 entries were read; the text goes on.'])
  })

  test.each([
    ['one line of a million letters', 'a'.repeat(1e6)],
    ['a million figures', '1'.repeat(1e6)],
    ['a million commas', ','.repeat(1e6)],
    ['a million brackets', '<a'.repeat(5e5)],
    ['a million spaced figures', '111 '.repeat(2.5e5)],
    ['a million dashes', '1 - '.repeat(2.5e5)],
  ])('%s are read in time that grows with the text and not with its square', (_, text) => {
    const { result, cpuMs } = timed(() => blendOf(text))
    expect(result).toBe('nothing')
    expect(cpuMs).toBeLessThan(ENDLESS_MS)
  })

  test.each(['__proto__ 50, olive 50', 'constructor 50, olive 50', 'toString 5, olive 5'])(
    '%s does no harm',
    (text) => {
      expect(blendOf(text)).toEqual({ olive: 100 })
    },
  )

  test('every blend adds to 100 %, whatever the amounts', () => {
    for (const text of [
      'olive 1e-9, lard 1',
      'olive 0.000001 g, lard 900000 kg',
      'olive 1/3 lb, palm 2/3 oz',
    ]) {
      const { outcome } = reader.read(text)
      const shares = outcome.status === 'blend' ? Object.values(outcome.blend) : []
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 9)
    }
  })
})

/**
 * Reading takes well under a second. A reader that went over a million signs for each of them would take
 * many minutes on any machine, so this much processor time tells the two apart.
 */
const ENDLESS_MS = 10_000

/** What a call answers and the processor time it took, ms: other work on the machine does not count. */
function timed<T>(call: () => T): { readonly result: T; readonly cpuMs: number } {
  const start = process.cpuUsage()
  const result = call()
  const { user, system } = process.cpuUsage(start)
  return { result, cpuMs: (user + system) / 1000 }
}
