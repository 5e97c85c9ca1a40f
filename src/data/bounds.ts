import { z } from 'zod'

/**
 * A number as people write them: up to `most` either way, and zero or no nearer to it than `least`. What lies
 * beyond is a slip of the hand, and reckoning with it would leave the range where figures can be told apart.
 */
export function within(most: number, least = 1 / most) {
  return z
    .number()
    .min(-most)
    .max(most)
    .refine((value) => value === 0 || Math.abs(value) >= least, {
      error: ({ input }) => `${String(input)} stands here. Give 0, or ${least} and more.`,
    })
}

/** Whole minor units of a currency: cents, pence, yen. */
export const MOST_MINOR = 1e12
/** Bars, packs or batches: more than anyone counts. */
export const MOST_COUNT = 1e7
/** Days and minutes: some lifetimes. */
export const MOST_DAYS = 36_500
export const MOST_MINUTES = 1e6
/** Percent, points, prices per kg and other figures of a brief. */
export const figure = within(1e12)
/** What a pack holds or a batch needs, in its unit. */
export const amount = within(1e9, 1e-6)
/** Percent of money: margins, markups, taxes. */
export const percentOfMoney = within(1e6)
