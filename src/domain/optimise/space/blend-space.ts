import type { Blend, Prices } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { valueOfOils } from '../../blend/values'
import type { LinearProgram, LinearRow } from '../../lp/program'
import type { Optimal } from '../../lp/simplex/answer'
import { Simplex } from '../../lp/simplex/simplex'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Brief, type Limits, pricesOf } from '../brief/brief'
import type { Side } from '../brief/limits'
import { reckonable } from '../brief/ranges'
import { heldForAnyLot, wishedValue } from '../lots/wishes'
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
  readonly program: LinearProgram
  /** What the brief states. */
  readonly prices: Prices
  /** Holds blends against the brief, from the oils alone. */
  readonly check: BriefCheck
  readonly #perPercent: ReadonlyMap<string, Float64Array>
  /** Rows of wishes that hold for any lot, by the wish's side and measure. */
  readonly #wishRows: Readonly<Record<Side, Map<string, number>>> = {
    min: new Map(),
    max: new Map(),
  }

  /** Expects a brief that `checkBrief` finds sound. */
  constructor(
    readonly brief: Brief,
    readonly library: Library,
  ) {
    this.oils = Object.keys(brief.oils)
    this.measures = reckonable(brief, library)
    this.prices = pricesOf(brief)
    this.check = new BriefCheck(brief, library)
    this.#perPercent = new Map(this.measures.map((id) => [id, this.#coefficients(id)]))
    this.program = {
      cost: new Float64Array(this.oils.length),
      lower: this.oils.map((oil) => brief.oils[oil]?.min ?? 0),
      upper: this.oils.map((oil) => brief.oils[oil]?.max ?? WHOLE_PERCENT),
      rows: this.#rows(),
    }
    this.simplex = new Simplex(this.program)
  }

  /** What one percent of each oil adds to a measure, in the measure's unit. */
  perPercent(measure: string): Float64Array {
    const values = this.#perPercent.get(measure)
    if (!values) throw new Error(`Measure ${measure} can't be reckoned for this brief`)
    return values
  }

  /** Number of the row of a measure's typical value in the simplex. */
  rowOf(measure: string): number {
    const place = this.measures.indexOf(measure)
    if (place < 0) throw new Error(`Measure ${measure} can't be reckoned for this brief`)
    return 1 + place
  }

  /**
   * Number of the row that one side of the wish on a measure stands in: that of its typical value, or
   * one of its own where the wish holds for any lot. A row not yet there is added.
   */
  wishRowOf(measure: string, side: Side): number {
    if (!heldForAnyLot(this.brief, measure)) return this.rowOf(measure)
    const found = this.#wishRows[side].get(measure)
    if (found !== undefined) return found
    const added = this.simplex.addRow(row(this.#wishPerPercent(measure, side), {}))
    this.#wishRows[side].set(measure, added)
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

  #rows(): LinearRow[] {
    const rows = [
      row(new Float64Array(this.oils.length).fill(1), { min: WHOLE_PERCENT, max: WHOLE_PERCENT }),
      ...this.measures.map((id) => row(this.perPercent(id), this.#typicalWish(id))),
      ...this.brief.groups.map((group) =>
        row(
          Float64Array.from(this.oils, (oil) => Number(group.oils.includes(oil))),
          group,
        ),
      ),
    ]
    for (const { id, side, limit } of this.#wishesOnAnyLot()) {
      this.#wishRows[side].set(id, rows.length)
      rows.push(row(this.#wishPerPercent(id, side), { [side]: limit }))
    }
    return rows
  }

  #wishesOnAnyLot(): { id: string; side: Side; limit: number }[] {
    return SIDES.flatMap((side) =>
      this.measures.flatMap((id) => {
        const limit = this.brief.measures[id]?.[side]
        return limit === undefined || !heldForAnyLot(this.brief, id) ? [] : [{ id, side, limit }]
      }),
    )
  }

  #coefficients(measure: string): Float64Array {
    const valueOf = valueOfOils(this.library, this.prices, measure)
    return Float64Array.from(this.oils, (oil) => fractionFromPercent(valueOf(oil)))
  }

  #wishPerPercent(measure: string, side: Side): Float64Array {
    const valueOf = wishedValue(this.brief, this.library, measure, side)
    return Float64Array.from(this.oils, (oil) => fractionFromPercent(valueOf(oil)))
  }

  /** What the wish on a measure asks of its typical value: nothing where it holds for any lot. */
  #typicalWish(measure: string): Limits {
    return heldForAnyLot(this.brief, measure) ? {} : (this.brief.measures[measure] ?? {})
  }

  #limitAnyLot(measure: string, { min, max }: Limits): void {
    const [least, most] = [this.#wishRows.min, this.#wishRows.max]
    if (min !== undefined || least.has(measure))
      this.#setRow(this.wishRowOf(measure, 'min'), { min })
    if (max !== undefined || most.has(measure))
      this.#setRow(this.wishRowOf(measure, 'max'), { max })
  }

  #setRow(number: number, { min, max }: Limits): void {
    this.simplex.setRowBounds(number, min ?? -Infinity, max ?? Infinity)
  }
}

const SIDES: readonly Side[] = ['min', 'max']

function row(coefficients: Float64Array, { min, max }: Limits) {
  return { coefficients, lower: min ?? -Infinity, upper: max ?? Infinity }
}

/** The same figures with their signs turned: what is least of them is the most of the others. */
export function negated(values: Float64Array): Float64Array {
  return values.map((value) => -value)
}
