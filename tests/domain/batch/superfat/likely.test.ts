import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import { library } from '../../../../src/data/library'
import { likelySuperfat, lotSpread } from '../../../../src/domain/batch/superfat/likely'
import {
  DRAWS,
  evenRow,
  normalRow,
  shareAtMost,
} from '../../../../src/domain/batch/superfat/lot-draws'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import fc from 'fast-check'
import demo from '../../../../data/demo.json'
import { PLAIN, problemsOf, ready } from '../plans'
import { soundOrder } from '../random-orders'
import { planBatch } from '../../../../src/domain/batch/result/plan'

const GRAM = { oilStepG: 1, lyeStepG: 1 }

describe('the draws', () => {
  test('are standard normal and even, each row by itself and always the same', () => {
    const mean = (row: Float64Array) => row.reduce((sum, x) => sum + x, 0) / DRAWS
    // Five standard errors of a mean of 10,000: 0.05 of a normal, 0.0144 of an even one.
    for (const row of [0, 1, 7]) {
      expect(Math.abs(mean(normalRow(row)))).toBeLessThan(0.05)
      expect(Math.abs(mean(evenRow(row)) - 0.5)).toBeLessThan(0.0144)
      const together = normalRow(row).map((x, i) => x * (normalRow(row + 1)[i] ?? NaN))
      expect(Math.abs(mean(together))).toBeLessThan(0.05)
    }
    expect(normalRow(3)).toEqual(normalRow(3))
  })

  test('carry their own error on the safe side', () => {
    // By hand, Wilson at 2.3263: z2 = 5.4119; none of 10,000: z2/n / (1 + z2/n) = 5.409e-4.
    expect(shareAtMost(0)).toBeCloseTo(5.409e-4, 6)
    // 50 of 10,000: (0.005 + 0.00027060 + 2.3263 sqrt(4.975e-7 + 1.353e-8)) / 1.00054119 = 0.006930.
    expect(shareAtMost(50)).toBeCloseTo(0.00693, 5)
    expect(shareAtMost(DRAWS)).toBeCloseTo(1, 12)
  })
})

describe('the share of lots with free alkali', () => {
  test.for([
    // Coconut: 99 lots of 100 from 248 up, so sd = (255.8 - 248) / 2.5758 = 3.0282 mg KOH/g below 255.8.
    // Free below 255.8 x (1 - s): z = 255.8 s / 3.0282. Normal tails (Abramowitz and Stegun, table 26.1).
    [1, 0.1991],
    [2, 0.0456],
    [2.5, 0.01735],
  ] as const)('of coconut oil at %d %% superfat is the tail of its lots', ([superfat, tail]) => {
    const { likely } = ready({ blend: { coconut: 100 }, superfat }).superfat
    // Three standard errors of the draws either way of the share, and Wilson's own on top.
    const error = 3 * Math.sqrt((tail * (1 - tail)) / DRAWS)
    expect(likely.freeShare).toBeGreaterThan(tail - error)
    expect(likely.freeShare).toBeLessThan(shareAtMost((tail + error) * DRAWS))
    expect(likely.oneIn).toBe(Math.floor(1 / likely.freeShare))
  })

  test('is the same each time', () => {
    const order = { superfat: 3, scale: GRAM, purity: { naoh: 98 } }
    expect(ready(order).superfat.likely).toEqual(ready(order).superfat.likely)
  })

  test('falls where a second oil varies by itself', () => {
    const one = ready({ blend: { coconut: 100 }, superfat: 2 }).superfat.likely.freeShare
    const two = ready({ blend: { coconut: 50, babassu: 50 }, superfat: 2 }).superfat.likely
    expect(two.freeShare).toBeLessThan(one)
  })
})

describe('how an oil’s lots lie', () => {
  test('a recalled range is drawn wider than a read one', () => {
    // Lard is recalled, 95 lots of 100; rapeseed read, 99 of 100.
    const lard = lotSpread('lard', library, undefined)
    expect(lard.sdHigh).toBeCloseTo((203 - 195) / 1.959964, 6)
    const rapeseed = lotSpread('rapeseed-low-erucic', library, undefined)
    expect(rapeseed.sdLow).toBeCloseTo((189.2 - 182) / 2.575829, 6)
  })

  test('a measured spread counts twice over', () => {
    // 572 olive oils: 0.40 mg KOH/g.
    expect(lotSpread('olive', library, undefined).sdLow).toBeCloseTo(0.8, 9)
  })

  test('a certificate is never drawn narrower than half a percent', () => {
    const lots = { coconut: { saponificationValue: 256, tolerance: 0 } }
    expect(lotSpread('coconut', library, lots).sdLow).toBeCloseTo((256 * 0.005) / 1.959964, 6)
  })
})

test('what is likely lies within the worst, and a batch safe at its worst is never blocked', () => {
  const check = (order: BatchOrder) => {
    const plan = planBatch(order, library, batchFacts)
    if (plan.status === 'invalid') return
    const { likely, reachPercent } = plan.superfat
    expect(likely.percent.min).toBeGreaterThanOrEqual(reachPercent.min - 1e-6)
    expect(likely.percent.max).toBeLessThanOrEqual(reachPercent.max + 1e-6)
    expect(plan.blocked !== null && reachPercent.min >= 0).toBe(false)
  }
  fc.assert(fc.property(soundOrder, check), { seed: 7, numRuns: 1500 })
}, 120_000)

/** Blends that careful makers have used for years, in oils that any shop sells. */
const ORDINARY: readonly BatchOrder['blend'][] = [
  { olive: 100 },
  { olive: 70, coconut: 30 },
  { olive: 40, coconut: 30, palm: 30 },
  { olive: 35, coconut: 25, 'tallow-beef': 30, castor: 10 },
  { lard: 60, coconut: 25, olive: 15 },
  { olive: 40, coconut: 25, shea: 15, 'rapeseed-low-erucic': 15, castor: 5 },
]

test.for(ORDINARY)('5 %% superfat of %o, 1 kg on a 1 g scale, prints', (blend) => {
  const plan = ready({ blend, oilGrams: 1000, superfat: 5, scale: GRAM })
  expect(plan.blocked).toBeNull()
})

test('the example opens unblocked', () => {
  const { purity, superfatPercent, water, scale, oilGrams } = demo.batch
  const blend = { coconut: 25, olive: 45, palm: 25, castor: 5 }
  const order = { blend, oilGrams, purity: { naoh: purity.naoh }, superfat: superfatPercent }
  expect(ready({ ...order, water, scale }).blocked).toBeNull()
})

describe('batches that were once weighed out without a word', () => {
  test('KOH "85" that may be 92 is blocked', () => {
    const order = {
      blend: { coconut: 50, olive: 50 },
      alkali: { koh: 100 },
      purity: { koh: 85 },
      superfat: 5,
    }
    const { blocked, superfat } = ready(order)
    expect(blocked?.code).toBe('blocked.lean')
    // By hand, at the oils' low ends: 1 - 0.95 x 92/85 x (255.8 + 190.7) / (248 + 184) = -6.28 %.
    expect(superfat.reachPercent.min).toBeCloseTo(-6.28, 1)
    const sure = ready({ ...order, purityIs: { koh: { certificate: 'KA-118' } } })
    expect(sure.blocked).toBeNull()
  })

  test('coconut and olive with 10 % jojoba at no superfat is blocked', () => {
    const blend = { coconut: 45, olive: 45, jojoba: 10 }
    expect(ready({ blend, superfat: 0 }).blocked?.code).toBe('blocked.lean')
    expect(ready({ blend, superfat: 0 }).remarks.map(({ code }) => code)).toContain('wax.jojoba')
  })

  test('almond at 0.3 % is blocked', () => {
    expect(ready({ blend: { almond: 100 }, superfat: 0.3 }).blocked?.code).toBe('blocked.lean')
  })

  test('an olive lot of 205 needs its papers, and then shows ordinary olive beside it', () => {
    const lots = { olive: { saponificationValue: 205, tolerance: 0 } }
    const order = { blend: { olive: 100 }, superfat: 2, lots }
    expect(problemsOf(order).map(({ path }) => path)).toEqual(['lots.olive.name'])
    const signed = { olive: { ...lots.olive, name: 'OL-7', certificate: 'CoA 88' } }
    const { superfat } = ready({ ...order, lots: signed })
    // By hand: 1 - 0.98 x 205 / 184 = -9.18 %.
    expect(superfat.withoutCertificatesPercent?.min).toBeCloseTo(-9.18, 1)
  })

  test('vinegar of 50 % is refused without a paper', () => {
    const acids = [{ acid: 'acetic', grams: 100, strengthPercent: 50, alkali: 'add' as const }]
    const [wrong] = problemsOf({ acids })
    expect(wrong?.path).toBe('acids[0].strengthPercent')
    expect(wrong?.message).toMatch(/usually sold with 5 or 6 %/u)
  })
})

test('fat kept back for after the cook has a likely span of its own while it cooks', () => {
  const extraFat = {
    percent: 6,
    of: 'oils' as const,
    oils: { shea: 100 },
    when: 'afterCook' as const,
  }
  const { superfat, remarks } = ready({ superfat: 1, process: 'hot', extraFat })
  expect(superfat.inCook?.likely.percent.max).toBeLessThan(superfat.likely.percent.max)
  expect(remarks.find(({ code }) => code === 'lean.cook')?.message).toMatch(/1 lot in \d/u)
})

test('fat of another kind beside the blend is drawn as the same lot where it is the same oil', () => {
  const extra = (oil: string) => ({
    blend: { coconut: 100 },
    superfat: 0,
    extraFat: { percent: 2, of: 'oils' as const, oils: { [oil]: 100 }, when: 'withOils' as const },
  })
  const plan = ready(extra('coconut'))
  const reckoning = {
    order: { ...PLAIN, ...extra('coconut') },
    weights: plan,
    library,
    facts: batchFacts,
  }
  // One lot: 2 % more of the same oil is the superfat of one oil of 102 parts; by hand z = 255.8 x
  // (1 - 100/102) / 3.0282 = 1.6563, tail 0.0488.
  expect(likelySuperfat(reckoning).freeShare).toBeGreaterThan(0.043)
  expect(likelySuperfat(reckoning).freeShare).toBeLessThan(0.06)
})
