import { describe, expect, test } from 'vitest'
import { afterCook, potBeforeCook } from '../../../src/domain/batch/after-cook'
import { ready } from './plans'

/** By hand: 1000 g of fat, 140 of hydroxide, 330 of water and 50 more to boil off. */
const POT = { filledG: 1520, waterG: 380, cookWaterG: 50, scaleErrorG: 1 }

function told(weightG: number) {
  const answer = afterCook(POT, weightG)
  if (answer.status === 'invalid') throw new Error(answer.message)
  return answer.after
}

describe('a pot weighed after its cook', () => {
  test('as planned has lost the water it was to lose', () => {
    // 1520 - 1470 = 50 g gone; 380 - 50 = 330 g left, 330 / 1470 = 22.45 %.
    expect(told(1470)).toMatchObject({ boiledOffG: 50, waterLeftG: 330, verdict: 'asPlanned' })
    expect(told(1470).waterLeftPercent).toBeCloseTo(22.45, 2)
    expect(told(1469.5)).toMatchObject({ putBackG: 0, overG: 0, verdict: 'asPlanned' })
  })

  test('that lost more says how much water comes back, or that the bars are drier', () => {
    // 1520 - 1400 = 120 g gone, 70 more than the 50; 260 g left.
    expect(told(1400)).toMatchObject({ boiledOffG: 120, waterLeftG: 260, putBackG: 70, overG: 0 })
    expect(told(1400).verdict).toBe('drier')
    expect(told(1400).advice.join(' ')).toMatch(/stir in 70 g of hot water.*or leave it: the bars/u)
    expect(told(1400).advice.join(' ')).toMatch(/below 85 °C/u)
  })

  test('that lost less says what is still in it', () => {
    expect(told(1500)).toMatchObject({ boiledOffG: 20, putBackG: 0, overG: 30, verdict: 'wetter' })
    expect(told(1520)).toMatchObject({ boiledOffG: 0, overG: 50, verdict: 'wetter' })
  })

  test.for([
    [NaN, /Weigh the pot/u],
    [0, /Weigh the pot/u],
    [1530, /more than the 1520 g that went in.*empty pot/u],
    [1100, /420 g would have gone, and there were only 380 g of water/u],
  ] as const)('of %f g is refused with the reason', ([weightG, message]) => {
    const answer = afterCook(POT, weightG)
    expect(answer.status).toBe('invalid')
    expect('message' in answer && answer.message).toMatch(message)
  })
})

describe('what the pot of a plan holds when the cook begins', () => {
  const plan = ready({
    process: 'hot',
    cook: { extraWaterPercentOfOils: 5 },
    water: { lyeConcentration: 28 },
    extraFat: { percent: 5, of: 'oils', oils: { shea: 100 }, when: 'afterCook' },
    fragrance: { percentOfOils: 2, blend: { lavender: 100 } },
    scale: { oilStepG: 1, lyeStepG: 0.1 },
  })

  test('is all but the fat kept back and what is stirred in late', () => {
    const late = [...Object.values(plan.extraFatGrams), ...Object.values(plan.fragranceGrams)]
    const pot = potBeforeCook(plan)
    expect(pot.filledG).toBeCloseTo(plan.totalGrams - late.reduce((a, b) => a + b, 0), 6)
    expect(pot).toMatchObject({ waterG: plan.water.plainG + 50, cookWaterG: 50, scaleErrorG: 1 })
  })

  test('follows what was really weighed', () => {
    const pot = potBeforeCook(plan, { water: plan.water.plainG + 20, 'oil:olive': 710 })
    expect(pot.filledG).toBeCloseTo(potBeforeCook(plan).filledG + 30, 6)
    expect(pot.waterG).toBeCloseTo(potBeforeCook(plan).waterG + 20, 6)
  })
})
