import type { BatchFacts } from '../batch/order/facts'
import type { BatchOrder } from '../batch/order/order'
import { planBatch, type ReadyPlan } from '../batch/result/plan'
import { sum } from '../batch/weigh/weights'
import type { Blend } from '../blend/blend'
import type { Problem } from '../blend/check-blend'
import type { Library } from '../blend/library'
import type { AlkaliKind } from '../chemistry/alkali'
import { asPutIn } from '../label/ingredient-list'

/** A hydroxide before and after, g as weighed, in a batch of the same weight of oils. */
export interface AlkaliChange {
  readonly kind: AlkaliKind
  readonly beforeG: number
  readonly afterG: number
}

/** What changes on the ingredient list, in the names as put in. */
export interface LabelChange {
  readonly before: readonly string[]
  readonly after: readonly string[]
  readonly gone: readonly string[]
  readonly added: readonly string[]
  /** Whether names that stay stand in another order. */
  readonly reordered: boolean
  /** Names that must be looked up before they are printed. */
  readonly unsure: readonly string[]
}

/** What another blend changes in a batch. */
export interface BatchChange {
  readonly alkali: readonly AlkaliChange[]
  readonly label: LabelChange
}

/** A batch planned, or what is wrong with its order. */
export type Planned =
  | { readonly status: 'ready'; readonly plan: ReadyPlan }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/**
 * The batch of an order with another blend, at a weight of all oils in g. Lots and prices of oils
 * that are no longer in it go.
 */
export function planWith(
  order: BatchOrder,
  blend: Blend,
  oilGrams: number | undefined,
  library: Library,
  facts: BatchFacts,
): Planned {
  const lots = Object.entries(order.lots ?? {}).filter(([oil]) => oil in blend)
  const sized =
    oilGrams === undefined ? order : { ...order, oilGrams, mould: undefined, bars: undefined }
  const plan = planBatch({ ...sized, blend, lots: Object.fromEntries(lots) }, library, facts)
  return plan.status === 'ready' ? { status: 'ready', plan } : plan
}

/** What differs between two batches of the same weight of oils. */
export function batchChange(
  before: ReadyPlan,
  after: ReadyPlan,
  library: Library,
  facts: BatchFacts,
): BatchChange {
  return {
    alkali: alkaliChanges(before, after),
    label: labelChange(namesOf(before, library, facts), namesOf(after, library, facts)),
  }
}

function alkaliChanges(before: ReadyPlan, after: ReadyPlan): AlkaliChange[] {
  return (['naoh', 'koh'] as const).flatMap((kind) => {
    const [beforeG, afterG] = [before.alkaliGrams[kind] ?? 0, after.alkaliGrams[kind] ?? 0]
    return beforeG > 0 || afterG > 0 ? [{ kind, beforeG, afterG }] : []
  })
}

interface Name {
  readonly name: string
  readonly unsure: boolean
}

function namesOf(plan: ReadyPlan, library: Library, facts: BatchFacts): readonly Name[] {
  return asPutIn(plan, library, facts)
}

function labelChange(before: readonly Name[], after: readonly Name[]): LabelChange {
  const [was, is] = [before.map(({ name }) => name), after.map(({ name }) => name)]
  const stayed = (names: readonly string[], others: readonly string[]) =>
    names.filter((name) => others.includes(name))
  return {
    before: was,
    after: is,
    gone: was.filter((name) => !is.includes(name)),
    added: is.filter((name) => !was.includes(name)),
    reordered: stayed(was, is).join('\n') !== stayed(is, was).join('\n'),
    unsure: after.filter(({ unsure }) => unsure).map(({ name }) => name),
  }
}

/** Weight of all oils of a plan, g. */
export function oilWeight(plan: ReadyPlan): number {
  return sum(plan.oilGrams)
}
