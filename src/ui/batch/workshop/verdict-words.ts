import type { LineVerdict } from '../../../domain/batch/workshop/judge'
import type { LyePlace } from '../../../domain/batch/workshop/line-mends'
import type { Ingredient } from '../../../domain/batch/result/ingredients'
import type { MassUnit } from '../../../domain/units'
import { withUnit } from '../../words/format'
import { lineText, takenOutText } from '../words/shown'

/** A line with how it stands. */
export interface Judged {
  readonly line: Ingredient
  readonly verdict: LineVerdict
  readonly unit: MassUnit
  /** Where the lye is. */
  readonly lye: LyePlace
}

/** So much of a line: what is to come out again is never told as less, nor what is to go in as more lye. */
const grams = ({ line, unit }: Judged, of: number, way: 'in' | 'out' = 'in') =>
  way === 'in' ? lineText({ ...line, grams: of }, unit) : takenOutText({ ...line, grams: of }, unit)

/** "162 g too much", or what else there is to say of a weight in a few bold words. */
export function verdictHead(judged: Judged): string {
  const { offG, state } = judged.verdict
  const off = grams(judged, Math.abs(offG), offG > 0 ? 'out' : 'in')
  if (state === 'over') return `${off} too much.`
  if (state === 'under') return offG < 0 ? `${off} too little.` : 'Too little water.'
  if (state === 'off') return `${off} ${offG > 0 ? 'more' : 'less'} than asked.`
  if (state === 'left') return `Left ${off} ${offG > 0 ? 'over' : 'under'}.`
  if (state === 'part') return 'Only part of this lye is used.'
  return state === 'on' ? 'On.' : ''
}

/** What it means, in one sentence. */
export function verdictSays(judged: Judged): string {
  const { line, lye, verdict } = judged
  const { state, superfatPercent } = verdict
  const superfat = `superfat ${withUnit(superfatPercent, 1, '%')}`
  if (state === 'off') return offSays(judged)
  if (state === 'left' || state === 'part') return `The batch stands at ${superfat}.`
  if (line.kind === 'water' || line.kind === 'cookWater')
    return 'More than half of the lye would be hydroxide, which does not stay dissolved.'
  if (line.kind === 'acid')
    return state === 'under'
      ? `Without it the lye it was to take is free: with all else as asked, ${superfat}.`
      : `It takes lye that the fat was to have: with all else as asked, ${superfat}.`
  if (line.kind === 'alkali') return `Safe, but richer than asked: ${superfat}.`
  return `${lye === 'none' ? 'Nothing is lost: no lye has touched it. ' : ''}With all else as asked, ${superfat}.`
}

function offSays({ line }: Judged): string {
  if (line.kind === 'water' || line.kind === 'cookWater')
    return 'Water never changes the superfat; less of it makes the lye hotter and thicker. Go on.'
  if (line.kind === 'scent')
    return 'It takes no lye. More scent than planned may be more than skin takes: see its paper.'
  return 'It takes no lye. Go on, or put it right.'
}

/** Why the way on is shut. */
export function shutBecause(judged: Judged): string {
  const { line, verdict } = judged
  const within = grams(judged, verdict.toleranceG)
  if (verdict.state === 'waiting') {
    if (verdict.skippable) return `Give what the scale shows: it opens within ${within}`
    const what = line.kind === 'alkali' ? 'Hydroxide' : 'Acid'
    return `${what} is never taken as read: weigh it, it opens within ${within}`
  }
  if (verdict.stop) return 'Lye into the oils is shut until this is mended'
  return `Next stays shut while the weight is off by more than ${within}`
}
