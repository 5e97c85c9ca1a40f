import type { Oil } from '../domain/blend/oil'
import { WHOLE_PERCENT } from '../domain/units'
import { type Amount, gramsOf, type Piece, piecesOf } from './amount-text'
import { entriesOf, unmasked } from './formula-entries'
import { wordsOf } from './name-words'
import type { NamedOil, OilNames } from './oil-names'

/** A part of a formula's text that names an oil and says how much of it. */
export interface EntryReading {
  readonly text: string
  readonly oil: Oil
  readonly note?: string | undefined
  /** The amount in one way or several: 60 % and 600 g. */
  readonly amounts: readonly Amount[]
}

/** A part of the text that could not be understood, and why. */
export interface UnreadLine {
  readonly text: string
  readonly reason: string
}

/** Longer texts are no formula; the rest of them is left unread, in characters and in entries. */
const LONGEST_TEXT = 50_000
const MOST_ENTRIES = 300

/** Two weights of one oil, such as 16 oz and 454 g, are one amount where they differ less: a fraction. */
const SAME_WEIGHT = 0.02

/** What makers add that is no fat. */
const NO_FAT = new Set(
  (
    'essential fragrance parfum perfume scent eo fo colour color colourant colorant pigment mica clay ' +
    'charcoal salt sugar honey milk lactate citric citrate oat oatmeal aloe glycerin glycerine titanium'
  ).split(' '),
)
const LYE = new Set('water lye naoh koh hydroxide caustic liquid'.split(' '))
const SUMS = new Set('superfat total sum batch subtotal'.split(' '))

/** Reads the entries of a text one by one. */
export function readEntries(
  text: string,
  oils: readonly Oil[],
  names: OilNames,
): { entries: EntryReading[]; unread: UnreadLine[]; notes: string[] } {
  const all = entriesOf(text.slice(0, LONGEST_TEXT), oils)
  const isCut = text.length > LONGEST_TEXT || all.length > MOST_ENTRIES
  const readings = joined(
    all.slice(0, MOST_ENTRIES).map((entry) => ({ text: entry })),
    names,
  ).flatMap(({ text: entry }) => readEntry(entry, names))
  const shown = <T extends { text: string }>(one: T) => ({ ...one, text: unmasked(one.text, oils) })
  return {
    entries: readings.filter((one) => 'oil' in one).map(shown),
    unread: readings.filter((one) => 'reason' in one).map(shown),
    notes: isCut ? [`Only the first ${MOST_ENTRIES} entries were read; the text goes on.`] : [],
  }
}

/**
 * Joins a name and a figure that were cut apart: cells of a table, or a name with a comma in it whose
 * second half came with the figure, which only holds for entries that are close.
 */
export function joined<Entry extends { readonly text: string }>(
  entries: readonly Entry[],
  names: OilNames,
  areClose: (one: Entry, two: Entry) => boolean = () => true,
): Entry[] {
  const result: Entry[] = []
  for (const entry of entries) {
    const last = result.at(-1)
    if (last !== undefined && belong(last.text, entry.text, areClose(last, entry), names)) {
      result[result.length - 1] = { ...last, text: `${last.text} ${entry.text}` }
    } else result.push(entry)
  }
  return result
}

function belong(first: string, second: string, areClose: boolean, names: OilNames): boolean {
  const [one, two] = [shapeOf(first), shapeOf(second)]
  if (one.hasAmount !== two.hasAmount && one.hasName !== two.hasName)
    return one.hasName !== one.hasAmount
  if (!areClose || one.hasAmount || !two.hasAmount || !two.hasName) return false
  const together = names.find(`${one.name} ${two.name}`)
  return together.status === 'oil' && together.note === undefined
}

function shapeOf(entry: string): { hasAmount: boolean; hasName: boolean; name: string } {
  const pieces = piecesOf(entry)
  const name = wordsIn(pieces)
  return { hasAmount: pieces.some(({ kind }) => kind !== 'words'), hasName: name !== '', name }
}

function wordsIn(pieces: readonly Piece[]): string {
  return pieces
    .filter(({ kind }) => kind === 'words')
    .map(({ text }) => text.trim())
    .join(' ')
}

/** What one entry says: an oil with its amount, several of them in a row, or why it is not understood. */
export function readEntry(entry: string, names: OilNames): (EntryReading | UnreadLine)[] {
  const pieces = withSums(piecesOf(entry))
  const wrong = pieces.find((piece) => piece.kind === 'wrong')
  if (wrong) return [{ text: entry, reason: wrong.reason }]
  return severalIn(pieces, names) ?? [readOne(entry, pieces, names)]
}

/** Weights right beside each other in falling units are one: 1 lb 4 oz. */
function withSums(pieces: readonly Piece[]): Piece[] {
  const result: Piece[] = []
  for (const piece of pieces) {
    const last = result.at(-1)
    const sum = last && sumOf(last, piece)
    if (sum) result[result.length - 1] = sum
    else result.push(piece)
  }
  return result
}

function sumOf(one: Piece, two: Piece): Piece | undefined {
  if (one.kind !== 'amount' || two.kind !== 'amount') return undefined
  const [first, second] = [one.amount, two.amount]
  if (first.kind !== 'mass' || second.kind !== 'mass') return undefined
  const falls =
    (first.unit === 'lb' && second.unit === 'oz') || (first.unit === 'kg' && second.unit === 'g')
  if (!falls) return undefined
  const value = (gramsOf(first) ?? 0) + (gramsOf(second) ?? 0)
  if (value < (gramsOf(first) ?? 0) * (1 + SAME_WEIGHT)) return undefined
  return {
    kind: 'amount',
    text: `${one.text} ${two.text}`,
    amount: { kind: 'mass', value, unit: 'g' },
  }
}

/** Several oils in a row without commas, each beside its figure; undefined where it is not so. */
function severalIn(pieces: readonly Piece[], names: OilNames): EntryReading[] | undefined {
  if (pieces.length < 4 || pieces.length % 2 !== 0) return undefined
  const readings: EntryReading[] = []
  for (let at = 0; at < pieces.length; at += 2) {
    const pair = pieces.slice(at, at + 2)
    const amount = pair.find((piece) => piece.kind === 'amount')
    const words = pair.find((piece) => piece.kind === 'words')
    if (!amount || !words || pair[0]?.kind !== pieces[0]?.kind) return undefined
    const found = names.find(words.text)
    if (found.status !== 'oil') return undefined
    const text = pair.map((piece) => piece.text.trim()).join(' ')
    readings.push({ text, oil: found.oil, note: found.note, amounts: [amount.amount] })
  }
  return readings
}

function readOne(
  text: string,
  pieces: readonly Piece[],
  names: OilNames,
): EntryReading | UnreadLine {
  const amounts = pieces.flatMap((piece) => (piece.kind === 'amount' ? piece : []))
  const found = nameAndAmounts(pieces, amounts, names)
  const { name } = found
  if (wordsOf(name).length === 0) return { text, reason: 'No oil is named beside the figure' }
  const named = names.find(name)
  const reason =
    noOilReason(name, named.status === 'oil' && named.note === undefined) ??
    (named.status === 'oil' ? amountReason(found.amounts) : nameReason(name, named, names))
  if (reason !== undefined || named.status !== 'oil') return { text, reason: reason ?? '' }
  return { text, oil: named.oil, note: named.note, amounts: found.amounts }
}

type AmountPiece = Extract<Piece, { kind: 'amount' }>

/**
 * A figure without a unit beside one with a unit, or beside another without, may belong to the name: 76
 * degree coconut. It does where the name with it is a name.
 */
function nameAndAmounts(
  pieces: readonly Piece[],
  amounts: readonly AmountPiece[],
  names: OilNames,
): { name: string; amounts: readonly Amount[] } {
  const bare = amounts.filter(({ amount }) => amount.kind === 'bare')
  const rest = amounts.filter(({ amount }) => amount.kind !== 'bare')
  const nameWith = (inName: readonly Piece[]) =>
    pieces
      .filter((piece) => piece.kind === 'words' || inName.includes(piece))
      .map((piece) => piece.text.trim())
      .join(' ')
  const tries = rest.length > 0 || bare.length > 1 ? bare : []
  const inName = tries.find((piece) => {
    const found = names.find(nameWith([piece]))
    return found.status === 'oil' && found.note === undefined
  })
  const name = nameWith(inName ? [inName] : [])
  const others = amounts.filter((piece) => piece !== inName)
  const kept = rest.length > 0 ? rest : others
  return { name, amounts: kept.map(({ amount }) => amount) }
}

function noOilReason(name: string, isKnown: boolean): string | undefined {
  if (isKnown) return undefined
  const words = wordsOf(name)
  const has = (set: ReadonlySet<string>) => words.some((word) => set.has(word))
  if (has(NO_FAT)) return 'That is no fat, so it has no share of the oils'
  if (has(LYE)) return 'That is no fat; lye and water are reckoned on Batch'
  return has(SUMS) ? 'That is about the whole batch, not an oil' : undefined
}

function nameReason(name: string, found: NamedOil, names: OilNames): string {
  if (found.status === 'several')
    return `“${name}” can be ${found.oils.map((oil) => oil.name).join(' or ')}. Say which`
  const within = wordsOf(name)
    .map((word) => names.find(word))
    .flatMap((one) => (one.status === 'oil' && one.note === undefined ? one.oil.name : []))
  const [near] = within
  const advice =
    near === undefined
      ? 'Check its spelling, or try its plain name'
      : `If ${near} is meant, write only that`
  return `There is no oil “${name}” in the library. ${advice}`
}

/** Whether a name speaks of something that makers add and that is no fat. */
export function isNoFat(name: string): boolean {
  return wordsOf(name).some((word) => NO_FAT.has(word))
}

function amountReason(amounts: readonly Amount[]): string | undefined {
  const [first] = amounts
  if (!first) return 'There is no figure beside it'
  if (amounts.every(({ value }) => value === 0)) return 'There is none of it in the formula'
  const percents = amounts.filter(({ kind }) => kind === 'percent')
  if (percents.some(({ value }) => value > WHOLE_PERCENT)) return 'That is more than 100 %'
  const bare = amounts.filter(({ kind }) => kind === 'bare')
  if (bare.length > 1 || percents.length > 1) return 'Two figures stand here. Give one'
  const grams = amounts.map(gramsOf).filter((one) => one !== undefined)
  const [least, most] = [Math.min(...grams), Math.max(...grams)]
  if (grams.length > 1 && most > least * (1 + SAME_WEIGHT))
    return 'Two weights stand here that are not the same. Give one'
  return undefined
}
