import type { Library } from '../domain/blend/library'
import { priceWalk } from '../domain/optimise/reprice/price-walk'
import { pricesTogether } from '../domain/optimise/reprice/together'
import type { RepricingService } from './protocol'

/** Answers to questions about prices that move. */
export function createRepricing(library: Library): RepricingService {
  return {
    priceWalk: (brief, order) => Promise.resolve(priceWalk(brief, library, order)),
    pricesTogether: (brief, order) => Promise.resolve(pricesTogether(brief, library, order)),
  }
}
