import { describe, expect, test } from 'vitest'
import { barwright, BRIEF, withInput } from './run-cli'

interface Ranges {
  readonly measures: Record<string, { min: number; max: number }>
  readonly oils: Record<string, { min: number; max: number }>
}

interface Frontier {
  readonly axes: string[]
  readonly vertices: { measures: Record<string, number>; blend: Record<string, number> }[]
  readonly facets: number[][]
  readonly tolerance: number
}

const EXAMPLE = {
  format: 'barwright-brief/1',
  oils: { coconut: { pricePerKg: 4 }, olive: { pricePerKg: 7 } },
  goal: { minimise: 'cost' },
}

async function answerTo<T>(args: readonly string[]): Promise<T> {
  const { exitCode, output, errors } = await barwright(args)
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  return JSON.parse(output) as T
}

describe('range', () => {
  test('starts where solve ends: the least cost of the example is its answer', async () => {
    const ranges = await answerTo<Ranges>(['range', BRIEF])
    const solved = await answerTo<{ goalValue: number; blend: { coconut: number } }>([
      'solve',
      BRIEF,
    ])
    expect(ranges.measures.cost?.min).toBeCloseTo(solved.goalValue, 9)
    expect(ranges.oils.coconut?.max).toBeCloseTo(30, 9)
    expect(ranges.measures.hardness?.min).toBeGreaterThanOrEqual(34 - 1e-9)
  })

  test('of two oils without limits runs from one to the other', async () => {
    const { output } = await withInput('range', EXAMPLE)
    const ranges = JSON.parse(output) as Ranges
    expect(ranges.measures.cost?.min).toBeCloseTo(4, 9)
    expect(ranges.measures.cost?.max).toBeCloseTo(7, 9)
    expect(ranges.oils.olive).toEqual({ min: 0, max: 100 })
  })

  test('of a brief without a blend ends with 3 and names the clash', async () => {
    const { exitCode, output } = await withInput('range', {
      ...EXAMPLE,
      measures: { cost: { max: 3 } },
    })
    expect(exitCode).toBe(3)
    expect(JSON.parse(output)).toMatchObject({
      status: 'infeasible',
      conflict: ['measures.cost.max'],
    })
  })
})

describe('frontier', () => {
  test('of two axes lies within their ranges and names them in order', async () => {
    const found = await answerTo<Frontier>(['frontier', BRIEF, '--axes', 'lather,cost'])
    const { measures } = await answerTo<Ranges>(['range', BRIEF])
    expect(found.axes).toEqual(['lather', 'cost'])
    expect(found.tolerance).toBeGreaterThan(0)
    const costs = found.vertices.map((vertex) => vertex.measures.cost ?? NaN)
    const lathers = found.vertices.map((vertex) => vertex.measures.lather ?? NaN)
    expect(Math.min(...costs)).toBeCloseTo(measures.cost?.min ?? NaN, 6)
    expect(Math.max(...lathers)).toBeCloseTo(measures.lather?.max ?? NaN, 6)
  })

  test('of three axes has facets that name its vertices', async () => {
    const found = await answerTo<Frontier>(['frontier', BRIEF, '--axes', 'hardness,lather,cost'])
    const named = new Set(found.facets.flat())
    expect([...named].sort((a, b) => a - b)).toEqual(found.vertices.map((_, index) => index))
  })

  test('with --hull holds more than the wanted side', async () => {
    const args = ['frontier', BRIEF, '--axes', 'hardness,cost']
    const side = await answerTo<Frontier>(args)
    const hull = await answerTo<Frontier>([...args, '--hull'])
    expect(hull.vertices.length).toBeGreaterThan(side.vertices.length)
  })

  test.for([
    ['an unknown measure', 'hardness,shine', /There is no measure "shine"/u],
    ['one measure', 'hardness', /names 1 measures. Give 2 to 4/u],
    ['a measure twice', 'hardness,hardness', /names a measure twice/u],
    ['a wanted way that is none', 'hardness:up,cost', /"hardness:up" is no axis/u],
  ] as const)('refuses %s', async ([, axes, message]) => {
    const { exitCode, output } = await barwright(['frontier', BRIEF, '--axes', axes])
    expect(exitCode).toBe(2)
    expect(output.replaceAll('\\"', '"')).toMatch(message)
  })
})

test('terrain has a row for each y and a height only where a blend has both', async () => {
  const args = ['terrain', BRIEF, '--axes', 'hardness,lather', '--grid', '7']
  const terrain = await answerTo<{ x: number[]; y: number[]; values: (number | null)[][] }>(args)
  expect(terrain.x.length).toBe(7)
  expect(terrain.values.map((row) => row.length)).toEqual(Array(7).fill(7))
  const heights = terrain.values.flat().filter((height) => height !== null)
  expect(heights.length).toBeGreaterThan(0)
  // The example caps cost at 7.50 per kg.
  expect(Math.max(...heights)).toBeLessThanOrEqual(7.5 + 1e-6)
})

describe('at', () => {
  test('hits the point', async () => {
    const point = 'hardness=34.5,lather=36'
    const answer = await answerTo<{ measures: Record<string, number> }>([
      'at',
      BRIEF,
      '--point',
      point,
    ])
    expect(answer.measures.hardness).toBeCloseTo(34.5, 5)
    expect(answer.measures.lather).toBeCloseTo(36, 5)
  })

  test('outside the land ends with 3 and names the point, not a wish', async () => {
    const { exitCode, output } = await barwright(['at', BRIEF, '--point', 'hardness=90'])
    expect(exitCode).toBe(3)
    expect(JSON.parse(output)).toMatchObject({ conflict: ['point.hardness'] })
  })

  test.for(['hardness', 'hardness=soft', 'hardness=1=2', ''])('refuses "%s"', async (point) => {
    expect((await barwright(['at', BRIEF, '--point', point])).exitCode).toBe(2)
  })
})

describe('alternatives', () => {
  interface Found {
    readonly alternatives: { goalValue: number; blend: Record<string, number> }[]
  }

  test('are within the slack of the best, which comes first', async () => {
    const { alternatives } = await answerTo<Found>(['alternatives', BRIEF, '--count', '4'])
    const best = alternatives[0]?.goalValue ?? NaN
    expect(alternatives.length).toBe(4)
    for (const { goalValue } of alternatives)
      expect(goalValue).toBeLessThanOrEqual(best * 1.03 * (1 + 1e-9))
  })

  test('are the same for the same seed', async () => {
    const args = ['alternatives', BRIEF, '--slack', '0.2', '--seed', '7']
    expect(await answerTo<Found>(args)).toEqual(await answerTo<Found>(args))
  })

  test.for([
    ['--slack', '-3%'],
    ['--slack', 'much'],
    ['--count', '0'],
    ['--seed', '1.5'],
  ] as const)('refuse %s %s', async ([flag, value]) => {
    const { exitCode, output } = await barwright(['alternatives', BRIEF, `${flag}=${value}`])
    expect(exitCode).toBe(2)
    expect(output).toContain(flag)
  })
})
