import { describe, expect, test } from 'vitest'
import { libraryOf, near, problemsOf, ready } from '../plans'

const varying = libraryOf({ olive: [180, 190, 200], shea: [170, 180, 190] })
const ORDER = { blend: { olive: 100 }, superfat: 8 }

describe('how far the superfat of a batch reaches', () => {
  test('is what lots make of it where no scale is stated', () => {
    const { superfat } = ready(ORDER, varying)
    expect(superfat.scaleKnown).toBe(false)
    expect(superfat.reachPercent).toEqual(superfat.lotsPercent)
  })

  test('takes in a step of each scale for a slip', () => {
    // By hand: 1000 x 190 / 56105 = 3.386507 mol; x 0.92 x 39.997 = 124.613, down to 124 g.
    // Leanest: (124 + 1) / 39.997 = 3.125234 mol on 998 x 180 / 56105 = 3.201854 mol: 2.393 %.
    // Richest: 123 / 39.997 = 3.075231 mol on 1002 x 200 / 56105 = 3.571874 mol: 13.904 %.
    const { superfat } = ready({ ...ORDER, scale: { oilStepG: 2, lyeStepG: 1 } }, varying)
    expect(superfat.reachPercent.min).toBeCloseTo(2.393, 2)
    expect(superfat.reachPercent.max).toBeCloseTo(13.904, 2)
  })

  test('takes in the error stated for a scale in the place of its step', () => {
    const scale = { oilStepG: 2, lyeStepG: 1, oilErrorG: 0, lyeErrorG: 0 }
    const { superfat } = ready({ ...ORDER, scale }, varying)
    expect(superfat.reachPercent.min).toBeCloseTo(superfat.lotsPercent.min, 9)
  })

  test('takes in hydroxide purer than the bag says', () => {
    // By hand: weighed for exactly 97 % and really 99 %: 1 - 0.92 x 190/180 x 99/97 = 0.887 %.
    const exactly = { naoh: 'exactly' as const }
    const { superfat } = ready(
      { ...ORDER, purity: { naoh: 97 }, purityIs: exactly, purityUpTo: { naoh: 99 } },
      varying,
    )
    expect(superfat.reachPercent.min).toBeCloseTo(0.8866, 3)
    expect(superfat.lotsPercent.min).toBeCloseTo(2.8889, 3)
  })

  test('takes in vinegar weaker than its label says', () => {
    const vinegar = { acid: 'acetic', grams: 250, strengthPercent: 5, alkali: 'add' as const }
    const asLabelled = ready({ ...ORDER, acids: [vinegar] }, varying)
    const unsure = ready({ ...ORDER, acids: [{ ...vinegar, strengthFromPercent: 4 }] }, varying)
    // By hand: a label is taken to be a twentieth off, this one a fifth: 0.15 x 12.5 / 60.052 mol on
    // 1000 x 180 / 56105 mol is 0.9732 points.
    const points = asLabelled.superfat.reachPercent.min - unsure.superfat.reachPercent.min
    expect(points).toBeCloseTo(0.9732, 3)
  })

  test('does not count on the fat of milk at its lean end', () => {
    const milk = { liquid: 'cow-milk', replacesPercent: 100, when: 'lye' as const }
    const [plain, rich] = [ready(ORDER, varying), ready({ ...ORDER, liquids: [milk] }, varying)]
    expect(rich.superfat.reachPercent.min).toBeCloseTo(plain.superfat.reachPercent.min, 9)
    expect(rich.superfat.typicalPercent).toBeGreaterThan(plain.superfat.typicalPercent)
  })
})

describe('a batch whose leanest lots could leave free lye', () => {
  const lean = { ...ORDER, superfat: 5 }

  test('is blocked, with the least discount that is safe', () => {
    // By hand: 1 - 180/190 = 5.263 %, up to 5.3 %.
    const { blocked } = ready(lean, varying)
    expect(blocked?.leanestPercent).toBeCloseTo(-0.2778, 3)
    expect(blocked?.leastSafePercent).toBe(5.3)
    expect(blocked?.message).toMatch(
      /^1 lot in \d+ would hold free lye: .* the leanest to -0\.3 %\. Ask for at least 5\.3 %/u,
    )
    expect(blocked?.oneIn).toBeLessThan(200)
  })

  test('is open again at that discount', () => {
    expect(ready({ ...lean, superfat: 5.3 }, varying).blocked).toBeNull()
  })

  test('is open when the maker says why these lots are safe, and the reason stands on it', () => {
    const plan = ready({ ...lean, confirmedLean: 'Titrated: 188 mg KOH/g' }, varying)
    expect(plan.blocked).toBeNull()
    expect(plan.warnings.join(' ')).toMatch(/as the maker says: Titrated: 188 mg KOH\/g/u)
  })

  test('stays blocked without a reason', () => {
    expect(problemsOf({ ...lean, confirmedLean: '  ' }, varying)).toEqual([
      { path: 'confirmedLean', message: expect.stringMatching(/Say in words why/u) as string },
    ])
  })

  test('is blocked for the error of the scale alone', () => {
    const scale = { oilStepG: 1, lyeStepG: 0.1, lyeErrorG: 1 }
    const plan = ready({ ...lean, superfat: 5.3, scale, oilGrams: 300 }, varying)
    expect(plan.superfat.lotsPercent.min).toBeGreaterThan(0)
    expect(plan.blocked?.code).toBe('blocked.lean')
    const safe = plan.blocked?.leastSafePercent ?? NaN
    const again = ready({ ...lean, superfat: safe, scale, oilGrams: 300 }, varying)
    expect(again.blocked).toBeNull()
  })

  test('is opened by the certificate of a lot', () => {
    const lots = { olive: { saponificationValue: 190, tolerance: 2 } }
    expect(ready({ ...lean, lots }, varying).blocked).toBeNull()
  })
})

describe('extra fat', () => {
  const extra = { percent: 5, of: 'equivalents' as const, oils: { shea: 100 } }

  test('with the oils leaves the part asked of all equivalents', () => {
    const plan = ready({ ...ORDER, superfat: 0, extraFat: { ...extra, when: 'withOils' } }, varying)
    expect(plan.superfat.askedPercent).toBeCloseTo(5, 9)
    expect(plan.superfat.typicalPercent).toBeCloseTo(5, 9)
    expect(plan.superfat.inCook).toBeNull()
    // By hand: 0.05/0.95 x 1000 x 190 / 180.
    expect(plan.extraFatGrams.shea).toSatisfy(near(55.556, 0.001))
  })

  test('and a discount come together as 1 - T(1 - s) / (T + Te)', () => {
    const plan = ready({ ...ORDER, superfat: 3, extraFat: { ...extra, when: 'withOils' } }, varying)
    // By hand: Te = 0.05/0.95 T; 1 - 0.97 x 0.95.
    expect(plan.superfat.askedPercent).toBeCloseTo(7.85, 9)
    expect(plan.superfat.typicalPercent).toBeCloseTo(7.85, 9)
  })

  test('after the cook does not count while it cooks', () => {
    const plan = ready(
      { ...ORDER, superfat: 1, process: 'hot', extraFat: { ...extra, when: 'afterCook' } },
      varying,
    )
    expect(plan.superfat.inCook?.typicalPercent).toBeCloseTo(1, 9)
    // By hand: 1 - 0.99 x 190/180 = -4.5 %.
    expect(plan.superfat.inCook?.reachPercent.min).toBeCloseTo(-4.5, 9)
    expect(plan.warnings.join(' ')).toMatch(/cook itself may end with free lye \(superfat -4\.5 %/u)
  })

  test('of several fats keeps their parts', () => {
    const oils = { shea: 75, olive: 25 }
    const plan = ready(
      { ...ORDER, extraFat: { percent: 4, of: 'oils', oils, when: 'withOils' } },
      varying,
    )
    expect(plan.extraFatGrams).toEqual({
      shea: expect.closeTo(30, 9) as number,
      olive: expect.closeTo(10, 9) as number,
    })
  })

  test('is rounded up on the scale', () => {
    const plan = ready(
      {
        ...ORDER,
        scale: { oilStepG: 5, lyeStepG: 1 },
        extraFat: { percent: 4.1, of: 'oils', oils: { shea: 100 }, when: 'withOils' },
      },
      varying,
    )
    expect(plan.extraFatGrams.shea).toBe(45)
  })

  test.for([
    [{ ...extra, percent: 60, when: 'withOils' }, 'extraFat.percent'],
    [{ ...extra, percent: -1, when: 'withOils' }, 'extraFat.percent'],
    [{ ...extra, oils: { dragon: 100 }, when: 'withOils' }, 'extraFat.oils.dragon'],
    [{ ...extra, oils: { shea: 50 }, when: 'withOils' }, 'extraFat.oils'],
    [{ ...extra, when: 'afterCook' }, 'extraFat.when'],
  ] as const)('%o is refused', ([extraFat, path]) => {
    expect(problemsOf({ ...ORDER, extraFat }, varying).map((one) => one.path)).toEqual([path])
  })
})
