import type { RecipeLye } from '../../data/recipe/recipe-order'
import { sum } from '../../domain/batch/weigh/weights'
import { number } from '../words/format'

const WHY = {
  purity: 'the purity of your bag',
  rounding: 'rounding down to the scale',
  superfat: 'superfat, or other figures for the oils',
} as const

const NOT_YET = {
  unread: 'Your lye is compared once every line is read.',
  question: 'Your lye is compared once the question is answered.',
  noLye: undefined,
  noSize: 'Your lye can’t be compared: the oils have no weights.',
  otherAlkali: 'Your lye is of another alkali than this batch; it is not compared.',
} as const

/** A recipe's own lye beside ours, in words; undefined where it names none. */
export function lyeInWords(lye: RecipeLye): string | undefined {
  if (lye.status === 'notCompared') return NOT_YET[lye.because]
  if (lye.status === 'invalid') return undefined
  const [stated, ours] = [total(lye.statedG), total(lye.oursG)]
  const [main] = lye.differences
  const superfat = number(lye.statedSuperfatPercent, 1)
  const left =
    lye.statedSuperfatPercent < 0
      ? `it would leave free lye (superfat ${superfat} %)`
      : `it would leave superfat ${superfat} %`
  const why = main ? `; most of the difference is ${WHY[main.why]}` : ''
  return `Your lye was ${number(stated, 1)} g, ours is ${number(ours, 1)} g: ${left}, ours ${number(lye.oursSuperfatPercent, 1)} %${why}.`
}

function total(grams: Readonly<Record<string, number | undefined>>): number {
  return sum(Object.fromEntries(Object.entries(grams).map(([kind, g]) => [kind, g ?? 0])))
}
