import { WHOLE_PERCENT } from '../../domain/units'
import { type Amount, gramsOf, type Piece, piecesOf } from '../amount-text'
import { wordsOf } from '../name-words'
import { type Draft, unread } from './draft'
import { speaksOf, type Subject, without, withoutFillers } from './recipe-words'

/** An entry taken apart: its words without figures, its amounts, what could not be read. */
export interface Taken {
  readonly text: string
  readonly words: readonly string[]
  readonly amounts: readonly Amount[]
  readonly wrong?: Extract<Piece, { kind: 'wrong' }> | undefined
}

/** Takes an entry apart. */
export function takenApart(text: string): Taken {
  const pieces = piecesOf(text)
  const wrong = pieces.find((piece) => piece.kind === 'wrong')
  const said = pieces.flatMap((piece) => (piece.kind === 'words' ? wordsOf(piece.text) : []))
  return {
    text,
    words: said.length > 0 ? said : wordsOf(text).filter((word) => !/^\d/u.test(word)),
    amounts: pieces.flatMap((piece) => (piece.kind === 'amount' ? piece.amount : [])),
    wrong,
  }
}

/** Ends of what water and lye are mixed at, and of a superfat that is no slip of the pen. */
const CONCENTRATION_PERCENT = { min: 10, max: 50 }
const RATIO = { min: 1, max: 9 }
const MOST_SUPERFAT_PERCENT = 40

/** What an entry says of water, superfat or method by itself; undefined where it is about something else. */
export function saidFact(taken: Taken): Draft | undefined {
  return superfat(taken) ?? ratio(taken) ?? concentration(taken) ?? process(taken)
}

/** The words without subjects and small words: nothing left means that all was understood. */
export function rest(words: readonly string[], ...subjects: Subject[]): string[] {
  return withoutFillers(
    subjects.reduce<readonly string[]>((left, subject) => without(subject, left), words),
  )
}

function superfat({ words, amounts, wrong }: Taken): Draft | undefined {
  if (!speaksOf('superfat', words)) return undefined
  if (wrong) return unread(wrong.reason, 'superfat is one figure')
  const [amount, ...others] = amounts.filter(({ kind }) => kind !== 'mass')
  if (!amount && amounts.length === 0) return { kind: 'words' }
  if (!amount || others.length > 0 || amounts.length > 1)
    return unread('A superfat is one figure in percent, such as 5 %', 'superfat is one figure')
  const percent = amount.value
  if (percent > MOST_SUPERFAT_PERCENT)
    return unread(
      `A superfat of ${percent} % is more than ${MOST_SUPERFAT_PERCENT} %. Check the figure`,
      'too much for a superfat',
    )
  return {
    kind: 'fact',
    about: 'superfat',
    name: 'Superfat',
    figure: `${percent} %`,
    fact: { superfat: percent },
  }
}

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`
const RATIO_TEXT = new RegExp(`${NUMBER}\\s*(?::|/|\\bto\\b|\\bzu\\b)\\s*${NUMBER}`, 'iu')

/** Water and lye as 2:1; the larger is the water where the words don't say. */
function ratio({ text }: Taken): Draft | undefined {
  const match = RATIO_TEXT.exec(text)
  const words = wordsOf(text.replace(RATIO_TEXT, ' '))
  const aboutWater = speaksOf('water', words)
  const aboutLye = isLye(words)
  if (!match || (!aboutWater && !aboutLye)) return undefined
  const [one, two] = [match[1], match[2]].map((figure) => Number((figure ?? '').replace(',', '.')))
  if (one === undefined || two === undefined || rest(words, ...LYE, 'water').some(notRatio))
    return unread('Write the water as 2:1 of the lye', 'not read as a ratio')
  const lyeFirst = aboutLye && aboutWater && lyeBefore(words)
  const water = lyeFirst || (!aboutWater && two > one) ? two / one : one / two
  if (!(water >= RATIO.min && water <= RATIO.max))
    return unread(
      `Water of ${shown(water)} times the lye is no usual one: from ${RATIO.min} to ${RATIO.max}. Check which is which`,
      'which is the water?',
    )
  return {
    kind: 'fact',
    about: 'water',
    name: 'Your water',
    figure: `${shown(water)} to 1`,
    note: `lye at ${shown(WHOLE_PERCENT / (1 + water))} %`,
    fact: { water: { rule: { ratio: water } } },
  }
}

const LYE: readonly Subject[] = ['solution', 'naoh', 'koh', 'lye']
const notRatio = (word: string) => !/^(?:ratio|verhaltnis|rapport|at|part|parts)$/u.test(word)

export function isLye(words: readonly string[]): boolean {
  return LYE.some((subject) => speaksOf(subject, words))
}

function lyeBefore(words: readonly string[]): boolean {
  const first = (is: (part: string[]) => boolean) =>
    words.findIndex((_, at) => is(words.slice(0, at + 1)))
  return first(isLye) < first((part) => speaksOf('water', part))
}

/** Lye at 33 %, or lye bought as a solution: so many grams at 50 %. */
function concentration({ text, words, amounts, wrong }: Taken): Draft | undefined {
  const named = speaksOf('concentration', words)
  const solution = speaksOf('solution', words)
  const at = isLye(words) && /(?:\bat\b|@)\s*\d/iu.test(text)
  if ((!named && !solution && !at) || wrong) return undefined
  const percents = amounts.filter(({ kind }) => kind === 'percent' || (named && kind === 'bare'))
  const [grams] = amounts.map(gramsOf).filter((one) => one !== undefined)
  const [percent, ...others] = percents
  if (amounts.length === 0) return { kind: 'words' }
  if (!percent || others.length > 0)
    return unread(
      'A lye solution needs its strength. Write grams of hydroxide and of water, or such as 50 % lye solution 280 g',
      'how strong is the solution?',
    )
  const { value } = percent
  const [min, max] = [CONCENTRATION_PERCENT.min, CONCENTRATION_PERCENT.max]
  if (value < min || value > max)
    return unread(
      `Lye at ${value} % is outside ${min} to ${max} %. Check the figure`,
      'no strength that lye has',
    )
  if (grams !== undefined) {
    const alkali = speaksOf('koh', words) || words.includes('kalilauge') ? 'koh' : 'naoh'
    return {
      kind: 'fact',
      about: 'lye',
      name: 'Your lye',
      figure: `${shown((grams * value) / WHOLE_PERCENT)} g`,
      note: `in ${shown(grams)} g of solution at ${value} %`,
      fact: { solution: { alkali, grams, strengthPercent: value } },
    }
  }
  return {
    kind: 'fact',
    about: 'water',
    name: 'Your water',
    figure: `lye at ${value} %`,
    fact: { water: { rule: { lyeConcentration: value } } },
  }
}

function process({ words, amounts, wrong }: Taken): Draft | undefined {
  if (amounts.length > 0 || wrong) return undefined
  const [cold, hot] = [speaksOf('cold', words), speaksOf('hot', words)]
  if (cold === hot) return undefined
  const of = cold ? 'cold' : 'hot'
  return {
    kind: 'fact',
    about: 'process',
    name: 'Method',
    figure: `${of} process`,
    fact: { process: of },
  }
}

const SHOWN_FIGURES = 4

/** A figure for a person, at most four digits. */
export function shown(value: number): string {
  return String(Number(value.toPrecision(SHOWN_FIGURES)))
}
