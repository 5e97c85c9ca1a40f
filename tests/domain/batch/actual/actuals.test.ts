import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import { type Actuals, actualReport } from '../../../../src/domain/batch/actual/actuals'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { libraryOf, near, ready } from '../plans'

const from = libraryOf({ olive: [188, 190, 192], coconut: [254, 257, 260] })

/** 700 g olive, 300 g coconut: 3.744764 mol; x 0.95 x 39.997 = 142.290 g NaOH. */
const ORDER: Partial<BatchOrder> = { blend: { olive: 70, coconut: 30 }, superfat: 5 }

function reported(actuals: Actuals, order: Partial<BatchOrder> = ORDER) {
  const answer = actualReport(ready(order, from), actuals, from, batchFacts)
  if (answer.status === 'invalid') throw new Error(JSON.stringify(answer.problems))
  return answer.report
}

describe('what was really weighed', () => {
  test('as planned is as planned, with nothing to do', () => {
    const report = reported({})
    expect(report.verdict).toBe('asPlanned')
    expect(report.superfatPercent).toBeCloseTo(5, 9)
    expect([report.fixes, report.deviations]).toEqual([[], []])
  })

  test('tells the real superfat: 1 - (alkali / 39.997) / fat', () => {
    // By hand: 1 - (145 / 39.997) / (690 x 190 / 56105 + 305 x 257 / 56105) = 1 - 3.625272 / 3.733803.
    const report = reported({ 'oil:olive': 690, 'oil:coconut': 305, 'alkali:naoh': 145 })
    expect(report.superfatPercent).toBeCloseTo(2.9067, 2)
  })

  test('counts acids as they were weighed', () => {
    const acids = [{ acid: 'citric', grams: 15, alkali: 'add' as const }]
    // By hand: the hydroxide for 5 g too much, 3 x 5 / 192.123 mol of 3.744764.
    const report = reported({ 'acid:0': 10 }, { ...ORDER, acids })
    expect(report.superfatPercent).toBeCloseTo(5 - (100 * (15 / 192.123)) / 3.744764, 3)
  })

  test('tells lines more than half a percent off, and not slips within a step of the scale', () => {
    const order = { ...ORDER, scale: { oilStepG: 5, lyeStepG: 0.1 } }
    const { deviations } = reported({ 'oil:olive': 695, 'oil:coconut': 310 }, order)
    expect(deviations).toEqual([
      {
        key: 'oil:coconut',
        name: 'coconut',
        plannedG: 300,
        actualG: 310,
        percent: expect.closeTo(3.333, 3) as number,
      },
    ])
  })
})

describe('lye weighed over', () => {
  // By hand: 155 g NaOH are 3.875291 mol on 3.744764 mol of fat: 3.4856 % over.
  const report = reported({ 'alkali:naoh': 155 })

  test('is free lye, and how much', () => {
    expect(report.verdict).toBe('freeLye')
    expect(report.superfatPercent).toBeCloseTo(-3.4856, 3)
    expect(report.freeAlkaliG).toSatisfy(near(5.2207, 0.002))
    expect(report.advice[0]).toMatch(/more lye than the fat can use: superfat -3\.5 %\. It burns/u)
  })

  test('is mended by so much of an oil that the superfat is as asked, the largest oil first', () => {
    // By hand: 3.875291 / 0.95 - 3.744764 = 0.334490 mol; x 56105 / 190 = 98.77 g, up to 99 g.
    const [first, second] = report.fixes
    expect(first).toMatchObject({ kind: 'addOil', oil: 'olive', grams: 99 })
    // x 56105 / 257 = 73.02 g, up to 74 g.
    expect(second).toMatchObject({ kind: 'addOil', oil: 'coconut', grams: 74 })
    expect(first).toHaveProperty('superfatPercent', expect.closeTo(5.02, 1))
  })

  test('is mended only while it is liquid', () => {
    expect(report.advice.join(' ')).toMatch(/Only while it is still liquid/u)
  })

  test('a little is lean or could be free lye in the leanest lots', () => {
    expect(reported({ 'alkali:naoh': 144 }).verdict).toBe('lean')
    expect(reported({ 'alkali:naoh': 149 }).verdict).toBe('freeLyePossible')
  })

  test('is mended for the leanest lots too', () => {
    const wide = libraryOf({ olive: [170, 190, 210], coconut: [257, 257, 257] })
    const order = { ...ORDER, superfat: 9 }
    const plan = ready(order, wide)
    const answer = actualReport(plan, { 'alkali:naoh': 155 }, wide, batchFacts)
    if (answer.status === 'invalid') throw new Error('refused')
    for (const fix of answer.report.fixes)
      if (fix.kind === 'addOil') expect(fix.worstPercent.min).toBeGreaterThanOrEqual(-1e-9)
    expect(answer.report.fixes).toHaveLength(2)
  })
})

describe('an oil forgotten', () => {
  const report = reported({ 'oil:coconut': 0 })

  test('is free lye until it is put in, and nothing more is needed', () => {
    // By hand: 1 - 3.557526 / (700 x 190 / 56105) = 1 - 3.557526 / 2.370555.
    expect(report.superfatPercent).toBeCloseTo(-50.07, 1)
    expect(report.fixes).toEqual([
      { kind: 'putIn', key: 'oil:coconut', name: 'coconut', grams: 300 },
    ])
    expect(report.advice.join(' ')).toMatch(/Put in what is missing: 300\.0 g coconut/u)
  })

  test('and lye over: first the oil, then more of one', () => {
    const both = reported({ 'oil:coconut': 0, 'alkali:naoh': 155 })
    expect(both.fixes.map(({ kind }) => kind)).toEqual(['putIn', 'addOil', 'addOil'])
    expect(both.fixes[1]).toMatchObject({ oil: 'olive', grams: 99 })
  })
})

test('too little lye is safe and rich, and no lye is added by guess', () => {
  const report = reported({ 'alkali:naoh': 130 })
  expect(report.verdict).toBe('rich')
  expect(report.fixes).toEqual([])
  expect(report.advice.join(' ')).toMatch(/Do not add lye by guess/u)
})

describe('lye that is missing', () => {
  test('is offered as a solution that brings the superfat to what was asked, never more', () => {
    // By hand: (3.557526 - 130 / 39.997) mol x 39.997 = 12.290 g, down to 12.2; water 2 : 1.
    const { topUp, advice } = reported({ 'alkali:naoh': 130 })
    expect(topUp).toMatchObject({ alkaliGrams: { naoh: 12.2 }, waterGrams: 24.4 })
    // 1 - (142.2 / 39.997) / 3.744764
    expect(topUp?.superfatPercent).toBeCloseTo(5.0603, 3)
    expect(advice.join(' ')).toMatch(
      /Only if you are sure .*12\.2 g sodium hydroxide, dissolved in 24\.4 g cold water.*the cautions hold again/u,
    )
  })

  test('is offered as weighed: more of an impure one, and both where both are in use', () => {
    // 0.307282 mol x 39.997 / 0.9 = 13.656 g.
    const impure = reported(
      { 'alkali:naoh': 130 / 0.9 },
      {
        ...ORDER,
        purity: { naoh: 90 },
        purityIs: { naoh: { certificate: 'NA-90', within: 0 } },
      },
    )
    expect(impure.topUp?.alkaliGrams).toEqual({ naoh: 13.6 })
    const both = { ...ORDER, alkali: { naoh: 50, koh: 50 } }
    // Half of 3.557526 mol each: 71.145 g NaOH, 99.798 g KOH; 6.145 g and 9.798 g are missing.
    const { topUp } = reported({ 'alkali:naoh': 65, 'alkali:koh': 90 }, both)
    const { naoh = NaN, koh = NaN } = topUp?.alkaliGrams ?? {}
    // (6.145 / 39.997 + 9.798 / 56.105) / 2 = 0.164138 mol of each.
    expect([naoh, koh]).toEqual([6.5, 9.2])
  })

  test('is no more than the leanest lots take with the scale off twice', () => {
    const wide = libraryOf({ olive: [170, 190, 210] })
    const order = { blend: { olive: 100 }, superfat: 12, scale: { oilStepG: 1, lyeStepG: 1 } }
    const plan = ready(order, wide)
    const answer = actualReport(plan, { 'alkali:naoh': 80 }, wide, batchFacts)
    if (answer.status === 'invalid') throw new Error('refused')
    const { topUp } = answer.report
    // Lean: 999 g x 170 / 56105 = 3.027004 mol; (80 + 2) g are 2.050154; the room is 39.07 g.
    // Wanted: 1000 x 190 / 56105 x 0.88 - 80 / 39.997 = 0.979983 mol, 39.196 g.
    expect(topUp?.alkaliGrams).toEqual({ naoh: 39 })
    expect(topUp?.worstPercent.min).toBeGreaterThanOrEqual(0)
  })

  test('is not offered where nothing is missing, nor where an oil is', () => {
    expect(reported({}).topUp).toBeNull()
    expect(reported({ 'oil:coconut': 0 }).topUp).toBeNull()
    expect(reported({ 'alkali:naoh': 150 }).topUp).toBeNull()
  })
})

test('a batch that was confirmed lean is held to its typical lots', () => {
  const wide = libraryOf({ olive: [170, 190, 210] })
  const plan = ready(
    { blend: { olive: 100 }, superfat: 3, confirmedLean: 'Titrated this olive lot' },
    wide,
  )
  const answer = actualReport(plan, {}, wide, batchFacts)
  expect(answer).toMatchObject({ status: 'reckoned', report: { verdict: 'asPlanned' } })
})

describe('what makes no sense is refused', () => {
  test.for<readonly [Actuals, string]>([
    [{ 'oil:dragon': 5 }, 'actual.oil:dragon'],
    [{ 'oil:olive': -5 }, 'actual.oil:olive'],
    [{ 'alkali:naoh': NaN }, 'actual.alkali:naoh'],
    [{ 'oil:olive': 0, 'oil:coconut': 0 }, 'actual'],
  ])('%o', ([actuals, path]) => {
    const answer = actualReport(ready(ORDER, from), actuals, from, batchFacts)
    expect(answer).toMatchObject({ status: 'invalid', problems: [{ path }] })
  })
})

describe('oil offered to mend lye', () => {
  test('is so much that the leanest lot of it uses up the lye, not the typical one', () => {
    const wide = libraryOf({ olive: [170, 190, 210] })
    const plan = ready({ blend: { olive: 100 }, superfat: 12 }, wide)
    const answer = actualReport(plan, { 'alkali:naoh': 140 }, wide, batchFacts)
    if (answer.status === 'invalid') throw new Error('refused')
    // By hand: lean, 140 / 39.997 - 1000 x 170 / 56105 = 0.470219 mol, x 56105 / 170 = 155.19 g (at 190 it
    // would be 138.9 g). Typical, 3.500263 / 0.88 - 3.386507 = 0.591065 mol, x 56105 / 190 = 174.53 g.
    expect(answer.report.fixes[0]).toMatchObject({ kind: 'addOil', grams: 175 })
    const lean = ready({ blend: { olive: 100 }, superfat: 11 }, wide)
    const at = { ...lean, superfat: { ...lean.superfat, askedPercent: 2 } }
    const second = actualReport(at, { 'alkali:naoh': 140 }, wide, batchFacts)
    if (second.status === 'invalid') throw new Error('refused')
    // Asked 2 %: 3.500263 / 0.98 - 3.386507 = 0.185190 mol are 54.7 g, so the lean need decides: 155.19 g.
    expect(second.report.fixes[0]).toMatchObject({ kind: 'addOil', grams: 156 })
  })

  test('counts the scale’s error of what is added as well as of what is in', () => {
    const wide = libraryOf({ olive: [170, 190, 210] })
    const order = { blend: { olive: 100 }, superfat: 12, scale: { oilStepG: 5, lyeStepG: 1 } }
    const lean = ready(order, wide)
    const at = { ...lean, superfat: { ...lean.superfat, askedPercent: 2 } }
    const answer = actualReport(at, { 'alkali:naoh': 140 }, wide, batchFacts)
    if (answer.status === 'invalid') throw new Error('refused')
    // By hand: 141 / 39.997 - 995 x 170 / 56105 = 0.510388 mol, 168.44 g, + 5 g of error: 173.4, up to 175.
    expect(answer.report.fixes[0]).toMatchObject({ grams: 175 })
  })
})

describe('lye that is missing, weighed twice', () => {
  test('leaves room for two errors of the scale, not one', () => {
    const wide = libraryOf({ olive: [170, 190, 210] })
    const order = { blend: { olive: 100 }, superfat: 12, scale: { oilStepG: 1, lyeStepG: 5 } }
    const plan = ready(order, wide)
    const answer = actualReport(plan, { 'alkali:naoh': 80 }, wide, batchFacts)
    if (answer.status === 'invalid') throw new Error('refused')
    // By hand: 999 x 170 / 56105 = 3.027004 mol are 121.071 g. With 5 g off twice 31.07 g are left, down to
    // 30; with 5 g off once it would be 36.07 g, down to 35.
    expect(answer.report.topUp?.alkaliGrams).toEqual({ naoh: 30 })
    // 1 - (80 + 30 + 10) / 121.071.
    expect(answer.report.topUp?.worstPercent.min).toBeCloseTo(0.885, 2)
  })
})

describe('acid forgotten', () => {
  const acids = [{ acid: 'citric', grams: 40, alkali: 'add' as const }]
  const report = reported({ 'acid:0': 0 }, { ...ORDER, water: { ratio: 3 }, acids })

  test('is never put in dry: oil comes first, then acid dissolved in cold water', () => {
    expect(report.fixes.map(({ kind }) => kind)).toEqual(['addOil', 'addOil', 'dissolveAcid'])
    expect(report.fixes.at(-1)).toMatchObject({ grams: 40, waterG: 200 })
    const said = report.advice.join(' ')
    expect(said).not.toMatch(/Put in what is missing/u)
    expect(said).toMatch(/never dry acid into lye or raw soap/u)
    expect(said).toMatch(/dissolved in 200 g cold water, by spoonfuls, off the heat/u)
    expect(said).toMatch(/throw the batch away as caustic waste/u)
    expect(said.indexOf('Add ')).toBeLessThan(said.indexOf('dissolved in'))
  })

  test('is mended by oil reckoned without it', () => {
    // By hand: 40 g take 3 x 40 / 192.123 = 0.624600 mol; hydroxide 3.557526 + 0.624600, down to 0.1 g.
    const [olive] = report.fixes
    // 4.182126 / 0.95 - 3.744764 = 0.657474 mol; x 56105 / 190 = 194.1 g.
    expect(olive).toMatchObject({ kind: 'addOil', oil: 'olive' })
    expect(olive?.grams).toSatisfy(near(194.5, 1))
  })
})
