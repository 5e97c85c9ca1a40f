import { describe, expect, test } from 'vitest'
import { labelFacts } from '../../../../src/data/label-facts'
import { library } from '../../../../src/data/library'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { sheetOf } from '../../../../src/domain/batch/sheet/sheet'
import { sheetText } from '../../../../src/domain/batch/sheet/sheet-text'
import { workSteps } from '../../../../src/domain/batch/sheet/steps'
import { runCost } from '../../../../src/domain/cost/run-cost'
import { labelOf } from '../../../../src/domain/label/label'
import { COSTS, PRICING } from '../../cost/round-plan'
import { problemsOf, ready } from '../plans'

const PASTE = {
  alkali: { koh: 100 },
  purity: { koh: 90 },
  superfat: 8,
} satisfies Partial<BatchOrder>

const mixed = (koh: number) => ({
  alkali: { naoh: 100 - koh, koh },
  purity: { koh: 90 },
  superfat: 8,
})

describe('the kind of soap', () => {
  test.for([
    [0.1, 'bar'],
    [30, 'bar'],
    [31, 'soft'],
    [89, 'soft'],
    [90, 'paste'],
    [99.9, 'paste'],
  ] as const)('of %f %% potassium hydroxide by mol is a %s', ([koh, kind]) => {
    expect(ready(mixed(koh)).kind).toBe(kind)
  })

  test('goes by equivalents, also where shares are by weight', () => {
    // By hand, trade facts: 60 % KOH by weight is 51.7 % by mol; 38 % by weight is 30.4 %, 37 % is 29.5 %.
    expect(ready({ ...mixed(38), alkaliBy: 'weight' }).kind).toBe('soft')
    expect(ready({ ...mixed(37), alkaliBy: 'weight' }).kind).toBe('bar')
  })

  test('is said where it is soft, and nowhere else', () => {
    expect(ready(mixed(50)).warnings.join(' ')).toMatch(/does 50 % of the work.*stays soft/u)
    expect(ready(mixed(30)).warnings.join(' ')).not.toMatch(/soft/u)
    expect(ready(mixed(95)).warnings.join(' ')).not.toMatch(/stays soft/u)
  })
})

describe('a paste', () => {
  const plan = ready({ ...PASTE, papers: { madeOn: '2026-11-25' } })
  const printed = sheetOf(plan, ['Lye burns.'])
  if (printed.status !== 'ready') throw new Error(printed.reasons.join())

  test('has neither cure nor bars, and weighs what leaves the pot', () => {
    expect([plan.kind, plan.cure, plan.bars]).toEqual(['paste', null, null])
    expect(plan.fresh.freshG).toBeCloseTo(plan.totalGrams, 9)
  })

  test.for([
    ['bars', { bars: { count: 10, grams: 100, weight: 'cured' }, oilGrams: undefined }],
    ['cut', { cut: { barGrams: 100 } }],
    ['cure', { cure: { days: 28 } }],
  ] as const)('asked for %s is refused with the reason', ([path, order]) => {
    const problems = problemsOf({ ...PASTE, ...order })
    expect(problems.map((one) => one.path)).toEqual([path])
    expect(problems[0]?.message).toMatch(/100 % of the work.*soap is a paste/u)
    expect(problemsOf({ ...mixed(50), ...order })).toEqual([])
  })

  test.for(['cold', 'hot'] as const)('of a %s process ends in jar and water', (process) => {
    const ids = workSteps(ready({ ...PASTE, process, water: { lyeConcentration: 28 } })).map(
      ({ id }) => id,
    )
    expect(ids.slice(-2)).toEqual(['jar', 'dilute'])
    for (const id of ['mould', 'cut', 'cure']) expect(ids).not.toContain(id)
    expect(ids.includes('rest')).toBe(process === 'cold')
  })

  test('has a sheet that speaks of no bar, no cut and no cure', () => {
    expect(printed.sheet.readyOn).toBeNull()
    const text = sheetText(printed.sheet, 'g')
    expect(text).toMatch(/^Paste$/mu)
    expect(text).toMatch(/% of the paste/u)
    expect(text).not.toMatch(/dry bar|Cure|Cut |It makes/u)
  })

  test('is labelled with its weight as filled: all of it, or of one of the jars', () => {
    const netOf = (order: Partial<BatchOrder>) => {
      const label = labelOf(ready({ ...PASTE, ...order }), library, labelFacts)
      return label.status === 'ready' ? label.label : undefined
    }
    expect(netOf({})?.netWeight?.nominalG).toBe(Math.floor(plan.fresh.freshG))
    expect(netOf({ papers: { madeOn: '2026-11-25' } })?.readyOn).toBeNull()
    expect(netOf({})?.toSettle.join(' ')).not.toMatch(/bar/u)
    const mould = { cavities: { count: 6, volumeMl: 200 }, densityGPerMl: 1 }
    expect(netOf({ oilGrams: undefined, mould })?.netWeight?.nominalG).toBe(200)
  })

  test('has no cost of a bar, and says why', () => {
    const answer = runCost(plan, COSTS, PRICING, 1)
    expect(answer).toMatchObject({ status: 'no bars' })
    expect('message' in answer && answer.message).toMatch(/is a paste/u)
  })
})
