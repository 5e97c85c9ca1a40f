import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import { checkBrief } from '../../src/domain/optimise/brief/check-brief'
import { isFeasible } from '../domain/optimise/infeasible/feasible'
import { type Limit, limitsOf, withLimit } from '../../src/domain/optimise/brief/limits'
import { reachOfMeasures } from '../../src/domain/optimise/ranges/attainable-linear'
import { BlendSpace } from '../../src/domain/optimise/space/blend-space'
import { singleChanges } from '../../src/domain/optimise/infeasible/single-changes'
import { solveAt } from '../../src/domain/optimise/solve/point'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../src/domain/optimise/solve/solve'
import { highs } from '../domain/lp/solvers/loaded-highs'
import { anyBrief, sampleBriefs } from './briefs'
import { valueOf } from './recheck'

const SEED = 20_262
/** In a goal's own unit; the solver's rounding. */
const NOISE = 1e-6

describe('a brief', () => {
  test('gives the same value whatever the order of its oils, groups and wishes', () => {
    holds((brief) => {
      const turned: Brief = {
        ...brief,
        oils: reversed(brief.oils),
        measures: reversed(brief.measures),
        groups: brief.groups.toReversed(),
      }
      expect(valueOfAnswer(solved(turned))).toBeCloseTo(valueOfAnswer(solved(brief)), 5)
    })
  })

  test('gives no better value with a limit more', () => {
    holds((brief) => {
      const before = solved(brief)
      if (before.status !== 'optimal') return
      for (const tighter of tightened(brief, before)) {
        const after = solved(tighter)
        if (after.status === 'infeasible') continue
        expect(gain(brief, before, after)).toBeLessThanOrEqual(NOISE)
      }
    })
  })

  test('gives no worse value with a limit less', () => {
    holds((brief) => {
      const before = solved(brief)
      for (const limit of limitsOf(brief)) {
        const after = solved(withLimit(brief, limit, undefined))
        if (before.status !== 'optimal') continue
        expect(gain(brief, before, after)).toBeGreaterThanOrEqual(-NOISE)
      }
    })
  })

  test('is answered within what its measures can reach', () => {
    holds((brief) => {
      const answer = solved(brief)
      if (answer.status !== 'optimal') return
      const reach = reachOfMeasures(new BlendSpace(brief, library))
      for (const { id } of library.measures) {
        const range = reach[id]
        expect(answer.measures[id]).toBeGreaterThanOrEqual((range?.min ?? NaN) - NOISE)
        expect(answer.measures[id]).toBeLessThanOrEqual((range?.max ?? NaN) + NOISE)
      }
    }, 40)
  })

  test('can be solved at its own answer, no worse than there', () => {
    holds((brief) => {
      const answer = solved(brief)
      if (answer.status !== 'optimal') return
      const { hardness = NaN, lather = NaN } = answer.measures
      const point = { hardness, lather }
      const there = solveAt(brief, point, library, highs)
      if (there.status !== 'optimal') throw new Error(`No blend at ${JSON.stringify(point)}`)
      expect(valueOf(brief, 'hardness', there.blend)).toBeCloseTo(hardness, 5)
      expect(valueOf(brief, 'lather', there.blend)).toBeCloseTo(lather, 5)
      if (brief.measures.hardness ?? brief.measures.lather) return
      expect(gain(brief, answer, there)).toBeGreaterThanOrEqual(-NOISE * 100)
    })
  })
})

describe('a brief without a blend', () => {
  const infeasible = sampleBriefs(400, SEED).flatMap((brief) => {
    const answer = solved(brief)
    return answer.status === 'infeasible' ? [{ brief, conflict: answer.conflict }] : []
  })

  test('is not rare among these', () => {
    expect(infeasible.length).toBeGreaterThan(40)
  })

  test('names limits that clash, and do not when any one of them is dropped', () => {
    for (const { brief, conflict } of infeasible) {
      const limits = limitsOf(brief)
      const alone = limits
        .filter(({ path }) => !conflict.includes(path))
        .reduce((kept, limit) => withLimit(kept, limit, undefined), brief)
      expect(isFeasible(alone, library, highs)).toBe(false)
      for (const limit of limits.filter(({ path }) => conflict.includes(path)))
        expect(isFeasible(withLimit(alone, limit, undefined), library, highs)).toBe(true)
    }
  })

  test('is freed by each change offered, and not by a step less', () => {
    let offered = 0
    for (const { brief, conflict } of infeasible) {
      for (const { limit, from, to } of singleChanges(brief, conflict, library)) {
        offered += 1
        const one = limitsOf(brief).find(({ path }) => path === limit)
        if (!one) throw new Error(`The brief has no limit ${limit}`)
        expect(solved(withLimit(brief, one, to)).status).toBe('optimal')
        const less = aStepLess(one, to)
        // A step that goes back behind the limit asked is as good as no step.
        const tried = one.side === 'min' ? Math.min(less, from) : Math.max(less, from)
        expect(isFeasible(withLimit(brief, one, tried), library, highs)).toBe(false)
      }
    }
    expect(offered).toBeGreaterThan(40)
  })
})

function holds(property: (brief: Brief) => void, runs = 80): void {
  fc.assert(fc.property(anyBrief, property), { seed: SEED, numRuns: runs })
}

function solved(brief: Brief): Answer {
  return solveBrief(brief, library, highs)
}

/** The goal's value; one number for all that have none, so that both sides of a check may lack it. */
function valueOfAnswer(answer: Answer): number {
  return answer.status === 'optimal' ? answer.goalValue : -1
}

/** By how much the second answer is better for the brief's goal; NaN where it is none. */
function gain({ goal }: Brief, before: Answer, after: Answer): number {
  const difference = valueIn(after) - valueIn(before)
  return 'maximise' in goal ? difference : -difference
}

function valueIn(answer: Answer): number {
  return answer.status === 'optimal' ? answer.goalValue : NaN
}

/** The brief with one limit more: the oil used most is used less, and a measure moves a little. */
function tightened(brief: Brief, answer: Extract<Answer, { status: 'optimal' }>): Brief[] {
  const [oil, share] = Object.entries(answer.blend).reduce((a, b) => (b[1] > a[1] ? b : a))
  const { wear = NaN } = answer.measures
  return [
    { ...brief, oils: { ...brief.oils, [oil]: { ...brief.oils[oil], max: share - 1 } } },
    {
      ...brief,
      measures: { ...brief.measures, wear: { ...brief.measures.wear, max: wear - 0.5 } },
    },
    { ...brief, groups: [...brief.groups, { name: 'more', oils: [oil], max: share / 2 }] },
  ].filter((tighter) => checkBrief(tighter, library).length === 0)
}

function aStepLess({ kind, subject, side }: Limit, to: number): number {
  const step = kind === 'measure' && subject === 'cost' ? 0.01 : 0.1
  return Number((side === 'min' ? to + step : to - step).toFixed(2))
}

function reversed<T>(record: Readonly<Record<string, T>>): Record<string, T> {
  return Object.fromEntries(Object.entries(record).toReversed())
}
