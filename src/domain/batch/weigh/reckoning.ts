import type { Library } from '../../blend/library'
import type { BatchFacts } from '../order/facts'
import type { BatchOrder } from '../order/order'
import type { Weights } from './weights'

/** One batch to be reckoned: what was asked, what is weighed, and what is known of it. */
export interface Reckoning {
  readonly order: BatchOrder
  readonly weights: Weights
  readonly library: Library
  readonly facts: BatchFacts
}
