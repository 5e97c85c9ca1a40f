import type { Library } from '../../blend/library'
import { valueOfOils } from '../../blend/values'
import type { LinearProgram, LinearRow } from '../../lp/program'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import { type Brief, type Limits, pricesOf } from '../brief/brief'
import { type Side, SIDES } from '../brief/limits'
import { reckonable } from '../brief/ranges'
import { heldForAnyLot, wishedValue } from '../lots/wishes'

/** A row of a brief's program, named by the path of what it limits. */
export interface NamedRow extends LinearRow {
  readonly name: string
  /** What one percent of each oil adds, in the unit of what is limited. */
  readonly coefficients: Float64Array
}

/** The limits of a brief as a linear program over shares in percent, in the order of its oils; its cost is 0. */
export interface Formulation extends LinearProgram {
  readonly rows: readonly NamedRow[]
}

/** Names of rows: that shares add to 100 %; typical values; one side of a wish for any lot; groups. */
export const rowName = {
  sum: 'sum',
  measure: (id: string) => `measures.${id}`,
  wish: (id: string, side: Side) => `measures.${id}.${side}`,
  group: (number: number) => `groups[${number}]`,
} as const

/**
 * A brief's limits, without its goal and its rules: the only place where wishes become rows. A measure has
 * one row for its typical value; a wish that must hold for any lot has a row for each side besides, since
 * the lots that have least of a measure are not those that have most.
 *
 * `every measure` that can be reckoned has its row, wished for or not, so that any of them can be ranged
 * over or held at a value, and wishes for any lot come last; with `limits only` there are no rows that
 * limit nothing. Expects a brief that `checkBrief` finds sound.
 */
export function formulate(
  brief: Brief,
  library: Library,
  rows: 'every measure' | 'limits only',
): Formulation {
  const oils = Object.keys(brief.oils)
  return {
    cost: new Float64Array(oils.length),
    lower: oils.map((oil) => Math.max(0, brief.oils[oil]?.min ?? 0)),
    upper: oils.map((oil) => Math.min(WHOLE_PERCENT, brief.oils[oil]?.max ?? WHOLE_PERCENT)),
    rows: new Rows(brief, library, oils)[rows === 'every measure' ? 'all' : 'limiting'](),
  }
}

/** The row of one side of a wish that holds for any lot, with nothing wished yet. */
export function anyLotRow(brief: Brief, library: Library, id: string, side: Side): NamedRow {
  return new Rows(brief, library, Object.keys(brief.oils)).anyLot(id, side, {})
}

class Rows {
  constructor(
    private readonly brief: Brief,
    private readonly library: Library,
    private readonly oils: readonly string[],
  ) {}

  all(): NamedRow[] {
    const measures = reckonable(this.brief, this.library)
    return [
      this.#sum(),
      ...measures.map((id) => this.#typical(id)),
      ...this.#groups(),
      ...SIDES.flatMap((side) => measures.flatMap((id) => this.#wish(id, side))),
    ]
  }

  limiting(): NamedRow[] {
    const { brief } = this
    const wishes = Object.entries(brief.measures).flatMap(([id, { min, max }]) => {
      if (heldForAnyLot(brief, id)) return SIDES.flatMap((side) => this.#wish(id, side))
      return min === undefined && max === undefined ? [] : [this.#typical(id)]
    })
    return [this.#sum(), ...wishes, ...this.#groups()]
  }

  anyLot(id: string, side: Side, limits: Limits): NamedRow {
    const valueOf = wishedValue(this.brief, this.library, id, side)
    return this.#average(rowName.wish(id, side), valueOf, limits)
  }

  #sum(): NamedRow {
    const whole = { min: WHOLE_PERCENT, max: WHOLE_PERCENT }
    return this.#row(rowName.sum, () => 1, whole)
  }

  #typical(id: string): NamedRow {
    const { brief, library } = this
    const valueOf = valueOfOils(library, pricesOf(brief), id)
    // Where the wish holds for any lot it asks nothing of the typical value.
    const limits = heldForAnyLot(brief, id) ? {} : (brief.measures[id] ?? {})
    return this.#average(rowName.measure(id), valueOf, limits)
  }

  /** The row of one side of a wish for any lot, if there is such a wish. */
  #wish(id: string, side: Side): NamedRow[] {
    const limit = this.brief.measures[id]?.[side]
    if (limit === undefined || !heldForAnyLot(this.brief, id)) return []
    return [this.anyLot(id, side, { [side]: limit })]
  }

  #groups(): NamedRow[] {
    return this.brief.groups.map((group, number) =>
      this.#row(rowName.group(number), (oil) => Number(group.oils.includes(oil)), group),
    )
  }

  /** A weight average of what the oils have. */
  #average(name: string, valueOf: (oil: string) => number, limits: Limits): NamedRow {
    return this.#row(name, (oil) => fractionFromPercent(valueOf(oil)), limits)
  }

  #row(name: string, perPercent: (oil: string) => number, { min, max }: Limits): NamedRow {
    const coefficients = Float64Array.from(this.oils, perPercent)
    return { name, coefficients, lower: min ?? -Infinity, upper: max ?? Infinity }
  }
}
