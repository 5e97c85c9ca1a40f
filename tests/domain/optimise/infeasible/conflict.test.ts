import { describe, expect, test } from 'vitest'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { limitsOf } from '../../../../src/domain/optimise/brief/limits'
import { conflictOf } from '../../../../src/domain/optimise/infeasible/conflict-linear'
import { singleChanges } from '../../../../src/domain/optimise/infeasible/single-changes'
import { libraryOfValues } from '../../blend/stub-library'
import { type Case, clashCases, KINDS, randomCases } from '../sensitivity/random-briefs'
import { bestValue, moved } from '../sensitivity/reference'

const PER_KIND = 80
const SEED = 900
const CLASHES = 300

const all = [...randomCases(PER_KIND, SEED), ...clashCases(CLASHES, SEED)]
const clashing = all.filter((one) => bestValue(one) === undefined)
const conflicts = clashing.map((one) => ({ one, paths: conflictOf(one.brief, one.library) }))

/** The case with only some of its limits. */
function onlyWith(one: Case, paths: readonly string[]): Case {
  return limitsOf(one.brief)
    .filter(({ path }) => !paths.includes(path))
    .reduce((kept, { path }) => moved(kept, path, undefined), one)
}

/** Two oils and one measure, 20 and 80 points. */
const library = libraryOfValues({ soft: { firmness: 20 }, hard: { firmness: 80 } })
const plain: Brief = {
  oils: { soft: {}, hard: {} },
  groups: [],
  measures: {},
  goal: { maximise: 'firmness' },
}

describe('a conflict of a random brief', () => {
  test('is found for over a hundred briefs, with one to four limits and more', () => {
    expect(conflicts.length).toBeGreaterThan(150)
    const sizes = new Set(conflicts.map(({ paths }) => paths.length))
    for (const size of [1, 2, 3, 4]) expect(sizes).toContain(size)
    const text = conflicts.map(({ paths }) => paths.join(' ')).join(' ')
    for (const part of ['oils.', 'groups[0].max', 'measures.', '.min', '.max'])
      expect(text).toContain(part)
    expect(conflicts.filter(({ one }) => one.brief.robust).length).toBeGreaterThan(5)
  })

  test('cannot hold together, by HiGHS', () => {
    for (const { one, paths } of conflicts)
      expect(bestValue(onlyWith(one, paths)), one.name).toBeUndefined()
  })

  test('holds as soon as any one of its limits is dropped, by HiGHS', () => {
    for (const { one, paths } of conflicts) {
      for (const path of paths) {
        const rest = paths.filter((other) => other !== path)
        expect(bestValue(onlyWith(one, rest)), `${one.name} without ${path}`).toBeDefined()
      }
    }
  })

  test('names limits of oils or groups only where wishes on measures alone would not clash', () => {
    let count = 0
    for (const { one, paths } of conflicts) {
      const kinds = paths.map((path) => path.split(/[.[]/u)[0])
      if (kinds.every((kind) => kind === 'measures')) continue
      const measures = limitsOf(one.brief).filter(({ kind }) => kind === 'measure')
      const paths2 = measures.map(({ path }) => path)
      expect(bestValue(onlyWith(one, paths2)), one.name).toBeDefined()
      count++
    }
    expect(count).toBeGreaterThan(30)
  })

  test('is empty for a brief that has a blend', () => {
    const feasible = all.filter((one) => !clashing.includes(one)).slice(0, KINDS.length * 10)
    for (const { brief, library } of feasible) expect(conflictOf(brief, library)).toEqual([])
  })
})

describe('the limits of one range whose ends cross clash', () => {
  test.each([
    ['measures.firmness', { ...plain, measures: { firmness: { min: 60, max: 50 } } }],
    ['oils.soft', { ...plain, oils: { soft: { min: 60, max: 50 }, hard: {} } }],
    ['groups[0]', { ...plain, groups: [{ name: 'g', oils: ['soft'], min: 60, max: 50 }] }],
  ] as const)('%s', (subject, brief) => {
    expect(conflictOf(brief, library)).toEqual([`${subject}.min`, `${subject}.max`])
  })

  test('where any lot must keep them, in a robust brief', () => {
    const robust = { ...plain, robust: true, measures: { firmness: { min: 60, max: 50 } } }
    expect(conflictOf(robust, library)).toEqual(['measures.firmness.min', 'measures.firmness.max'])
  })
})

test('a wish beyond what any oil has is a conflict by itself', () => {
  const brief = { ...plain, measures: { firmness: { min: 81 } } }
  expect(conflictOf(brief, library)).toEqual(['measures.firmness.min'])
})

test('limits that do no harm stay out of a conflict', () => {
  const oils = { soft: { min: 0, max: 100 }, hard: { max: 30 } }
  const brief = { ...plain, oils, measures: { firmness: { min: 50, max: 90 } } }
  expect(conflictOf(brief, library)).toEqual(['oils.hard.max', 'measures.firmness.min'])
})

describe('single changes', () => {
  test('are the nearest values that free a brief, by hand', () => {
    // 30 % hard gives 0.3 × 80 + 0.7 × 20 = 38; 50 points need 50 % hard.
    const oils = { soft: {}, hard: { max: 30 } }
    const brief = { ...plain, oils, measures: { firmness: { min: 50 } } }
    const changes = singleChanges(brief, conflictOf(brief, library), library)
    expect(changes.map(({ limit, from, to }) => [limit, from, to])).toEqual([
      ['oils.hard.max', 30, 50],
      ['measures.firmness.min', 50, 38],
    ])
    for (const { found } of changes)
      expect(Object.keys(found.blend).sort()).toEqual(['hard', 'soft'])
  })

  test('free the brief by HiGHS, and one step less does not', () => {
    let count = 0
    for (const { one, paths } of conflicts) {
      for (const { limit, from, to, found } of singleChanges(one.brief, paths, one.library)) {
        const after = bestValue(moved(one, limit, to))
        expect(after, `${one.name} ${limit}`).toBeDefined()
        if (!('closestTo' in one.brief.goal)) expect(found.goalValue).toBeCloseTo(after ?? NaN, 5)
        const step = (limit.startsWith('measures.cost') ? 0.01 : 0.1) * Math.sign(from - to)
        const nearer = moved(one, limit, to + 1.001 * step)
        expect(bestValue(nearer), `${one.name} ${limit} nearer`).toBeUndefined()
        count++
      }
    }
    expect(count).toBeGreaterThan(150)
  })

  test('leave out limits for which no value would do', () => {
    const oils = { soft: { max: 40 }, hard: { max: 40 } }
    const brief = { ...plain, oils, measures: { firmness: { min: 90 } } }
    expect(singleChanges(brief, ['measures.firmness.min'], library)).toEqual([])
  })
})
