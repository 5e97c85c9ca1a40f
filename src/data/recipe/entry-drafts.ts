import { type Piece, piecesOf } from '../amount-text'
import { isNoFat, readEntry } from '../formula-lines'
import { wordsOf } from '../name-words'
import type { OilNames } from '../oil-names'
import { type Draft, type Entry, unread } from './draft'
import { dosedThing, shortOf } from './dosed-things'
import { withoutTimes } from './recipe-entries'
import { isLye, rest, saidFact, type Taken, takenApart } from './said-facts'
import { sizeFact } from './size-facts'
import { speaksOf, thingNamed, trimmed } from './recipe-words'

/** Oils that an unread name is offered as, at most. */
const MOST_CANDIDATES = 4

/** A name of more words is a sentence. */
const MOST_NAME_WORDS = 6

/** Labels before what they head: “Oils: olive 450 g”. */
const LABEL = /^[^:\d]{2,30}:\s*(?=\S)/u

/** What one entry says; several oils in a row are several drafts. */
export function draftsOf(entry: Entry, names: OilNames): Draft[] {
  const text = withoutTimes(entry.text)
  const drafts = reading(text, names)
  const label = LABEL.exec(text)?.[0]
  if (label === undefined || drafts.every(({ kind }) => kind !== 'unread')) return drafts
  const isHeading = rest(wordsOf(label), 'heading').length === 0
  return isHeading ? reading(text.slice(label.length), names) : drafts
}

function reading(text: string, names: OilNames): Draft[] {
  const taken = takenApart(text)
  const fact = saidFact(taken) ?? sizeFact(taken) ?? dosed(taken, names)
  return fact ? [fact] : oils(text, taken, names)
}

/** A name that is an oil's as well as another thing's is asked about. */
function dosed(taken: Taken, names: OilNames): Draft | undefined {
  const draft = dosedThing(taken)
  if (draft?.kind !== 'dosed') return draft
  const name = taken.words.join(' ')
  const found = thingNamed(rest(taken.words)) ? names.find(name) : undefined
  if (found?.status !== 'oil' || found.note !== undefined) return draft
  return unread(
    `“${name}” can be ${found.oil.name} or something that is no oil. Write its full name`,
    'an oil, or not?',
    { name, candidates: [found.oil] },
  )
}

function oils(text: string, taken: Taken, names: OilNames): Draft[] {
  const pieces = piecesOf(text).map(cleaned)
  const tidy = pieces.map((piece) => piece.text).join(' ')
  const name = wordsOf(
    pieces.map((piece) => (piece.kind === 'words' ? piece.text : ' ')).join(' '),
  ).join(' ')
  if (taken.amounts.length === 0 && !taken.wrong) return [mention(tidy, names)]
  return readEntry(tidy, names).map((read): Draft => {
    if ('oil' in read) return { kind: 'oil', entry: read }
    const said = name === '' ? taken.words.join(' ') : name
    if (isTitle(taken)) return { kind: 'words' }
    if (isLye(taken.words) || speaksOf('water', taken.words))
      return unread(LYE_OR_WATER, 'not understood', { name: said })
    const found = names.find(trimmed(said))
    const nearest = found.status === 'several' ? found.oils : names.suggest(said, MOST_CANDIDATES)
    return unread(read.reason, shortOf(read.reason), {
      name: said,
      ...(found.status === 'oil' && { oil: found.oil }),
      candidates: found.status === 'oil' ? [found.oil] : nearest,
      touchesLye: !isNoFat(said),
    })
  })
}

const LYE_OR_WATER =
  'Lye or water, with words that are not understood. Write such as “lye 142 g” or “water 300 g”'

/** Years that a title can hold: “Castile of 2019”. */
const YEARS = { from: 1900, to: 2100 }

function isTitle({ amounts, wrong }: Taken): boolean {
  return (
    !wrong &&
    amounts.length > 0 &&
    amounts.every(({ kind, value }) => kind === 'bare' && value >= YEARS.from && value <= YEARS.to)
  )
}

/** Words without a figure: an oil whose figure is missing, or a sentence. */
function mention(text: string, names: OilNames): Draft {
  const words = wordsOf(text)
  const found = words.length > MOST_NAME_WORDS ? undefined : names.find(text)
  if (found?.status !== 'oil') return { kind: 'words' }
  return unread('There is no figure beside it', 'no figure', {
    name: text,
    oil: found.oil,
    candidates: [found.oil],
  })
}

/** A piece without small words around its name. */
function cleaned(piece: Piece): Piece {
  return piece.kind === 'words' ? { ...piece, text: trimmed(piece.text) } : piece
}
