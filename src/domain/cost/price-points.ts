import { WHOLE_PERCENT } from '../units'
import { ceilMinor } from './money'

/** What a price is meant to earn: a part of the price, or a part of the cost on top of it. Percent. */
export type Aim = { readonly margin: number } | { readonly markup: number }

/** Prices that are asked: whole steps, or whole steps less a little. Minor units. */
export interface PricePoints {
  readonly stepMinor: number
  /** 5 with steps of 100 asks 4.95, 5.95 and so on; 0 where left out. */
  readonly lessMinor?: number | undefined
}

/**
 * The price that earns an aim on a cost, unrounded: cost / (1 − margin), or cost × (1 + markup). A margin of
 * 50 % is a markup of 100 %.
 */
export function aimedPrice(cost: number, aim: Aim): number {
  if ('margin' in aim) return cost / (1 - aim.margin / WHOLE_PERCENT)
  return cost * (1 + aim.markup / WHOLE_PERCENT)
}

/** The lowest price point that is not below a price, so that rounding never eats the aim; minor units. */
export function upToPoint(price: number, { stepMinor, lessMinor = 0 }: PricePoints): number {
  const steps = Math.max(1, Math.ceil((ceilMinor(price) + lessMinor) / stepMinor))
  return steps * stepMinor - lessMinor
}

/** The part of a price that is not cost, percent of the price. */
export function marginPercent(price: number, cost: number): number {
  return (1 - cost / price) * WHOLE_PERCENT
}

/** What is on top of the cost, percent of the cost. */
export function markupPercent(price: number, cost: number): number {
  return (price / cost - 1) * WHOLE_PERCENT
}
