import type { Oil } from '../../domain/blend/oil'
import { piecesOf } from '../amount-text'
import { entriesOf, unmasked } from '../formula-entries'
import { joined } from '../formula-lines'
import type { OilNames } from '../oil-names'
import type { Entry } from './draft'
import { speaksOf } from './recipe-words'
import { rowsOf } from './table-rows'
import { wordsOf } from '../name-words'

/** Longer texts are no recipe; the rest of them is left unread, in characters and in entries. */
const LONGEST_TEXT = 50_000
const MOST_ENTRIES = 300

const LINE_ENDS = /\r\n?|[\n\u2028\u2029\v\f]/u

/**
 * The end of a sentence: a full stop before a capital or a figure, or one behind no abbreviation. “4 oz. Olive”
 * is put together again.
 */
const SENTENCES =
  /(?<=[\p{L}\d%)])\s*[.!?]\s+(?=[\p{Lu}\d])|(?<=[\p{L}\d%)])(?<!(?<!\p{L})(?:oz|lbs?|fl|ca|approx|tbsp|tsp|g|gr|kg|ml|l|deg|min|max))[.!?]\s+/u

/** The number of a step: “2. Dissolve”. */
const STEP = /^\s*\d{1,2}[.)]\s+(?=\p{L})/u

/** Words that part two amounts of one sentence: 115 g of lye in 250 g of water. */
const CONNECTORS =
  /(\s+(?:(?:dissolved|mixed|stirred) )?(?:in|into|with|plus|then|to|mit|dazu|dans|avec|con)\s+)/iu

/** How long and how warm: nothing that is weighed. */
const TIMES_AND_WARMTHS =
  /(?:~|about )?\d+(?:[.,]\d+)?(?:\s*(?:[-–—]|to|bis)\s*\d+(?:[.,]\d+)?)?\s*(?:°\s*[CF]?|deg(?:rees?)?(?: [CF])?\b|Grad\b|min(?:ute)?s?\b|Minuten\b|hours?\b|hrs?\b|h\b|Stunden?\b|days?\b|Tagen?\b|jours?\b|días?\b|giorni\b|weeks?\b|Wochen?\b|semaines?\b|semanas?\b|settimane\b|months?\b|Monaten?\b|mois\b)/giu

/** The text without times and temperatures. */
export function withoutTimes(text: string): string {
  return text.replace(TIMES_AND_WARMTHS, ' ')
}

/** Cuts a text into what it names one by one, each with its line; cells that belong together are joined. */
export function recipeEntries(
  text: string,
  oils: readonly Oil[],
  names: OilNames,
): { entries: Entry[]; isCut: boolean } {
  const lines = rowsOf(text.slice(0, LONGEST_TEXT).split(LINE_ENDS))
  const entries = lines.flatMap((row, line) =>
    entriesOf(row.replace(STEP, ''), oils)
      .flatMap((entry) => entry.split(SENTENCES))
      .flatMap(withoutAside)
      .flatMap(clausesOf)
      .map((part) => ({ line, text: part.trim() }))
      .filter((entry) => entry.text !== ''),
  )
  return {
    entries: joined(entries.slice(0, MOST_ENTRIES), names, (one, two) => one.line === two.line),
    isCut: text.length > LONGEST_TEXT || entries.length > MOST_ENTRIES,
  }
}

/** An entry as it stood in the text. */
export function asWritten(text: string, oils: readonly Oil[]): string {
  return unmasked(text, oils).replaceAll('\t', ' ')
}

/** Takes a fact in brackets out of what it stands beside: NaOH 128 g (5 % superfat). */
function withoutAside(entry: string): string[] {
  const [all, inside = ''] = /\(([^()]*\d[^()]*)\)/u.exec(entry) ?? []
  const words = wordsOf(inside)
  const isFact = speaksOf('superfat', words) || speaksOf('concentration', words)
  return all !== undefined && isFact ? [entry.replace(all, ' '), inside] : [entry]
}

/** Parts an entry at words that stand between two amounts. */
function clausesOf(entry: string): string[] {
  const clauses: { text: string; hasAmount: boolean }[] = []
  let between = ''
  for (const [at, text] of entry.split(CONNECTORS).entries()) {
    const last = clauses.at(-1)
    if (at % 2 === 1) {
      between = text
      continue
    }
    const hasAmount = namesAnAmount(text)
    if (last && !(last.hasAmount && hasAmount))
      clauses[clauses.length - 1] = {
        text: last.text + between + text,
        hasAmount: last.hasAmount || hasAmount,
      }
    else clauses.push({ text, hasAmount })
  }
  return clauses.map(({ text }) => text)
}

function namesAnAmount(text: string): boolean {
  return /\p{L}/u.test(text) && piecesOf(withoutTimes(text)).some(({ kind }) => kind !== 'words')
}
