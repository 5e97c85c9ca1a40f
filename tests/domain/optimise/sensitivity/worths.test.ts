import { describe, expect, test } from 'vitest'
import { type Limit, limitsOf } from '../../../../src/domain/optimise/brief/limits'
import {
  type LimitReason,
  type Reasons,
  reasonsFor,
} from '../../../../src/domain/optimise/why/reasons'
import { type Case, randomCases } from './random-briefs'
import { bestBlendOf, bestCost, feasibleOnes, moved } from './reference'

/** Briefs of each kind; those without a blend are left out. */
const PER_KIND = 45
const SEED = 11

/** Difference of two goal values that is rounding, in their unit: values are near 10 to 100. */
const ROUNDING = 1e-7
/** Part of a stretch that is left out at its end, where rounding decides. */
const SHORT_OF_END = 1e-5
/** How far past its end a stretch is probed, in the limit's unit. */
const PAST_END = 0.5
/** A step of a limit after which no blend may be left, or nothing may have changed. */
const SMALL_STEP = 1e-4

const cases = feasibleOnes(randomCases(PER_KIND, SEED))
const told = cases.map((one, n) => ({
  one,
  reasons: reasonsOf(one, n),
  cost: bestCost(one) ?? NaN,
}))
const limits = told.flatMap(({ one, reasons, cost }) =>
  reasons.limits.map((reason) => ({ one, cost, reason, limit: limitOf(one, reason.limit) })),
)

/** Every other time the reasons are asked about the blend that another solver finds best. */
function reasonsOf(one: Case, n: number): Reasons {
  const blend = n % 2 === 0 ? undefined : bestBlendOf(one)
  const reasons = reasonsFor(one.brief, one.library, { blend })
  if (!reasons) throw new Error(`No reasons for ${one.name}`)
  return reasons
}

function limitOf({ brief }: Case, path: string): Limit {
  const limit = limitsOf(brief).find((other) => other.path === path)
  if (!limit) throw new Error(`No limit ${path}`)
  return limit
}

type Listed = (typeof limits)[number]
type Way = 'relax' | 'tighten'
const WAYS: readonly Way[] = ['relax', 'tighten']

/** The stretch of a limit on one side: sign of the move, its length, and what the cost does per unit. */
function stretch({ value, side }: Limit, { worthPerUnit, span }: LimitReason, way: Way) {
  const sign = (side === 'min') === (way === 'relax') ? -1 : 1
  const end = sign < 0 ? span[0] : span[1]
  const length = end === null ? Infinity : Math.abs(end - value)
  const worth = worthPerUnit[way]
  return { sign, length, slope: worth === null ? null : way === 'relax' ? -worth : worth }
}

/** Best cost after a move of a limit, less what its worth says; undefined where no blend is left. */
function offLine({ one, cost, limit }: Listed, sign: number, slope: number, step: number) {
  const after = bestCost(moved(one, limit.path, limit.value + sign * step))
  return after === undefined ? undefined : after - (cost + slope * step)
}

function isShare({ kind }: Limit): boolean {
  return kind !== 'measure'
}

test('there are hundreds of limits with a worth, many of them with two', () => {
  expect(cases.length).toBeGreaterThan(200)
  expect(limits.length).toBeGreaterThan(300)
  const differ = limits.filter(({ reason: { worthPerUnit } }) => {
    const { relax, tighten } = worthPerUnit
    return tighten !== null && tighten - relax > 1e-6
  })
  expect(differ.length).toBeGreaterThan(60)
  expect(
    limits.filter(({ reason }) => reason.worthPerUnit.tighten === null).length,
  ).toBeGreaterThan(20)
})

describe.each(WAYS)('the worth of a limit to %s', (way) => {
  test('is what HiGHS finds the best goal value to change by, up to the end of its span', () => {
    for (const listed of limits) {
      const { one, reason, limit } = listed
      const { sign, length, slope } = stretch(limit, reason, way)
      if (slope === null) continue
      const whole = Math.min(length, 20)
      for (const part of [0.3, 1 - SHORT_OF_END]) {
        const off = offLine(listed, sign, slope, part * whole)
        expect(Math.abs(off ?? NaN), `${one.name} ${limit.path} ${part}`).toBeLessThan(ROUNDING)
      }
    }
  })

  test('does not hold beyond its span', () => {
    for (const listed of limits) {
      const { one, reason, limit } = listed
      const { sign, length, slope } = stretch(limit, reason, way)
      if (slope === null || length === Infinity) continue
      const beyond = limit.value + sign * (length + PAST_END)
      if (isShare(limit) && (beyond < 0 || beyond > 100)) continue
      const off = offLine(listed, sign, slope, length + PAST_END) ?? Infinity
      expect(off, `${one.name} ${limit.path}`).toBeGreaterThan(ROUNDING)
    }
  })
})

test('the worth of a limit to tighten is missing only where no blend is left', () => {
  for (const { one, reason, limit } of limits) {
    const { sign, length, slope } = stretch(limit, reason, 'tighten')
    if (slope !== null) continue
    expect(length).toBe(0)
    const beyond = limit.value + sign * SMALL_STEP
    if (isShare(limit) && (beyond < 0 || beyond > 100)) continue
    expect(bestCost(moved(one, limit.path, beyond)), `${one.name} ${limit.path}`).toBeUndefined()
  }
})

test('worths are never below 0, and asking more never costs less than giving way saves', () => {
  for (const { reason } of limits) {
    const { relax, tighten } = reason.worthPerUnit
    expect(relax).toBeGreaterThanOrEqual(0)
    expect(tighten ?? Infinity).toBeGreaterThanOrEqual(relax - ROUNDING)
  }
})

test('a limit without a worth can go, or ask a little more, and nothing changes', () => {
  let count = 0
  for (const { one, reasons, cost: before } of told) {
    const listed = new Set(reasons.limits.map(({ limit }) => limit))
    const stated = limitsOf(one.brief)
    for (const limit of stated.filter(({ path }) => !listed.has(path))) {
      const without = bestCost(moved(one, limit.path, undefined)) ?? NaN
      expect(Math.abs(without - before), `${one.name} ${limit.path}`).toBeLessThan(ROUNDING)
      if (asksNothing(limit) || stated.some((other) => isOtherEnd(other, limit))) continue
      const more = limit.value + (limit.side === 'min' ? 1 : -1) * SMALL_STEP
      if (isShare(limit) && (more < 0 || more > 100)) continue
      const after = bestCost(moved(one, limit.path, more)) ?? NaN
      expect(Math.abs(after - before), `${one.name} ${limit.path}`).toBeLessThan(ROUNDING)
      count++
    }
  }
  expect(count).toBeGreaterThan(300)
})

/** A share of at least 0 or at most 100 %. */
function asksNothing({ kind, side, value }: Limit): boolean {
  return kind !== 'measure' && value === (side === 'min' ? 0 : 100)
}

/** The other end of a range without width. */
function isOtherEnd(other: Limit, { path, kind, subject, value }: Limit): boolean {
  return (
    other.path !== path && other.kind === kind && other.subject === subject && other.value === value
  )
}
