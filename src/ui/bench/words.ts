import { library } from '../../state/library'
import type { BatchPlan } from '../../domain/batch/result/plan'
import type { Difference, MeasureValues, ShareChange } from '../../domain/blend/compare'
import { differences } from '../../domain/blend/compare'
import { type Flag, leanLots } from '../../domain/blend/flags'
import { COST, type Measure } from '../../domain/blend/measure'
import type { Column } from '../../state/bench-facts'
import { money, number, withUnit } from '../words/format'

/** Measures with a row on the Bench, in the order of rows: what the bar is like, then what it costs. */
export const BENCH_MEASURES: readonly Measure[] = library.measures
  .filter(({ shown }) => shown)
  .sort((a, b) => Number(a.id === COST) - Number(b.id === COST))

/** How more and less of each measure are said of a bar: in a sentence, and in its row. */
const COMPARATIVES: Readonly<Record<string, { readonly more: string; readonly less: string }>> = {
  hardness: { more: 'harder', less: 'softer' },
  lather: { more: 'more lather', less: 'less lather' },
  conditioning: { more: 'more conditioning', less: 'less conditioning' },
  mildness: { more: 'milder', less: 'harsher' },
  wear: { more: 'wears faster', less: 'lasts longer' },
  keeping: { more: 'keeps longer', less: 'keeps less long' },
  cost: { more: 'dearer', less: 'cheaper' },
}

/** Measures that the words above call by their name. */
const NAMED_IN_WORDS = new Set(['lather', 'conditioning'])

/** How a difference is said in a sentence: "softer". */
export function comparative(measure: string, standing: 'more' | 'less'): string {
  return COMPARATIVES[measure]?.[standing] ?? `${standing} ${nameOfMeasure(measure)}`
}

/** How a difference is said in the measure's own row, where the measure needn't be named again. */
export function comparativeInRow(measure: string, standing: 'more' | 'less'): string {
  const nameless = measure in COMPARATIVES && !NAMED_IN_WORDS.has(measure)
  return nameless ? comparative(measure, standing) : standing
}

function nameOfMeasure(id: string): string {
  return lowerFirst(library.measures.find((measure) => measure.id === id)?.name ?? id)
}

/** A text that goes on in the middle of a sentence. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}

/** A text that starts a sentence. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/**
 * A difference with its sign, as its row shows it. A tie is cut and not rounded, so that it never reads
 * as large as what can be told apart.
 */
export function signedDifference(
  { by, standing }: Pick<Difference, 'by' | 'standing'>,
  decimals: number,
): string {
  const shown = standing === 'tie' ? cut(by, decimals) : by
  const sign = Number(shown.toFixed(decimals)) > 0 ? '+' : ''
  return sign + number(shown, decimals)
}

/** A difference as a figure shows it; undefined where there is none. */
export function besideReference(difference: Difference | undefined, decimals: number) {
  if (!difference) return undefined
  const { measure, standing } = difference
  return {
    standing,
    by: signedDifference(difference, decimals),
    word: standing === 'tie' ? 'tie' : comparativeInRow(measure, standing),
  }
}

function cut(value: number, decimals: number): number {
  const scale = 10 ** decimals
  return Math.trunc(value * scale) / scale
}

/** What a candidate is beside the reference: what left, and all the rest. */
export interface InWords {
  readonly lead: string
  readonly rest: string
}

/** A column in words: what left, what came, what it does. */
export function columnInWords(column: Column, currency: string): InWords {
  const oils = oilsInWords(column.changes)
  const told = [...column.differences.values()]
  return {
    lead: oils.lead,
    rest: [
      oils.rest,
      costInWords(column.differences.get(COST), column.unpriced, currency),
      measuresInWords(told.filter(({ measure }) => measure !== COST)),
    ]
      .filter((part) => part !== '')
      .join(' '),
  }
}

/** What changes in the oils: those that left lead; if none left, those that came. */
export function oilsInWords(changes: readonly ShareChange[]): InWords {
  const said = (kinds: readonly ShareChange['kind'][], after: string) => {
    const named = changes.filter(({ kind }) => kinds.includes(kind))
    return (
      named.map(({ oil, by }) => `${shortName(oil)} ${number(Math.abs(by), 0)}`).join(', ') + after
    )
  }
  const has = (kind: ShareChange['kind']) => changes.some((change) => change.kind === kind)
  const moves = [
    ...(has('left') ? [{ lead: true, text: said(['left'], ' out') }] : []),
    ...(has('came') ? [{ lead: !has('left'), text: said(['came'], ' in') }] : []),
    ...(has('more') ? [{ lead: false, text: said(['more'], ' more') }] : []),
    ...(has('less') ? [{ lead: false, text: said(['less'], ' less') }] : []),
  ]
  if (moves.length === 0) return { lead: 'The same oils.', rest: '' }
  const sentence = (parts: readonly { text: string }[]) =>
    parts.length === 0 ? '' : `${upperFirst(parts.map(({ text }) => text).join('; '))}.`
  return {
    lead: sentence(moves.filter(({ lead }) => lead)),
    rest: sentence(moves.filter(({ lead }) => !lead)),
  }
}

function shortName(oil: string): string {
  return lowerFirst(library.oils.get(oil)?.shortName ?? oil)
}

/** What a blend costs beside the reference: "€0.97 dearer per kg." */
export function costInWords(
  difference: Difference | undefined,
  unpriced: readonly string[],
  currency: string,
): string {
  if (unpriced.length > 0) return `No price for ${unpriced.map(shortName).join(', ')}.`
  if (!difference) return ''
  const { by, standing } = difference
  if (standing === 'tie') return 'Costs about the same.'
  return `${money(Math.abs(by), currency)} ${comparative(COST, standing)} per kg.`
}

/** So many ties are named; more are "all else". */
const NAMED_TIES = 2

/** What the bar is beside the reference: what can be told apart, then that the rest ties. */
export function measuresInWords(told: readonly Difference[]): string {
  const shown = told.filter(({ measure }) => BENCH_MEASURES.some(({ id }) => id === measure))
  const ties = shown.filter(({ standing }) => standing === 'tie')
  const rest = shown.filter(({ standing }) => standing !== 'tie')
  if (shown.length === 0) return ''
  if (rest.length === 0) return 'No measure can tell the two apart.'
  const apart = rest
    .toSorted((a, b) => Math.abs(b.by) - Math.abs(a.by))
    .map(({ measure, by, standing }) =>
      standing === 'tie' ? '' : `${comparative(measure, standing)} by ${number(Math.abs(by), 1)}`,
    )
  const names = ties.map(({ measure }) => nameOfMeasure(measure))
  const alike =
    ties.length === 0
      ? ''
      : ties.length > NAMED_TIES
        ? '; all else ties'
        : `; ${names.join(' and ')} ${ties.length === 1 ? 'ties' : 'tie'}`
  return `${upperFirst(apart.join(', '))}${alike}.`
}

/** The differences of two sets of values on the Bench's measures. */
export function benchDifferences(values: MeasureValues, reference: MeasureValues): Difference[] {
  return differences(BENCH_MEASURES, values, reference)
}

/** A flag in a few words; why it stands is in its reason. */
export function flagInWords(flag: Flag): string {
  switch (flag.kind) {
    case 'trust':
      return `${upperFirst(shortName(flag.oil))} ${withUnit(flag.sharePercent, 0, '%')}: beyond what the measures can say`
    case 'keeping':
      return `Keeping ${number(flag.value, 1)}: goes off early`
    case 'allergens':
      return `From ${flag.words.join(', ')}`
  }
}

/** What likely lots leave of the superfat asked, where that is no lye or hardly any room; in words. */
export function leanInWords(plan: BatchPlan): string | undefined {
  if (plan.status !== 'ready') return undefined
  const { blocked, superfat } = plan
  const { min } = superfat.likely.percent
  if (blocked) {
    const lots = blocked.oneIn > 1 ? `1 lot in ${blocked.oneIn}` : 'Most lots'
    const least = blocked.leastSafePercent
    const ask = least === null ? 'more superfat' : `${withUnit(least, 1, '%')} superfat or more`
    return `${lots} would leave free lye: ask for ${ask}`
  }
  return leanLots(min) === 'safe'
    ? undefined
    : `Likely lots leave as little as ${withUnit(min, 1, '%')}`
}

const NUMBER_WORDS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/** A count in words up to twelve. */
export function countInWords(count: number): string {
  return NUMBER_WORDS[count] ?? String(count)
}

/** "Four candidates against last year’s bar", for so many beside the reference. */
export function benchTitle(count: number, reference: string): string {
  if (count === 0) return `${upperFirst(reference)}, alone on the Bench`
  const what = count === 1 ? 'candidate' : 'candidates'
  return `${upperFirst(countInWords(count))} ${what} against ${lowerFirst(reference)}`
}
