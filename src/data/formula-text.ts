import { type Blend, normalised } from '../domain/blend/blend'
import type { Oil } from '../domain/blend/oil'
import { WHOLE_PERCENT } from '../domain/units'
import { type Amount, gramsOf } from './amount-text'
import { type EntryReading, readEntries, type UnreadLine } from './formula-lines'
import { OilNames } from './oil-names'

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

/** How percent beside weights are meant. */
export type MixedMeaning =
  /** Percent of all oils; the weights share the rest. */
  | 'rest'
  /** Only the weights count. */
  | 'weights'
  /** Only the percents count. */
  | 'percents'

/** What the formula comes to. */
export type FormulaOutcome =
  /** `grams` is what its weights add up to; undefined for percent and parts. */
  | { readonly status: 'blend'; readonly blend: Blend; readonly grams?: number | undefined }
  /** Percent stand beside weights: the person says how they are meant, among `meanings`. */
  | {
      readonly status: 'question'
      readonly percent: number
      readonly grams: number
      readonly meanings: readonly MixedMeaning[]
    }
  | { readonly status: 'nothing' }

/** A text as a formula: what was understood, what was not and why, and what it comes to. */
export interface FormulaReading {
  readonly lines: readonly FormulaLine[]
  readonly unread: readonly UnreadLine[]
  /** What a person should know about the whole. */
  readonly notes: readonly string[]
  readonly outcome: FormulaOutcome
}

/** Shares may add up this far beside 100 % without a word, percent: rounding to one decimal. */
const SUM_PLAY_PERCENT = 0.25

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
    const { stated, wrong, note } = withUnits(entries)
    const all = {
      unread: [...unread, ...wrong],
      notes: note === undefined ? notes : [...notes, note],
    }
    const scale = scaleOf(stated, mixed)
    if (scale.status !== 'weights') {
      const lines = stated.map(({ text: of, oil, note: said }) => ({ text: of, oil, note: said }))
      return { ...all, lines, outcome: scale }
    }
    return { ...all, ...formulaOf(stated, scale.weightOf, all.notes) }
  }
}

/** An entry with its amounts in the units they were meant in. */
interface Stated {
  readonly text: string
  readonly oil: Oil
  readonly note?: string | undefined
  readonly percent?: number | undefined
  readonly grams?: number | undefined
  readonly parts?: number | undefined
}

/** Figures without a unit take the one that all others have; where those differ, they are asked about. */
function withUnits(entries: readonly EntryReading[]): {
  stated: Stated[]
  wrong: UnreadLine[]
  note?: string
} {
  const units = new Set(entries.flatMap(({ amounts }) => amounts.map(unitOf)))
  const bare = entries.filter(({ amounts }) => amounts.every(({ kind }) => kind === 'bare'))
  units.delete('')
  const [unit, ...others] = units
  if (bare.length === 0 || unit === undefined) return { stated: entries.map(stated), wrong: [] }
  if (others.length > 0) {
    const wrong = bare.map(({ text }) => ({
      text,
      reason: `The figure has no unit, and the others have ${[...units].join(' and ')}. Add one`,
    }))
    return { stated: entries.filter((entry) => !bare.includes(entry)).map(stated), wrong }
  }
  const full = entries.map((entry) => ({
    ...entry,
    amounts: entry.amounts.map((one) => inUnit(one, unit)),
  }))
  return {
    stated: full.map(stated),
    wrong: [],
    note: `Figures without a unit are read as ${unit}.`,
  }
}

function unitOf(amount: Amount): string {
  if (amount.kind === 'mass') return amount.unit
  return amount.kind === 'percent' ? '%' : ''
}

function inUnit(amount: Amount, unit: string): Amount {
  if (amount.kind !== 'bare') return amount
  if (unit === '%') return { kind: 'percent', value: amount.value }
  if (unit === 'g' || unit === 'kg' || unit === 'oz' || unit === 'lb')
    return { kind: 'mass', value: amount.value, unit }
  return amount
}

function stated({ text, oil, note, amounts }: EntryReading): Stated {
  return {
    text,
    oil,
    note,
    percent: amounts.find(({ kind }) => kind === 'percent')?.value,
    grams: amounts.map(gramsOf).find((grams) => grams !== undefined),
    parts: amounts.find(({ kind }) => kind === 'bare')?.value,
  }
}

type Scale =
  | Exclude<FormulaOutcome, { status: 'blend' }>
  /** Weights of the entries against each other; 0 leaves one out. */
  | { readonly status: 'weights'; readonly weightOf: (one: Stated) => number }

function scaleOf(entries: readonly Stated[], mixed: MixedMeaning | undefined): Scale {
  if (entries.length === 0) return { status: 'nothing' }
  const weighed = entries.filter(({ grams }) => grams !== undefined)
  const shared = entries.filter(({ percent }) => percent !== undefined)
  if (weighed.length === entries.length) return scale(({ grams }) => grams)
  if (shared.length === entries.length) return scale(({ percent }) => percent)
  if (weighed.length === 0 && shared.length === 0) return scale(({ parts }) => parts)
  const grams = sumOf(weighed.map((one) => one.grams))
  const percent = sumOf(entries.filter((one) => one.grams === undefined).map((one) => one.percent))
  const rest = WHOLE_PERCENT - percent
  const meanings: MixedMeaning[] =
    rest > 0 ? ['rest', 'weights', 'percents'] : ['weights', 'percents']
  if (mixed === undefined || !meanings.includes(mixed))
    return { status: 'question', percent, grams, meanings }
  if (mixed === 'weights') return scale((one) => one.grams)
  if (mixed === 'percents') return scale((one) => one.percent)
  return scale((one) => (one.grams === undefined ? one.percent : (one.grams * rest) / grams))
}

function scale(of: (one: Stated) => number | undefined): Scale {
  return { status: 'weights', weightOf: (one) => of(one) ?? 0 }
}

function sumOf(values: readonly (number | undefined)[]): number {
  return values.reduce<number>((sum, value) => sum + (value ?? 0), 0)
}

/** The blend of the entries, oils named twice added up. */
function formulaOf(
  entries: readonly Stated[],
  weightOf: (one: Stated) => number,
  notes: readonly string[],
): Pick<FormulaReading, 'lines' | 'notes' | 'outcome'> {
  const taken = entries.filter((one) => weightOf(one) > 0)
  const total = sumOf(taken.map(weightOf))
  const lines = taken.map((one) => ({
    text: one.text,
    oil: one.oil,
    note: one.note,
    sharePercent: (weightOf(one) * WHOLE_PERCENT) / total,
  }))
  if (lines.length === 0) return { lines, notes, outcome: { status: 'nothing' } }
  const shares: Record<string, number> = {}
  for (const { oil, sharePercent } of lines) shares[oil.id] = (shares[oil.id] ?? 0) + sharePercent
  const twice = Object.keys(shares).length < lines.length ? ['An oil named twice is added up.'] : []
  const grams = taken.every((one) => one.grams !== undefined) ? total : undefined
  return {
    lines,
    notes: [...notes, ...twice, ...scaledNote(taken, total)],
    outcome: { status: 'blend', blend: normalised(shares), grams },
  }
}

/** Percents that do not add up to 100 are scaled, and that is said. */
function scaledNote(entries: readonly Stated[], total: number): string[] {
  const inPercent = entries.every(
    ({ grams, percent }) => grams === undefined && percent !== undefined,
  )
  if (!inPercent || Math.abs(total - WHOLE_PERCENT) <= SUM_PLAY_PERCENT) return []
  return [`The shares add to ${Number(total.toFixed(2))} %; they are scaled to 100 %.`]
}
