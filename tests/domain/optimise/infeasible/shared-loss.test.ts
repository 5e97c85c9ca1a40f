import { describe, expect, test } from 'vitest'
import { measureOf } from '../../../../src/domain/blend/library'
import { limitsOf, withLimit } from '../../../../src/domain/optimise/brief/limits'
import { conflictOf } from '../../../../src/domain/optimise/infeasible/conflict-linear'
import { sharedLoss } from '../../../../src/domain/optimise/infeasible/shared-loss'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { clashCases, randomCases } from '../sensitivity/random-briefs'
import { bestValue } from '../sensitivity/reference'

const SEED = 9100
const clashes = [...randomCases(20, SEED), ...clashCases(120, SEED)]
  .filter((one) => bestValue(one) === undefined)
  .map((one) => {
    const conflict = conflictOf(one.brief, one.library)
    return { one, conflict, shared: sharedLoss(one.brief, conflict, one.library) }
  })
const answered = clashes.flatMap(({ shared, ...rest }) => (shared ? [{ ...rest, shared }] : []))

/** Each limit of the conflict moved by so many units: ties of a measure, percentage points of a share. */
function eased({ one, conflict }: Omit<(typeof clashes)[number], 'shared'>, units: number) {
  const brief = limitsOf(one.brief)
    .filter(({ path }) => conflict.includes(path))
    .reduce((kept, limit) => {
      const by = units * (limit.kind === 'measure' ? measureOf(one.library, limit.subject).tie : 1)
      const to = limit.value + (limit.side === 'min' ? -by : by)
      return withLimit(kept, limit, limit.kind === 'measure' ? to : Math.min(100, Math.max(0, to)))
    }, one.brief)
  return { ...one, brief }
}

/** The most units any limit gives way by in an answer, rounding included. */
function mostUnits({ one, shared }: (typeof answered)[number]): number {
  const gives = shared.changes.map(({ limit: path, from, to }) => {
    const limit = limitsOf(one.brief).find((each) => each.path === path)
    const tie = limit?.kind === 'measure' ? measureOf(one.library, limit.subject).tie : 1
    return Math.abs(to - from) / tie
  })
  return Math.max(...gives)
}

/** Rounding moves a limit by two marks at most: 0.2 points or percent, 0.02 of money. */
const ROUNDING_UNITS = 0.2

describe('sharing the loss of a clash', () => {
  test('has an answer to most clashes of two limits and more', () => {
    const several = clashes.filter(({ conflict }) => conflict.length > 1)
    expect(several.length).toBeGreaterThan(40)
    expect(answered.length).toBeGreaterThan(several.length / 2)
  })

  test('moves every limit of the clash and no other, and its blend keeps them all as moved', () => {
    for (const { one, conflict, shared } of answered) {
      expect(shared.changes.map(({ limit }) => limit).toSorted()).toEqual(conflict.toSorted())
      const brief = shared.changes.reduce((kept, { limit: path, to }) => {
        const limit = limitsOf(one.brief).find((each) => each.path === path)
        return limit ? withLimit(kept, limit, to) : kept
      }, one.brief)
      expect(breaches(brief, shared.found.blend, one.library)).toEqual([])
    }
  })

  test('moves them no further than it takes: HiGHS finds no blend a little short of it', () => {
    for (const each of answered) {
      const units = mostUnits(each)
      expect(bestValue(eased(each, units)), each.one.name).toBeDefined()
      const less = units - 2 * ROUNDING_UNITS
      if (less > 0) expect(bestValue(eased(each, less)), each.one.name).toBeUndefined()
    }
  })

  test('has no answer only where HiGHS has none however far the clash gives way', () => {
    const FAR = 1e4
    for (const { one, conflict, shared } of clashes) {
      if (shared) continue
      expect(bestValue(eased({ one, conflict }, FAR)), one.name).toBeUndefined()
    }
  })
})
