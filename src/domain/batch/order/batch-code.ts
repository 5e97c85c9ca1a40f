import { isDay } from './dates'
import type { Papers } from './order'

/** Letters and figures that are not taken for each other when read off a wrapper: no I, no O. */
const CLEAR = /^[A-HJ-NP-Z0-9]+$/u

/** Figures that a batch's number of the day is written with. */
const NUMBER_DIGITS = 2

/** Whether a product code can be read without doubt. */
export function isClearCode(code: string): boolean {
  return CLEAR.test(code)
}

/**
 * Batch code: day, product, number of the day, as 261125-OCL-01; parts that are not known are left out, and
 * without a day there is none. Marks every bar and the rack, and leads back to the lots.
 */
export function batchCode({ madeOn, productCode, number }: Papers): string | null {
  if (madeOn === undefined || !isDay(madeOn)) return null
  const day = madeOn.replaceAll('-', '').slice(2)
  const count = String(number ?? 1).padStart(NUMBER_DIGITS, '0')
  return [day, ...(productCode === undefined ? [] : [productCode]), count].join('-')
}
