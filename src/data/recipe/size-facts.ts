import { ML_PER_LITRE } from '../../domain/units'
import { gramsOf } from '../amount-text'
import { wordsOf } from '../name-words'
import { type Draft, unread } from './draft'
import { rest, shown, type Taken } from './said-facts'
import { speaksOf } from './recipe-words'

const VOLUME = /(\d+(?:[.,]\d+)?)\s*(ml|millilit(?:re|er)s?|cl|l|lit(?:re|er)s?|Liter)\b/iu
const ML_PER: Readonly<Record<string, number>> = { m: 1, c: 10, l: ML_PER_LITRE }

/** How big the batch is to be, where an entry says so; undefined where it is about something else. */
export function sizeFact(taken: Taken): Draft | undefined {
  return mould(taken) ?? bars(taken) ?? batch(taken)
}

/** A mould by its volume. */
function mould({ text, words }: Taken): Draft | undefined {
  const match = VOLUME.exec(text)
  const named = speaksOf('mould', words)
  const others = rest(wordsOf(text.replace(VOLUME, ' ')), 'mould', 'makes', 'batch')
  if (!match) {
    if (!named || !/\d/u.test(text)) return undefined
    return unread(
      'A mould is read by its volume, such as 1.2 l. Enter its sides on Batch',
      'no volume',
      { touchesLye: false },
    )
  }
  if (others.length > 0) return undefined
  if (!named && !speaksOf('makes', wordsOf(text))) return undefined
  const [, figure = '', unit = ''] = match
  const mouldMl = Number(figure.replace(',', '.')) * (ML_PER[unit.charAt(0).toLowerCase()] ?? 1)
  return {
    kind: 'fact',
    about: 'size',
    name: 'Your mould',
    figure: `${shown(mouldMl)} ml`,
    fact: { size: { mouldMl } },
  }
}

/** So many bars, of such a weight where it is said. */
function bars({ words, amounts, wrong }: Taken): Draft | undefined {
  if (
    !speaksOf('bars', words) ||
    wrong ||
    rest(words, 'makes', 'bars', 'batch').filter((word) => word !== 'x').length > 0
  )
    return undefined
  const counts = amounts.filter(({ kind }) => kind === 'bare')
  const [count, ...others] = counts
  const [barGrams] = amounts.map(gramsOf).filter((one) => one !== undefined)
  if (!count || others.length > 0 || !Number.isInteger(count.value) || count.value === 0)
    return undefined
  const figure = barGrams === undefined ? '' : ` of ${shown(barGrams)} g`
  return {
    kind: 'fact',
    about: 'size',
    name: 'Size',
    figure: `${count.value} bars${figure}`,
    ...(barGrams === undefined && { note: 'their weight is not said' }),
    fact: { size: { bars: count.value, ...(barGrams !== undefined && { barGrams }) } },
  }
}

/** A batch by its weight, and sums that the text gives itself. */
function batch({ words, amounts, wrong }: Taken): Draft | undefined {
  const [ofOils, ofAll] = [speaksOf('oils', words), speaksOf('total', words)]
  const sized = speaksOf('batch', words) || speaksOf('makes', words)
  if ((!ofOils && !ofAll && !sized) || wrong || amounts.length === 0) return undefined
  const others = rest(words, 'oils', 'total', 'batch', 'makes')
  if (others.some((word) => word !== 'soap')) return undefined
  if (ofAll && !ofOils && !sized)
    return { kind: 'dosed', what: { is: 'total', of: 'all' }, amounts }
  if (ofOils) return { kind: 'dosed', what: { is: 'total', of: 'oils' }, amounts }
  const [grams] = amounts.map(gramsOf).filter((one) => one !== undefined)
  if (grams === undefined) return undefined
  const of = ofAll ? 'all' : 'unsaid'
  return {
    kind: 'fact',
    about: 'size',
    name: 'Size',
    figure: `${shown(grams)} g`,
    ...(of === 'unsaid' && { note: 'read as the weight of the oils' }),
    fact: { size: { grams, of } },
  }
}
