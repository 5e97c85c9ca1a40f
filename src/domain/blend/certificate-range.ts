import type { NaturalRange } from './oil'

/**
 * How far a certificate's figure may be off where it does not say, as a part of the value. An assumption for
 * two laboratories: one analyst's two results agree within 0.5 % of their mean (ISO 3657, recalled).
 */
const CERTIFICATE_TOLERANCE = 0.01

/** No certificate is better than one analyst's two results: half a percent (ISO 3657, recalled). */
export const LEAST_TOLERANCE = 0.005

/** A stated saponification value with its tolerance, which is half a percent at least; mg KOH per g. */
export function certificateRange(
  value: number,
  within: number | undefined,
  leastPart = LEAST_TOLERANCE,
): NaturalRange {
  const tolerance = Math.max(within ?? value * CERTIFICATE_TOLERANCE, value * leastPart)
  return { low: value - tolerance, typical: value, high: value + tolerance }
}
