import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import { cookClock } from '../../../src/domain/batch/workshop/cook-clock'
import { climbOf, lastTime } from '../../../src/domain/batch/workshop/temperatures'
import { cookedPot } from '../../../src/domain/batch/workshop/cooked-pot'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { withPartUsed } from '../../../src/domain/batch/workshop/gate'
import { PART_KEY } from '../../../src/domain/batch/workshop/standing'
import { workSteps } from '../../../src/domain/batch/sheet/steps'
import { batterG, readingsOf } from '../../../src/domain/batch/actual/vessels'
import {
  lineVerdict,
  openScreens,
  type Progress,
  workScreens,
} from '../../../src/domain/batch/workshop/work-screens'
import { ready } from './plans'

const known = { library, facts: batchFacts }
const HOT: Partial<BatchOrder> = {
  process: 'hot',
  cook: { extraWaterPercentOfOils: 5 },
  superfat: 8,
  scale: { oilStepG: 1, lyeStepG: 1 },
}

describe('pot and jug', () => {
  const plan = ready(HOT)
  const steps = workSteps(plan)

  test('show their own weight too, where it is known', () => {
    const zeroed = readingsOf(steps).get('water')
    const tared = readingsOf(steps, {}, { tares: { jug: 412 } }).get('water')
    expect([zeroed?.vessel, tared?.beforeG]).toEqual(['jug', 412])
    expect(tared?.showsG).toBe((zeroed?.showsG ?? NaN) + 412)
  })

  test('the pot takes the whole jug, or the part of the lye that is used with plain water', () => {
    expect(batterG(steps, {}, undefined)).toBeCloseTo(plan.totalGrams, 9)
    const part = { usedG: 300, ofG: 400, waterG: 40 }
    expect(batterG(steps, {}, part)).toBeCloseTo(1000 + 340, 9)
  })
})

describe('the pot after the cook', () => {
  const plan = ready(HOT)

  test('tells how much water has gone and what to put back', () => {
    // By hand: 1,500 g in a pot of 800 g; 2,230 g are read: 70 g gone, 50 g of it planned.
    const pot = cookedPot(plan, 1500, {}, { potG: 800, readsG: 2230 })
    expect(pot).toMatchObject({ soapG: 1430, lostG: 70, plannedLossG: 50, putBackG: 20 })
    expect(pot.thenReadsG).toBe(2250)
    expect(pot.waterPlannedG - pot.waterLeftG).toBeCloseTo(20, 9)
    expect(pot.doubtful).toBe(false)
  })

  test('less gone than planned asks for no water', () => {
    const pot = cookedPot(plan, 1500, {}, { potG: 800, readsG: 2270 })
    expect([pot.lostG, pot.putBackG]).toEqual([30, 0])
  })

  test('heavier than before, or lighter than without any water, can’t be', () => {
    expect(cookedPot(plan, 1500, {}, { potG: 800, readsG: 2310 }).doubtful).toBe(true)
    expect(cookedPot(plan, 1500, {}, { potG: 800, readsG: 1700 }).doubtful).toBe(true)
  })
})

describe('the clock of a cook', () => {
  const usual = { low: 60, high: 180 }
  const MINUTE = 60_000
  const at = (minutes: number, stirred: readonly number[] = []) =>
    cookClock({ startedAt: 0, stirredAt: stirred.map((m) => m * MINUTE) }, minutes * MINUTE, usual)

  test('counts from its start, whatever happened since', () => {
    expect(at(38 + 20 / 60).face).toBe('38:20')
    expect(at(62 + 5 / 60).face).toBe('1:02:05')
    expect(cookClock({ startedAt: 5000, stirredAt: [] }, 0, usual).face).toBe('0:00')
  })

  test('asks for a stir every quarter of an hour, after the last one', () => {
    expect(at(14)).toMatchObject({ nextStirMin: 15, stirDue: false })
    expect(at(15)).toMatchObject({ stirDue: true })
    expect(at(31, [14.8, 30.5])).toMatchObject({ nextStirMin: 45, stirDue: false })
  })

  test('knows the usual time', () => {
    expect([at(59).state, at(60).state, at(181).state]).toEqual(['early', 'within', 'beyond'])
  })
})

describe('the screens that are open', () => {
  const plan = ready(HOT)
  const screens = workScreens(plan, false)
  const everything: Progress = {
    cautionRead: true,
    actual: Object.fromEntries(plan.ingredients.map(({ key, grams }) => [key, grams])),
    left: {},
    ticks: Object.fromEntries(
      screens.flatMap(({ key, line }) => (line ? [] : [[key, 0] as const])),
    ),
  }
  const openTo = (progress: Progress) => {
    const open = openScreens(plan, screens, progress, known)
    return screens[open]?.key ?? 'all'
  }

  test('are all of them when all is done as planned', () => {
    expect(openTo(everything)).toBe('all')
  })

  test('stand before the caution is read at the caution', () => {
    expect(openTo({ ...everything, cautionRead: false })).toBe('caution')
  })

  test('a stop stands before lye meets oil, and one after the cook', () => {
    const keys = screens.map(({ key }) => key)
    expect(keys[keys.indexOf('combine') - 1]).toBe('gate:combine')
    expect(keys.indexOf('gate:cooked')).toBeGreaterThan(keys.indexOf('pot'))
    expect(keys.indexOf('gate:cooked')).toBeLessThan(keys.indexOf('mould'))
  })

  test('end at a weight that is off, however late it was changed', () => {
    const naoh = plan.alkaliGrams.naoh ?? NaN
    for (const grams of [naoh + 3, naoh * 1.4, 400])
      expect(
        openTo({ ...everything, actual: { ...everything.actual, 'alkali:naoh': grams } }),
      ).toBe('alkali:naoh')
  })

  test('end at hydroxide that nobody weighed, ticked or not', () => {
    const { 'alkali:naoh': naoh = NaN, ...actual } = everything.actual
    const ticks = { ...everything.ticks, 'alkali:naoh': naoh }
    expect(openTo({ ...everything, actual, ticks })).toBe('alkali:naoh')
  })

  test('an oil passed over counts as asked and is open', () => {
    const { 'oil:olive': olive = NaN, ...actual } = everything.actual
    expect(openTo({ ...everything, actual })).toBe('oil:olive')
    const ticks = { ...everything.ticks, 'oil:olive': olive }
    expect(openTo({ ...everything, actual, ticks })).toBe('all')
  })
})

test('lye poured beyond the part that was to be stops at its own weighing, not before', () => {
  const plan = ready(HOT)
  const naoh = (plan.alkaliGrams.naoh ?? NaN) + 50
  const screens = workScreens(plan, true)
  const planned = plan.ingredients.map(({ key, grams }) => [key, grams] as const)
  const run: Progress = {
    cautionRead: true,
    actual: { ...Object.fromEntries(planned), 'alkali:naoh': naoh },
    left: {},
    ticks: Object.fromEntries(
      screens.flatMap(({ key, line }) => (line ? [] : [[key, 0] as const])),
    ),
  }
  const verdict = lineVerdict(plan, run, 'alkali:naoh', known)
  const use = verdict.mends.find((mend) => mend.kind === 'usePart')
  expect(use).toBeUndefined()
  const ticks = Object.fromEntries(Object.entries(run.ticks).filter(([key]) => key !== 'combine'))
  const before = { ...run, ticks }
  const [part] = lineVerdict(plan, before, 'alkali:naoh', known).mends.flatMap((mend) =>
    mend.kind === 'usePart' ? [mend] : [],
  )
  if (!part) throw new Error('No part is offered')
  const used = { ...before, ...withPartUsed(before, part) }
  const poured = (usedG: number) => ({ ...used, actual: { ...used.actual, [PART_KEY]: usedG } })
  const openTo = (progress: Progress) => screens[openScreens(plan, screens, progress, known)]?.key
  expect(openTo(poured(part.useG + 100))).toBe('combine')
  expect(openTo({ ...poured(part.useG), ticks: run.ticks })).toBeUndefined()
})

test('the jug holds the cook’s water too while the hydroxide dissolves', () => {
  const plan = ready(HOT)
  const [naoh, water] = [plan.alkaliGrams.naoh ?? NaN, plan.water.plainG + 50]
  expect(plan.water.cookG).toBe(50)
  expect(plan.figures.jugConcentrationPercent).toBeCloseTo((100 * naoh) / (naoh + water), 9)
})

describe('temperatures', () => {
  const at = (step: string, ...read: readonly (readonly [minutes: number, tempC: number])[]) =>
    read.map(([minutes, tempC]) => ({ step, at: minutes * 60_000, tempC }))
  const cook = { id: 'cook', tempC: { low: 70, high: 90 } }

  test('lye that is warmer at the second reading climbs, however they were entered', () => {
    const lye = { id: 'lye', tempC: null }
    expect(climbOf(at('lye', [4, 71], [0, 62]), lye)).toEqual({ fromC: 62, toC: 71, minutes: 4 })
    expect(climbOf(at('lye', [0, 71], [4, 62]), lye)).toBeNull()
    expect(climbOf(at('lye', [0, 62], [4, 63]), lye)).toBeNull()
    expect(climbOf([...at('lye', [0, 30]), ...at('combine', [4, 60])], lye)).toBeNull()
  })

  test('a pot climbs above what it is to hold, and not while it is warmed up', () => {
    expect(climbOf(at('cook', [0, 60], [9, 80]), cook)).toBeNull()
    expect(climbOf(at('cook', [0, 60], [9, 80], [15, 96]), cook)).toEqual({
      fromC: 80,
      toC: 96,
      minutes: 6,
    })
    const fats = { id: 'hardFats', tempC: { low: 50, high: 65 } }
    expect(climbOf(at('hardFats', [0, 40], [9, 80]), fats)).toBeNull()
  })

  test('a time typed is the last one that a clock showed it', () => {
    const now = new Date(2026, 10, 25, 0, 10, 30).getTime()
    const of = (...when: [number, number, number]) => new Date(2026, 10, ...when).getTime()
    expect(lastTime('0:10', now)).toBe(of(25, 0, 10))
    expect(lastTime('00.05', now)).toBe(of(25, 0, 5))
    expect(lastTime('2355', now)).toBe(of(24, 23, 55))
    for (const wrong of ['24:00', '12:60', '7', 'noon', '', '-1:20', '1:2'])
      expect(lastTime(wrong, now), wrong).toBeUndefined()
  })
})
