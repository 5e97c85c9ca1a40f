import { GRAMS_PER_KG } from '../../units'
import type { BarPlan } from './bars'
import type { Ingredient } from './ingredients'

/** What the materials of a batch cost, in the maker's money. */
export interface MaterialCost {
  readonly total: number
  /** Null where the number of bars is not known. */
  readonly perBar: number | null
  /** Names of what has no price and is not in the total. */
  readonly unpriced: readonly string[]
}

/** Money for all that is weighed at prices per kg by id; null where nothing has a price. Water is free. */
export function materialCost(
  ingredients: readonly Ingredient[],
  pricesPerKg: Readonly<Record<string, number>> | undefined,
  bars: BarPlan | null,
): MaterialCost | null {
  if (!pricesPerKg) return null
  const bought = ingredients.filter(({ id }) => id !== 'water')
  const priced = bought.filter(({ id }) => pricesPerKg[id] !== undefined)
  if (priced.length === 0) return null
  const total = priced.reduce(
    (money, { id, grams }) => money + (grams / GRAMS_PER_KG) * (pricesPerKg[id] ?? 0),
    0,
  )
  return {
    total,
    perBar: bars ? total / bars.count : null,
    unpriced: bought.filter((one) => !priced.includes(one)).map(({ name }) => name),
  }
}
