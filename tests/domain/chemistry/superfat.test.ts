import { describe, expect, test } from 'vitest'
import { equivalentsFromWeights } from '../../../src/domain/chemistry/alkali-shares'
import { extraFatGrams, superfatFraction } from '../../../src/domain/chemistry/superfat'

describe('shares of both alkalis', () => {
  test('60 to 40 by weight is 51.7 to 48.3 by mol', () => {
    // By hand: (60 / 56.105) / (60 / 56.105 + 40 / 39.997) = 1.06942 / 2.06950.
    expect(equivalentsFromWeights({ koh: 60, naoh: 40 }).koh).toBeCloseTo(0.51675, 4)
  })
})

/** Oils of 1000 g that bind 3.7385 mol; the fat is shea of 183 mg KOH/g. */
describe('extra fat of 5 %', () => {
  const base = { oilG: 1000, equivalentsMol: 3.7385 }

  test('of the equivalents: 0.05/0.95 x 3.7385 x 56105 / 183', () => {
    expect(extraFatGrams(0.05, 'equivalents', base, 183)).toBeCloseTo(60.324, 2)
  })

  test('of all fat: 1000 x 0.05/0.95', () => {
    expect(extraFatGrams(0.05, 'allFat', base, 183)).toBeCloseTo(52.632, 3)
  })

  test('of the oils: 50 g', () => {
    expect(extraFatGrams(0.05, 'oils', base, 183)).toBeCloseTo(50, 9)
  })
})

describe('superfat of what was weighed', () => {
  test('is 1 - (alkali - acids) / fat', () => {
    expect(superfatFraction(3.6, 0.1, 3.7)).toBeCloseTo(1 - 3.5 / 3.7, 12)
  })

  /*
   * By hand, purity that was taken wrongly: designed for 5 % at 100 % and weighed of 97 %, 1 - 0.95 x 0.97;
   * designed at 97 and really 100 %, 1 - 0.95 / 0.97; KOH designed at 90 and really 85 %, 1 - 0.95 x 85 / 90.
   */
  test.for([
    [1, 0.97, 0.0785],
    [0.97, 1, 0.0206],
    [0.9, 0.85, 0.1028],
  ] as const)('designed for purity %f and really %f is %f', ([designed, real, expected]) => {
    expect(superfatFraction((0.95 / designed) * real, 0, 1)).toBeCloseTo(expected, 4)
  })
})
