import { describe, expect, test } from 'vitest'
import { lyeCautions } from '../../../../src/data/cautions'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { sheetOf } from '../../../../src/domain/batch/sheet/sheet'
import { workSteps } from '../../../../src/domain/batch/sheet/steps'
import { ready } from '../plans'

const RICH: Partial<BatchOrder> = {
  blend: { olive: 50, coconut: 30, 'palm-stearin': 15, castor: 5 },
  superfat: 8,
  acids: [{ acid: 'citric', grams: 10, alkali: 'add' }],
  liquids: [
    { liquid: 'tea', replacesPercent: 20, when: 'lye' },
    { liquid: 'goat-milk', replacesPercent: 20, when: 'trace' },
  ],
  additives: [
    { additive: 'rosemary-extract', grams: 1 },
    { additive: 'sugar', grams: 15 },
    { additive: 'sodium-lactate-60', grams: 20 },
    { additive: 'kaolin', grams: 10 },
  ],
  fragrance: { percentOfOils: 3, blend: { lavender: 70, 'orange-sweet': 30 } },
}
const HOT: Partial<BatchOrder> = {
  ...RICH,
  process: 'hot',
  cook: { extraWaterPercentOfOils: 5 },
  extraFat: { percent: 4, of: 'oils', oils: { shea: 100 }, when: 'afterCook' },
}

function stepsOf(order: Partial<BatchOrder>) {
  const plan = ready(order)
  return { plan, steps: workSteps(plan) }
}

function keysIn(order: Partial<BatchOrder>): Readonly<Record<string, readonly string[]>> {
  const { steps } = stepsOf(order)
  return Object.fromEntries(steps.map(({ id, lines }) => [id, lines.map(({ key }) => key)]))
}

describe.each([
  ['cold', RICH],
  ['hot', HOT],
  ['plain', {}],
] as const)('the working order of a %s batch', (_name, order) => {
  test('weighs everything once and nothing else', () => {
    const { plan, steps } = stepsOf(order)
    const weighed = steps.flatMap(({ lines }) => lines.map(({ key }) => key))
    expect(weighed.toSorted()).toEqual(plan.ingredients.map(({ key }) => key).toSorted())
    const grams = steps.flatMap(({ lines }) => lines).reduce((sum, line) => sum + line.grams, 0)
    expect(grams).toBeCloseTo(plan.totalGrams, 6)
  })

  test('puts the hydroxide into the water and not the water onto it', () => {
    const { steps } = stepsOf(order)
    const keys = steps.flatMap(({ lines }) => lines.map(({ key }) => key))
    expect(keys.indexOf('alkali:naoh')).toBeGreaterThan(keys.indexOf('water'))
    const lye = steps.find(({ id }) => id === 'lye')
    expect(lye?.cautions[0]).toBe('Hydroxide into water, never water onto hydroxide.')
  })

  test('has cautions where lye is handled', () => {
    const { steps } = stepsOf(order)
    const bare = steps.filter(
      ({ id, cautions }) =>
        ['lye', 'combine', 'cook', 'mould', 'cut'].includes(id) && cautions.length === 0,
    )
    expect(bare).toEqual([])
  })
})

test('a cold batch goes from melting to the cure', () => {
  expect(Object.keys(keysIn(RICH))).toEqual([
    ...['ready', 'hardFats', 'liquidOils', 'water', 'lye', 'combine', 'trace'],
    ...['mould', 'cut', 'cure'],
  ])
})

test('a hot batch cooks, is tested, and takes fat and fragrance after the cook', () => {
  const steps = keysIn(HOT)
  expect(Object.keys(steps)).toEqual([
    ...['ready', 'hardFats', 'liquidOils', 'water', 'lye', 'combine', 'cook', 'done', 'afterCook'],
    ...['mould', 'cut', 'cure'],
  ])
  expect(steps.afterCook).toEqual([
    ...['liquid:1', 'extraFat:shea', 'additive:3', 'scent:lavender', 'scent:orange-sweet'],
  ])
})

test('what belongs in the water is dissolved before the hydroxide, lactate after it', () => {
  const { water, lye, trace } = keysIn(RICH)
  expect(water).toEqual(['water', 'additive:1', 'acid:0', 'liquid:0'])
  expect(lye).toEqual(['alkali:naoh', 'additive:2'])
  expect(trace).toEqual(['liquid:1', 'additive:3', 'scent:lavender', 'scent:orange-sweet'])
})

test('pot and jug read what is in them so far', () => {
  const { steps } = stepsOf({ blend: { olive: 70, 'palm-stearin': 30 }, superfat: 8 })
  const reads = (id: string) =>
    steps.find((step) => step.id === id)?.lines.map((line) => line.vesselG)
  expect(reads('hardFats')).toEqual([expect.closeTo(300, 9)])
  expect(reads('liquidOils')?.at(-1)).toBeCloseTo(1000, 9)
  const { plan } = stepsOf({ blend: { olive: 70, 'palm-stearin': 30 }, superfat: 8 })
  const [water = NaN, naoh = NaN] = [plan.waterGrams, plan.alkaliGrams.naoh]
  expect(reads('water')).toEqual([expect.closeTo(water, 9)])
  expect(reads('lye')).toEqual([expect.closeTo(water + naoh, 9)])
})

test('the fragrance that catches fire first is named by its flash point', () => {
  const trace = stepsOf(RICH).steps.find(({ id }) => id === 'trace')
  expect(trace?.cautions.join(' ')).toMatch(/may catch fire from 43 °C/u)
})

test('a certificate’s flash point goes before the library’s', () => {
  const fragrance = {
    grams: 20,
    blend: { 'orange-sweet': 100 },
    certificates: { 'orange-sweet': { flashC: 51 } },
  }
  const trace = stepsOf({ fragrance }).steps.find(({ id }) => id === 'trace')
  expect(trace?.cautions.join(' ')).toMatch(/from 51 °C/u)
})

describe('a sheet', () => {
  test('of a batch that is not blocked holds steps, cautions, dates and figures', () => {
    const papers = { product: 'Loaf', madeOn: '2026-11-25', productCode: 'L3', number: 2 }
    const answer = sheetOf(ready({ ...RICH, papers }), lyeCautions)
    if (answer.status === 'refused') throw new Error(answer.reasons.join())
    const { sheet } = answer
    expect(sheet.cautions).toEqual(lyeCautions)
    expect([sheet.title, sheet.batchCode, sheet.readyOn]).toEqual([
      'Loaf',
      '261125-L3-02',
      '2027-01-06',
    ])
    const superfat = sheet.lyeRows.find(({ what }) => what === 'Superfat')?.value
    expect(superfat).toMatch(/^asked 8\.0 %, as weighed .* %$/u)
    const rows = new Map(sheet.lyeRows.map(({ what, value }) => [what, value]))
    expect(rows.get('Nineteen lots in twenty')).toMatch(/^\d+\.\d to \d+\.\d %$/u)
    expect(rows.get('At worst')).toMatch(/^-?\d+\.\d to \d+\.\d %, scales not known$/u)
    expect(rows.get('Free lye')).toMatch(/1 lot in \d+$/u)
    expect(rows.get('What that stands on')).toMatch(/^The lean end stands on /u)
    const worst = answer.sheet.wrongRows.map(({ value }) => Number.parseFloat(value))
    expect(worst.length).toBeGreaterThan(0)
    expect(worst.length).toBeLessThanOrEqual(3)
    expect(worst).toEqual([...worst].sort((a, b) => a - b))
  })

  test('is refused while the leanest lots could leave free lye, and has no steps', () => {
    const plan = ready({ superfat: 0 })
    expect(sheetOf(plan, lyeCautions)).toEqual({
      status: 'refused',
      reasons: [expect.stringMatching(/would hold free lye/u)],
    })
    expect(() => workSteps(plan)).toThrow(/no working order/u)
  })

  test('is refused without cautions', () => {
    expect(sheetOf(ready({}), [])).toMatchObject({ status: 'refused' })
  })

  test('tells the superfat in the cook and the cost where they are known', () => {
    const answer = sheetOf(ready({ ...HOT, pricesPerKg: { olive: 6 } }), lyeCautions)
    if (answer.status === 'refused') throw new Error(answer.reasons.join())
    expect(answer.sheet.lyeRows.map(({ what }) => what)).toContain('Superfat in the cook')
    // By hand: 0.5 kg of olive at 6.
    expect(answer.sheet.cost?.total).toBeCloseTo(3, 9)
    expect(answer.sheet.cost?.unpriced).toContain('Coconut oil')
    expect(answer.sheet.cost?.unpriced).not.toContain('Water')
  })
})
