import { library } from '../data/library'
import type { Blend } from '../domain/blend/blend'
import type { BatchOrder, Scale, WaterRule } from '../domain/batch/order'
import { planBatch } from '../domain/batch/plan'
import type { AlkaliKind } from '../domain/chemistry/alkali'

/** What the batch page lets a maker change. */
export interface BatchChoices {
  readonly oilGrams: number
  readonly alkali: AlkaliKind
  readonly purityPercent: number
  readonly superfatPercent: number
  readonly water: WaterRule
  readonly scale: Scale
}

/** The batch of the blend in hand. */
export class BatchDesk {
  choices: BatchChoices = $state.raw() as BatchChoices
  #blend: () => Blend | undefined

  constructor(choices: BatchChoices, blend: () => Blend | undefined) {
    this.choices = choices
    this.#blend = blend
  }

  readonly order: BatchOrder | undefined = $derived.by(() => {
    const blend = this.#blend()
    return blend && orderFor(blend, this.choices)
  })
  readonly plan = $derived(this.order && planBatch(this.order, library))

  set(change: Partial<BatchChoices>): void {
    this.choices = { ...this.choices, ...change }
  }
}

function orderFor(blend: Blend, choices: BatchChoices): BatchOrder {
  const { oilGrams, alkali, purityPercent, superfatPercent, water, scale } = choices
  return {
    blend,
    oilGrams,
    alkali: { [alkali]: 100 },
    purity: { [alkali]: purityPercent },
    superfat: superfatPercent,
    water,
    scale,
  }
}
