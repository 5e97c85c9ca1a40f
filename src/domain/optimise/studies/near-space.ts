import type { Blend, Prices } from '../../blend/blend'
import { barMeasures } from '../../blend/compare'
import type { Library } from '../../blend/library'
import { blendValue } from '../../blend/values'
import type { Interval } from '../../interval'
import type { LinearRow } from '../../lp/program'
import { Simplex } from '../../lp/simplex/simplex'
import { WHOLE_PERCENT } from '../../units'
import type { Brief, Limits } from '../brief/brief'
import { blendRules } from '../space/blend-rules'
import { brokenRules } from '../space/broken-rules'
import { formulate, type NamedRow, rowName } from '../space/formulate'
import { type Looked, lookUnderRules } from './keep-rules'
import { UnsoundAnswer } from '../../lp/unsound-answer'

/** What a blend is found by: its value is the sum of these. */
export interface Weights {
  /** Per tie that a measure of the bar moves. */
  readonly perTie: number
  /** Per percentage point that an oil's share rises or falls; needs `changes`. */
  readonly perPoint: number
  /** Per percent of each oil, in the space's order. */
  readonly perShare?: ArrayLike<number> | undefined
}

/** The nearest blend with its weighted distance, or that there is none or none was found in time. */
export type Near =
  | { readonly status: 'found'; readonly blend: Blend; readonly value: number }
  | { readonly status: 'none' }
  | { readonly status: 'undecided' }

/** Further than any measure or share can move: what may move without limit, in points and percent. */
const FAR = 1_000

/** How a space is set up. */
export interface NearOptions {
  /** Limits and rules every blend keeps, less steps; measures that can't be reckoned have none. */
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
  /** The program as the simplex has it, for searches under rules. */
  readonly #lower: number[]
  readonly #upper: number[]
  readonly #rows: LinearRow[]

  constructor(private readonly options: NearOptions) {
    const { brief, base, library } = options
    this.oils = [...new Set([...Object.keys(brief.oils), ...Object.keys(base)])]
    const bar = barMeasures(library.measures)
    this.#ties = bar.map(({ tie }) => tie)
    const limits = formulate(this.#briefOfAll(), library, 'every measure')
    const isGroup = ({ name }: NamedRow) => brief.groups.some((_, at) => name === rowName.group(at))
    this.#rows = [
      ...limits.rows.filter((row) => !isGroup(row)).map((row) => this.#widened(row)),
      ...bar.map(({ id }, index) => this.#moveRow(id, index, limits.rows)),
      ...limits.rows.filter(isGroup).map((row) => this.#widened(row)),
      ...(options.changes ? this.oils.map((oil, index) => this.#changeRow(oil, index)) : []),
    ]
    const extra = this.#width - this.oils.length
    this.#lower = [...Array.from(limits.lower), ...zeros(extra)]
    this.#upper = [...Array.from(limits.upper), ...zeros(extra, FAR)]
    this.#simplex = new Simplex({
      cost: new Float64Array(this.#width),
      lower: this.#lower,
      upper: this.#upper,
      rows: this.#rows,
    })
  }

  /** Puts a range in place of an oil's own, in percent. */
  limitOil(oil: string, { min, max }: Limits): void {
    const own = this.#ownLimits(oil)
    const place = this.oils.indexOf(oil)
    const [lower, upper] = [min ?? own.min, max ?? own.max]
    this.#lower[place] = lower
    this.#upper[place] = upper
    this.#simplex.setVariableBounds(place, lower, upper)
  }

  /** Gives an oil back the range of the brief. */
  restoreOil(oil: string): void {
    this.limitOil(oil, {})
  }

  /**
   * The blend with the least weighted distance. The rules of the brief hold; the linear optimum is
   * searched on from only where it breaks one. Steps of shares are not among them: every variable
   * would have to stand on a step, the distances too.
   */
  nearest(weights: Weights): Near {
    const cost = this.#cost(weights)
    const linear = this.#solve(cost)
    const found =
      linear.status === 'found' && !this.#keepsRules(linear.x) ? this.#search(cost) : linear
    return found.status === 'found'
      ? { status: 'found', blend: this.#blendOf(found.x), value: found.objective }
      : found
  }

  #solve(cost: Float64Array): Looked {
    this.#simplex.setCost(cost)
    const outcome = this.#simplex.solve()
    if (outcome.status === 'unbounded')
      throw new UnsoundAnswer('The distance of limited shares was called unbounded')
    return outcome.status === 'infeasible'
      ? { status: 'none' }
      : { status: 'found', x: outcome.x, objective: outcome.objective, proved: true }
  }

  #keepsRules(x: ArrayLike<number>): boolean {
    return brokenRules(this.options.brief.rules, this.#blendOf(x)).length === 0
  }

  #search(cost: Float64Array): Looked {
    const rules = blendRules(this.oils, this.options.brief.rules)
    const leastUse = new Float64Array(this.#width)
    leastUse.set(Array.from(rules.leastUse))
    const program = { cost, lower: this.#lower, upper: this.#upper, rows: this.#rows }
    return lookUnderRules(program, { ...rules, leastUse })
  }

  #blendOf(x: ArrayLike<number>): Blend {
    const shares = this.oils.map((oil, index) => [oil, x[index] ?? NaN] as const)
    return Object.fromEntries(shares.filter(([, share]) => share !== 0))
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

  #ownLimits(oil: string): Interval {
    const limits = this.options.brief.oils[oil]
    // An oil of the base that is not in the brief has no part in any blend of it.
    if (!limits) return { min: 0, max: 0 }
    return { min: limits.min ?? 0, max: limits.max ?? WHOLE_PERCENT }
  }

  /**
   * The brief over all oils of the space, for typical lots: an oil of the base that is not in the brief has
   * no part in any blend of it, and so no price.
   */
  #briefOfAll(): Brief {
    const { brief, prices } = this.options
    const all = this.oils.map((oil) => {
      const { min, max } = this.#ownLimits(oil)
      return [oil, { min, max, pricePerKg: oil in brief.oils ? prices[oil] : 0 }] as const
    })
    return { ...brief, oils: Object.fromEntries(all), robust: false }
  }

  #moveRow(measure: string, index: number, rows: readonly NamedRow[]): LinearRow {
    const { base, prices, library } = this.options
    const typical = rows.find(({ name }) => name === rowName.measure(measure))
    if (!typical) throw new Error(`Measure ${measure} has no row`)
    const value = blendValue(library, prices, measure, base)
    const { coefficients } = this.#widened(typical)
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

  /** A row of the shares with zeros for all that moves. */
  #widened({ coefficients, lower, upper }: NamedRow) {
    return { coefficients: this.#wide(coefficients), lower, upper }
  }

  #wide(coefficients: ArrayLike<number>): Float64Array {
    const wide = new Float64Array(this.#width)
    wide.set(coefficients)
    return wide
  }
}

function zeros(count: number, value = 0): number[] {
  return new Array<number>(count).fill(value)
}
