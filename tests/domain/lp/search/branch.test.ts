import highsLoader, { type Highs } from 'highs'
import { beforeAll, describe, expect, test } from 'vitest'
import { noRules, type BlendRules } from '../../../../src/domain/lp/search/rules'
import { ProgramError, type LinearProgram } from '../../../../src/domain/lp/program'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { solveWithRules } from '../../../../src/domain/lp/search/branch'
import { ruledInstance } from '../../../generator/ruled-programs'
import { breaks, near, ruledDisagreements, searched } from './ruled-agreement'

const MINUTE_MS = 60_000

/** Every set of used oils, each solved as a linear program: the plain way to the same optimum. */
function byEnumeration(program: LinearProgram, rules: BlendRules): number {
  const n = program.cost.length
  const simplex = new Simplex(program)
  let best = Infinity
  for (let set = 0; set < 2 ** n; set++) {
    const isUsed = (j: number): boolean => ((set >> j) & 1) === 1
    const counted = rules.counts.every(({ variables, least, most }) => {
      const used = variables.filter(isUsed).length
      return used >= least && used <= most
    })
    if (!counted || rules.requires.some(([a, b]) => isUsed(a) && !isUsed(b))) continue
    for (let j = 0; j < n; j++) {
      const least = isUsed(j) ? (rules.leastUse[j] ?? NaN) : 0
      simplex.setVariableBounds(j, least, isUsed(j) ? (program.upper[j] ?? NaN) : 0)
    }
    const outcome = simplex.solve()
    if (outcome.status === 'optimal') best = Math.min(best, outcome.objective)
  }
  return best
}

/** Two oils at 3 and 5 a unit that add up to 100, and a third at 4 of which at most 30. */
const BLEND: LinearProgram = {
  cost: [3, 5, 4],
  lower: [0, 0, 0],
  upper: [40, 100, 30],
  rows: [{ coefficients: [1, 1, 1], lower: 100, upper: 100 }],
}

describe('rules on use, by hand: without them 40 · 3 + 30 · 5 + 30 · 4 = 390', () => {
  test.each<[string, Partial<BlendRules>, number]>([
    ['no rule', {}, 390],
    ['at most two oils', { counts: [{ variables: [0, 1, 2], least: 0, most: 2 }] }, 420],
    [
      'exactly one of the first and third',
      { leastUse: [1, 1, 1], counts: [{ variables: [0, 2], least: 1, most: 1 }] },
      420,
    ],
    ['only one oil', { counts: [{ variables: [0, 1, 2], least: 0, most: 1 }] }, 500],
    ['the second, 35 at least where used', { leastUse: [0, 35, 0] }, 395],
    ['whole multiples of 20', { step: 20 }, 400],
  ])('%s', (_name, rules, cost) => {
    const outcome = searched(BLEND, { ...noRules(3), ...rules })
    expect(outcome.status === 'optimal' && outcome.best.objective).toBeCloseTo(cost, 9)
  })

  test('the first needs the third, which is then 30: 3 · 40 + 30 · 4 + 30 · 5 = 390', () => {
    const rules = { ...noRules(3), leastUse: [1, 1, 30], requires: [[0, 2]] as const }
    const outcome = searched({ ...BLEND, cost: [3, 5, 9] }, rules)
    // With the third at 9: all three cost 120 + 150 + 270 = 540, the second alone 500.
    expect(outcome.status === 'optimal' && outcome.best.objective).toBeCloseTo(500, 9)
  })

  test('no blend of one oil below 100 exists: infeasible', () => {
    const rules = { ...noRules(3), counts: [{ variables: [0, 1, 2], least: 0, most: 1 }] }
    expect(searched({ ...BLEND, upper: [40, 99, 30] }, rules).status).toBe('infeasible')
  })
})

describe('the cheapest blend under rules', () => {
  test(
    'is that of trying every set of 12 oils, on 40 random programs',
    () => {
      let feasible = 0
      for (let seed = 0; seed < 40; seed++) {
        const { program, rules, name } = ruledInstance(seed, 12)
        const outcome = searched(program, rules)
        const truth = byEnumeration(program, rules)
        if (truth === Infinity) expect(outcome.status, name).toBe('infeasible')
        else {
          feasible++
          if (outcome.status !== 'optimal') throw new Error(`${name}: ${outcome.status}`)
          expect(near(outcome.best.objective, truth), `${name}: ${truth}`).toBe(true)
          expect(breaks(program, rules, outcome.best.x), name).toEqual([])
        }
      }
      expect(feasible).toBeGreaterThan(20)
      expect(feasible).toBeLessThan(40)
    },
    MINUTE_MS,
  )

  let highs: Highs
  beforeAll(async () => {
    highs = await highsLoader()
  })

  test.each([
    { oils: 20, step: 0, seeds: 120 },
    { oils: 40, step: 0, seeds: 20 },
    { oils: 10, step: 5, seeds: 80 },
  ] as const)(
    'is that of HiGHS on $seeds random programs of $oils oils, step $step',
    ({ oils, step, seeds }) => {
      let feasible = 0
      for (let seed = 1000; seed < 1000 + seeds; seed++) {
        const instance = ruledInstance(seed, oils, step)
        const { status, faults } = ruledDisagreements(instance, highs)
        expect(faults, instance.name).toEqual([])
        if (status === 'optimal') feasible++
      }
      expect(feasible).toBeGreaterThan(seeds / 4)
    },
    MINUTE_MS,
  )

  test('is found the same way every time', () => {
    const { program, rules } = ruledInstance(18, 30)
    const first = searched(program, rules)
    expect(searched(program, rules)).toEqual(first)
    expect(first.nodes).toBeGreaterThan(50)
  })
})

describe('a search called off', () => {
  test('gives the best so far and a bound, with the true optimum between them', () => {
    let withBlend = 0
    for (let seed = 0; seed < 100; seed++) {
      const { program, rules, name } = ruledInstance(seed, 30)
      const end = searched(program, rules)
      for (const most of [1, 4, 8, 16, 32]) {
        const outcome = solveWithRules(program, rules, ({ nodes }) => nodes < most)
        expect(outcome.nodes, name).toBeLessThanOrEqual(most)
        if (outcome.status !== 'stopped' || end.status !== 'optimal') continue
        expect(outcome.bound, name).toBeLessThanOrEqual(end.best.objective + 1e-6)
        if (outcome.best === null) continue
        withBlend++
        expect(outcome.best.objective, name).toBeGreaterThanOrEqual(end.best.objective - 1e-6)
        expect(breaks(program, rules, outcome.best.x), name).toEqual([])
      }
    }
    expect(withBlend).toBeGreaterThan(10)
  })

  test('before the first node knows nothing: no blend, bound -Infinity', () => {
    const outcome = solveWithRules(BLEND, noRules(3), () => false)
    expect(outcome).toEqual({ status: 'stopped', best: null, bound: -Infinity, nodes: 0 })
  })
})

describe('rules that cannot be read', () => {
  test.each<[string, Partial<LinearProgram>, Partial<BlendRules>]>([
    ['a variable without an upper limit', { upper: [40, Infinity, 30] }, {}],
    ['a variable that may be negative', { lower: [0, -1, 0] }, {}],
    ['a group with a stranger', {}, { counts: [{ variables: [0, 3], least: 0, most: 1 }] }],
    ['a least use missing', {}, { leastUse: [1, 1] }],
    ['a group naming one twice', {}, { counts: [{ variables: [1, 1], least: 0, most: 1 }] }],
    ['a need for any amount, however small', {}, { requires: [[0, 1]] }],
  ])('are refused: %s', (_name, program, rules) => {
    expect(() => searched({ ...BLEND, ...program }, { ...noRules(3), ...rules })).toThrow(
      ProgramError,
    )
  })
})
