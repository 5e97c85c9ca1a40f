import { describe, expect, test } from 'vitest'
import { batchAsFile } from '../../../src/data/batch-as-file'
import { batchFile, orderOf } from '../../../src/data/batch-file'
import { alkaliLimits } from '../../../src/data/free-alkali'
import { parseJson } from '../../../src/data/problems'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import type {
  AlkaliTest,
  ColourTest,
  Titration,
} from '../../../src/domain/batch/release/alkali-test'
import { batchPin, fnv1a, isPin } from '../../../src/domain/batch/release/pin'
import { releaseAnswer, releaseLine, UNTESTED } from '../../../src/domain/batch/release/release'
import { alkaliPercent, readingPercent } from '../../../src/domain/batch/release/titration'

const ORDER: BatchOrder = {
  blend: { olive: 50, coconut: 50 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: { naoh: 98 },
  superfat: 5,
  water: { lyeConcentration: 33 },
  papers: { product: 'Kitchen bar', madeOn: '2026-10-01' },
}
const PIN = batchPin(ORDER, {})
const TODAY = '2026-12-01'

const TITRATION: Titration = {
  way: 'titration',
  on: '2026-11-20',
  who: 'M.',
  bar: '7',
  batch: PIN,
  acidMl: 0.1,
  normality: 0.1,
  sampleG: 5,
}
const COLOUR: ColourTest = {
  way: 'phenolphthalein',
  on: '2026-11-20',
  who: 'M.',
  bar: '8',
  batch: PIN,
  colour: 'colourless',
}

function answer(tests: readonly AlkaliTest[], order = ORDER, actual = {}, today = TODAY) {
  return releaseAnswer({ order, actual, record: { tests } }, alkaliLimits, today)
}

function release(tests: readonly AlkaliTest[], order = ORDER, actual = {}) {
  const found = answer(tests, order, actual)
  if (found.status !== 'ready') throw new Error(JSON.stringify(found.problems))
  return found.release
}

function messages(change: Partial<Titration>, order = ORDER) {
  const found = answer([{ ...TITRATION, ...change }], order)
  return found.status === 'invalid'
    ? found.problems.map((one) => `${one.path}: ${one.message}`)
    : []
}

describe('free alkali by titration is V x N x 4.0 / g', () => {
  test('0.1 ml of 0.1 N on 5 g is 0.008 % NaOH', () => {
    expect(alkaliPercent(0.1, TITRATION, 'naoh')).toBeCloseTo(0.008, 5)
  })

  test('5.2 ml of 0.5 N on 8 g is 1.300 % NaOH and 1.823 % KOH, by hand with 39.997 and 56.106', () => {
    const strong = { normality: 0.5, sampleG: 8 }
    expect(alkaliPercent(5.2, strong, 'naoh')).toBeCloseTo(1.2999, 4)
    expect(alkaliPercent(5.2, strong, 'koh')).toBeCloseTo(1.8234, 4)
  })

  test('a reading of 0.05 ml is 0.004 % of 5 g; a blank reads twice', () => {
    expect(readingPercent(TITRATION, alkaliLimits, 'naoh')).toBeCloseTo(0.004, 5)
    const blank = { ...TITRATION, blankMl: 0.05 }
    expect(readingPercent(blank, alkaliLimits, 'naoh')).toBeCloseTo(0.008, 5)
  })

  test('the blank is taken off: 0.45 less 0.20 ml on 5 g is 0.020 %', () => {
    const [one] = release([{ ...TITRATION, acidMl: 0.45, blankMl: 0.2 }]).tests
    expect(one?.percent).toBeCloseTo(0.02, 4)
  })

  test('for potassium soap the result is said as KOH, with what the limit is held against', () => {
    const found = release([{ ...TITRATION, acidMl: 1, as: 'koh' }])
    expect(found.says).toContain('0.112 % free alkali as KOH, 0.08 % as NaOH')
    expect(found.state).toBe('testPassed')
  })
})

describe('a batch is not released', () => {
  test('without tests, and says so, also where none are handed over', () => {
    expect(release([])).toMatchObject({ state: 'notReleased', tests: [] })
    expect(release([]).says).toBe('Not released: no test for free alkali stands.')
    expect(releaseLine(UNTESTED)).toMatch(/^Not released/u)
  })

  test('by a test of another batch: other oils, alkali, superfat, weights or day', () => {
    const cases: readonly [Partial<BatchOrder>, object, string][] = [
      [{ blend: { olive: 49, coconut: 51 } }, {}, 'the oils'],
      [{ lots: { olive: { saponificationValue: 190 } } }, {}, 'the oils'],
      [{ alkali: { naoh: 90, koh: 10 } }, {}, 'the alkali'],
      [{ purity: { naoh: 99 } }, {}, 'the alkali'],
      [{ superfat: 4 }, {}, 'the superfat'],
      [{ oilGrams: 500 }, {}, 'the size'],
      [{ acids: [{ acid: 'citric', grams: 5, alkali: 'leave' }] }, {}, 'what else goes in'],
      [{ process: 'hot' }, {}, 'how it is made'],
      [{ papers: { madeOn: '2026-10-02' } }, {}, 'the day or number of the batch'],
      [{}, { 'alkali:naoh': 200 }, 'what was really weighed'],
    ]
    for (const [change, actual, says] of cases) {
      const found = release([TITRATION], { ...ORDER, ...change }, actual)
      expect(found.state, says).toBe('notReleased')
      expect(found.tests[0]).toMatchObject({ outcome: 'void' })
      expect(found.tests[0]?.says).toContain(says)
    }
  })

  test('whatever new key an order may get also makes it another batch', () => {
    const order = { ...ORDER, unheardOf: 1 } as BatchOrder
    expect(release([TITRATION], order).state).toBe('notReleased')
  })

  test('but prices, names, cure and cut leave it the same batch', () => {
    const order: BatchOrder = {
      ...ORDER,
      pricesPerKg: { olive: 6 },
      cure: { days: 60 },
      cut: { barGrams: 100 },
      papers: { ...ORDER.papers, product: 'Another name', responsiblePerson: 'M.' },
    }
    expect(release([TITRATION], order).state).toBe('testPassed')
  })

  test('by a test that does not say which batch it was made on', () => {
    const found = release([{ ...TITRATION, batch: undefined }])
    expect(found.state).toBe('notReleased')
    expect(found.tests[0]?.says).toContain(PIN)
  })

  test('by a sample too small to see 0.05 %: 0.1 g shows steps of 0.2 %', () => {
    const found = release([{ ...TITRATION, sampleG: 0.1, acidMl: 0 }])
    expect(found.state).toBe('notReleased')
    expect(found.says).toContain('Take at least 0.4 g')
  })

  test('by a figure nearer to the limit than the burette can tell: 0.098 within 0.004', () => {
    const found = release([{ ...TITRATION, acidMl: 1.225 }])
    expect(found).toMatchObject({ state: 'notReleased' })
    expect(found.says).toContain('Too near to 0.1 %')
  })
})

describe('a batch is held', () => {
  test('by pink, and says what to do: rest, test again, rebatch or waste, never sell', () => {
    const found = release([{ ...COLOUR, colour: 'pink' }])
    expect(found.state).toBe('held')
    expect(found.says).toMatch(/^Not released, held/u)
    expect(found.todo.join(' ')).toMatch(/sell.*rest.*test.*rebatch.*waste/isu)
  })

  test('over 0.1 % as NaOH: 1.3 ml of 0.1 N on 5 g is 0.104 %', () => {
    expect(release([{ ...TITRATION, acidMl: 1.3 }]).state).toBe('held')
    // 0.104 % as NaOH again, though said as KOH.
    expect(release([{ ...TITRATION, acidMl: 1.3, as: 'koh' }]).state).toBe('held')
  })

  test('by the worst of several tests, in whatever order they are entered', () => {
    const pink: AlkaliTest = { ...COLOUR, colour: 'pink' }
    for (const tests of [
      [TITRATION, pink],
      [pink, TITRATION],
    ])
      expect(release(tests).state).toBe('held')
    // Of the same bar on the same day.
    expect(release([TITRATION, { ...TITRATION, acidMl: 2 }]).state).toBe('held')
  })

  test('until that bar itself passes a later test; a colour does not undo a titration', () => {
    const over = { ...TITRATION, acidMl: 2, on: '2026-11-01' }
    expect(release([over, { ...TITRATION, bar: '9' }]).state).toBe('held')
    expect(release([over, { ...COLOUR, bar: '7' }]).state).toBe('held')
    expect(release([over, { ...TITRATION, on: '2026-10-20' }]).state).toBe('held')
    expect(release([over, { ...TITRATION, sampleG: 0.1 }]).state).toBe('held')
    expect(release([over, TITRATION]).state).toBe('testPassed')
  })
})

test('a passing test says the most that was found, the limit’s basis, and is never a clearance', () => {
  const found = release([{ ...TITRATION, acidMl: 0.4 }, { ...TITRATION, bar: '9' }, COLOUR])
  expect(found.state).toBe('testPassed')
  expect(found.says).toContain('0.032 % free alkali as NaOH')
  expect(found.says).toContain('local rules and a safety assessor go first')
  expect(releaseLine(found)).toContain('assumption')
  expect(release([COLOUR]).state).toBe('testPassed')
})

test('weak acid is asked about: 0.01 N typed for 0.1 N hides tenfold', () => {
  expect(release([{ ...TITRATION, normality: 0.01 }]).tests[0]?.says).toContain('10 times this')
})

describe('a test is refused with the value, the limit and what to do', () => {
  test.for([
    [
      { on: '2026-10-01' },
      /release\.tests\[0\]\.on: .*2026-10-01.*before 2026-10-02.*cure begins/u,
    ],
    [{ on: '2026-12-02' }, /2026-12-02.*today is 2026-12-01/u],
    [{ on: '1 October' }, /"1 October" is no day/u],
    [{ acidMl: -1 }, /acidMl: The value is -1 ml\. Give 0 to 50 ml/u],
    [{ acidMl: 50.1 }, /50\.1 ml.*0 to 50.*burette/u],
    [{ acidMl: NaN }, /acidMl/u],
    [{ blankMl: -0.1 }, /blankMl: The value is -0\.1 ml/u],
    [{ blankMl: 0.3 }, /blank took 0\.3 ml and the soap 0\.1 ml/u],
    [{ normality: 10 }, /10 N\. Give 0\.005 to 1 N\. 0\.1 N is usual/u],
    [{ normality: 0 }, /normality: The value is 0 N/u],
    [{ sampleG: 0 }, /sampleG: The value is 0 g\. Give a number above 0/u],
    [{ sampleG: -5 }, /sampleG: The value is -5 g/u],
    [{ sampleG: 500 }, /500 g; at most 25 g/u],
    [{ who: ' ' }, /who: Say who/u],
    [{ bar: '' }, /bar: Say which bar/u],
    [{ batch: 'this one' }, /"this one" pins the test to no batch/u],
  ] as const)('%o', ([change, expected]) => {
    expect(messages(change)).toEqual([expect.stringMatching(expected)])
  })

  test('without a day of making it is not known when the cure began', () => {
    expect(messages({}, { ...ORDER, papers: undefined })).toEqual([
      expect.stringMatching(/^papers\.madeOn: /u),
    ])
  })

  test('hot process may be tested on the day of making, cold process the day after', () => {
    expect(messages({ on: '2026-10-01' }, { ...ORDER, process: 'hot' })).toEqual([])
    expect(messages({ on: '2026-10-02' })).toEqual([])
  })
})

describe('pins', () => {
  /** Published test vectors of FNV-1a, 32 bits (recalled). */
  test.for([
    ['', '811c9dc5'],
    ['a', 'e40c292c'],
    ['foobar', 'bf9cf968'],
  ] as const)('FNV-1a of "%s" is %s', ([text, hash]) => {
    expect(fnv1a(text)).toBe(hash)
  })

  test('do not depend on the order of keys, nor on what is undefined', () => {
    const turned: BatchOrder = {
      ...ORDER,
      blend: { coconut: 50, olive: 50 },
      extraFat: undefined,
    }
    expect(batchPin(turned, {})).toBe(PIN)
    expect(isPin(PIN)).toBe(true)
  })

  test('are the same for an order that was saved and read again', () => {
    const text = batchAsFile(ORDER, { 'oil:olive': 500 }, { tests: [TITRATION, COLOUR] })
    const file = parseJson(batchFile, text)
    if (file.status !== 'parsed') throw new Error(JSON.stringify(file.problems))
    expect(file.value.release?.tests).toEqual([TITRATION, COLOUR])
    expect(batchPin(orderOf(file.value), file.value.actual ?? {})).toBe(
      batchPin(ORDER, { 'oil:olive': 500 }),
    )
  })
})

test('a pH strip in a file is refused in words', () => {
  const text = batchAsFile(ORDER, {}, { tests: [TITRATION] }).replace('"titration"', '"phStrip"')
  const file = parseJson(batchFile, text)
  expect(file).toMatchObject({
    status: 'invalid',
    problems: [{ message: expect.stringContaining('A pH strip or a taste can’t show') as string }],
  })
})
