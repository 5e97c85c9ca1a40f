import type { Infeasible, Optimal, Unbounded } from '../../../../src/domain/lp/simplex/answer'
import type { LinearProgram } from '../../../../src/domain/lp/program'

/*
 * Checks of outcomes against the program itself, written apart from the solver's own: plain sums,
 * no scaling. Each returns the faults found, so that a test can say `toEqual([])`.
 */

/** Relative to the magnitude of what is added up; the solver promises 1e-9. */
const TOLERANCE = 1e-9

interface Sum {
  readonly value: number
  readonly magnitude: number
}

function sum(terms: readonly number[]): Sum {
  return {
    value: terms.reduce((total, term) => total + term, 0),
    magnitude: terms.reduce((total, term) => total + Math.abs(term), 0),
  }
}

function products(a: ArrayLike<number>, b: ArrayLike<number>): number[] {
  return Array.from(a, (value, k) => (value === 0 ? 0 : value * (b[k] ?? NaN)))
}

/** Feasibility, prices of the right sign, complementary slackness and strong duality. */
export function faultsOfOptimum(program: LinearProgram, answer: Optimal): string[] {
  const faults = feasibilityFaults(program, answer)
  const unit = Math.max(...Array.from(program.cost, Math.abs), 1e-300)
  const priced: number[] = []
  const check = (
    what: string,
    price: number,
    value: number,
    lower: number,
    upper: number,
  ): void => {
    const slackness = (bound: number): number => Math.abs(price * (value - bound))
    const scale = Math.max(1, Math.abs(value)) * Math.max(unit, Math.abs(price))
    if (Math.abs(price) <= TOLERANCE * unit) return
    const bound = price > 0 ? lower : upper
    priced.push(price * bound)
    if (!(slackness(bound) <= TOLERANCE * scale)) {
      faults.push(`${what}: price ${price} at ${value} of [${lower}, ${upper}]`)
    }
  }
  answer.reducedCosts.forEach((price, j) => {
    const paid = sum([
      program.cost[j] ?? NaN,
      ...program.rows.map((row, i) => -(answer.duals[i] ?? NaN) * (row.coefficients[j] ?? NaN)),
    ])
    if (!(Math.abs(price - paid.value) <= TOLERANCE * Math.max(unit, paid.magnitude))) {
      faults.push(`variable ${j}: reduced cost ${price}, by its column ${paid.value}`)
    }
    check(
      `variable ${j}`,
      price,
      answer.x[j] ?? NaN,
      program.lower[j] ?? NaN,
      program.upper[j] ?? NaN,
    )
  })
  program.rows.forEach((row, i) => {
    check(`row ${i}`, answer.duals[i] ?? NaN, answer.rowValues[i] ?? NaN, row.lower, row.upper)
  })
  const cost = sum(products(program.cost, answer.x))
  const dual = sum(priced)
  const scale = Math.max(unit, cost.magnitude, dual.magnitude)
  if (!(Math.abs(cost.value - answer.objective) <= TOLERANCE * scale)) {
    faults.push(`objective ${answer.objective} is not cost · x = ${cost.value}`)
  }
  if (!(Math.abs(cost.value - dual.value) <= TOLERANCE * scale)) {
    faults.push(`objective ${cost.value} against dual objective ${dual.value}`)
  }
  return faults
}

function feasibilityFaults(program: LinearProgram, { x, rowValues }: Optimal): string[] {
  const faults: string[] = []
  x.forEach((value, j) => {
    if (!(value >= (program.lower[j] ?? NaN) && value <= (program.upper[j] ?? NaN))) {
      faults.push(`variable ${j} is ${value}, out of its bounds`)
    }
  })
  program.rows.forEach((row, i) => {
    const { value, magnitude } = sum(products(row.coefficients, x))
    const slack = TOLERANCE * Math.max(1, magnitude)
    if (!(value >= row.lower - slack && value <= row.upper + slack)) {
      faults.push(`row ${i} is ${value}, out of [${row.lower}, ${row.upper}]`)
    }
    if (!(Math.abs(value - (rowValues[i] ?? NaN)) <= slack)) {
      faults.push(`row ${i} is ${value}, reported ${rowValues[i]}`)
    }
  })
  return faults
}

/** Farkas: the weighted rows can't reach, within the row ranges, what the bounds force on them. */
export function faultsOfInfeasibility(program: LinearProgram, proof: Infeasible): string[] {
  const n = program.cost.length
  if (proof.crossed >= 0) {
    const row = program.rows[proof.crossed - n]
    const lower = row ? row.lower : (program.lower[proof.crossed] ?? NaN)
    const upper = row ? row.upper : (program.upper[proof.crossed] ?? NaN)
    return lower > upper ? [] : [`bounds [${lower}, ${upper}] of ${proof.crossed} do not cross`]
  }
  const weights = Array.from(proof.rowWeights)
  const least = Array.from({ length: n }, (_, j) => {
    const weight = sum(
      products(
        weights,
        program.rows.map((row) => row.coefficients[j] ?? NaN),
      ),
    )
    if (Math.abs(weight.value) <= 1e-12 * weight.magnitude) return 0
    return weight.value * ((weight.value > 0 ? program.lower[j] : program.upper[j]) ?? NaN)
  })
  const most = program.rows.map((row, i) => {
    const weight = weights[i] ?? NaN
    return weight === 0 ? 0 : weight * (weight > 0 ? row.upper : row.lower)
  })
  const forced = sum(least)
  const allowed = sum(most)
  const noise = 1e-13 * (forced.magnitude + allowed.magnitude)
  return forced.value - allowed.value > noise
    ? []
    : [`bounds force ${forced.value}, rows allow ${allowed.value}`]
}

/** A ray along which nothing stops and the cost falls. */
export function faultsOfRay(program: LinearProgram, { ray }: Unbounded): string[] {
  const faults: string[] = []
  const stops = (rate: number, noise: number, lower: number, upper: number): boolean =>
    (rate > noise && upper < Infinity) || (rate < -noise && lower > -Infinity)
  ray.forEach((rate, j) => {
    if (stops(rate, 0, program.lower[j] ?? NaN, program.upper[j] ?? NaN)) {
      faults.push(`variable ${j} meets a bound`)
    }
  })
  program.rows.forEach((row, i) => {
    const { value, magnitude } = sum(products(row.coefficients, ray))
    if (stops(value, 1e-12 * magnitude, row.lower, row.upper)) faults.push(`row ${i} meets a bound`)
  })
  if (!(sum(products(program.cost, ray)).value < 0)) faults.push('the cost does not fall')
  return faults
}
