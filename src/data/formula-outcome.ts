import { type Blend, normalised } from '../domain/blend/blend'
import type { Oil } from '../domain/blend/oil'
import { WHOLE_PERCENT } from '../domain/units'
import { type Amount, gramsOf } from './amount-text'
import type { EntryReading, UnreadLine } from './formula-lines'

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
      readonly ask: 'mixed'
      readonly percent: number
      readonly grams: number
      readonly meanings: readonly MixedMeaning[]
    }
  /**
   * Percent do not add to 100: spread them, or add what is missing to the text. `missing` is below 0 where
   * there are too many.
   */
  | {
      readonly status: 'question'
      readonly ask: 'sum'
      readonly percent: number
      readonly missing: number
    }
  | { readonly status: 'nothing' }

/** What a person said to the questions. */
export interface FormulaAnswers {
  readonly mixed?: MixedMeaning | undefined
  /** Shares that do not add to 100 are to be spread over it. */
  readonly spread?: boolean | undefined
}

/** Shares may add up this far beside 100 % without a word, percent: rounding to one decimal. */
const SUM_PLAY_PERCENT = 0.25

/** Figures without a unit that add to this far beside 100 are meant as percent, percent. */
const MEANT_AS_PERCENT = 10

/** An entry with its amounts in the units they were meant in. */
export interface Stated {
  readonly text: string
  readonly oil: Oil
  readonly note?: string | undefined
  readonly percent?: number | undefined
  readonly grams?: number | undefined
  readonly parts?: number | undefined
}

/** Figures without a unit take the one that all others have; where those differ, they are asked about. */
export function withUnits<Entry extends EntryReading>(
  entries: readonly Entry[],
): {
  stated: (Stated & { readonly entry: Entry })[]
  wrong: (UnreadLine & { entry: Entry })[]
  unit?: string
} {
  const units = new Set(entries.flatMap(({ amounts }) => amounts.map(unitOf)))
  const bare = entries.filter(({ amounts }) => amounts.every(({ kind }) => kind === 'bare'))
  units.delete('')
  const [unit, ...others] = units
  if (bare.length === 0 || unit === undefined)
    return { stated: entries.map((entry) => statedOf(entry)), wrong: [] }
  if (others.length > 0) {
    const wrong = bare.map((entry) => ({
      text: entry.text,
      entry,
      reason: `The figure has no unit, and the others have ${[...units].join(' and ')}. Add one`,
    }))
    return {
      stated: entries.filter((entry) => !bare.includes(entry)).map((entry) => statedOf(entry)),
      wrong,
    }
  }
  return { stated: entries.map((entry) => statedOf(entry, unit)), wrong: [], unit }
}

function unitOf(amount: Amount): string {
  if (amount.kind === 'mass') return amount.unit
  return amount.kind === 'percent' ? '%' : ''
}

/** An amount without a unit in that one; others as they are. */
export function inUnit(amount: Amount, unit: string): Amount {
  if (amount.kind !== 'bare') return amount
  if (unit === '%') return { kind: 'percent', value: amount.value }
  if (unit === 'g' || unit === 'kg' || unit === 'oz' || unit === 'lb')
    return { kind: 'mass', value: amount.value, unit }
  return amount
}

function statedOf<Entry extends EntryReading>(entry: Entry, unit = ''): Stated & { entry: Entry } {
  const amounts = entry.amounts.map((one) => inUnit(one, unit))
  return {
    entry,
    text: entry.text,
    oil: entry.oil,
    note: entry.note,
    percent: amounts.find(({ kind }) => kind === 'percent')?.value,
    grams: amounts.map(gramsOf).find((grams) => grams !== undefined),
    parts: amounts.find(({ kind }) => kind === 'bare')?.value,
  }
}

/** What the entries come to, oils named twice added up; questions are asked until they are answered. */
export function outcomeOf<One extends Stated>(
  entries: readonly One[],
  answers: FormulaAnswers,
): { outcome: FormulaOutcome; shares: Map<One, number>; notes: string[] } {
  const scale = scaleOf(entries, answers)
  if (scale.status !== 'weights') return { outcome: scale, shares: new Map(), notes: [] }
  const { weightOf } = scale
  const taken = entries.filter((one) => weightOf(one) > 0)
  const total = sumOf(taken.map(weightOf))
  if (taken.length === 0) return { outcome: { status: 'nothing' }, shares: new Map(), notes: [] }
  const shares = new Map(taken.map((one) => [one, (weightOf(one) * WHOLE_PERCENT) / total]))
  const byOil: Record<string, number> = {}
  for (const [{ oil }, share] of shares) byOil[oil.id] = (byOil[oil.id] ?? 0) + share
  const twice = Object.keys(byOil).length < taken.length ? ['An oil named twice is added up.'] : []
  const grams = taken.every((one) => one.grams !== undefined) ? total : undefined
  return {
    outcome: { status: 'blend', blend: normalised(byOil), grams },
    shares,
    notes: [...twice, ...spreadNote(entries)],
  }
}

type Scale =
  | Exclude<FormulaOutcome, { status: 'blend' }>
  /** Weights of the entries against each other; 0 leaves one out. */
  | { readonly status: 'weights'; readonly weightOf: (one: Stated) => number }

function scaleOf(entries: readonly Stated[], { mixed, spread }: FormulaAnswers): Scale {
  if (entries.length === 0) return { status: 'nothing' }
  const weighed = entries.filter(({ grams }) => grams !== undefined)
  const shared = entries.filter(({ percent }) => percent !== undefined)
  if (weighed.length === entries.length) return scale(({ grams }) => grams)
  const sum = percentSum(entries)
  if (sum !== undefined && spread !== true && Math.abs(sum - WHOLE_PERCENT) > SUM_PLAY_PERCENT)
    return { status: 'question', ask: 'sum', percent: sum, missing: WHOLE_PERCENT - sum }
  if (shared.length === entries.length) return scale(({ percent }) => percent)
  if (weighed.length === 0 && shared.length === 0) return scale(({ parts }) => parts)
  const grams = sumOf(weighed.map((one) => one.grams))
  const percent = sumOf(entries.filter((one) => one.grams === undefined).map((one) => one.percent))
  const rest = WHOLE_PERCENT - percent
  const meanings: MixedMeaning[] =
    rest > 0 ? ['rest', 'weights', 'percents'] : ['weights', 'percents']
  if (mixed === undefined || !meanings.includes(mixed))
    return { status: 'question', ask: 'mixed', percent, grams, meanings }
  if (mixed === 'weights') return scale((one) => one.grams)
  if (mixed === 'percents') return scale((one) => one.percent)
  return scale((one) => (one.grams === undefined ? one.percent : (one.grams * rest) / grams))
}

/** What the shares add to, percent; undefined where they are no percent. */
function percentSum(entries: readonly Stated[]): number | undefined {
  if (entries.some(({ grams }) => grams !== undefined)) return undefined
  if (entries.every(({ percent }) => percent !== undefined))
    return sumOf(entries.map(({ percent }) => percent))
  if (entries.some(({ percent }) => percent !== undefined)) return undefined
  const parts = sumOf(entries.map((one) => one.parts))
  return Math.abs(parts - WHOLE_PERCENT) < MEANT_AS_PERCENT ? parts : undefined
}

function scale(of: (one: Stated) => number | undefined): Scale {
  return { status: 'weights', weightOf: (one) => of(one) ?? 0 }
}

/** Sum of what is there. */
export function sumOf(values: readonly (number | undefined)[]): number {
  return values.reduce<number>((sum, value) => sum + (value ?? 0), 0)
}

/** Percents that do not add up to 100 were spread, and that is said. */
function spreadNote(entries: readonly Stated[]): string[] {
  if (!entries.every(({ grams, percent }) => grams === undefined && percent !== undefined))
    return []
  const total = sumOf(entries.map(({ percent }) => percent))
  if (Math.abs(total - WHOLE_PERCENT) <= SUM_PLAY_PERCENT) return []
  return [`The shares add to ${Number(total.toFixed(2))} %; they are scaled to 100 %.`]
}
