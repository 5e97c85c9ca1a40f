import { batchFacts } from '../data/batch-facts'
import { lyeCautions } from '../data/cautions'
import { labelFacts } from '../data/label-facts'
import type { OwnOil } from '../domain/blend/own-oil'
import { library } from './library'
import { carriedWith } from './own-oils'
import { type ActualAnswer, actualReport, type Actuals } from '../domain/batch/actual/actuals'
import { lotRemedies } from '../domain/batch/check/check-lots'
import { heatRemedies } from '../domain/batch/result/heat-block'
import type { Problem } from '../domain/blend/check-blend'
import type { BatchOrder } from '../domain/batch/order/order'
import { planBatch } from '../domain/batch/result/plan'
import type { Remedy } from '../domain/batch/order/remedy'
import type { AlkaliTest } from '../domain/batch/release/alkali-test'
import { batchPin } from '../domain/batch/release/pin'
import type { Release, ReleaseAnswer } from '../domain/batch/release/release'
import { sheetOf } from '../domain/batch/sheet/sheet'
import { sum } from '../domain/batch/weigh/weights'
import type { Blend, Prices } from '../domain/blend/blend'
import { labelOf } from '../domain/label/label'
import { type BatchRun, isPaste, NOTHING_DONE, orderFor } from './batch-choices'
import { batchRelease, inPotOf, releaseSaid, testFaults, weighedOf } from './batch-release'
import { HELD_GROUPS, type Held, type HeldGroup, problemsAt } from './held'
import type { WorkHistory } from './history.svelte'
import { without } from './without'
import type { BatchChoices } from './work'

/** What the brief knows of the batch. */
export interface Brought {
  readonly name: string
  readonly prices: Prices
}

/** The batch of the blend in hand. */
export class BatchDesk {
  readonly #work: WorkHistory
  readonly #blend: () => Blend | undefined
  readonly #brought: () => Brought | undefined

  constructor(
    work: WorkHistory,
    blend: () => Blend | undefined,
    brought: () => Brought | undefined = () => undefined,
  ) {
    this.#work = work
    this.#blend = blend
    this.#brought = brought
  }

  readonly choices: BatchChoices = $derived.by(() => this.#work.now.batch)
  /** Oils of one's own in the bar, as its file carries them. */
  readonly ownOils: readonly OwnOil[] = $derived.by(() =>
    carriedWith(this.#work.now.ownOils, Object.keys(this.order?.blend ?? {})),
  )

  /** What was typed over choices since undone or replaced is forgotten with them. */
  #held: { readonly over: BatchChoices; readonly groups: Held } | undefined = $state.raw()
  readonly #heldNow: Held = $derived(
    this.#held && this.#held.over === this.choices ? this.#held.groups : {},
  )

  /** The choices as the fields show them: with what was typed and can't be in force yet. */
  readonly typed: BatchChoices = $derived(
    Object.values(this.#heldNow).reduce<BatchChoices>(
      (all, change) => ({ ...all, ...change }),
      this.choices,
    ),
  )
  readonly run: BatchRun = $derived(this.choices.run ?? NOTHING_DONE)
  readonly order: BatchOrder | undefined = $derived.by(() => this.#orderOf(this.choices))
  readonly plan = $derived(this.order && planBatch(this.order, library, batchFacts))
  readonly ready = $derived(this.plan?.status === 'ready' ? this.plan : undefined)
  readonly sheet = $derived(this.ready && sheetOf(this.ready, lyeCautions))
  /** How the batch stands by its tests for free alkali, or what is wrong with them. */
  readonly tested: ReleaseAnswer | undefined = $derived(
    this.order && this.ready && batchRelease(this.order, this.ready, this.choices),
  )
  readonly release: Release = $derived(releaseSaid(this.tested))
  readonly label = $derived(this.ready && labelOf(this.ready, library, labelFacts, this.release))

  /** What is wrong in each group with what is held, once for all fields that ask. */
  readonly #heldWrong: Readonly<Partial<Record<HeldGroup, readonly Problem[]>>> = $derived.by(() =>
    Object.fromEntries(
      HELD_GROUPS.map((group) => {
        const change = this.#heldNow[group]
        return [group, change ? this.#wrongWith(group, change) : []]
      }),
    ),
  )

  /** Changes of the order that answer warnings or problems. */
  readonly remedies: readonly Remedy[] = $derived.by(() => {
    const typed = this.typed === this.choices ? this.order : this.#orderOf(this.typed)
    return [...(this.ready?.remedies ?? []), ...(typed ? refusedRemedies(typed) : [])]
  })

  /** Really weighed, of the lines there are; another blend may have lost some. */
  readonly actual: Actuals = $derived.by(() => weighedOf(this.ready, this.choices))

  /** What was weighed and what of it went into the pot; more than was weighed where lines follow others. */
  readonly inPot: Actuals = $derived.by(() => inPotOf(this.ready, this.choices))

  /** How the batch really stands; undefined while nothing was entered. */
  readonly really: ActualAnswer | undefined = $derived(
    this.ready && Object.keys(this.actual).length > 0
      ? actualReport(this.ready, this.inPot, library, batchFacts)
      : undefined,
  )

  /** Changes choices; where a mould or bars say the size, the weight of oils follows. */
  set(change: Partial<BatchChoices>, thing = Object.keys(change).join()): void {
    const held = this.#heldNow
    this.#work.change((work) => {
      const batch = { ...work.batch, ...change }
      return { ...work, batch: { ...batch, oilGrams: this.#oilGramsOf(batch) } }
    }, thing)
    this.#hold(held)
  }

  /**
   * Takes what was typed in a group of fields over once nothing of it is wrong. Until then all of it is
   * held, with what is wrong, and what stood before stays in force.
   */
  offer(group: HeldGroup, change: Partial<BatchChoices>, thing?: string): void {
    const { [group]: before, ...others } = this.#heldNow
    const all = { ...before, ...change }
    if (this.#wrongWith(group, all).length > 0) return this.#hold({ ...others, [group]: all })
    this.#hold(others)
    this.set(all, thing)
  }

  /** What is wrong with what is typed in a group and not in force. */
  heldProblems(group: HeldGroup): readonly Problem[] {
    return this.#heldWrong[group] ?? []
  }

  /** Whether what is typed for a path of the order is wrong. */
  wrongAt(group: HeldGroup, path: string): boolean {
    return this.heldProblems(group).some((one) => one.path === path)
  }

  #hold(groups: Held): void {
    this.#held = Object.keys(groups).length > 0 ? { over: this.choices, groups } : undefined
  }

  #wrongWith(group: HeldGroup, change: Partial<BatchChoices>): readonly Problem[] {
    const order = this.#orderOf({ ...this.choices, ...change })
    const plan = order && planBatch(order, library, batchFacts)
    return plan?.status === 'invalid' ? problemsAt(group, plan.problems) : []
  }

  /** Takes a change of the order over into the choices. */
  apply({ superfat, ...change }: Remedy['change']): void {
    const { acids, additives, lots, water, lye, scale } = change
    this.set({
      ...(superfat !== undefined && { superfatPercent: superfat }),
      ...(acids && { acids }),
      ...(additives && { additives }),
      ...(water && { water, waterTyped: true }),
      ...(lye && { lye }),
      ...(scale && { scale, lyeStepChosen: true }),
    })
    if (lots) this.offer('lots', { lots })
  }

  /** Has the batch weighed out though lean, for a reason; it holds for lots as lean as these, no leaner. */
  confirmLean(confirmedLean: string): void {
    const confirmedLeanAt = this.ready?.blocked?.leanestPercent
    if (confirmedLeanAt !== undefined) this.offer('reason', { confirmedLean, confirmedLeanAt })
  }

  /** Ticks by hand that the worst case was read; the tick holds for lots as lean as these, no leaner. */
  seeLean(seen: boolean): void {
    const leanSeenAt = this.ready?.superfat.reachPercent.min
    this.set(seen ? { leanSeen: true, leanSeenAt } : { leanSeen: undefined, leanSeenAt: undefined })
  }

  takeConfirmationBack(): void {
    this.set({ confirmedLean: undefined, confirmedLeanAt: undefined })
  }

  /** Makes the whole batch so much larger; for when more of something was weighed than planned. */
  scaleUp(factor: number): void {
    this.set({ oilGrams: this.choices.oilGrams * factor })
  }

  ticked(key: string, grams: number): boolean {
    return this.run.ticks[key] === grams
  }

  tick(key: string, grams: number, done: boolean): void {
    const others = without(this.run.ticks, key)
    this.#do({ ticks: done ? { ...others, [key]: grams } : others }, `tick ${key}`)
  }

  /** Notes what a line was really weighed as, g, and ticks it off; undefined takes the note back. */
  weigh(key: string, plannedGrams: number, grams: number | undefined): void {
    const others = without(this.run.actual, key)
    const ticks = { ...this.run.ticks, [key]: plannedGrams }
    const noted =
      grams === undefined ? { actual: others } : { actual: { ...others, [key]: grams }, ticks }
    this.#do(noted, `weigh ${key}`)
  }

  readCaution(cautionRead: boolean): void {
    this.#do({ cautionRead }, 'caution')
  }

  /** What is wrong with a test about to be entered, by field; undefined where there is no batch. */
  testFaults(test: AlkaliTest): Readonly<Record<string, string>> | undefined {
    return this.order && this.ready && testFaults(test, this.order, this.ready, this.choices)
  }

  /** Enters a test of a bar of this very batch. */
  addTest(test: AlkaliTest): void {
    if (this.order)
      this.#setTests([...this.#tests(), { ...test, batch: batchPin(this.order, this.inPot) }])
  }

  /** Takes a test out that was entered by mistake; undo brings it back. */
  takeTestOut(index: number): void {
    this.#setTests(this.#tests().filter((_, at) => at !== index))
  }

  #tests(): readonly AlkaliTest[] {
    return this.choices.release?.tests ?? []
  }

  #setTests(tests: readonly AlkaliTest[]): void {
    this.set({ release: { tests } }, `tests ${tests.length}`)
  }

  /** Clears ticks, weighings and tests: the same order is made once more. */
  beginAgain(): void {
    this.#work.change((work) => ({
      ...work,
      batch: { ...work.batch, run: undefined, release: undefined },
    }))
  }

  /** Notes down what was done on the bench. */
  note(change: Partial<BatchRun>, thing: string): void {
    this.#do(change, thing)
  }

  #do(change: Partial<BatchRun>, thing: string): void {
    this.set({ run: { ...this.run, ...change } }, thing)
  }

  #orderOf(choices: BatchChoices): BatchOrder | undefined {
    const blend = this.#blend()
    if (!blend) return undefined
    const { name, prices } = this.#brought() ?? {}
    const order = orderFor(blend, choices)
    const pricesPerKg = { ...prices, ...order.pricesPerKg }
    return heldTo(choices, {
      ...order,
      ...(Object.keys(pricesPerKg).length > 0 && { pricesPerKg }),
      papers: { ...order.papers, product: order.papers?.product ?? name },
    })
  }

  #oilGramsOf(choices: BatchChoices): number {
    const sized = choices.mould ?? (isPaste(choices) ? undefined : choices.bars)
    const order = sized ? this.#orderOf(choices) : undefined
    const plan = order && planBatch(order, library, batchFacts)
    return plan?.status === 'ready' ? sum(plan.oilGrams) : choices.oilGrams
  }
}

/** What would mend an order that is refused, where one change does. */
function refusedRemedies(order: BatchOrder): Remedy[] {
  return [...lotRemedies(order, library), ...heatRemedies(order, library, batchFacts)]
}

/** Superfat by which rounding may make lots leaner than those that were confirmed, percent. */
const SAME_LEANNESS_PERCENT = 0.05

/** The order without confirmation or tick where its lots may be leaner than what they were given for. */
function heldTo({ confirmedLeanAt, leanSeenAt }: BatchChoices, order: BatchOrder): BatchOrder {
  const { confirmedLean, leanSeen, ...bare } = order
  if (confirmedLean === undefined && leanSeen === undefined) return order
  const plan = planBatch(bare, library, batchFacts)
  const leanest = plan.status === 'ready' ? plan.superfat.reachPercent.min : -Infinity
  const holds = (atPercent = 0) => leanest >= atPercent - SAME_LEANNESS_PERCENT
  return {
    ...bare,
    ...(holds(confirmedLeanAt) && { confirmedLean }),
    ...(holds(leanSeenAt) && { leanSeen }),
  }
}
