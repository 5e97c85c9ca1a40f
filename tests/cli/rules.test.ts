import { describe, expect, test } from 'vitest'
import { barwright, withInput } from './run-cli'

type Blend = Record<string, number>
interface Range {
  readonly min: number
  readonly max: number
  readonly exact: boolean
}
interface Ranges {
  readonly status: string
  readonly gap?: number
  readonly measures: Record<string, Range>
  readonly oils: Record<string, Range>
}
interface Found {
  readonly status: string
  readonly alternatives: { goalValue: number; blend: Blend }[]
}
interface Frontier {
  readonly status: string
  readonly axes: string[]
  readonly vertices: { measures: Record<string, number>; blend: Blend; isOpen: boolean }[]
  readonly facets: number[][]
  readonly gap: number
}
interface Terrain {
  readonly status: string
  readonly stage: string
  readonly openPoints?: number
  readonly x: number[]
  readonly y: number[]
  readonly values: (number | null)[][]
  readonly states: string[][]
}

/**
 * Of at most two oils palm and lard cannot be the whole: blends are 0 to 40 % palm in olive, 0 to 30 %
 * lard in olive, or olive alone.
 */
const SHOP = {
  format: 'barwright-brief/1',
  oils: {
    palm: { pricePerKg: 3, max: 40 },
    olive: { pricePerKg: 5 },
    lard: { pricePerKg: 4, max: 30 },
  },
  rules: { atMostOils: 2 },
  goal: { minimise: 'cost' },
}

/** Steps that hardly a blend hits such a narrow range with. */
const NARROW = {
  ...SHOP,
  oils: {
    ...SHOP.oils,
    coconut: { pricePerKg: 4 },
    castor: { pricePerKg: 8 },
    shea: { pricePerKg: 9 },
  },
  measures: { hardness: { min: 30.12345, max: 30.12346 }, lather: { min: 25.1234, max: 25.1235 } },
  rules: { shareStep: 0.5 },
}

async function asked<T>(args: readonly string[], brief: object): Promise<T> {
  const { exitCode, output, errors } = await barwright([...args, '-'], JSON.stringify(brief))
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  return JSON.parse(output) as T
}

const oilsIn = (blend: Blend) => Object.values(blend).filter((share) => share > 1e-6).length

describe('range', () => {
  test('of at most two oils leaves out what only three reach, by hand', async () => {
    const ranges = await asked<Ranges>(['range'], SHOP)
    expect(ranges.status).toBe('optimal')
    // 0.4 · 3 + 0.6 · 5; without the rule it is 0.4 · 3 + 0.3 · 4 + 0.3 · 5 = 3.90.
    expect(ranges.measures.cost?.min).toBeCloseTo(4.2, 9)
    expect(ranges.measures.cost?.max).toBeCloseTo(5, 9)
    expect(ranges.oils.olive?.min).toBeCloseTo(60, 9)
    expect(ranges.oils.lard).toMatchObject({ min: 0, max: 30, exact: true })
  })

  test('that holds for any lot lies within the one that holds for typical lots', async () => {
    const wished = { ...SHOP, measures: { hardness: { min: 20 } } }
    const typical = await asked<Ranges>(['range'], wished)
    const anyLot = await asked<Ranges>(['range', '--robust'], wished)
    const least = (ranges: Ranges) => ranges.measures.hardness?.min ?? NaN
    expect(least(anyLot)).toBeGreaterThan(least(typical) + 0.1)
  })

  test('out of time tells what it found and how much is open', async () => {
    const loose = { ...NARROW, measures: { hardness: { min: 30 } } }
    const ranges = await asked<Ranges>(['range', '--time-limit', '0.001'], loose)
    expect(ranges.status).toBe('feasible')
    expect(ranges.gap).toBeGreaterThan(0)
    expect(ranges.gap).toBeLessThanOrEqual(1)
  })

  test('out of time before any blend was found is undecided and ends with 1', async () => {
    const args = ['range', '--time-limit', '0.001', '-']
    const { exitCode, output } = await barwright(args, JSON.stringify(NARROW))
    expect(JSON.parse(output)).toEqual({ status: 'undecided' })
    expect(exitCode).toBe(1)
  })

  test('of rules that leave no blend ends with 3 and names the rule', async () => {
    const none = { ...SHOP, oils: { ...SHOP.oils, olive: { pricePerKg: 5, max: 50 } } }
    const { exitCode, output } = await withInput('range', none)
    expect(exitCode).toBe(3)
    const { conflict } = JSON.parse(output) as { conflict: string[] }
    expect(conflict).toContain('rules.atMostOils')
    expect(conflict).toContain('oils.olive.max')
  })
})

describe('frontier', () => {
  const args = ['frontier', '--axes', 'hardness,cost']

  test('of two axes under rules is in pieces whose every end keeps the rules', async () => {
    const found = await asked<Frontier>(args, SHOP)
    const free = await asked<{ vertices: { blend: Blend }[] }>(args, { ...SHOP, rules: undefined })
    expect(free.vertices.some(({ blend }) => oilsIn(blend) > 2)).toBe(true)
    expect(found).toMatchObject({ status: 'optimal', axes: ['hardness', 'cost'], gap: 0 })
    expect(found.vertices.map(({ blend }) => oilsIn(blend)).filter((count) => count > 2)).toEqual(
      [],
    )
    const { measures } = await asked<Ranges>(['range'], SHOP)
    const costs = found.vertices.map((vertex) => vertex.measures.cost ?? NaN)
    const hard = found.vertices.map((vertex) => vertex.measures.hardness ?? NaN)
    expect(Math.min(...costs)).toBeCloseTo(measures.cost?.min ?? NaN, 6)
    expect(Math.max(...hard)).toBeCloseTo(measures.hardness?.max ?? NaN, 6)
  })

  test.for([
    ['three axes', ['--axes', 'hardness,lather,cost'], /traced for 2 measures; 3 are named/u],
    ['a hull', ['--axes', 'hardness,cost', '--hull'], /need not be convex/u],
  ] as const)('refuses %s and says what is possible', async ([, flags, message]) => {
    const { exitCode, output } = await barwright(['frontier', ...flags, '-'], JSON.stringify(SHOP))
    expect(exitCode).toBe(2)
    const { problems } = JSON.parse(output) as { problems: { path: string; message: string }[] }
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatchObject({ path: 'rules' })
    expect(problems[0]?.message).toMatch(message)
  })
})

describe('alternatives', () => {
  test('keep the rules and the slack, by hand: up to 4.62 palm must be in, up to 4.83 lard may', async () => {
    const near = await asked<Found>(['alternatives', '--slack', '10%', '--count', '4'], SHOP)
    const far = await asked<Found>(['alternatives', '--slack', '15%', '--count', '4'], SHOP)
    expect(near.status).toBe('optimal')
    expect(near.alternatives.length).toBeGreaterThan(1)
    for (const { blend, goalValue } of near.alternatives) {
      expect(Object.keys(blend).sort()).toEqual(['olive', 'palm'])
      expect(goalValue).toBeLessThanOrEqual(4.62 + 1e-6)
    }
    expect(far.alternatives.some(({ blend }) => 'lard' in blend)).toBe(true)
    expect(far.alternatives.filter(({ blend }) => oilsIn(blend) > 2)).toEqual([])
  })
})

describe('terrain', () => {
  const args = ['terrain', '--axes', 'hardness,lather', '--grid', '9']
  const brief = { ...NARROW, measures: { cost: { max: 8 } }, rules: { atMostOils: 3 } }

  test('under rules has the heights that at finds at the same places', async () => {
    const terrain = await asked<Terrain>(args, brief)
    expect(terrain).toMatchObject({ status: 'optimal', stage: 'complete' })
    const [row, column] = [4, 5]
    const [x, y] = [terrain.x[column], terrain.y[row]]
    const point = `hardness=${x},lather=${y}`
    const there = await asked<{ goalValue: number }>(['at', '--point', point], brief)
    expect(terrain.values[row]?.[column]).toBeCloseTo(there.goalValue, 5)
  })

  test('under rules is nowhere better than without', async () => {
    const ruled = await asked<Terrain>(args, brief)
    const point = ruled.states.flatMap((row, y) =>
      row.flatMap((state, x) => (state === 'exact' ? [[x, y] as const] : [])),
    )
    expect(point.length).toBeGreaterThan(8)
    for (const [x, y] of point.slice(0, 3)) {
      const place = `hardness=${ruled.x[x]},lather=${ruled.y[y]}`
      const free = { ...brief, rules: undefined }
      const best = await asked<{ goalValue: number }>(['at', '--point', place], free)
      expect(ruled.values[y]?.[x]).toBeGreaterThanOrEqual(best.goalValue - 1e-6)
    }
  })

  test('out of time says how many points are open', async () => {
    // A slow machine needs longer for a first blend; no machine settles 40,000 points in twice that time.
    const within = async (seconds: number): Promise<Terrain> => {
      const flags = ['--grid', '200', '--time-limit', String(seconds), '-']
      const { output } = await barwright([...args.slice(0, 3), ...flags], JSON.stringify(brief))
      const terrain = JSON.parse(output) as Terrain
      return terrain.status === 'undecided' ? within(2 * seconds) : terrain
    }
    const terrain = await within(0.1)
    expect(terrain.status).toBe('feasible')
    expect(terrain.openPoints).toBeGreaterThan(0)
    expect(terrain.openPoints).toBe(
      terrain.states.flat().filter((state) => state === 'open').length,
    )
  })
})

test.for(['0', '-1', 'soon', '1e9'])('refuses a time limit of %s', async (limit) => {
  const args = ['range', `--time-limit=${limit}`, '-']
  const { exitCode, output } = await barwright(args, JSON.stringify(SHOP))
  expect(exitCode).toBe(2)
  expect(output).toContain('--time-limit')
})

test('solve under rules says what a second solver finds', async () => {
  const answer = await asked<{ goalValue: number; secondSolver: object }>(['solve'], SHOP)
  expect(answer.goalValue).toBeCloseTo(4.2, 9)
  expect(answer.secondSolver).toEqual({ status: 'confirmed', by: 'javascript-lp-solver' })
})
