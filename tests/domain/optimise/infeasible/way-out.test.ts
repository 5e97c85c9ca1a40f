import { expect, test } from 'vitest'
import { limitsOf, withLimit } from '../../../../src/domain/optimise/brief/limits'
import { conflictOf } from '../../../../src/domain/optimise/infeasible/conflict-linear'
import { nearestWayOut } from '../../../../src/domain/optimise/infeasible/way-out'
import { singleChanges } from '../../../../src/domain/optimise/infeasible/single-changes'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { clashCases } from '../sensitivity/random-briefs'
import { bestValue } from '../sensitivity/reference'

/** Briefs in which a second clash stands behind the first, so that no single change is enough. */
const stubborn = clashCases(300, 9200)
  .filter((one) => bestValue(one) === undefined)
  .filter(
    ({ brief, library }) => singleChanges(brief, conflictOf(brief, library), library).length === 0,
  )

test('where no single change is enough, several together are, and their blend keeps all the rest', () => {
  expect(stubborn.length).toBeGreaterThan(20)
  for (const { name, brief, library } of stubborn) {
    const way = nearestWayOut(brief, library)
    expect(way, name).toBeDefined()
    expect(way?.changes.length, name).toBeGreaterThan(1)
    const eased = (way?.changes ?? []).reduce((kept, { limit: path, to }) => {
      const limit = limitsOf(brief).find((one) => one.path === path)
      return limit ? withLimit(kept, limit, to) : kept
    }, brief)
    expect(breaches(eased, way?.found.blend ?? {}, library), name).toEqual([])
  }
})

test('rules are kept, or nothing is offered', () => {
  for (const { name, brief, library } of stubborn) {
    const way = nearestWayOut({ ...brief, rules: { atMostOils: 2 } }, library)
    if (!way) continue
    const present = Object.values(way.found.blend).filter((share) => share > 1e-6)
    expect(present.length, name).toBeLessThanOrEqual(2)
  }
})
