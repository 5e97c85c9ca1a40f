import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import { lyeCompared, type StatedLye } from '../../../src/domain/batch/actual/lye-compared'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch } from '../../../src/domain/batch/result/plan'

const ORDER: BatchOrder = {
  blend: { olive: 45, coconut: 25, shea: 10, 'rice-bran': 15, castor: 5 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 5,
  water: { lyeConcentration: 33 },
}

function compared(order: BatchOrder, stated: StatedLye) {
  const answer = lyeCompared(order, stated, library, batchFacts)
  if (answer.status !== 'compared') throw new Error(answer.status)
  return answer
}

function planned(order: BatchOrder): StatedLye {
  const plan = planBatch(order, library, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan.alkaliGrams
}

describe('the superfat that a stated lye leaves', () => {
  test.each<[string, BatchOrder, StatedLye]>([
    ['soda', ORDER, { naoh: 138 }],
    ['less of it', ORDER, { naoh: 120 }],
    ['soda of 98 %', { ...ORDER, purity: { naoh: 98 } }, { naoh: 138 }],
    ['potash of 90 %', { ...ORDER, alkali: { koh: 100 }, purity: { koh: 90 } }, { koh: 210 }],
    [
      'soda with citric acid',
      { ...ORDER, acids: [{ acid: 'citric', grams: 10, alkali: 'add' }] },
      { naoh: 142 },
    ],
  ])('planning the same oils with it comes to that lye: %s', (_, order, stated) => {
    const { statedSuperfatPercent: superfat } = compared(order, stated)
    const again = planned({ ...order, superfat })
    for (const kind of ['naoh', 'koh'] as const)
      expect(again[kind] ?? 0).toBeCloseTo(stated[kind] ?? 0, 9)
  })

  test('it is below 0 where there is more lye than the fat can use', () => {
    expect(compared(ORDER, { naoh: 160 }).statedSuperfatPercent).toBeLessThan(0)
  })

  test('our own lye leaves what was asked', () => {
    const { oursSuperfatPercent, oursG } = compared(ORDER, { naoh: 138 })
    expect(oursSuperfatPercent).toBeCloseTo(5, 9)
    expect(oursG).toEqual(planned(ORDER))
  })
})

describe('why they differ', () => {
  const sizes = (order: BatchOrder, stated: StatedLye) =>
    Object.fromEntries(compared(order, stated).differences.map(({ why, grams }) => [why, grams]))
  const ours = planned(ORDER).naoh ?? 0

  test('the parts add up to the difference', () => {
    const order = {
      ...ORDER,
      purity: { naoh: 97 },
      scale: { oilStepG: 1, lyeStepG: 1 },
    } satisfies BatchOrder
    const { differences, oursG } = compared(order, { naoh: 146 })
    expect(differences.map(({ why }) => why).sort()).toEqual(['purity', 'rounding', 'superfat'])
    const sum = differences.reduce((total, { grams }) => total + grams, 0)
    expect(sum).toBeCloseTo(146 - (oursG.naoh ?? 0), 9)
    expect(differences.map(({ grams }) => Math.abs(grams))).toEqual(
      differences.map(({ grams }) => Math.abs(grams)).toSorted((a, b) => b - a),
    )
  })

  test('a recipe reckoned pure differs from a bag of 97 % by the purity alone', () => {
    // By hand: ours / 0.97, so the recipe's is less by ours × (1 / 0.97 − 1).
    const order = { ...ORDER, purity: { naoh: 97 } }
    expect(sizes(order, { naoh: ours })).toEqual({
      purity: expect.closeTo(ours * (1 - 1 / 0.97), 9) as number,
    })
  })

  test('a recipe with more digits than the scale differs by the rounding alone', () => {
    const order = { ...ORDER, scale: { oilStepG: 1, lyeStepG: 5 } }
    expect(sizes(order, { naoh: ours })).toEqual({
      rounding: expect.closeTo(ours - Math.floor(ours / 5) * 5, 9) as number,
    })
  })

  test('another superfat differs by that alone', () => {
    expect(sizes(ORDER, planned({ ...ORDER, superfat: 8 }))).toEqual({
      superfat: expect.closeTo((ours * (92 - 95)) / 95, 9) as number,
    })
  })

  test('the same lye has nothing to say', () => {
    expect(compared(ORDER, { naoh: ours }).differences).toEqual([])
  })
})

test('another alkali, or an order with something wrong in it, is not compared', () => {
  expect(lyeCompared(ORDER, { koh: 200 }, library, batchFacts).status).toBe('otherAlkali')
  expect(lyeCompared(ORDER, { naoh: 90, koh: 60 }, library, batchFacts).status).toBe('otherAlkali')
  const wrong = { ...ORDER, superfat: 200 }
  expect(lyeCompared(wrong, { naoh: 138 }, library, batchFacts).status).toBe('invalid')
})
