import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { Allowance } from '../../../../src/domain/optimise/search/allowance'
import {
  conflictUnderRules,
  keepingOnly,
} from '../../../../src/domain/optimise/infeasible/conflict-ruled'
import { solveWithOwn } from '../../../../src/domain/lp/solvers/own'
import { AMPLE, solved } from '../search/agreement'
import { ruledBriefs } from '../search/ruled-briefs'

const NOTHING: Brief = { oils: {}, groups: [], measures: {}, goal: { maximise: 'lather' } }

function conflictOf(brief: Brief): readonly string[] {
  const answer = solved({ ...NOTHING, ...brief })
  return answer.status === 'infeasible' ? answer.conflict : [answer.status]
}

describe('what clashes in a brief with rules, by hand', () => {
  test.each<[string, Partial<Brief>, string[]]>([
    [
      'more oils needed than allowed',
      {
        oils: { olive: { min: 10 }, palm: { min: 10 }, castor: { min: 5 }, lard: { max: 50 } },
        rules: { atMostOils: 2, absentOrAtLeast: 3 },
      },
      ['oils.olive.min', 'oils.palm.min', 'oils.castor.min', 'rules.atMostOils'],
    ],
    [
      'two oils needed of which one may be in',
      {
        oils: { olive: { min: 10 }, palm: { min: 10 }, castor: {} },
        rules: {
          oneOf: [
            ['palm', 'castor'],
            ['olive', 'palm'],
          ],
          atMostOils: 3,
        },
      },
      ['oils.olive.min', 'oils.palm.min', 'rules.oneOf[1]'],
    ],
    [
      'an oil needed whose companion may not be in',
      {
        oils: { olive: { max: 0 }, palm: { min: 10 }, castor: {} },
        rules: { requires: [{ oil: 'palm', with: 'olive' }], shareStep: 1 },
      },
      ['oils.olive.max', 'oils.palm.min', 'rules.requires[0]'],
    ],
    [
      'most shares that add to less than 100 % in steps',
      { oils: { olive: { max: 55 }, palm: { max: 49 } }, rules: { shareStep: 10 } },
      ['oils.olive.max', 'oils.palm.max', 'rules.shareStep'],
    ],
    [
      'a least share over the most',
      { oils: { olive: { max: 55 }, palm: { max: 49 } }, rules: { absentOrAtLeast: 50 } },
      ['oils.olive.max', 'oils.palm.max', 'rules.absentOrAtLeast'],
    ],
    [
      'limits that clash without the rules',
      { oils: { olive: { max: 55 }, palm: { max: 40 } }, rules: { atMostOils: 1 } },
      ['oils.olive.max', 'oils.palm.max'],
    ],
  ])('%s', (_what, brief, conflict) => {
    expect(conflictOf({ ...NOTHING, ...brief })).toEqual(conflict)
  })
})

describe('a conflict of a random brief', () => {
  test('has no blend, and has one as soon as any member is dropped', () => {
    let withRules = 0
    const draw = { count: 100, seed: 5300, least: 3, most: 14, kind: 'use' } as const
    for (const brief of ruledBriefs(draw)) {
      const answer = solved(brief)
      if (answer.status !== 'infeasible') continue
      const { conflict } = answer
      expect(answer.mayBeSmaller).toBeUndefined()
      if (conflict.some((path) => path.startsWith('rules'))) withRules++
      expect(solved(keepingOnly(brief, conflict)).status).toBe('infeasible')
      for (const path of conflict) {
        const rest = conflict.filter((other) => other !== path)
        expect(solved(keepingOnly(brief, rest)).status, `without ${path}`).toBe('optimal')
      }
    }
    expect(withRules).toBeGreaterThan(10)
  })

  test('says so where time did not suffice to show that each member is needed', () => {
    let cut = 0
    const draw = { count: 60, seed: 5400, least: 6, most: 14, kind: 'both' } as const
    for (const brief of ruledBriefs(draw)) {
      if (solved(brief, { timeMs: Infinity, nodes: 2000 }).status !== 'infeasible') continue
      const short = conflictUnderRules(brief, library, solveWithOwn, new Allowance({ nodes: 20 }))
      expect(solved(keepingOnly(brief, short.conflict), AMPLE).status).toBe('infeasible')
      if (short.mayBeSmaller) cut++
    }
    expect(cut).toBeGreaterThan(0)
  })
})
