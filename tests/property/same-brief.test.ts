import { describe, expect, test } from 'vitest'
import { briefOf, briefFile } from '../../src/data/brief-file'
import { library } from '../../src/data/library'
import { FormulaReader } from '../../src/data/formula-text'
import { parseJson } from '../../src/data/problems'
import { COST } from '../../src/domain/blend/measure'
import type { Brief, Limits } from '../../src/domain/optimise/brief/brief'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import { limitsOf, withLimit } from '../../src/domain/optimise/brief/limits'
import { solveBrief } from '../../src/domain/optimise/solve/solve'
import { solveWithOwn } from '../../src/domain/lp/solvers/own'
import { Random, shuffled } from '../generator/random'
import { sampleBriefs } from './briefs'

/*
 * The same brief said in another way has the same answer: an answer checked by another answer, without
 * any reference.
 */

const BRIEFS = sampleBriefs(300, 20_263)
/** Of the goal; the solver's rounding. */
const RELATIVE = 1e-6

const solved = (brief: Brief) => solveBrief(brief, library, solveWithOwn)

/** The goal's value; undefined where there is no blend. */
function goalOf(answer: Answer): number | undefined {
  return answer.status === 'optimal' ? answer.goalValue : undefined
}

function expectSame(one: number | undefined, other: number | undefined, brief: Brief): void {
  const same =
    one === other ||
    Math.abs((one ?? NaN) - (other ?? NaN)) <= RELATIVE * Math.max(1, Math.abs(one ?? NaN))
  expect(same, `${one} against ${other}: ${JSON.stringify(brief)}`).toBe(true)
}

const byOil = <T>(brief: Brief, change: (oil: Brief['oils'][string], id: string) => T) =>
  Object.fromEntries(Object.entries(brief.oils).map(([id, oil]) => [id, change(oil, id)]))

describe.each([1e-3, 0.3, 7, 1e4])('prices times %s', (factor) => {
  test('cost as much more, and choose nothing else', () => {
    for (const brief of BRIEFS) {
      const { [COST]: cost, ...points } = brief.measures
      const times = ({ min, max }: Limits): Limits => ({
        ...(min === undefined ? {} : { min: min * factor }),
        ...(max === undefined ? {} : { max: max * factor }),
      })
      const dearer: Brief = {
        ...brief,
        oils: byOil(brief, (oil) => ({ ...oil, pricePerKg: (oil.pricePerKg ?? NaN) * factor })),
        measures: cost ? { ...points, [COST]: times(cost) } : points,
      }
      const [plain, scaled] = [goalOf(solved(brief)), goalOf(solved(dearer))]
      const isCost = 'minimise' in brief.goal && brief.goal.minimise === COST
      expectSame(isCost && plain !== undefined ? plain * factor : plain, scaled, brief)
    }
  })
})

test('oils, groups and wishes in any order have the same best', () => {
  const random = new Random(5)
  const inAnyOrder = <T>(items: readonly T[]) =>
    shuffled(random, items.length).flatMap((k) => items.slice(k, k + 1))
  const shuffledKeys = <T>(record: Readonly<Record<string, T>>) =>
    Object.fromEntries(inAnyOrder(Object.entries(record)))
  for (const brief of BRIEFS) {
    const other: Brief = {
      ...brief,
      oils: shuffledKeys(brief.oils),
      measures: shuffledKeys(brief.measures),
      groups: inAnyOrder(brief.groups),
    }
    expectSame(goalOf(solved(brief)), goalOf(solved(other)), brief)
  }
})

test('a limit moved by 1e-9 makes no blend come or go', () => {
  let moved = 0
  for (const brief of BRIEFS.slice(0, 100)) {
    const plain = solved(brief)
    for (const limit of limitsOf(brief)) {
      for (const by of [-1e-9, 1e-9]) {
        const answer = solved(withLimit(brief, limit, Math.max(0, limit.value + by)))
        expect(answer.status, JSON.stringify([limit.path, by, brief])).toBe(plain.status)
        moved++
      }
    }
  }
  expect(moved).toBeGreaterThan(300)
})

test('a target in parts of any whole is the same as in percent', () => {
  for (const brief of BRIEFS) {
    if (!('closestTo' in brief.goal)) continue
    const { closestTo } = brief.goal
    const nearly = Object.fromEntries(
      Object.entries(closestTo).map(([id, share]) => [id, share * 1.004]),
    )
    const isShare = Object.values(nearly).every((share) => share <= 100)
    if (!isShare) continue
    const other: Brief = { ...brief, goal: { closestTo: nearly } }
    expectSame(goalOf(solved(brief)), goalOf(solved(other)), brief)
  }
})

test('a list in grams, kilograms, percent or parts is the same target', () => {
  const reader = new FormulaReader(library.oils.values())
  const lists = ['g', 'kg', '%', 'parts'].map((unit) => {
    const one = { g: 10, kg: 0.01, '%': 1, parts: 0.2 }[unit] ?? NaN
    const line = (oil: string, percent: number) => `${oil} ${percent * one} ${unit}`
    return [line('olive', 60), line('coconut', 25), line('shea', 15)].join('\n')
  })
  const goals = lists.map((list) => {
    const { outcome } = reader.read(list)
    if (outcome.status !== 'blend') throw new Error(list)
    const oils = { olive: { max: 40 }, coconut: {}, shea: {}, castor: {} }
    const goal = { closestTo: outcome.blend }
    return goalOf(solved({ oils, groups: [], measures: {}, goal }))
  })
  // By hand: 20 of olive go elsewhere, a change of 40 points.
  for (const goal of goals) expect(goal).toBeCloseTo(40, 9)
})

test('a figure may be typed as 30, 30.0 or 3e1', () => {
  const text = (most: string) =>
    `{"format":"barwright-brief/1","oils":{"coconut":{"max":${most}},"olive":{}},"measures":{},"goal":{"maximise":"lather"}}`
  const answers = ['30', '30.0', '3e1', '300e-1'].map((most) => {
    const parsed = parseJson(briefFile, text(most))
    if (parsed.status !== 'parsed') throw new Error(most)
    return solved(briefOf(parsed.value))
  })
  for (const answer of answers) expect(answer).toEqual(answers[0])
})
