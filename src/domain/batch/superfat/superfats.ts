import type { Interval } from '../../interval'
import type { Reckoning } from '../weigh/reckoning'
import { likelySuperfat } from './likely'
import { errorsOf, superfatAt, superfatSpan } from './reach'

/** What a batch comes to as it was weighed, percent superfat. */
export interface Superfats {
  /** Typical lots, weighed as shown. */
  readonly superfatPercent: number
  /** Nineteen lots in twenty. */
  readonly likelyPercent: Interval
  /** The limits of the standards with every weighing as wrong as may be. */
  readonly worstPercent: Interval
}

/**
 * Superfat of typical lots, what is likely and what is worst; percent.
 *
 * @param spansOf what the two spans are of, where something is to be weighed that may be off once more
 */
export function superfatsOf(
  reckoning: Reckoning,
  spansOf: Reckoning = reckoning,
  errors = errorsOf(reckoning.order),
): Superfats {
  return {
    superfatPercent: superfatAt(reckoning, 'typical'),
    likelyPercent: likelySuperfat(spansOf).percent,
    worstPercent: superfatSpan(spansOf, errors),
  }
}

/** "5.0 %, likely 3.1 to 7.0 %, at worst -0.4 %". */
export function superfatsInWords({ superfatPercent, ...spans }: Superfats): string {
  return `${superfatPercent.toFixed(1)} %, ${spansInWords(spans)}`
}

/** "likely 3.1 to 7.0 %, at worst -0.4 %". */
export function spansInWords({
  likelyPercent: { min, max },
  worstPercent,
}: Pick<Superfats, 'likelyPercent' | 'worstPercent'>): string {
  return `likely ${min.toFixed(1)} to ${max.toFixed(1)} %, at worst ${worstPercent.min.toFixed(1)} %`
}
