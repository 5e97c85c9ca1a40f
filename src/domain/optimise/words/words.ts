import { figure, THIN_SPACE } from '../../number-text'

/** How figures stand in a sentence. */
export interface Words {
  /** An amount of money, such as a price per kg, with so many decimals; not below 0. */
  readonly money: (amount: number, decimals: number) => string
}

/** Decimals of money as prices are written. */
export const MONEY_DECIMALS = 2

/** Decimals beyond which a figure is not worth its ink. */
const MOST_DECIMALS = 7

/** Digits of a worth that are told. */
const SIGNIFICANT = 2

/** Parts of the last decimal that are noise when a figure is rounded to one side. */
const NOISE = 1e-4

/** Money as a plain figure. */
export const plainWords: Words = { money: figure }

/** A figure as somebody typed it: all its decimals and no more. */
export function asTyped(value: number): string {
  return figure(value, decimalsOf(value, 0))
}

/** A share in percent, with its unit after a thin space. */
export function percent(text: string): string {
  return `${text}${THIN_SPACE}%`
}

/** Decimals that show two digits of a size, at least so many and none for nothing. */
export function decimalsFor(size: number, least: number): number {
  if (!(size > 0)) return least
  const needed = SIGNIFICANT - 1 - Math.floor(Math.log10(size))
  const most = Math.min(MOST_DECIMALS, Math.max(least, needed))
  return decimalsOf(Number(size.toFixed(most)), least)
}

/** Decimals a number is written with, at least so many. */
export function decimalsOf(value: number, least: number): number {
  for (let decimals = least; decimals < MOST_DECIMALS; decimals++) {
    if (Number(value.toFixed(decimals)) === Number(value.toFixed(MOST_DECIMALS))) return decimals
  }
  return MOST_DECIMALS
}

/** A rounded value with the decimals it is told with. */
export interface Rounded {
  readonly value: number
  readonly decimals: number
}

/**
 * The end of a stretch that begins at `from`, rounded towards it so that nothing is promised beyond the
 * end, with as many decimals as leave something of the stretch.
 */
export function inward(end: number, from: number, least: number): Rounded {
  for (let decimals = least; decimals <= MOST_DECIMALS; decimals++) {
    const steps = end * 10 ** decimals
    const whole = end < from ? Math.ceil(steps - NOISE) : Math.floor(steps + NOISE)
    const value = Number((whole / 10 ** decimals).toFixed(decimals))
    if (end < from ? value < from : value > from) return { value, decimals }
  }
  return { value: from, decimals: decimalsOf(from, least) }
}
