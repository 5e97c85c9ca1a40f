import { batchFacts } from '../data/batch-facts'
import { library } from './library'
import { materialsWith } from '../data/price-materials'
import { soapKindOf } from '../domain/batch/order/soap-kind'
import { planBatch } from '../domain/batch/result/plan'
import type { BatchOrder } from '../domain/batch/order/order'
import { UNTESTED } from '../domain/batch/release/release'
import { checkBook } from '../domain/cost/check-book'
import { checkCostChoices } from '../domain/cost/check-choices'
import { checkQuote } from '../domain/cost/check-quote'
import type { BuyingNeed } from '../domain/cost/buying'
import { landedCost } from '../domain/cost/landed'
import { amountFrom } from '../domain/cost/money'
import { currentOffers } from '../domain/cost/price-age'
import { quoteOf } from '../domain/cost/quote'
import { runCost, type Pricing } from '../domain/cost/run-cost'
import { suppliesOf } from '../domain/cost/supply'
import { waterfallOf } from '../domain/cost/waterfall'
import { GRAMS_PER_KG } from '../domain/units'
import { batchRelease, releaseSaid } from './batch-release'
import type { WorkHistory } from './history.svelte'
import { type Ledger, ledgerOf, withLedger } from './ledger'
import { buyingNeeds } from './ledger-runs'

/** Prices, costs and quotes of the batch in hand. */
export class LedgerDesk {
  readonly #work: WorkHistory
  readonly #order: () => BatchOrder | undefined
  /** The day by the clock of this place, YYYY-MM-DD. */
  today: string = $state('')

  constructor(work: WorkHistory, order: () => BatchOrder | undefined, today: string) {
    this.#work = work
    this.#order = order
    this.today = today
  }

  readonly ledger: Ledger = $derived.by(() => ledgerOf(this.#work.now))
  readonly book = $derived(this.ledger.book)
  readonly materialOf = $derived(materialsWith(this.book.materials))
  readonly pricing: Pricing = $derived.by(() => ({
    book: this.book,
    materialOf: this.materialOf,
    on: this.today,
  }))
  readonly current = $derived.by(() => currentOffers(this.book, this.today))
  readonly problems = $derived.by(() => [
    ...checkBook(this.book, this.materialOf, 'book'),
    ...checkCostChoices(this.ledger.work, 'work'),
  ])

  /** Whether the batch says by itself how it is cut. */
  readonly cutByBatch = $derived.by(() => {
    const order = this.#order()
    return Boolean(order?.cut ?? order?.bars ?? (order?.mould && 'cavities' in order.mould))
  })
  readonly plan = $derived.by(() => {
    const order = this.#order()
    if (!order) return undefined
    const asItIs = this.cutByBatch || soapKindOf(order) === 'paste'
    const cut = asItIs ? order.cut : { barGrams: this.ledger.barGrams }
    return planBatch({ ...order, cut }, library, batchFacts)
  })
  readonly ready = $derived(this.plan?.status === 'ready' ? this.plan : undefined)

  readonly cost = $derived.by(() =>
    this.ready && this.problems.length === 0
      ? runCost(this.ready, this.ledger.work, this.pricing, 1)
      : undefined,
  )
  readonly waterfall = $derived(
    this.cost?.status === 'ready' ? waterfallOf(this.cost.cost, this.ledger.unit) : undefined,
  )

  readonly quoteChoices = $derived.by(() => ({
    ...this.ledger.quote,
    quotedOn: this.ledger.quote.quotedOn ?? this.today,
  }))
  readonly quoteProblems = $derived(checkQuote(this.quoteChoices, 'quote'))
  /** Whether the batch in hand has passed a test for free alkali. */
  readonly release = $derived.by(() => {
    const order = this.#order()
    const plan = order && planBatch(order, library, batchFacts)
    if (!order || plan?.status !== 'ready') return UNTESTED
    return releaseSaid(batchRelease(order, plan, this.#work.now.batch))
  })
  readonly quote = $derived.by(() =>
    this.ready && this.problems.length === 0 && this.quoteProblems.length === 0
      ? quoteOf(this.ready, this.ledger.work, this.quoteChoices, this.pricing, this.release)
      : undefined,
  )

  readonly needs: readonly BuyingNeed[] = $derived.by(() => buyingNeeds(this.ledger, this.ready))

  /** Changes the Ledger; changes of one `thing` that follow closely are one step of undo. */
  change(change: (ledger: Ledger) => Ledger, thing?: string): void {
    this.#work.change((work) => withLedger(work, change), thing && `ledger ${thing}`)
  }

  /** The marginal price per kg of every oil of the brief's shelf at what the batch needs, in money. */
  pricesForBrief(): Readonly<Record<string, number>> {
    const { brief, batch } = this.#work.now
    return Object.fromEntries(
      brief.shelf.flatMap(({ oil }) => {
        const own = this.needs.find(({ material }) => material === oil)
        const { supplies } = suppliesOf(oil, this.book, this.materialOf, this.today)
        const need = own?.need ?? batch.oilGrams / brief.shelf.length
        const landed = landedCost(supplies, need, {
          wastePercent: this.ledger.work.wastePercent,
          leftovers: 'valued',
        })
        if (!landed) return []
        const perKg = amountFrom(landed.marginalPerUnit * GRAMS_PER_KG, this.book.currency)
        return [[oil, Number(perKg.toFixed(PRICE_DECIMALS))]]
      }),
    )
  }

  /** Has the brief reckon with the book's prices; packs typed on the shelf give way to them. */
  useInBrief(): void {
    const prices = this.pricesForBrief()
    this.#work.change((work) => ({
      ...work,
      brief: {
        ...work.brief,
        currency: this.book.currency,
        shelf: work.brief.shelf.map((row) => {
          const pricePerKg = prices[row.oil]
          return pricePerKg === undefined ? row : { ...row, pricePerKg, pack: undefined }
        }),
      },
    }))
  }
}

/** Decimals of a price per kg in a brief. */
const PRICE_DECIMALS = 4
