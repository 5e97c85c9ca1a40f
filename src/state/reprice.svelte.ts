import { batchFacts } from '../data/batch-facts'
import { flagRules } from '../data/flags'
import { library } from './library'
import { materialsWith } from '../data/price-materials'
import type { BatchOrder } from '../domain/batch/order/order'
import { planBatch } from '../domain/batch/result/plan'
import { type Blend, normalised } from '../domain/blend/blend'
import type { Problem } from '../domain/blend/check-blend'
import { barMeasures } from '../domain/blend/compare'
import { COST } from '../domain/blend/measure'
import { blendValues } from '../domain/blend/values'
import { spreadsIn } from '../domain/cost/price-history'
import type { PriceBook } from '../domain/cost/offer'
import { type Brief, pricesOf } from '../domain/optimise/brief/brief'
import type { PriceWalkAnswer, PriceWalkOrder } from '../domain/optimise/reprice/price-walk'
import type { TogetherAnswer, TogetherOrder } from '../domain/optimise/reprice/together'
import { oilWeight } from '../domain/replace/batch-change'
import {
  type GoneAnswer,
  type GoneOrder,
  goneProblems,
  goneQuestion,
  replacementsFrom,
} from '../domain/replace/gone'
import { fractionFromPercent, percentFromFraction } from '../domain/units'
import type { SolverClient } from '../worker/client'
import { orderFor } from './batch-choices'
import type { Bench } from './bench.svelte'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'
import type { WorkHistory } from './history.svelte'

/** What may change: one price, many at once, or whether an oil can be had at all. */
export type ChangeKind = 'one' | 'together' | 'gone'

/** The formula that is held: the cheapest today, the blend in hand, or a candidate of the Bench by its id. */
export type Holding = 'best' | 'hand' | `candidate ${string}`

/** Taken for oils of whose price there is no history, percent a year: an assumption, to be changed. */
const ASSUMED_SPREAD_PERCENT = 25

/** Where the spread of an oil's price comes from. */
export type SpreadSource = 'typed' | 'history' | 'assumed'

/** How widely an oil's price may move. */
export interface OilSpread {
  readonly oil: string
  /** Standard deviation of the log of a year's change, in percent. */
  readonly percent: number
  readonly source: SpreadSource
}

/** A question with its brief. */
interface Asked<T> {
  readonly brief: Brief
  readonly order: T
}

/** An answer with what was asked. */
export interface Told<O, A> {
  readonly order: O
  readonly answer: A
}

/** What changes of prices and oils do to the formula: what is asked, and what came of it. */
export class RepriceDesk {
  kind: ChangeKind = $state('one')
  /** How far one price moves, percent of what it is. */
  fromPercent = $state(-50)
  toPercent = $state(200)
  months = $state(12)
  /** How alike prices move, percent: 0 each for itself, 100 all at once. */
  alikePercent = $state(30)
  seed = $state(1)
  barsPerYear = $state(1000)
  /** Whether the whole library may stand in for an oil, or only the shelf. */
  wholeLibrary = $state(false)
  walk: Told<PriceWalkOrder, PriceWalkAnswer> | undefined = $state.raw()
  together: Told<TogetherOrder, TogetherAnswer> | undefined = $state.raw()
  gone: Told<GoneOrder, GoneAnswer> | undefined = $state.raw()
  failure: string | undefined = $state()
  #oil: string | undefined = $state()
  #holding: Holding = $state('hand')
  /** Undefined until somebody says. */
  #keepsBar: boolean | undefined = $state()
  #typed: Readonly<Record<string, number>> = $state.raw({})

  readonly #walks: Latest<Asked<PriceWalkOrder>, PriceWalkAnswer>
  readonly #together: Latest<Asked<TogetherOrder>, TogetherAnswer>
  readonly #gone: Latest<Asked<GoneOrder>, GoneAnswer>

  constructor(
    private readonly work: WorkHistory,
    private readonly explorer: Explorer,
    private readonly bench: Bench,
    client: SolverClient,
  ) {
    const failed = (_: unknown, error: unknown) => {
      this.failure = error instanceof Error ? error.message : String(error)
    }
    this.#walks = new Latest<Asked<PriceWalkOrder>, PriceWalkAnswer>(
      ({ brief, order }, signal) =>
        client.ask((service) => service.priceWalk(brief, order), { signal }),
      ({ order }, answer) => (this.walk = this.#told(order, answer)),
      failed,
    )
    this.#together = new Latest<Asked<TogetherOrder>, TogetherAnswer>(
      ({ brief, order }, signal) =>
        client.ask((service) => service.pricesTogether(brief, order), { signal }),
      ({ order }, answer) => (this.together = this.#told(order, answer)),
      failed,
    )
    this.#gone = new Latest<Asked<GoneOrder>, GoneAnswer>(
      async ({ brief, order }, signal) => {
        const problems = goneProblems(order)
        if (problems.length > 0) return { status: 'invalid', problems }
        const question = goneQuestion(order)
        const study = await client.ask((service) => service.oneStep(brief, question), { signal })
        return replacementsFrom(study, order, library, batchFacts, flagRules)
      },
      ({ order }, answer) => (this.gone = this.#told(order, answer)),
      failed,
    )
  }

  /** The brief's name. */
  get name(): string {
    return this.explorer.draft.name
  }

  /** The brief as it is asked here: after the least cost within its wishes, whatever its own goal. */
  readonly brief: Brief = $derived.by(() => ({
    ...this.explorer.brief,
    goal: { minimise: COST },
  }))
  /** Whether the brief's own goal is another. */
  readonly hasOtherGoal: boolean = $derived.by(() => {
    const { goal } = this.explorer.brief
    return !('minimise' in goal && goal.minimise === COST)
  })
  readonly holding: Holding = $derived(this.#standing(this.#holding))
  /** The formula held; undefined stands for the cheapest today. */
  readonly held: Blend | undefined = $derived.by(() => {
    if (this.holding === 'best') return undefined
    if (this.holding === 'hand') return this.explorer.inHand
    return this.bench.sheet.candidates.find(({ id }) => `candidate ${id}` === this.holding)?.blend
  })
  /** Whether the bar held stays the bar that people know: asked for, or where no wish says what a bar must be. */
  readonly keepsBar: boolean = $derived.by(() => this.#keepsBar ?? !this.#hasWishes())
  /** The brief with every measure of the bar held within a tie that no wish speaks of. */
  readonly keepingBrief: Brief = $derived.by(() => {
    const { held, brief } = this
    if (!held || !this.keepsBar) return brief
    const values = blendValues(library, {}, normalised(held))
    const within = barMeasures(library.measures).flatMap(({ id, tie }) => {
      const value = values[id]
      return value === undefined ? [] : [[id, { min: value - tie, max: value + tie }] as const]
    })
    return { ...brief, measures: { ...Object.fromEntries(within), ...brief.measures } }
  })
  /** Oils whose price may move, or that may go: of the formula held first, by share. */
  readonly oils: readonly string[] = $derived.by(() => {
    const shares = this.held ?? this.explorer.inHand ?? {}
    const shelf = Object.keys(this.brief.oils)
    return shelf.toSorted((a, b) => (shares[b] ?? 0) - (shares[a] ?? 0))
  })
  readonly oil: string = $derived(
    this.#oil !== undefined && this.oils.includes(this.#oil) ? this.#oil : (this.oils[0] ?? ''),
  )
  readonly book: PriceBook | undefined = $derived.by(() => this.work.now.ledger?.book)
  readonly spreads: readonly OilSpread[] = $derived.by(() => {
    const { book, oils } = this
    const shown = book ? spreadsIn(book, oils, materialsWith(book.materials)) : {}
    return oils.map((oil): OilSpread => {
      const [typed, history] = [this.#typed[oil], shown[oil]]
      if (typed !== undefined) return { oil, percent: typed, source: 'typed' }
      return history === undefined
        ? { oil, percent: ASSUMED_SPREAD_PERCENT, source: 'assumed' }
        : { oil, percent: percentFromFraction(history), source: 'history' }
    })
  })
  readonly #batch: BatchOrder | undefined = $derived.by(() =>
    this.held ? orderFor(this.held, this.work.now.batch) : undefined,
  )
  /** Oils in one bar as poured, g. */
  readonly oilGramsPerBar: number = $derived.by(() => {
    const plan = this.#batch && planBatch(this.#batch, library, batchFacts)
    if (plan?.status !== 'ready') return this.bench.barGrams
    return (this.bench.barGrams * oilWeight(plan)) / plan.totalGrams
  })

  chooseOil(oil: string): void {
    this.#oil = oil
  }

  hold(holding: Holding): void {
    this.#holding = holding
  }

  keepBar(keeps: boolean): void {
    this.#keepsBar = keeps
  }

  #hasWishes(): boolean {
    return barMeasures(library.measures).some(({ id }) => {
      const { min, max } = this.explorer.brief.measures[id] ?? {}
      return min !== undefined || max !== undefined
    })
  }

  spread(oil: string, percent: number): void {
    this.#typed = { ...this.#typed, [oil]: percent }
  }

  /** Puts a formula on the Bench. */
  put(blend: Blend, name: string, from: string): void {
    this.bench.add([{ blend, name, from }])
  }

  holds(blend: Blend): boolean {
    return this.bench.holds(blend)
  }

  /** Sends for the answer to what is on screen. */
  ask(): void {
    const { kind, brief, keepingBrief } = this
    if (Object.keys(brief.oils).length === 0) return
    if (kind === 'one') this.#walks.put({ brief: keepingBrief, order: this.#walkOrder() })
    else if (kind === 'together')
      this.#together.put({ brief: keepingBrief, order: this.#togetherOrder() })
    else {
      const order = this.#goneOrder()
      if (order) this.#gone.put({ brief, order })
    }
  }

  stop(): void {
    for (const questions of [this.#walks, this.#together, this.#gone]) questions.stop()
  }

  #walkOrder(): PriceWalkOrder {
    return {
      oil: this.oil,
      fromChange: fractionFromPercent(this.fromPercent),
      toChange: fractionFromPercent(this.toPercent),
      hold: this.held,
    }
  }

  #togetherOrder(): TogetherOrder {
    const spreads = this.spreads.map(({ oil, percent }) => [oil, fractionFromPercent(percent)])
    return {
      spreads: Object.fromEntries(spreads) as Record<string, number>,
      months: this.months,
      correlation: fractionFromPercent(this.alikePercent),
      count: DRAWS,
      seed: this.seed,
      hold: this.held,
    }
  }

  #goneOrder(): GoneOrder | undefined {
    const { held, brief } = this
    const batch = this.#batch
    if (!held || !batch) return undefined
    const shelf = Object.keys(brief.oils)
    const banned = this.explorer.draft.shelf.filter((row) => row.banned).map((row) => row.oil)
    return {
      oil: this.oil,
      base: held,
      prices: { ...pricesOf(brief), ...this.bench.prices },
      candidates: this.wholeLibrary
        ? [...library.oils.keys()].filter((oil) => !banned.includes(oil))
        : shelf,
      tolerances: ONE_TIE,
      batch,
      oilGramsPerBar: this.oilGramsPerBar,
      barsPerYear: this.barsPerYear,
      most: MOST_REPLACEMENTS,
    }
  }

  #told<O, A>(order: O, answer: A): Told<O, A> {
    this.failure = undefined
    return { order, answer }
  }

  /** What is held, if it is still there. */
  #standing(holding: Holding): Holding {
    const { candidates } = this.bench.sheet
    if (candidates.some(({ id }) => `candidate ${id}` === holding)) return holding
    return holding === 'best' || !this.explorer.inHand ? 'best' : 'hand'
  }
}

/** Draws: shares of wins stand to about 1.5 points then. */
const DRAWS = 1000

/** Replacements to give, of single oils and of pairs each. */
const MOST_REPLACEMENTS = 5

/** One tie on every measure of the bar. */
const ONE_TIE: Readonly<Record<string, number>> = Object.fromEntries(
  barMeasures(library.measures).map(({ id, tie }) => [id, tie]),
)

/** What is wrong, in a sentence. */
export function problemsInWords(problems: readonly Problem[]): string {
  return problems.map(({ message }) => message).join(' ')
}
