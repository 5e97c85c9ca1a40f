import { beforeAll, describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import { briefProgram } from '../../src/domain/optimise/space/brief-program'
import { highs } from '../domain/lp/solvers/loaded-highs'
import { disagreement, solved } from '../domain/optimise/search/agreement'
import { loadHighsOnBriefs, type RuledReference } from '../domain/optimise/search/highs-briefs'
import { ruledBriefs, type RuleKind } from '../domain/optimise/search/ruled-briefs'
import { sampleBriefs } from '../property/briefs'

/** So many of limits alone, and so many of each kind of rules: 50,000 in all. */
const LINEAR = 38_000
/** With it the part that either search may leave open: of 150 in steps 11 were, of 150 in both 5. */
const RULED: readonly (readonly [RuleKind, number, number])[] = [
  ['use', 8_000, 0.01],
  ['both', 2_000, 0.08],
  ['steps', 2_000, 0.15],
]
/** A seed apart from those of the usual tests. */
const SEED = 700_000
/** Briefs that are drawn and held at once. */
const AT_ONCE = 1_000
/** What either search may take. */
const HIGHS_NODES = 20_000
const SEARCH = { timeMs: Infinity, nodes: 5_000 }

function truthOf(brief: Brief): RuledReference {
  const outcome = highs(briefProgram(brief, library))
  if (outcome.status === 'unbounded') return { status: 'unfinished' }
  return outcome
}

describe('random briefs against HiGHS', () => {
  let highsUnderRules: (brief: Brief, nodes: number) => RuledReference
  beforeAll(async () => {
    highsUnderRules = await loadHighsOnBriefs()
  })

  test(`${LINEAR} of limits alone: same verdict, same goal, every limit kept`, () => {
    const faults: unknown[] = []
    const seen = { blends: 0, none: 0 }
    for (let done = 0; done < LINEAR; done += AT_ONCE) {
      for (const brief of sampleBriefs(Math.min(AT_ONCE, LINEAR - done), SEED + done)) {
        const answer = solved(brief)
        if (answer.status === 'optimal') seen.blends++
        else seen.none++
        const wrong = disagreement(brief, answer, truthOf(brief))
        if (wrong.length > 0) faults.push([wrong, JSON.stringify(brief)])
      }
    }
    expect(faults).toEqual([])
    expect(Math.min(seen.blends, seen.none)).toBeGreaterThan(LINEAR / 10)
  })

  test.each(RULED)(
    'with rules on %s, %i: the same, and every rule kept',
    (kind, count, mostOpen) => {
      const faults: unknown[] = []
      let open = 0
      for (let done = 0; done < count; done += AT_ONCE) {
        const draw = { count: Math.min(AT_ONCE, count - done), seed: SEED + done, kind }
        for (const brief of ruledBriefs({ ...draw, least: 2, most: 12 })) {
          const answer = solved(brief, SEARCH)
          const truth = highsUnderRules(brief, HIGHS_NODES)
          const isOpen = truth.status === 'unfinished' || answer.status === 'undecided'
          if (isOpen || answer.status === 'feasible') open++
          const wrong = disagreement(brief, answer, truth)
          if (wrong.length > 0) faults.push([wrong, JSON.stringify(brief)])
        }
      }
      expect(faults).toEqual([])
      expect(open).toBeLessThanOrEqual(mostOpen * count)
    },
  )
})
