import { library } from '../data/library'
import type { BatchOrder } from '../domain/batch/order'
import { planBatch } from '../domain/batch/plan'
import type { Blend } from '../domain/blend/blend'
import { WHOLE_PERCENT } from '../domain/units'
import type { WorkHistory } from './history.svelte'
import type { BatchChoices } from './work'

/** The batch of the blend in hand. */
export class BatchDesk {
  readonly #work: WorkHistory
  readonly #blend: () => Blend | undefined

  constructor(work: WorkHistory, blend: () => Blend | undefined) {
    this.#work = work
    this.#blend = blend
  }

  readonly choices: BatchChoices = $derived.by(() => this.#work.now.batch)
  readonly order: BatchOrder | undefined = $derived.by(() => {
    const blend = this.#blend()
    return blend && orderFor(blend, this.choices)
  })
  readonly plan = $derived(this.order && planBatch(this.order, library))

  set(change: Partial<BatchChoices>): void {
    const thing = Object.keys(change).join()
    this.#work.change((work) => ({ ...work, batch: { ...work.batch, ...change } }), thing)
  }
}

/** The order that weighs out a blend under these choices. */
export function orderFor(blend: Blend, choices: BatchChoices): BatchOrder {
  const { oilGrams, alkali, purityPercent, superfatPercent, water, scale } = choices
  return {
    blend,
    oilGrams,
    alkali: { [alkali]: WHOLE_PERCENT },
    purity: { [alkali]: purityPercent },
    superfat: superfatPercent,
    water,
    scale,
  }
}
