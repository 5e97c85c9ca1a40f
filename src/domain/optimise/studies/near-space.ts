import type { Blend, Prices } from '../../blend/blend'
import { barMeasures } from '../../blend/compare'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { blendValue, oilValue } from '../../blend/values'
import { type LinearRow, Simplex } from '../../simplex'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import type { Brief, Limits } from '../brief'
import { reckonable } from '../ranges'
import { UnsoundAnswer } from '../verify'

/** What a blend is found by: its value is the sum of these. */
export interface Weights {
  /** Per tie that a measure of the bar moves. */
  readonly perTie: number
  /** Per percentage point that an oil's share rises or falls; needs `changes`. */
  readonly perPoint: number
  /** Per percent of each oil, in the space's order. */
  readonly perShare?: ArrayLike<number> | undefined
}

/** How a space is set up. */
export interface NearOptions {
  /** Limits every blend keeps; measures that can't be reckoned have none. */
  readonly brief: Brief
  /** The blend to stay near. */
  readonly base: Blend
  readonly prices: Prices
  readonly library: Library
  /** Whether rises and falls of each oil are reckoned: a row more for each. */
  readonly changes: boolean
}

/**
 * All blends that keep a brief, with how far each lies from one blend: as a bar, in ties of every shown
 * acid measure, and as oils, in percentage points. One warm simplex, like `BlendSpace`, with a variable
 * more for every way something can move:
 * measure = base + up − down, share = base + rise − fall. Minimising their sum makes it the distance.
 */
export class NearSpace {
  /** Ids of the oils: those of the brief, then those of the base that are not in it. */
  readonly oils: readonly string[]
  readonly #simplex: Simplex
  readonly #ties: readonly number[]
  readonly #limitRows: ReadonlyMap<string, number>

  constructor(private readonly options: NearOptions) {
    const { brief, base, library } = options
    this.oils = [...new Set([...Object.keys(brief.oils), ...Object.keys(base)])]
    const bar = barMeasures(library.measures)
    this.#ties = bar.map(({ tie }) => tie)
    const limited = reckonable(brief, library)
    this.#limitRows = new Map(limited.map((id, index) => [id, 1 + index]))
    const rows = [
      this.#sumRow(),
      ...limited.map((id) => this.#row(this.#perPercent(id), brief.measures[id] ?? {})),
      ...bar.map(({ id }, index) => this.#moveRow(id, index)),
      ...brief.groups.map((group) =>
        this.#row(
          this.oils.map((oil) => Number(group.oils.includes(oil))),
          group,
        ),
      ),
      ...(options.changes ? this.oils.map((oil, index) => this.#changeRow(oil, index)) : []),
    ]
    const extra = this.#width - this.oils.length
    this.#simplex = new Simplex({
      cost: new Float64Array(this.#width),
      lower: [...this.oils.map((oil) => this.#ownLimits(oil).min), ...zeros(extra)],
      upper: [...this.oils.map((oil) => this.#ownLimits(oil).max), ...zeros(extra, Infinity)],
      rows,
    })
  }

  /** Puts a range in place of an oil's own, in percent. */
  limitOil(oil: string, { min, max }: Limits): void {
    const own = this.#ownLimits(oil)
    this.#simplex.setVariableBounds(this.oils.indexOf(oil), min ?? own.min, max ?? own.max)
  }

  /** Gives an oil back the range of the brief. */
  restoreOil(oil: string): void {
    this.limitOil(oil, {})
  }

  /** Puts a range in place of the one on a measure, in its unit. */
  limit(measure: string, { min, max }: Limits): void {
    const row = this.#limitRows.get(measure)
    if (row === undefined) throw new Error(`Measure ${measure} can't be reckoned for this study`)
    this.#simplex.setRowBounds(row, min ?? -Infinity, max ?? Infinity)
  }

  /** The blend with the least weighted distance, or undefined where none keeps the limits. */
  nearest(weights: Weights): { readonly blend: Blend; readonly value: number } | undefined {
    this.#simplex.setCost(this.#cost(weights))
    const outcome = this.#simplex.solve()
    if (outcome.status === 'unbounded')
      throw new UnsoundAnswer('The distance of limited shares was called unbounded')
    if (outcome.status === 'infeasible') return undefined
    const shares = this.oils.map((oil, index) => [oil, outcome.x[index] ?? NaN] as const)
    return {
      blend: Object.fromEntries(shares.filter(([, share]) => share !== 0)),
      value: outcome.objective,
    }
  }

  get #width(): number {
    const { length } = this.oils
    return length + 2 * this.#ties.length + (this.options.changes ? 2 * length : 0)
  }

  #cost({ perTie, perPoint, perShare }: Weights): Float64Array {
    const cost = new Float64Array(this.#width)
    const moves = this.oils.length
    const changes = moves + 2 * this.#ties.length
    this.oils.forEach((_, index) => (cost[index] = perShare?.[index] ?? 0))
    this.#ties.forEach((tie, index) => {
      cost[moves + 2 * index] = perTie / tie
      cost[moves + 2 * index + 1] = perTie / tie
    })
    return cost.fill(perPoint, changes)
  }

  #ownLimits(oil: string): { min: number; max: number } {
    const limits = this.options.brief.oils[oil]
    // An oil of the base that is not in the brief has no part in any blend of it.
    if (!limits) return { min: 0, max: 0 }
    return { min: limits.min ?? 0, max: limits.max ?? WHOLE_PERCENT }
  }

  #perPercent(measure: string): number[] {
    const { library, prices, brief } = this.options
    return this.oils.map((oil) =>
      oil in brief.oils || measure !== COST
        ? fractionFromPercent(oilValue(library, prices, measure, oil))
        : 0,
    )
  }

  #sumRow(): LinearRow {
    const whole = { min: WHOLE_PERCENT, max: WHOLE_PERCENT }
    return this.#row(
      this.oils.map(() => 1),
      whole,
    )
  }

  #moveRow(measure: string, index: number): LinearRow {
    const { base, prices, library } = this.options
    const value = blendValue(library, prices, measure, base)
    const coefficients = this.#wide(this.#perPercent(measure))
    const place = this.oils.length + 2 * index
    coefficients[place] = -1
    coefficients[place + 1] = 1
    return { coefficients, lower: value, upper: value }
  }

  #changeRow(oil: string, index: number): LinearRow {
    const coefficients = this.#wide([])
    const place = this.oils.length + 2 * this.#ties.length + 2 * index
    coefficients[index] = 1
    coefficients[place] = -1
    coefficients[place + 1] = 1
    const share = this.options.base[oil] ?? 0
    return { coefficients, lower: share, upper: share }
  }

  #row(coefficients: readonly number[], { min, max }: Limits): LinearRow {
    return {
      coefficients: this.#wide(coefficients),
      lower: min ?? -Infinity,
      upper: max ?? Infinity,
    }
  }

  #wide(coefficients: readonly number[]): Float64Array {
    const wide = new Float64Array(this.#width)
    wide.set(coefficients)
    return wide
  }
}

function zeros(count: number, value = 0): number[] {
  return new Array<number>(count).fill(value)
}
