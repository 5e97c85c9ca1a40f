import { describe, expect, test } from 'vitest'
import { labelFacts } from '../../../src/data/label-facts'
import { library } from '../../../src/data/library'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { asMade, asPutIn } from '../../../src/domain/label/ingredient-list'
import { labelOf } from '../../../src/domain/label/label'
import { libraryOf, near, ready } from '../batch/plans'

function label(order: Partial<BatchOrder>) {
  const answer = labelOf(ready(order), library, labelFacts)
  if (answer.status === 'refused') throw new Error(answer.reasons.join())
  return answer.label
}

const OLIVE_COCONUT_SHEA: Partial<BatchOrder> = {
  blend: { olive: 58.8, coconut: 30, shea: 11.2 },
  purity: { naoh: 99 },
  water: { lyeConcentration: 33 },
}

describe('the ingredients', () => {
  test('as put in stand in descending weight at that time', () => {
    // 588, 300, 290.2, 143.0 and 112 g.
    expect(label(OLIVE_COCONUT_SHEA).ingredientsAsPutIn).toBe(
      'Olea Europaea Fruit Oil, Cocos Nucifera Oil, Aqua, Sodium Hydroxide, Butyrospermum Parkii Butter',
    )
  })

  test('as made stand in descending weight of the dry bar', () => {
    // By hand about 576, 297 and 109 g of soap, 155 g water, 109 g glycerin, 29, 15 and 6 g of fat left.
    expect(label(OLIVE_COCONUT_SHEA).ingredientsAsMade).toMatch(
      /^Sodium Olivate, Sodium Cocoate, Aqua, (Sodium Shea Butterate, Glycerin|Glycerin, Sodium Shea Butterate), Olea Europaea Fruit Oil, Cocos Nucifera Oil, Butyrospermum Parkii Butter$/u,
    )
  })

  test('of one name stand once: palm oil and palm olein', () => {
    const { ingredientsAsPutIn } = label({ blend: { palm: 40, 'palm-olein': 30, olive: 30 } })
    expect(ingredientsAsPutIn.match(/Elaeis Guineensis Oil/gu)).toHaveLength(1)
    expect(ingredientsAsPutIn).toMatch(/^Elaeis Guineensis Oil, Olea/u)
  })

  test('of both alkalis have both soaps and both hydroxides', () => {
    const { ingredientsAsMade, ingredientsAsPutIn } = label({
      ...OLIVE_COCONUT_SHEA,
      alkali: { naoh: 90, koh: 10 },
    })
    for (const name of [
      'Sodium Olivate',
      'Potassium Olivate',
      'Sodium Cocoate',
      'Potassium Cocoate',
    ])
      expect(ingredientsAsMade).toContain(name)
    expect(ingredientsAsPutIn).toContain('Sodium Hydroxide')
    expect(ingredientsAsPutIn).toContain('Potassium Hydroxide')
  })

  test('have colourants last and salts of acids by their names', () => {
    const { ingredientsAsMade } = label({
      ...OLIVE_COCONUT_SHEA,
      acids: [{ acid: 'citric', grams: 15, alkali: 'add' }],
      additives: [{ additive: 'kaolin', percentOfOils: 3 }],
      fragrance: { percentOfOils: 2, blend: { 'tea-tree': 100 } },
    })
    expect(ingredientsAsMade).toMatch(/, Sodium Citrate, /u)
    expect(ingredientsAsMade).toMatch(/Kaolin$/u)
    expect(ingredientsAsMade).toMatch(/Alpha-Terpinene/u)
  })

  test('of a soap without a known name are described and to be looked up', () => {
    const { ingredientsAsMade, toSettle } = label({ blend: { hazelnut: 60, coconut: 40 } })
    expect(ingredientsAsMade).toContain('[sodium soap of Corylus Avellana Seed Oil]')
    expect(toSettle.join(' ')).toMatch(/Look up the INCI names of: \[sodium soap of Corylus/u)
  })

  test('as made never hold hydroxide, and as put in never soap', () => {
    const { ingredientsAsMade, ingredientsAsPutIn } = label(OLIVE_COCONUT_SHEA)
    expect(ingredientsAsMade).not.toMatch(/Hydroxide/u)
    expect(ingredientsAsPutIn).not.toMatch(/Glycerin|ate\b/u)
  })
})

/** By hand, SV 190: 1 - 190 x 2.26054e-4 + 190 x (39.997 - 18.015) / 56106 = 1.0315; SV 257: 1.0426. */
test('a gram of oil of 190 mg KOH/g makes 1.0315 g of sodium soap, one of 257 makes 1.0426 g', () => {
  const from = libraryOf({ olive: 190, coconut: 257 })
  const plan = ready({ blend: { olive: 50, coconut: 50 }, superfat: 5 }, from)
  const soapOf = (id: string) =>
    plan.outcome.fats.find(({ part }) => part.id === id)?.soapG.naoh ?? NaN
  expect(soapOf('olive')).toSatisfy(near(0.95 * 500 * 1.0315, 0.05))
  expect(soapOf('coconut')).toSatisfy(near(0.95 * 500 * 1.0426, 0.05))
})

describe('the lists weigh what the batch weighs', () => {
  const order: Partial<BatchOrder> = {
    ...OLIVE_COCONUT_SHEA,
    lyeSolution: { naoh: 50 },
    purity: {},
    acids: [{ acid: 'lactic', grams: 10, strengthPercent: 80, alkali: 'add' }],
    liquids: [{ liquid: 'goat-milk', replacesPercent: 30, when: 'trace' }],
    additives: [{ additive: 'sodium-lactate-60', grams: 20 }],
    fragrance: { grams: 20, blend: { lavender: 100 } },
  }

  test('as put in', () => {
    const plan = ready(order)
    const listed = asPutIn(plan, library, labelFacts.batch)
    expect(listed.reduce((sum, { grams }) => sum + grams, 0)).toBeCloseTo(plan.totalGrams, 6)
  })

  test('as made, when dry', () => {
    const plan = ready(order)
    const listed = asMade(plan, library, labelFacts.batch)
    expect(listed.reduce((sum, { grams }) => sum + grams, 0)).toBeCloseTo(
      plan.cure?.curedG ?? NaN,
      6,
    )
  })
})

describe('a label', () => {
  test('carries net weight, code, dates, cautions and what the law still asks', () => {
    const one = label({
      ...OLIVE_COCONUT_SHEA,
      cut: { barGrams: 120 },
      papers: {
        product: 'Bar',
        madeOn: '2026-11-25',
        productCode: 'B7',
        responsiblePerson: 'The maker, her street',
      },
    })
    expect(one.netWeight?.nominalG).toBeLessThan(120)
    expect(one.netWeight?.ounces).toBeCloseTo((one.netWeight?.nominalG ?? NaN) / 28.349523125, 9)
    expect([one.batchCode, one.readyOn]).toEqual(['261125-B7-01', '2027-01-06'])
    expect(one.cautions.length).toBeGreaterThan(0)
    expect(one.duties.map(({ market }) => market)).toEqual(['eu', 'gb', 'us'])
    expect(one.duties[0]?.duties.join(' ')).toMatch(
      /safety report.*responsible person.*notice.*product file/su,
    )
    expect(one.notice).toMatch(/law of the place of sale goes before/u)
    expect(one.notice).toMatch(/supplier’s certificate decides/u)
  })

  test('says what is still missing', () => {
    const settle = label(OLIVE_COCONUT_SHEA).toSettle.join(' ')
    expect(settle).toMatch(/responsible person/u)
    expect(settle).toMatch(/day of making/u)
    expect(settle).toMatch(/weight of a bar/u)
    expect(settle).toMatch(/free alkali \(not by a pH strip\)/u)
  })

  test('says what milk is in it', () => {
    const liquids = [{ liquid: 'goat-milk', replacesPercent: 30, when: 'lye' as const }]
    expect(label({ ...OLIVE_COCONUT_SHEA, liquids }).toSettle.join(' ')).toMatch(/Contains milk/u)
  })

  test('is refused while the leanest lots could leave free lye', () => {
    expect(labelOf(ready({ superfat: 0 }), library, labelFacts)).toMatchObject({
      status: 'refused',
      reasons: [expect.stringMatching(/would hold free lye/u)],
    })
  })

  test('is refused without cautions', () => {
    const bare = { ...labelFacts, cautions: [] }
    expect(labelOf(ready(OLIVE_COCONUT_SHEA), library, bare).status).toBe('refused')
  })
})
