import { batchFacts } from '../data/batch-facts'
import { flagRules } from '../data/flags'
import { library } from './library'
import type { BatchOrder } from '../domain/batch/order/order'
import { type BatchPlan, planBatch } from '../domain/batch/result/plan'
import { type Blend, normalised } from '../domain/blend/blend'
import { type Flag, flagsOf } from '../domain/blend/flags'
import {
  type Changed,
  type GivesWay,
  type Part,
  partsOf,
  usualGiver,
  withJointMoved,
  withShare,
  withWeights,
} from '../domain/blend/giving-way'
import type { MeasureValues } from '../domain/blend/compare'
import { blendValues } from '../domain/blend/values'
import { type Move, MOVES } from '../domain/optimise/studies/from-here'
import { fractionFromPercent } from '../domain/units'
import {
  type Bar,
  barOf,
  isDraft,
  keptOf,
  sizedByOils,
  type Version,
  withBar,
  withKept,
  withOilAdded,
  withOilOut,
  withTaken,
  withVersionBack,
} from './bar'
import { orderFor } from './batch-choices'
import { priceOf, withRow } from './draft'
import type { Explorer } from './explorer.svelte'
import type { WorkHistory } from './history.svelte'
import { withBegunOil } from './own-oils'
import type { BatchChoices, Work } from './work'

/** What the last change by hand did: which oils gave way for which. */
export interface GaveWay {
  readonly oil: string
  readonly byPoints: number
  /** Empty where none was free to. */
  readonly gave: readonly string[]
}

/** The bar in hand: the maker's own, or while there is none the one that the brief found. */
export class BarDesk {
  readonly #work: WorkHistory
  readonly #explorer: Explorer
  #lastGave: (GaveWay & { readonly work: Work }) | undefined = $state.raw()

  constructor(work: WorkHistory, explorer: Explorer) {
    this.#work = work
    this.#explorer = explorer
  }

  /** The maker's own bar; undefined while none was begun. */
  readonly own: Bar | undefined = $derived.by(() => this.#work.now.bar)
  readonly name: string = $derived.by(() => this.#work.now.brief.name)
  readonly blend: Blend | undefined = $derived.by(() => this.#explorer.inHand)
  readonly parts: readonly Part[] = $derived(
    this.own?.parts ?? (this.blend ? partsOf(this.blend) : []),
  )
  readonly kept: Version | undefined = $derived(keptOf(this.own))
  /** Whether it is as no version has it. */
  readonly isDraft: boolean = $derived(this.own !== undefined && isDraft(this.own))
  readonly move: Move = $derived(this.own?.move ?? MOVES[1])

  readonly choices: BatchChoices = $derived.by(() => this.#work.now.batch)
  readonly grams: number = $derived(this.choices.oilGrams)
  readonly prices: Readonly<Record<string, number>> = $derived.by(() =>
    Object.fromEntries(
      this.#work.now.brief.shelf.flatMap((row) => {
        const price = priceOf(row)
        return price === undefined ? [] : [[row.oil, price]]
      }),
    ),
  )
  readonly unpriced: readonly string[] = $derived(
    Object.keys(this.blend ?? {}).filter((oil) => !(oil in this.prices)),
  )
  /** Every measure by id; cost only where all oils of the bar have a price. */
  readonly values: MeasureValues = $derived(this.valuesOf(this.blend))
  readonly flags: readonly Flag[] = $derived(
    this.blend ? flagsOf(this.blend, this.values, flagRules, library) : [],
  )

  /** What the last change by hand did, while nothing else has happened since. */
  readonly gave: GaveWay | undefined = $derived.by(() =>
    this.#lastGave?.work === this.#work.now ? this.#lastGave : undefined,
  )

  /** The batch that the choices make of a blend. */
  planOf(blend: Blend): BatchPlan {
    return this.planOfOrder(orderFor(normalised(blend), this.choices))
  }

  planOfOrder(order: BatchOrder): BatchPlan {
    return planBatch(order, library, batchFacts)
  }

  /** The values of a blend at the prices of the shelf. */
  valuesOf(blend: Blend | undefined): MeasureValues {
    return blend ? blendValues(library, this.prices, blend) : {}
  }

  /** The oil that gives way to another as things stand. */
  giverFor(oil: string): string | undefined {
    const { givesWay } = this.own ?? {}
    if (givesWay !== undefined && givesWay !== 'all' && this.#isFree(givesWay.oil, oil))
      return givesWay.oil
    return usualGiver(this.parts, oil)
  }

  #isFree(oil: string, changed: string): boolean {
    return oil !== changed && this.parts.some((part) => part.oil === oil && !part.locked)
  }

  setShare(oil: string, percent: number): void {
    const { givesWay } = this.own ?? {}
    const giver = this.giverFor(oil)
    const by = givesWay === 'all' ? 'all' : giver === undefined ? undefined : { oil: giver }
    this.#take(oil, withShare(this.parts, oil, percent, by), `bar share ${oil}`)
  }

  moveJoint(left: string, right: string, points: number): void {
    this.#take(left, withJointMoved(this.parts, left, right, points), `bar joint ${left} ${right}`)
  }

  #take(oil: string, changed: Changed, thing: string): void {
    const before = shareOf(this.parts, oil)
    if (changed.status === 'nothing free') {
      this.#lastGave = { oil, byPoints: 0, gave: [], work: this.#work.now }
      return
    }
    this.#edit((bar) => ({ ...bar, parts: changed.parts }), thing)
    const byPoints = shareOf(changed.parts, oil) - before
    this.#lastGave = { oil, byPoints, gave: changed.gave, work: this.#work.now }
  }

  /** Gives one oil another weight, g: the batch grows or shrinks by as much, and no other oil moves. */
  setGrams(oil: string, grams: number): void {
    const all = this.grams
    const changed = withWeights(this.parts, (part) =>
      part.oil === oil ? grams : fractionFromPercent(part.percent) * all,
    )
    if (!changed) return
    const { parts, grams: oilGrams } = changed
    this.#edit((bar) => ({ ...bar, parts }), `bar grams ${oil}`, sizedByOils(oilGrams))
  }

  /** The weight of all oils, g; shares stay. */
  setBatchGrams(oilGrams: number): void {
    this.#work.change(
      (work) => ({ ...work, batch: { ...work.batch, ...sizedByOils(oilGrams) } }),
      'bar size',
    )
  }

  setLocked(oil: string, locked: boolean): void {
    this.#edit((bar) => ({
      ...bar,
      parts: bar.parts.map((part) => (part.oil === oil ? { ...part, locked } : part)),
    }))
  }

  setGivesWay(givesWay: GivesWay | undefined): void {
    this.#edit((bar) => ({ ...bar, givesWay }))
  }

  setMove(move: Move): void {
    this.#edit((bar) => ({ ...bar, move }))
  }

  setPrice(oil: string, pricePerKg: number | undefined): void {
    this.#work.change(
      (work) => ({ ...work, brief: withRow(work.brief, oil, { pricePerKg }) }),
      `${oil} pricePerKg`,
    )
  }

  add(oil: string): void {
    this.#work.change((work) => withBar(work, withOilAdded(work.bar ?? this.#begun(), oil)))
  }

  /** Begins an oil of one's own as a copy of another, in the bar; gives its id. */
  beginOil(name: string, from: string): string {
    const { work, id } = withBegunOil(this.#work.now, name, from)
    this.#work.change(() => withBar(work, withOilAdded(work.bar ?? this.#begun(), id)))
    return id
  }

  /** Takes an oil out of the bar; it stays on the shelf. */
  takeOut(oil: string): void {
    this.#work.change((work) => {
      const bar = work.bar ?? this.#begun()
      return bar ? { ...work, bar: withOilOut(bar, oil) } : work
    })
  }

  /** Takes a blend as the next draft of the bar in hand. */
  take(blend: Blend): void {
    this.#work.change((work) => withTaken(work, blend))
  }

  /** Keeps the draft as the next version. */
  keep(): void {
    this.#edit(withKept)
  }

  /** Lets the draft go and takes the newest version in hand. */
  backToKept(): void {
    this.#edit(withVersionBack)
  }

  #edit(change: (bar: Bar) => Bar, thing?: string, batch?: Partial<BatchChoices>): void {
    this.#work.change((work) => {
      const bar = work.bar ?? this.#begun()
      if (!bar) return work
      const next = withBar(work, change(bar))
      return batch ? { ...next, batch: { ...next.batch, ...batch } } : next
    }, thing)
  }

  /** The bar that begins with the first change of a blend found. */
  #begun(): Bar | undefined {
    return this.blend && barOf(this.blend)
  }
}

function shareOf(parts: readonly Part[], oil: string): number {
  return parts.find((part) => part.oil === oil)?.percent ?? 0
}
