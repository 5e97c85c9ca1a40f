import type { LinearProgram } from '../../src/domain/lp/program'
import { at, product, Random, shuffled } from './random'

/*
 * Seeded random linear programs of the shapes blends take, invented figures throughout. A blend
 * has a sum row of 100, bounded shares, 3 to 9 measures in ranges and up to 4 group limits. A point
 * is planted first and ranges are drawn around it, so that most kinds are feasible by construction.
 */

/** What each kind is made to provoke. */
export const KINDS = [
  'plain',
  'infeasible', // by construction, in four ways
  'degenerate', // whole numbers, ranges ending at the planted point, proportional rows
  'duplicate', // oils with the same figures
  'zero-width', // measures held to one value
  'free-ranges', // ranges drawn without looking at any point: feasible or not
  'tight', // ranges from a thousandth to a millionth wide
  'parallel', // the objective is a multiple of a row, often one whose limit is the optimum
] as const
export type Kind = (typeof KINDS)[number]

/** What is known of an instance before solving it. */
export type Expectation = 'feasible' | 'infeasible' | 'unknown'

export interface Instance {
  readonly name: string
  readonly kind: Kind
  readonly expectation: Expectation
  readonly program: LinearProgram
}

export interface Shape {
  readonly kind?: Kind
  readonly oils?: number
  readonly measures?: number
  readonly groups?: number
}

interface Row {
  coefficients: number[]
  lower: number
  upper: number
}

/** A draft that the steps below fill in one after another. */
interface Draft {
  readonly random: Random
  readonly kind: Kind
  readonly measures: number[][]
  readonly cost: number[]
  readonly lower: number[]
  readonly upper: number[]
  readonly planted: number[]
  readonly rows: Row[]
}

const WHOLE = 100

/** The blend program of a seed; the same seed and shape give the same program. */
export function blendInstance(seed: number, shape: Shape = {}): Instance {
  const random = new Random(seed)
  const kind = shape.kind ?? KINDS[seed % KINDS.length] ?? 'plain'
  const oils = shape.oils ?? random.int(10, 60)
  const measureCount = shape.measures ?? random.int(3, 9)
  const groupCount = shape.groups ?? random.int(0, 4)

  const draft = drawOils(random, kind, oils, measureCount)
  plant(draft)
  draft.rows.push({ coefficients: Array<number>(oils).fill(1), lower: WHOLE, upper: WHOLE })
  draft.measures.forEach((measure, i) => draft.rows.push(rangeAround(draft, measure, i)))
  for (let g = 0; g < groupCount; g++) draft.rows.push(groupLimit(draft))
  if (kind === 'degenerate' && random.chance(0.5)) draft.rows.push(doubled(draft))
  if (kind === 'infeasible') makeInfeasible(draft)
  if (kind === 'free-ranges') drawFreeRanges(draft)

  return {
    name: `${kind}-${seed}`,
    kind,
    expectation:
      kind === 'infeasible' ? 'infeasible' : kind === 'free-ranges' ? 'unknown' : 'feasible',
    program: {
      cost: drawObjective(draft),
      lower: draft.lower,
      upper: draft.upper,
      rows: draft.rows,
    },
  }
}

/** Measures in three shapes (dense, mostly zero, complement of the one before), costs and bounds. */
function drawOils(random: Random, kind: Kind, oils: number, measureCount: number): Draft {
  const step = kind === 'degenerate' ? 5 : 0.1
  const measures: number[][] = []
  for (let i = 0; i < measureCount; i++) {
    const shape = random.next()
    const top = random.pick([50, 100, 100, 200, 260])
    const before = measures[i - 1]
    measures.push(
      Array.from({ length: oils }, (_, j) => {
        let value = random.next() * top
        if (shape > 0.85 && before)
          value = Math.max(0, 100 - 100 * at(before, j) - random.next() * 20)
        else if (shape > 0.55 && random.chance(0.6)) value = 0
        return (Math.round(value / step) * step) / 100
      }),
    )
  }
  const cost = Array.from({ length: oils }, () =>
    kind === 'degenerate'
      ? random.int(1, 4)
      : Math.round((1 + random.next() * random.next() * 30) * 100) / 100,
  )
  const upper = Array.from({ length: oils }, () =>
    random.chance(0.35) ? random.int(5, 40) : WHOLE,
  )
  const lower = upper.map((most) => (random.chance(0.04) ? Math.min(most, random.int(1, 5)) : 0))
  if (kind === 'duplicate') duplicateOils(random, measures, cost)
  return { random, kind, measures, cost, lower, upper, planted: lower.slice(), rows: [] }
}

function duplicateOils(random: Random, measures: number[][], cost: number[]): void {
  const pairs = random.int(2, Math.max(2, Math.floor(cost.length / 3)))
  for (let k = 0; k < pairs; k++) {
    const from = random.int(0, cost.length - 1)
    const to = random.int(0, cost.length - 1)
    for (const measure of measures) measure[to] = at(measure, from)
    if (random.chance(0.7)) cost[to] = at(cost, from)
  }
}

/** Plants a blend of three to eight oils in whole steps on top of the lower bounds. */
function plant({ random, lower, upper, planted }: Draft): void {
  let left = WHOLE - planted.reduce((sum, share) => sum + share, 0)
  const order = shuffled(random, planted.length)
  const many = random.int(3, Math.min(8, planted.length))
  order.forEach((j, used) => {
    const room = Math.min(at(upper, j) - at(lower, j), left)
    const share = used >= many - 1 ? room : Math.min(room, random.int(5, 40))
    planted[j] = at(planted, j) + share
    left -= share
  })
}

/** A measure's range around its value at the planted point, as the kind wants it. */
function rangeAround(draft: Draft, coefficients: number[], index: number): Row {
  const { random, kind, planted } = draft
  const value = product(coefficients, planted)
  if (kind === 'zero-width' && (index < 2 || random.chance(0.25))) {
    return { coefficients, lower: value, upper: value }
  }
  if (kind === 'tight') {
    const width = random.pick([1e-3, 1e-4, 1e-6])
    return {
      coefficients,
      lower: value - width * random.next(),
      upper: value + width * random.next(),
    }
  }
  if (kind === 'degenerate' && random.chance(0.6)) {
    const width = random.int(5, 30)
    return random.chance(0.5)
      ? { coefficients, lower: value, upper: value + width }
      : { coefficients, lower: Math.max(0, value - width), upper: value }
  }
  const width = 2 + random.next() * 15
  const lower = Math.max(0, Math.floor((value - width * random.next()) * 10) / 10)
  const upper = Math.ceil((value + width * random.next()) * 10) / 10
  const side = random.next()
  return {
    coefficients,
    lower: side < 0.12 ? -Infinity : lower,
    upper: side >= 0.12 && side < 0.24 ? Infinity : upper,
  }
}

/** At most, or at least, so much of a random group of oils. */
function groupLimit({ random, planted }: Draft): Row {
  const part = 0.1 + 0.4 * random.next()
  const coefficients = planted.map(() => (random.chance(part) ? 1 : 0))
  const value = product(coefficients, planted)
  return random.chance(0.7)
    ? {
        coefficients,
        lower: -Infinity,
        upper: Math.min(WHOLE, Math.ceil(value + random.next() * 15)),
      }
    : { coefficients, lower: Math.max(0, Math.floor(value - random.next() * 10)), upper: Infinity }
}

/** A measure row once more, with everything doubled: linearly dependent, same meaning. */
function doubled({ random, rows, measures }: Draft): Row {
  const row = at(rows, random.int(1, measures.length))
  return {
    coefficients: row.coefficients.map((value) => 2 * value),
    lower: 2 * row.lower,
    upper: 2 * row.upper,
  }
}

/** Breaks a feasible draft by a clear margin in one of four ways. */
function makeInfeasible({ random, rows, measures, lower, upper, planted }: Draft): void {
  const row = at(rows, random.int(1, measures.length))
  switch (random.int(0, 3)) {
    case 0: // more of a measure than the richest oil has
      row.lower = Math.ceil(Math.max(...row.coefficients) * WHOLE + 1 + random.next() * 10)
      row.upper = row.lower + 10
      return
    case 1: {
      // two disjoint ranges for one measure
      row.lower = product(row.coefficients, planted)
      row.upper = row.lower + 1
      rows.push({
        coefficients: row.coefficients,
        lower: row.upper + 1 + random.next(),
        upper: Infinity,
      })
      return
    }
    case 2: // shares that cannot reach 100
      for (let j = 0; j < upper.length; j++) {
        upper[j] = 95 / upper.length
        lower[j] = Math.min(at(lower, j), at(upper, j))
      }
      return
    default: {
      // two complementary groups that cannot make 100
      const group = planted.map(() => (random.chance(0.5) ? 1 : 0))
      rows.push(
        { coefficients: group, lower: -Infinity, upper: 40 },
        { coefficients: group.map((k) => 1 - k), lower: -Infinity, upper: 55 + random.int(0, 3) },
      )
    }
  }
}

function drawFreeRanges({ random, rows, measures }: Draft): void {
  for (const row of rows.slice(1, 1 + measures.length)) {
    const most = Math.max(...row.coefficients) * WHOLE
    const middle = most * (0.15 + 0.6 * random.next())
    const half = most * (0.03 + 0.12 * random.next())
    row.lower = Math.round((middle - half) * 10) / 10
    row.upper = Math.round((middle + half) * 10) / 10
  }
}

/** Cost, or a measure to have least or most of; kind `parallel` takes any row, scaled. */
function drawObjective({ random, kind, cost, rows, measures }: Draft): number[] {
  if (kind === 'parallel') {
    const row = at(rows, random.int(0, rows.length - 1))
    const factor = random.pick([1, -1, 0.5, -3, 0.037])
    return row.coefficients.map((value) => factor * value)
  }
  if (random.chance(0.6)) return cost
  const sign = random.chance(0.5) ? 1 : -1
  return at(measures, random.int(0, measures.length - 1)).map((value) => sign * value)
}
