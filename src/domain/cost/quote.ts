import { daysAfter } from '../batch/order/dates'
import type { ReadyPlan } from '../batch/result/plan'
import { type Release, UNTESTED } from '../batch/release/release'
import { WHOLE_PERCENT } from '../units'
import { sameSupplier } from './buying-program'
import { roundMinor } from './money'
import { priceAge } from './price-age'
import {
  type Aim,
  aimedPrice,
  marginPercent,
  markupPercent,
  type PricePoints,
  upToPoint,
} from './price-points'
import { type CostChoices, type Pricing, runCost, type RunCost } from './run-cost'
import { NOISE_COUNT } from '../noise'

/** What a maker settles in a quote. Money in minor units. */
export interface QuoteChoices {
  /** Numbers of bars to quote for. */
  readonly quantities: readonly number[]
  readonly aim: Aim
  readonly points: PricePoints
  /** Of one order, however large: papers, delivery, samples. */
  readonly orderMinor: number
  /** Whether bars of the last batch beyond the order are worth their cost, or are charged to it. */
  readonly surplus: 'stock' | 'charged'
  /** Tax on the sale, percent. */
  readonly taxPercent: number
  /** What the shop earns, for a retail price; none where left out. */
  readonly retail?: { readonly aim: Aim; readonly points: PricePoints } | undefined
  /** No order below so many bars. */
  readonly leastBars: number
  readonly batchesPerWeek: number
  readonly packingDays: number
  /** The day of the quote, YYYY-MM-DD. */
  readonly quotedOn: string
  readonly validDays: number
}

/** One quantity of a quote. Money in minor units, without tax where not said. */
export interface QuoteTier {
  readonly quantity: number
  readonly batches: number
  /** Bars that the batches give beyond the quantity. */
  readonly surplusBars: number
  readonly costMinor: number
  readonly costPerBar: number
  readonly priceMinor: number
  readonly marginPercent: number
  readonly markupPercent: number
  readonly netMinor: number
  readonly taxMinor: number
  readonly grossMinor: number
  /** Of one bar in the shop, with tax; null where none was asked for. */
  readonly retailMinor: number | null
  readonly shopMarginPercent: number | null
  /** From the order until the bars are cured and packed, days. */
  readonly leadDays: number
  readonly readyOn: string
  /** At this price every quantity from here to this one pays its cost; null where this one does not. */
  readonly breakEven: number | null
  /** At this price every quantity from here to this one earns the aim. */
  readonly aimKeptFrom: number | null
}

/** A quote in figures. */
export interface Quote {
  readonly quotedOn: string
  readonly validUntil: string
  readonly taxPercent: number
  readonly tiers: readonly QuoteTier[]
  /** Below it the dearest price of the quote does not earn the aim, or the maker takes no order. */
  readonly minimumRun: number
  readonly barsPerBatch: number
  readonly cureDays: number
  readonly barGrams: number
  /** What to know before it is sent: prices that age. */
  readonly notes: readonly string[]
  /** Whether the batch has passed a test for free alkali; until then the quote says *not released*. */
  readonly release: Release
}

/** A quote, or why none is given. */
export type QuoteAnswer =
  | { readonly status: 'ready'; readonly quote: Quote }
  | { readonly status: 'refused'; readonly reasons: readonly string[] }

const DAYS_PER_WEEK = 7

/** Most batches that one quantity may take. */
const MOST_BATCHES = 400

/** A quote rests on what must be bought: packs are not parted, though leftovers may be worth their price. */
function asBought(costs: CostChoices): CostChoices {
  return costs.charge === 'proRata' ? { ...costs, charge: 'boughtLessLeftovers' } : costs
}

/**
 * Prices for some quantities of a batch's bars, each from what must be bought and done for it in whole
 * batches. Refused where anything has no price: a quote below cost is worse than none.
 * It says *not released* until the batch has passed a test for free alkali, also where none is handed over.
 */
export function quoteOf(
  plan: ReadyPlan,
  work: CostChoices,
  choices: QuoteChoices,
  pricing: Pricing,
  release: Release = UNTESTED,
): QuoteAnswer {
  const costs = asBought(work)
  const first = runCost(plan, costs, pricing, 1)
  if (first.status !== 'ready') return { status: 'refused', reasons: [first.message] }
  const { cure } = plan
  if (!cure)
    return { status: 'refused', reasons: ['A paste has no cure and no bars to quote for.'] }
  if (first.cost.missing.length > 0)
    return { status: 'refused', reasons: first.cost.missing.map(({ message }) => message) }
  const goodBars = first.cost.yield.goodBars
  const largest = Math.max(...choices.quantities)
  if (!(goodBars > 0) || batchesFor(largest, goodBars) > MOST_BATCHES)
    return {
      status: 'refused',
      reasons: [
        `${largest} bars take more than ${MOST_BATCHES} batches. Quote for fewer, or make larger batches.`,
      ],
    }
  const runs = new Runs(plan, costs, pricing, choices, goodBars)
  const tiers = choices.quantities.map((quantity) => tierOf(quantity, runs, choices, cure.days))
  const dearest = tiers.reduce((a, b) => (b.priceMinor > a.priceMinor ? b : a))
  return {
    status: 'ready',
    quote: {
      quotedOn: choices.quotedOn,
      validUntil: daysAfter(choices.quotedOn, choices.validDays),
      taxPercent: choices.taxPercent,
      tiers,
      minimumRun: Math.max(choices.leastBars, dearest.aimKeptFrom ?? dearest.quantity),
      barsPerBatch: Math.floor(goodBars + NOISE_COUNT),
      cureDays: cure.days,
      barGrams: first.cost.yield.curedG,
      notes: ageNotes(first.cost, choices.quotedOn),
      release,
    },
  }
}

function batchesFor(quantity: number, goodBars: number): number {
  return Math.max(1, Math.ceil(quantity / goodBars - NOISE_COUNT))
}

/** What quantities cost; runs of the same number of batches are reckoned once. */
class Runs {
  readonly #byBatches = new Map<number, RunCost>()

  constructor(
    private readonly plan: ReadyPlan,
    private readonly costs: CostChoices,
    readonly pricing: Pricing,
    private readonly choices: QuoteChoices,
    readonly goodBars: number,
  ) {}

  run(quantity: number): RunCost {
    const batches = batchesFor(quantity, this.goodBars)
    const before = this.#byBatches.get(batches)
    if (before) return before
    const answer = runCost(this.plan, this.costs, this.pricing, batches)
    if (answer.status !== 'ready') throw new Error(answer.message)
    this.#byBatches.set(batches, answer.cost)
    return answer.cost
  }

  /** Of so many bars as one order, minor units, rounded. */
  costMinor(quantity: number): number {
    const { totalMinor, yield: run } = this.run(quantity)
    const part = this.choices.surplus === 'stock' ? Math.min(1, quantity / run.goodBars) : 1
    return roundMinor(totalMinor * part + this.choices.orderMinor)
  }

  /** The lowest quantity from which on, up to this one, a price always gives so much over the cost. */
  keptFrom(
    quantity: number,
    enough: (quantity: number, costMinor: number) => boolean,
  ): number | null {
    let from: number | null = null
    for (let bars = quantity; bars >= 1 && enough(bars, this.costMinor(bars)); bars--) from = bars
    return from
  }
}

function tierOf(quantity: number, runs: Runs, choices: QuoteChoices, cureDays: number): QuoteTier {
  const { aim, points, taxPercent, quotedOn, packingDays, batchesPerWeek } = choices
  const run = runs.run(quantity)
  const costMinor = runs.costMinor(quantity)
  const priceMinor = upToPoint(aimedPrice(costMinor / quantity, aim), points)
  const netMinor = priceMinor * quantity
  const taxMinor = roundMinor((netMinor * taxPercent) / WHOLE_PERCENT)
  const { batches, goodBars } = run.yield
  const makingDays = Math.ceil((batches / batchesPerWeek) * DAYS_PER_WEEK)
  const leadDays = deliveryDays(run, runs.pricing) + makingDays + cureDays + packingDays
  return {
    quantity,
    batches,
    surplusBars: Math.max(0, Math.floor(goodBars - quantity + NOISE_COUNT)),
    costMinor,
    costPerBar: costMinor / quantity,
    priceMinor,
    marginPercent: marginPercent(netMinor, costMinor),
    markupPercent: markupPercent(netMinor, costMinor),
    netMinor,
    taxMinor,
    grossMinor: netMinor + taxMinor,
    ...retailOf(priceMinor, choices),
    leadDays,
    readyOn: daysAfter(quotedOn, leadDays),
    breakEven: runs.keptFrom(quantity, (bars, cost) => priceMinor * bars >= cost),
    aimKeptFrom: runs.keptFrom(
      quantity,
      (bars, cost) => priceMinor * bars >= aimedPrice(cost, aim),
    ),
  }
}

function retailOf(priceMinor: number, { retail, taxPercent }: QuoteChoices) {
  if (!retail) return { retailMinor: null, shopMarginPercent: null }
  const withTax = 1 + taxPercent / WHOLE_PERCENT
  const retailMinor = upToPoint(aimedPrice(priceMinor, retail.aim) * withTax, retail.points)
  return { retailMinor, shopMarginPercent: marginPercent(retailMinor / withTax, priceMinor) }
}

/** Until the slowest supplier of the run has delivered. */
function deliveryDays({ lines }: RunCost, { book }: Pricing): number {
  const suppliers = lines.flatMap(({ landed }) =>
    (landed?.cover.bought ?? []).map(({ supply }) => supply.offer.supplier),
  )
  return Math.max(
    0,
    ...book.suppliers
      .filter((terms) => suppliers.some((one) => sameSupplier(one, terms.supplier)))
      .map((terms) => terms.deliveryDays ?? 0),
  )
}

function ageNotes({ lines }: RunCost, on: string): string[] {
  const aged = lines.flatMap(({ name, landed }) =>
    (landed?.cover.bought ?? []).flatMap(({ supply }) => {
      const { days, age } = priceAge(supply.offer, on)
      return age === 'fresh'
        ? []
        : [`The price of ${name} is ${days} days old. Ask ${supply.offer.supplier} anew.`]
    }),
  )
  return [...new Set(aged)]
}
