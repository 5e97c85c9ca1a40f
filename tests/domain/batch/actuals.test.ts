import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { type Actuals, actualReport } from '../../../src/domain/batch/actuals'
import type { BatchOrder } from '../../../src/domain/batch/order'
import { libraryOf, near, ready } from './plans'

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
      if (fix.kind === 'addOil') expect(fix.leanestPercent).toBeGreaterThanOrEqual(-1e-9)
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

test('a batch that was confirmed lean is held to its typical lots', () => {
  const wide = libraryOf({ olive: [170, 190, 210] })
  const plan = ready({ blend: { olive: 100 }, superfat: 3, confirmedLean: 'Titrated' }, wide)
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
