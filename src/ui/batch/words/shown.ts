import type { Ends } from '../../../domain/interval'
import {
  type Direction,
  directionOf,
  lineFigure,
  massFigure as figureOf,
  type ShownLine,
} from '../../../domain/batch/result/shown-mass'
import {
  spansInWords,
  type Superfats,
  superfatsInWords,
} from '../../../domain/batch/superfat/superfats'
import type { MassUnit } from '../../../domain/units'
import { number, withUnit } from '../../words/format'

/** The figure alone of a line's weight, in a person's unit, cut so that it never makes the bar more alkaline. */
export function lineFigureText(line: ShownLine, unit: MassUnit): string {
  const { value, decimals } = lineFigure(line, unit)
  return number(value, decimals)
}

/** A line's weight with its unit, cut the same way. */
export function lineText(line: ShownLine, unit: MassUnit): string {
  const { value, decimals } = lineFigure(line, unit)
  return withUnit(value, decimals, unit)
}

/** A weight with its unit, in a person's unit, to the step of the scale it is weighed on. */
export function massText(
  grams: number,
  unit: MassUnit,
  stepG: number | null,
  direction: Direction = 'nearest',
): string {
  const { value, decimals } = figureOf(grams, unit, stepG, direction)
  return withUnit(value, decimals, unit)
}

/** A weight of a line's kind that is to be taken out again, cut so that what stays is never more alkaline. */
export function takenOutText({ kind, grams, stepG }: ShownLine, unit: MassUnit): string {
  return massText(grams, unit, stepG, directionOf(kind, 'out'))
}

/** "5.0 %, likely 3.1 to 7.0 %, at worst −0.4 %". */
export function superfatsText(superfats: Superfats): string {
  return withMinus(superfatsInWords(superfats))
}

/** "likely 3.1 to 7.0 %, at worst −0.4 %". */
export function spansText(spans: Pick<Superfats, 'likelyPercent' | 'worstPercent'>): string {
  return withMinus(spansInWords(spans))
}

/** The figure of a weight without its unit, to the step of the scale it is weighed on. */
export function massFigure(
  grams: number,
  unit: MassUnit,
  stepG: number | null,
  direction: Direction = 'nearest',
): string {
  const { value, decimals } = figureOf(grams, unit, stepG, direction)
  return number(value, decimals)
}

/** A weight that nobody puts on a scale, to whole grams or their like. */
export function roughMass(grams: number, unit: MassUnit): string {
  return massText(grams, unit, 1)
}

/** A sentence of the domain's with true minus signs. */
export function withMinus(sentence: string): string {
  return sentence.replaceAll(/(?<=^|[\s(])-(?=\d)/gu, '−')
}

/** A span such as "50 to 65 °C". */
export function spanText({ low, high }: Ends, unit: string): string {
  return `${number(low, 0)} to ${withUnit(high, 0, unit)}`
}
