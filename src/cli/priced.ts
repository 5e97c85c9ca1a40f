import { batchFacts } from '../data/batch-facts'
import { orderOf } from '../data/batch-file'
import { library } from '../data/library'
import { ownOilsRefused } from '../data/own-oil-file'
import { bookOf, type ParsedPrices } from '../data/price-book-file'
import { materialsWith } from '../data/price-materials'
import { today } from '../data/today'
import { isDay, noDay } from '../domain/batch/order/dates'
import { planBatch, type ReadyPlan } from '../domain/batch/result/plan'
import type { Problem } from '../domain/blend/check-blend'
import { checkBook } from '../domain/cost/check-book'
import type { Pricing } from '../domain/cost/run-cost'

/** Prices that can be reckoned with, or what is wrong with them. */
export type PricingRead =
  | { readonly status: 'ready'; readonly pricing: Pricing }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** The prices of a parsed file on its day, or today. */
export function pricingOf(prices: ParsedPrices, on: string | undefined): PricingRead {
  const book = bookOf(prices)
  const materialOf = materialsWith(book.materials)
  const day = on ?? today()
  const problems = [
    ...checkBook(book, materialOf, 'prices'),
    ...(isDay(day) ? [] : [{ path: 'on', message: noDay(day) }]),
  ]
  if (problems.length > 0) return { status: 'invalid', problems }
  return { status: 'ready', pricing: { book, materialOf, on: day } }
}

/** A batch of a parsed file, planned, or what is wrong with it, by path. */
export function plannedPart(
  file: Parameters<typeof orderOf>[0],
  path: string,
): ReadyPlan | { readonly status: 'invalid'; readonly problems: readonly Problem[] } {
  const refused = ownOilsRefused(file.ownOils, `${path}.ownOils`)
  if (refused.length > 0) return { status: 'invalid', problems: refused }
  const plan = planBatch(orderOf(file), library, batchFacts)
  if (plan.status === 'ready') return plan
  const problems = plan.problems.map((one) => ({
    ...one,
    path: one.path === '' ? path : `${path}.${one.path}`,
  }))
  return { status: 'invalid', problems }
}
