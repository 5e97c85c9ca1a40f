import type { Oil } from '../domain/blend/oil'
import { readEntries, type UnreadLine } from './formula-lines'
import { type FormulaOutcome, type MixedMeaning, outcomeOf, withUnits } from './formula-outcome'
import { OilNames } from './oil-names'

export type { FormulaOutcome, MixedMeaning } from './formula-outcome'

/** One oil of the formula, as it was understood. */
export interface FormulaLine {
  /** What stood in the text. */
  readonly text: string
  readonly oil: Oil
  /** Share of the whole formula in percent; undefined while it is not known how to reckon it. */
  readonly sharePercent?: number | undefined
  /** What was guessed or added in reading it. */
  readonly note?: string | undefined
}

/** A text as a formula: what was understood, what was not and why, and what it comes to. */
export interface FormulaReading {
  readonly lines: readonly FormulaLine[]
  readonly unread: readonly UnreadLine[]
  /** What a person should know about the whole. */
  readonly notes: readonly string[]
  readonly outcome: FormulaOutcome
}

/** Reads formulas such as “olive 60, coconut 25, shea 15” against the oils of a library. */
export class FormulaReader {
  readonly #oils: readonly Oil[]
  readonly #names: OilNames

  constructor(oils: Iterable<Oil>) {
    this.#oils = [...oils]
    this.#names = new OilNames(this.#oils)
  }

  /** Reads a text; `mixed` answers the question about percent beside weights. */
  read(text: string, mixed?: MixedMeaning): FormulaReading {
    const { entries, unread, notes } = readEntries(text, this.#oils, this.#names)
    const { stated, wrong, unit } = withUnits(entries)
    const { outcome, shares, notes: said } = outcomeOf(stated, { mixed, spread: true })
    const isBlend = outcome.status === 'blend'
    return {
      lines: stated
        .filter((one) => !isBlend || shares.has(one))
        .map((one) => ({
          text: one.text,
          oil: one.oil,
          note: one.note,
          sharePercent: shares.get(one),
        })),
      unread: [...unread, ...wrong.map(({ text: of, reason }) => ({ text: of, reason }))],
      notes: [
        ...notes,
        ...(unit === undefined ? [] : [`Figures without a unit are read as ${unit}.`]),
        ...said,
      ],
      outcome,
    }
  }
}
