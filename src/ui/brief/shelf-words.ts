import type { NoPrice } from '../../domain/optimise/sensitivity/oil-prices'
import type { Reasons } from '../../domain/optimise/why/reasons'
import { WHOLE_PERCENT } from '../../domain/units'
import type { ShelfRow } from '../../state/draft'
import { gramsToBuy, stockPercent } from '../../state/stock'
import { number, withUnit } from '../words/format'

/** What the shelf knows about a row besides what is typed in it. */
export interface RowFacts {
  /** Found share, percent. */
  readonly share: number
  /** Weight of the batch's oils, g. */
  readonly oilGrams: number
  /** Whether the blend stands at a limit of the row. */
  readonly atLeast: boolean
  readonly atMost: boolean
  /** What the oil may be made of although that is banned, such as palm-derived. */
  readonly doubts: readonly string[]
  /** What prices decide about the oil, where they are told. */
  readonly prices?: Reasons | undefined
}

/** Less than this is not worth a shopping list, g. */
const LEAST_TO_BUY_G = 0.5

/** Why an oil's share is what it is, or what to know about it, in a few words. */
export function reasonOf(row: ShelfRow, facts: RowFacts): string {
  if (row.banned) return 'banned'
  if (facts.doubts.length > 0) return `may be ${facts.doubts.join(' or ')}: ask`
  return (
    stockReason(row, facts) ??
    (row.lockedAt === undefined ? undefined : `locked at ${percent(row.lockedAt)}`) ??
    (facts.atLeast && facts.share > 0 ? 'in at its least' : undefined) ??
    (facts.atMost ? 'in at its most' : undefined) ??
    priceReason(row.oil, facts.prices) ??
    ''
  )
}

/** Why a price comes in nowhere, in a word. */
const NO_PRICE: Readonly<Record<NoPrice, string>> = {
  'own limit': 'its own limit bars it',
  'no blend': 'no blend has room for it',
  'no saving': 'it saves nothing',
}

/** Up to which price an oil stays in, or below which it would come in. */
function priceReason(oil: string, prices: Reasons | undefined): string | undefined {
  const within = prices?.oilsIn.find((one) => one.oil === oil)
  if (within) {
    const [, most] = within.priceSpan
    return most === null ? 'in at any price' : `stays in to ${number(most, 2)}`
  }
  const out = prices?.oilsOut.find((one) => one.oil === oil)
  if (!out) return undefined
  return out.entersBelowPricePerKg === null
    ? `at no price: ${NO_PRICE[out.atNoPrice ?? 'no saving']}`
    : `comes in below ${number(out.entersBelowPricePerKg, 2)}`
}

function stockReason({ stock, max }: ShelfRow, facts: RowFacts): string | undefined {
  if (!stock) return undefined
  const { oilGrams, share } = facts
  const there = stockPercent(stock, oilGrams)
  if (stock.use === 'buy') {
    const missing = gramsToBuy(stock, share, oilGrams)
    return missing > LEAST_TO_BUY_G ? `${grams(missing)} more to buy` : undefined
  }
  if (stock.use === 'all')
    return `uses up ${grams(Math.min(stock.grams, oilGrams))}: ${percent(there)}`
  if (stock.grams === 0) return 'none in stock'
  if (there >= (max ?? WHOLE_PERCENT)) return undefined
  return `only ${grams(stock.grams)}: at most ${percent(there)}`
}

/** Why a stock and a typed limit can't both hold; undefined where they can. */
export function stockClash({ stock, min }: ShelfRow, oilGrams: number): string | undefined {
  if (stock?.use !== 'at most' || min === undefined) return undefined
  const there = stockPercent(stock, oilGrams)
  if (there >= min) return undefined
  return `${grams(stock.grams)} in stock are ${percent(there)}, under this least; lower it or buy more`
}

function grams(value: number): string {
  return withUnit(value, 0, 'g')
}

function percent(value: number): string {
  return withUnit(value, Number.isInteger(Number(value.toFixed(1))) ? 0 : 1, '%')
}

/** Shares added up as they stand in a column. */
export function shareText(share: number, clash: boolean): string {
  return clash ? '–' : number(share, share > 0 ? 1 : 0)
}
