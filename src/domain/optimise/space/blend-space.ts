import type { Blend, Prices } from '../../blend/blend'
import type { Library } from '../../blend/library'
import type { Optimal } from '../../lp/simplex/answer'
import { Simplex } from '../../lp/simplex/simplex'
import { type Brief, type Limits, pricesOf } from '../brief/brief'
import { type Side, SIDES } from '../brief/limits'
import { reckonable } from '../brief/ranges'
import { heldForAnyLot } from '../lots/wishes'
import { anyLotRow, formulate, type Formulation, rowName } from './formulate'
import { BriefCheck } from './verify'
import { UnsoundAnswer } from '../../lp/unsound-answer'

/**
 * All blends that keep a brief, as one warm simplex. Related questions (another goal, another range, a
 * point of the map) change only what differs and go on from the last answer, so that thousands of them
 * take milliseconds.
 *
 * Variables are the brief's oils in its order, in percent. Every measure that can be reckoned has a row,
 * wished for or not, so that any of them can be ranged over or held at a value.
 *
 * That row is of typical lots. Where a robust brief's wish must hold for any lot, the row is open and the
 * wish stands in rows of its own after the groups, one for each side, since the lots with least of a
 * measure are not those with most: an ordinary program, and no larger than the wishes make it.
 */
export class BlendSpace {
  /** Ids of the oils, in the order of all arrays here. */
  readonly oils: readonly string[]
  /** Ids of the measures that can be reckoned: all, less cost where an oil has no price. */
  readonly measures: readonly string[]
  /** The solver itself, for passes that move a cost or a limit along a line. */
  readonly simplex: Simplex
  /** The limits of the brief as the simplex was made with them; its cost is 0. */
  readonly program: Formulation
  /** What the brief states. */
  readonly prices: Prices
  /** Holds blends against the brief, from the oils alone. */
  readonly check: BriefCheck
  /** Numbers of the simplex's rows by name. */
  readonly #numbers: Map<string, number>

  /** Expects a brief that `checkBrief` finds sound. */
  constructor(
    readonly brief: Brief,
    readonly library: Library,
  ) {
    this.oils = Object.keys(brief.oils)
    this.measures = reckonable(brief, library)
    this.prices = pricesOf(brief)
    this.check = new BriefCheck(brief, library)
    this.program = formulate(brief, library, 'every measure')
    this.#numbers = new Map(this.program.rows.map(({ name }, number) => [name, number]))
    this.simplex = new Simplex(this.program)
  }

  /** What one percent of each oil adds to a measure, in the measure's unit. */
  perPercent(measure: string): Float64Array {
    const row = this.program.rows[this.rowOf(measure)]
    if (row) return row.coefficients
    throw new Error(`Measure ${measure} has no row`)
  }

  /** Number of the row of a measure's typical value in the simplex. */
  rowOf(measure: string): number {
    const number = this.#numbers.get(rowName.measure(measure))
    if (number !== undefined) return number
    throw new Error(`Measure ${measure} can't be reckoned for this brief`)
  }

  /** Number of the row of a group of the brief in the simplex. */
  groupRowOf(group: number): number {
    const number = this.#numbers.get(rowName.group(group))
    if (number !== undefined) return number
    throw new Error(`The brief has no group ${group}`)
  }

  /**
   * Number of the row that one side of the wish on a measure stands in: that of its typical value, or
   * one of its own where the wish holds for any lot. A row not yet there is added.
   */
  wishRowOf(measure: string, side: Side): number {
    if (!heldForAnyLot(this.brief, measure)) return this.rowOf(measure)
    const name = rowName.wish(measure, side)
    const found = this.#numbers.get(name)
    if (found !== undefined) return found
    const added = this.simplex.addRow(anyLotRow(this.brief, this.library, measure, side))
    this.#numbers.set(name, added)
    return added
  }

  /** Puts a range in place of the wish on a measure, in its unit; for any lot if the wish was. */
  limit(measure: string, { min, max }: Limits): void {
    if (!heldForAnyLot(this.brief, measure)) return this.#setRow(this.rowOf(measure), { min, max })
    this.#setRow(this.rowOf(measure), {})
    this.#limitAnyLot(measure, { min, max })
  }

  /** Holds the typical value of a measure to a range, in its unit, and sets the wish on it aside. */
  hold(measure: string, limits: Limits): void {
    if (heldForAnyLot(this.brief, measure)) this.#limitAnyLot(measure, {})
    this.#setRow(this.rowOf(measure), limits)
  }

  /** Gives a measure back the range that the brief states. */
  restore(measure: string): void {
    this.limit(measure, this.brief.measures[measure] ?? {})
  }

  /** Gives every measure back its range. */
  restoreAll(): void {
    for (const measure of this.measures) this.restore(measure)
  }

  /**
   * The blend with the least Σ cost × share, or undefined where no blend keeps the limits. The arrays of
   * the answer are overwritten by the next question: copy what is to be kept.
   */
  least(cost: ArrayLike<number>): Optimal | undefined {
    this.simplex.setCost(cost)
    const outcome = this.simplex.solve()
    if (outcome.status === 'unbounded')
      throw new UnsoundAnswer('A space of limited shares was called unbounded')
    return outcome.status === 'optimal' ? outcome : undefined
  }

  /** Shares as a blend; oils that take no part are left out. */
  blendOf(shares: ArrayLike<number>): Blend {
    const blend: Record<string, number> = {}
    this.oils.forEach((oil, index) => {
      const share = shares[index] ?? NaN
      if (share !== 0) blend[oil] = share
    })
    return blend
  }

  /** The very blend of some shares, checked against a brief from the oils alone; throws UnsoundAnswer. */
  checkedBlend(shares: ArrayLike<number>, check = this.check): Blend {
    const blend = this.blendOf(shares)
    check.expectKept(blend)
    return blend
  }

  #limitAnyLot(measure: string, limits: Limits): void {
    for (const side of SIDES) {
      const limit = limits[side]
      if (limit !== undefined || this.#numbers.has(rowName.wish(measure, side)))
        this.#setRow(this.wishRowOf(measure, side), { [side]: limit })
    }
  }

  #setRow(number: number, { min, max }: Limits): void {
    this.simplex.setRowBounds(number, min ?? -Infinity, max ?? Infinity)
  }
}

/** The same figures with their signs turned: what is least of them is the most of the others. */
export function negated(values: Float64Array): Float64Array {
  return values.map((value) => -value)
}
