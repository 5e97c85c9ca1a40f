import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import { type Brief, pricesOf } from './brief'

/** The brief without its wishes on measures: only what the shelf itself allows. */
export function withoutWishes(brief: Brief): Brief {
  return { ...brief, measures: {} }
}

/** The brief without the wishes on some measures. */
export function withoutWishesOn(brief: Brief, ids: readonly string[]): Brief {
  const kept = Object.entries(brief.measures).filter(([id]) => !ids.includes(id))
  return { ...brief, measures: Object.fromEntries(kept) }
}

/** Ids of the measures that can be reckoned for a brief: all, less cost where an oil has no price. */
export function reckonable(brief: Brief, library: Library): string[] {
  const prices = pricesOf(brief)
  const priced = Object.keys(brief.oils).every((oil) => oil in prices)
  return library.measures.map(({ id }) => id).filter((id) => id !== COST || priced)
}
