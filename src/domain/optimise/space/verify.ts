import { type Blend, normalised, totalChange, totalShare } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { blendValue, valueOfOils } from '../../blend/values'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { WHOLE_PERCENT } from '../../units'
import { type Brief, goalMeasure, type Limits, pricesOf } from '../brief/brief'
import type { Side } from '../brief/limits'
import { brokenRules } from './broken-rules'
import { heldForAnyLot, wishedValue } from '../lots/wishes'

/**
 * How far an answer may stand outside a limit, in percent of oil weight or points.
 * Solvers here keep rows to about 1e-8; one part in a million is still far below any scale or measure.
 */
export const CHECK_TOLERANCE = 1e-6

/**
 * How far a measure of about this value may stand outside a limit, in its unit. Of money it is one part
 * in a million: where a kilogram costs 100,000, the sixth decimal is the solver's noise.
 */
export function toleranceOn(measure: string, value: number): number {
  return measure === COST ? CHECK_TOLERANCE * Math.max(1, Math.abs(value)) : CHECK_TOLERANCE
}

/**
 * What is wrong with a blend as an answer to a brief, found from the oils alone and not from the
 * program that was solved. Empty when every limit and rule holds; in a robust brief, limits on measures
 * for any lot of the oils.
 */
export function breaches(brief: Brief, blend: Blend, library: Library): string[] {
  return new BriefCheck(brief, library).breaches(blend)
}

/** Throws UnsoundAnswer with what is wrong, after a few words on what that means. */
export function expectNone(wrong: readonly string[], meaning: string): void {
  if (wrong.length > 0) throw new UnsoundAnswer(`${meaning}: ${wrong.join('; ')}`)
}

/** A limit on what the oils of a blend come to together, and what each counts for. */
interface Total {
  readonly path: string
  readonly limits: Limits
  /** The measure of which it is the weight average; undefined for a sum of shares. */
  readonly measure: string | undefined
  readonly valueOf: (oil: string) => number
}

/**
 * `breaches` of one brief for many blends. What they are held to is gathered from the brief once, and
 * what an oil counts for in each group and wish once from the oil, when a blend first has it.
 */
export class BriefCheck {
  readonly #shares: ReadonlyMap<string, Limits>
  /** Oils that must be there. */
  readonly #needed: readonly string[]
  readonly #totals: readonly Total[]
  /** By oil, a value for each total. */
  readonly #counts = new Map<string, Float64Array>()
  /** The totals of the blend at hand. */
  readonly #values: Float64Array

  constructor(
    readonly brief: Brief,
    readonly library: Library,
  ) {
    this.#shares = new Map(
      Object.entries(brief.oils).map(([oil, { min, max }]) => {
        return [oil, { min: min ?? 0, max: max ?? WHOLE_PERCENT }]
      }),
    )
    this.#needed = [...this.#shares].filter(([, one]) => !isWithin(0, one)).map(([oil]) => oil)
    this.#totals = [...groupTotals(brief), ...wishTotals(brief, library)]
    this.#values = new Float64Array(this.#totals.length)
  }

  /** Throws UnsoundAnswer where a blend breaks any limit or rule. */
  expectKept(blend: Blend): void {
    expectNone(this.breaches(blend), 'A blend breaks the brief')
  }

  /** As the function of that name. */
  breaches(blend: Blend): string[] {
    const found = this.#wrongShares(blend)
    // An oil from elsewhere has no price here, so nothing more can be reckoned of a blend with it.
    if (Object.keys(blend).some((oil) => !this.#shares.has(oil))) return found
    const values = this.#totalsOf(blend)
    this.#totals.forEach(({ path, limits, measure }, k) => {
      const value = values[k] ?? NaN
      const slack = measure === undefined ? CHECK_TOLERANCE : toleranceOn(measure, value)
      if (!isWithin(value, limits, slack)) found.push(...outside(path, value, limits, slack))
    })
    return found.concat(brokenRules(this.brief.rules, blend))
  }

  #wrongShares(blend: Blend): string[] {
    const sum = totalShare(blend)
    const found = isWithin(sum, WHOLE) ? [] : outside('sum', sum, WHOLE)
    const check = (oil: string, share: number) => {
      const limits = this.#shares.get(oil)
      if (!limits) found.push(`oils.${oil}: not on the shelf`)
      else if (!isWithin(share, limits)) found.push(...outside(`oils.${oil}`, share, limits))
    }
    for (const oil of Object.keys(blend)) check(oil, blend[oil] ?? NaN)
    for (const oil of this.#needed) if (!(oil in blend)) check(oil, 0)
    return found
  }

  #totalsOf(blend: Blend): Float64Array {
    const totals = this.#totals
    const values = this.#values.fill(0)
    let whole = 0
    for (const oil of Object.keys(blend)) {
      const share = blend[oil] ?? NaN
      if (share === 0) continue
      whole += share
      const counts = this.#countsOf(oil)
      for (let k = 0; k < values.length; k++)
        values[k] = (values[k] ?? NaN) + share * (counts[k] ?? NaN)
    }
    totals.forEach(({ measure }, k) => {
      if (measure !== undefined) values[k] = (values[k] ?? NaN) / whole
    })
    return values
  }

  #countsOf(oil: string): Float64Array {
    const found = this.#counts.get(oil)
    if (found) return found
    const counts = Float64Array.from(this.#totals, ({ valueOf }) => valueOf(oil))
    this.#counts.set(oil, counts)
    return counts
  }
}

const WHOLE: Limits = { min: WHOLE_PERCENT, max: WHOLE_PERCENT }

function groupTotals({ groups }: Brief): Total[] {
  return groups.map((group, number) => ({
    path: `groups[${number}]`,
    limits: group,
    measure: undefined,
    valueOf: (oil) => group.oils.filter((one) => one === oil).length,
  }))
}

function wishTotals(brief: Brief, library: Library): Total[] {
  const prices = pricesOf(brief)
  return Object.entries(brief.measures).flatMap(([measure, { min, max }]): Total[] => {
    if (min === undefined && max === undefined) return []
    const total = (limits: Limits, valueOf: Total['valueOf']): Total => {
      return { path: `measures.${measure}`, limits, measure, valueOf }
    }
    if (!heldForAnyLot(brief, measure))
      return [total({ min, max }, valueOfOils(library, prices, measure))]
    const anyLot = (side: Side) => wishedValue(brief, library, measure, side)
    return [total({ min }, anyLot('min')), total({ max }, anyLot('max'))]
  })
}

function isWithin(value: number, { min, max }: Limits, slack = CHECK_TOLERANCE): boolean {
  return value >= (min ?? -Infinity) - slack && value <= (max ?? Infinity) + slack
}

/** Which ends of a range a value is outside of, as paths with the value. */
function outside(
  path: string,
  value: number,
  { min, max }: Limits,
  slack = CHECK_TOLERANCE,
): string[] {
  return [
    ...(value >= (min ?? -Infinity) - slack ? [] : [`${path}.min: ${value}`]),
    ...(value <= (max ?? Infinity) + slack ? [] : [`${path}.max: ${value}`]),
  ]
}

/** What a blend is worth to the brief's goal: a measure's value, or the total change in percentage points. */
export function goalValue(
  brief: Brief,
  blend: Blend,
  library: Library,
  prices = pricesOf(brief),
): number {
  const measure = goalMeasure(brief.goal)
  if (measure !== undefined) return blendValue(library, prices, measure, blend)
  if ('closestTo' in brief.goal) return totalChange(normalised(brief.goal.closestTo), blend)
  throw new Error('The goal names neither a measure nor a blend')
}

/**
 * What a `closestTo` blend holds of oils that are not on the shelf: change that no answer can avoid, in
 * percent. 0 for other goals.
 */
export function shareOffShelf({ goal, oils }: Brief): number {
  if (!('closestTo' in goal)) return 0
  return Object.entries(normalised(goal.closestTo))
    .filter(([oil]) => !(oil in oils))
    .reduce((sum, [, share]) => sum + share, 0)
}
