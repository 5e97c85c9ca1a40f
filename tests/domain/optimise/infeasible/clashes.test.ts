import { describe, expect, test } from 'vitest'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { conflictOf } from '../../../../src/domain/optimise/infeasible/conflict-linear'
import { singleChanges } from '../../../../src/domain/optimise/infeasible/single-changes'
import { limitsOf, withLimit } from '../../../../src/domain/optimise/brief/limits'
import { libraryOfValues } from '../../blend/stub-library'
import { isFeasible } from './feasible'
import { highs } from '../../lp/solvers/loaded-highs'

const library = libraryOfValues({
  hard: { hardness: 60, lather: 10 },
  soft: { hardness: 20, lather: 20 },
  foaming: { hardness: 40, lather: 80 },
})
const SHELF: Brief = {
  oils: { hard: {}, soft: {}, foaming: {} },
  groups: [],
  measures: {},
  goal: { maximise: 'lather' },
}

describe('the limits that cannot hold together', () => {
  test.for<readonly [string, Partial<Brief>, string[]]>([
    [
      'are one that no oil reaches',
      { measures: { hardness: { min: 61 }, lather: { max: 70 } } },
      ['measures.hardness.min'],
    ],
    [
      'are two wishes that pull apart',
      // By hand: hardness 50 leaves at most 45 of lather.
      { measures: { hardness: { min: 50, max: 60 }, lather: { min: 46 } } },
      ['measures.hardness.min', 'measures.lather.min'],
    ],
    [
      'are a wish and the share it would need',
      {
        oils: { hard: { max: 20 }, soft: {}, foaming: { max: 90 } },
        measures: { hardness: { min: 50 } },
      },
      ['oils.hard.max', 'measures.hardness.min'],
    ],
    [
      'are shares that cannot fill the pot',
      { oils: { hard: { max: 20 }, soft: { max: 30 }, foaming: { max: 40 } } },
      ['oils.hard.max', 'oils.soft.max', 'oils.foaming.max'],
    ],
    [
      'are shares that overfill it',
      { oils: { hard: { min: 60 }, soft: { min: 1 }, foaming: { min: 41 } } },
      ['oils.hard.min', 'oils.foaming.min'],
    ],
    [
      'are a group and an oil of it',
      {
        oils: { hard: { min: 30 }, soft: {}, foaming: {} },
        groups: [{ name: 'g', oils: ['hard', 'soft'], max: 25 }],
      },
      ['oils.hard.min', 'groups[0].max'],
    ],
    [
      'are two groups',
      {
        groups: [
          { name: 'g', oils: ['hard', 'soft'], max: 40 },
          { name: 'h', oils: ['soft', 'foaming'], min: 20, max: 50 },
          { name: 'i', oils: ['hard', 'foaming'], max: 70 },
        ],
        oils: { hard: { max: 30 }, soft: {}, foaming: {} },
      },
      // By hand: they leave 10 % of the pot empty; the limits on an oil and on the third group are not needed.
      ['groups[0].max', 'groups[1].max'],
    ],
  ])('%s', ([, rest, conflict]) => {
    const brief = { ...SHELF, ...rest }
    const found = conflictOf(brief, library)
    expect(found).toEqual(conflict)
    expectIrreducible(brief, found)
  })
})

describe('a single change that frees a brief', () => {
  test('goes to the nearest mark that works', () => {
    const brief = { ...SHELF, measures: { hardness: { min: 50 }, lather: { min: 46 } } }
    const found = relaxed(brief)
    // By hand: lather 46 takes 51.43 % foaming and leaves 49.71 of hardness; hardness 50 leaves 45.
    expect(found).toEqual([
      ['measures.hardness.min', 50, 49.7],
      ['measures.lather.min', 46, 45],
    ])
  })

  test('raises what is too low', () => {
    const oils = { hard: { max: 20.5 }, soft: { max: 30.2 }, foaming: { max: 40 } }
    // By hand: 100 less the other two.
    expect(relaxed({ ...SHELF, oils })).toEqual([
      ['oils.hard.max', 20.5, 29.8],
      ['oils.soft.max', 30.2, 39.5],
      ['oils.foaming.max', 40, 49.3],
    ])
  })

  test('stays at a mark that floating point only just misses', () => {
    const wrong: string[] = []
    for (let first = 11; first < 45; first += 1) {
      for (let second = 11; second < 45; second += 3) {
        const [hard, soft] = [tenths(500 - first), tenths(500 - second)]
        const oils = { hard: { min: hard }, soft: { min: soft }, foaming: { min: 30 } }
        const to = relaxed({ ...SHELF, oils }).find(([path]) => path === 'oils.foaming.min')?.[2]
        if (to !== tenths(first + second)) wrong.push(`${hard} and ${soft}: ${to}`)
      }
    }
    expect(wrong).toEqual([])
  })

  test('of money goes to the cent', () => {
    const oils = { hard: { pricePerKg: 8 }, soft: { pricePerKg: 3 }, foaming: { pricePerKg: 5 } }
    const measures = { hardness: { min: 57 }, cost: { max: 5 } }
    const stub = { ...library, measures: [...library.measures, costMeasure] }
    const brief: Brief = { ...SHELF, oils, measures }
    const conflict = conflictOf(brief, stub)
    const cost = singleChanges(brief, conflict, stub).find(({ limit }) => limit.includes('cost'))
    // By hand: 85 % hard and 15 % foaming is 57 of hardness and costs 6.80 + 0.75 = 7.55.
    expect(cost).toMatchObject({ limit: 'measures.cost.max', from: 5, to: 7.55 })
  })

  test('comes with a blend that keeps all other limits', () => {
    const brief = { ...SHELF, measures: { hardness: { min: 50 }, lather: { min: 46 } } }
    const conflict = conflictOf(brief, library)
    for (const { limit, found } of singleChanges(brief, conflict, library)) {
      const { hardness = NaN, lather = NaN } = found.measures
      if (limit !== 'measures.hardness.min') expect(hardness).toBeGreaterThanOrEqual(50 - 1e-6)
      if (limit !== 'measures.lather.min') expect(lather).toBeGreaterThanOrEqual(46 - 1e-6)
    }
  })

  test('is not offered where no value of the limit would do', () => {
    const measures = { hardness: { min: 61 }, lather: { min: 81 } }
    const brief = { ...SHELF, measures }
    const conflict = conflictOf(brief, library)
    expect(conflict).toEqual(['measures.lather.min'])
    // Even without the wish for lather no oil is as hard as 61.
    expect(singleChanges(brief, conflict, library)).toEqual([])
  })
})

function relaxed(brief: Brief): (string | number)[][] {
  const conflict = conflictOf(brief, library)
  return singleChanges(brief, conflict, library).map(({ limit, from, to }) => [limit, from, to])
}

function expectIrreducible(brief: Brief, conflict: readonly string[]): void {
  const inConflict = limitsOf(brief).filter(({ path }) => conflict.includes(path))
  const alone = limitsOf(brief)
    .filter(({ path }) => !conflict.includes(path))
    .reduce((kept, limit) => withLimit(kept, limit, undefined), brief)
  expect(isFeasible(alone, library, highs)).toBe(false)
  for (const limit of inConflict)
    expect(isFeasible(withLimit(alone, limit, undefined), library, highs), limit.path).toBe(true)
}

function tenths(count: number): number {
  return Number((count / 10).toFixed(1))
}

const costMeasure = {
  id: 'cost',
  name: 'Cost',
  meaning: 'Price per kg of oils.',
  better: 'less',
  unit: 'money per kg',
  shown: true,
  tie: 0.1,
  limits: [],
} as const
