import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import { lotRemedies } from '../../../src/domain/batch/check/check-lots'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch } from '../../../src/domain/batch/result/plan'
import { PLAIN, problemsOf, ready } from './plans'

/** The order with its first remedy taken. */
function mended(order: Partial<BatchOrder>): BatchOrder {
  const [remedy] = ready(order).remedies
  if (!remedy) throw new Error('Nothing is offered')
  return { ...PLAIN, ...order, ...remedy.change }
}

/** Warnings and heat that stay when the first remedy is taken. */
function after(order: Partial<BatchOrder>) {
  const plan = planBatch(mended(order), library, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan
}

describe('a change that is offered does away with what it answers', () => {
  test.for<readonly [string, Partial<BatchOrder>, string]>([
    ['lean lots', { superfat: 1 }, 'Ask for '],
    ['strong lye in a cook', { process: 'hot', water: { lyeConcentration: 36 } }, 'Lye at 30 %'],
    ['weak lye', { water: { lyeConcentration: 22 } }, 'Lye at 25 %'],
    ['much superfat', { superfat: 12, water: { ratio: 2 } }, 'Ask for 8'],
    ['acids unpaid', { acids: [{ acid: 'citric', grams: 3, alkali: 'leave' }] }, 'Weigh it on top'],
    [
      'too much of an additive',
      { additives: [{ additive: 'kaolin', percentOfOils: 9 }] },
      'Take 3 %',
    ],
  ])('%s', ([, order, says]) => {
    const [remedy] = ready({ superfat: 6, ...order }).remedies
    expect(remedy?.says).toMatch(new RegExp(`^${says}`, 'u'))
    const plan = after({ superfat: 6, ...order })
    expect(plan.remarks.map(({ code }) => code)).not.toContain(remedy?.answers)
    expect(plan.blocked?.code).not.toBe(remedy?.answers)
  })

  test('lean lots are no longer blocked, to the tenth of a percent that is offered', () => {
    const [remedy] = ready({ superfat: 1 }).remedies
    const least = remedy?.change.superfat ?? NaN
    expect(ready({ superfat: 1 }).blocked?.leastSafePercent).toBe(least)
    expect(ready({ superfat: least }).blocked).toBeNull()
    expect(ready({ superfat: least - 0.1 }).blocked).not.toBeNull()
  })

  test('a lye that may boil gets half of its water as ice, and stays colder for it', () => {
    const order = { water: { lyeConcentration: 33 }, superfat: 6, lye: { startC: 25 } }
    const before = ready(order)
    expect(before.heat?.level).toBe('mayBoil')
    const ice = before.remedies.find(({ change }) => change.lye)
    expect(ice?.answers).toBe('heat')
    // By hand: half of the plain water; melting takes 334 J/g, and warming to 25 degrees 105 J/g.
    expect(ice?.change.lye?.iceGrams).toBeCloseTo(before.water.plainG / 2, 6)
    const cold = ready({ ...order, ...ice?.change })
    expect(cold.heat?.ceilingC).toBeLessThan((before.heat?.ceilingC ?? NaN) - 30)
    expect(cold.remedies.some(({ change }) => change.lye)).toBe(false)
  })
})

test('a remedy answers the code of something that the plan says', () => {
  const plan = ready({ superfat: 1, water: { lyeConcentration: 45 } })
  const said = [...plan.remarks.map(({ code }) => code), plan.blocked?.code, 'heat']
  expect(plan.remedies.length).toBeGreaterThan(1)
  for (const { answers } of plan.remedies) expect(said).toContain(answers)
})

test('a batch with nothing to say against it has no remedies but for its heat', () => {
  const { remedies, warnings } = ready({ superfat: 6, water: { ratio: 2.9 } })
  expect([remedies, warnings]).toEqual([[], []])
})

describe('a saponification value in another unit', () => {
  const lots = { olive: { saponificationValue: 0.135, name: 'A' } }

  test('is offered as what it means, in mg KOH/g', () => {
    // By hand: 0.135 g NaOH/g x 56.105 / 39.997 x 1000 = 189.4 mg KOH/g.
    const [remedy] = lotRemedies({ ...PLAIN, lots }, library)
    expect(remedy?.says).toBe('Take 189.4 mg KOH/g')
    expect(remedy?.change).toEqual({ lots: { olive: { saponificationValue: 189.4, name: 'A' } } })
    expect(problemsOf({ lots }).map(({ path }) => path)).toEqual([remedy?.answers])
    expect(problemsOf(remedy?.change ?? {})).toEqual([])
  })

  test('has none where the value is sound or means nothing', () => {
    const of = (saponificationValue: number) =>
      lotRemedies({ ...PLAIN, lots: { olive: { saponificationValue } } }, library)
    expect([of(190), of(7), of(NaN)]).toEqual([[], [], []])
  })
})
