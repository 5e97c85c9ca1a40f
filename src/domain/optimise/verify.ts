import { type Blend, normalised, totalChange, totalShare } from '../blend/blend'
import type { Library } from '../blend/library'
import { COST } from '../blend/measure'
import { blendValue } from '../blend/values'
import { WHOLE_PERCENT } from '../units'
import { type Brief, goalMeasure, type Limits, pricesOf } from './brief'
import type { Side } from './limits'
import { brokenRules } from './rules/broken-rules'
import { heldForAnyLot, valueUnderWish } from './variation/wishes'

/**
 * How far an answer may stand outside a limit, in percent of oil weight or points.
 * Solvers here keep rows to about 1e-8; one part in a million is still far below any scale or measure.
 */
export const CHECK_TOLERANCE = 1e-6

/**
 * How far a measure of about this value may stand outside a limit, in its unit. Of money it is one part
 * in a million: where a kilogram costs 100,000, the sixth decimal is the solver's noise.
 */
export function toleranceOn(measure: string, value: number): number {
  return measure === COST ? CHECK_TOLERANCE * Math.max(1, Math.abs(value)) : CHECK_TOLERANCE
}

/** Thrown when a solver's answer does not stand up to the brief; such an answer is never shown. */
export class UnsoundAnswer extends Error {
  override readonly name = 'UnsoundAnswer'
}

/**
 * What is wrong with a blend as an answer to a brief, found from the oils alone and not from the
 * program that was solved. Empty when every limit and rule holds; in a robust brief, limits on measures
 * for any lot of the oils.
 */
export function breaches(brief: Brief, blend: Blend, library: Library): string[] {
  const found: string[] = []
  const expect = (path: string, value: number, { min, max }: Limits, slack = CHECK_TOLERANCE) => {
    if (!(value >= (min ?? -Infinity) - slack)) found.push(`${path}.min: ${value}`)
    if (!(value <= (max ?? Infinity) + slack)) found.push(`${path}.max: ${value}`)
  }
  expect('sum', totalShare(blend), { min: WHOLE_PERCENT, max: WHOLE_PERCENT })
  for (const oil of Object.keys(blend)) {
    if (!(oil in brief.oils)) found.push(`oils.${oil}: not on the shelf`)
  }
  for (const [oil, { min, max }] of Object.entries(brief.oils)) {
    expect(`oils.${oil}`, blend[oil] ?? 0, { min: min ?? 0, max: max ?? WHOLE_PERCENT })
  }
  brief.groups.forEach((group, number) => {
    const share = group.oils.reduce((sum, oil) => sum + (blend[oil] ?? 0), 0)
    expect(`groups[${number}]`, share, group)
  })
  const expectWish = (measure: string, side: Side, limits: Limits) => {
    const value = valueUnderWish(brief, library, measure, side, blend)
    expect(`measures.${measure}`, value, limits, toleranceOn(measure, value))
  }
  for (const [measure, { min, max }] of Object.entries(brief.measures)) {
    if (min === undefined && max === undefined) continue
    if (heldForAnyLot(brief, measure)) {
      expectWish(measure, 'min', { min })
      expectWish(measure, 'max', { max })
    } else expectWish(measure, 'min', { min, max })
  }
  return [...found, ...brokenRules(brief.rules, blend)]
}

/** What a blend is worth to the brief's goal: a measure's value, or the total change in percentage points. */
export function goalValue(brief: Brief, blend: Blend, library: Library): number {
  const measure = goalMeasure(brief.goal)
  if (measure !== undefined) return blendValue(library, pricesOf(brief), measure, blend)
  if ('closestTo' in brief.goal) return totalChange(normalised(brief.goal.closestTo), blend)
  throw new Error('The goal names neither a measure nor a blend')
}

/**
 * What a `closestTo` blend holds of oils that are not on the shelf: change that no answer can avoid, in
 * percent. 0 for other goals.
 */
export function shareOffShelf({ goal, oils }: Brief): number {
  if (!('closestTo' in goal)) return 0
  return Object.entries(normalised(goal.closestTo))
    .filter(([oil]) => !(oil in oils))
    .reduce((sum, [, share]) => sum + share, 0)
}
