import { measureOf } from '../../blend/library'
import type { MeasureGoal } from '../space/goal'
import { hasRoom, type LimitWorth, type SideWorth } from '../sensitivity/limit-worths'
import {
  endInWords,
  isPoints,
  limitInWords,
  type Speech,
  unitInWords,
  valueInWords,
} from './limit-words'
import { figure } from '../../number-text'
import { decimalsFor, MONEY_DECIMALS } from './words'

/** Relative difference of two worths that is put down to rounding. */
const SAME = 1e-6

/** Decimals of a worth in points. */
const POINT_DECIMALS = 1

/** One sentence on what a limit costs, or on both of its sides where they differ. */
export function worthSentence(speech: Speech, goal: MeasureGoal, worth: LimitWorth): string {
  const { relax, tighten, place } = worth
  const limit = limitInWords(speech, place.limit)
  if (tighten && isSame(relax.perUnit, tighten.perUnit)) {
    const price = amountInWords(speech, goal, tighten.perUnit)
    const unit = unitInWords(speech, place.limit)
    return `${limit} costs ${price} for each ${unit}; that price holds ${spanInWords(speech, worth)}.`
  }
  return `${limit}: ${sidesInWords(speech, goal, worth).join('; ')}.`
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME * Math.max(a, b)
}

/** The stretch of a price above 0, which has an end on either side. */
function spanInWords(speech: Speech, { place, relax, tighten }: LimitWorth): string {
  const { limit } = place
  const ends = [relax, tighten].map((side) => endInWords(speech, limit, side?.until ?? limit.value))
  const [least, most] = limit.side === 'min' ? ends : ends.reverse()
  return `from ${least} to ${most}`
}

function sidesInWords(speech: Speech, goal: MeasureGoal, worth: LimitWorth): string[] {
  const { relax, tighten, place } = worth
  const { limit } = place
  const down = limit.side === 'min'
  const better = goal.sense === 'minimise' ? 'saves' : 'gains'
  const parts = [
    relax.perUnit > 0
      ? sideInWords(speech, goal, worth, relax, better, down)
      : 'giving way changes nothing',
  ]
  if (tighten) parts.push(sideInWords(speech, goal, worth, tighten, 'costs', !down))
  else if (hasRoom(place, 'tighten')) {
    const beyond = `${down ? 'above' : 'below'} ${valueInWords(speech, limit, limit.value)}`
    parts.push(`${beyond} nothing is within reach`)
  }
  return parts
}

/** "each point less saves 0.03 per kg, down to 36.2". */
function sideInWords(
  speech: Speech,
  goal: MeasureGoal,
  { place }: LimitWorth,
  { perUnit, until }: SideWorth,
  verb: string,
  down: boolean,
): string {
  const step = `each ${unitInWords(speech, place.limit)} ${down ? 'less' : 'more'}`
  const price = `${step} ${verb} ${amountInWords(speech, goal, perUnit)}`
  if (until === null) return price
  return `${price}, ${down ? 'down' : 'up'} to ${endInWords(speech, place.limit, until)}`
}

/** A worth in the goal's unit: "0.05 per kg", "0.42 points of Lather". */
function amountInWords({ library, words }: Speech, { measure }: MeasureGoal, amount: number) {
  if (isPoints(library, measure)) {
    const points = figure(amount, decimalsFor(amount, POINT_DECIMALS))
    return `${points} points of ${measureOf(library, measure).name}`
  }
  return `${words.money(amount, decimalsFor(amount, MONEY_DECIMALS))} per kg`
}
