import { buyingProgram, sameSupplier, type Wanted } from './buying-program'
import { type BoughtPacks, coverOf, covers } from './cover'
import { grossNeed } from './landed'
import type { MixedOutcome, MixedProgram, SolveMixed } from './mixed'
import { roundMinor } from './money'
import type { SupplierTerms } from './offer'
import { betterSize, type BetterSize } from './better-size'
import type { Pricing } from './run-cost'
import { type NoSupply, suppliesOf } from './supply'

/** What the batches need of one material, and what is there. Amounts in g or pieces. */
export interface BuyingNeed {
  readonly material: string
  readonly need: number
  readonly stock?: number | undefined
}

/** One material of a buying list. Amounts in g or pieces, money in minor units. */
export interface BuyingLine {
  readonly material: string
  readonly name: string
  readonly need: number
  readonly stock: number
  readonly packs: readonly BoughtPacks[]
  readonly minor: number
  /** After the batches, with what was there. */
  readonly leftover: number
  /** The part of it that is bought now, at the average price paid. */
  readonly leftoverMinor: number
  readonly better: BetterSize | null
}

/** One supplier's order. */
export interface SupplierOrder {
  readonly supplier: string
  readonly goodsMinor: number
  readonly freightMinor: number
  /** What lacks for free freight; null where it is free or never is. */
  readonly toFreeMinor: number | null
}

/** What to buy. */
export interface BuyingList {
  readonly status: 'ready'
  readonly lines: readonly BuyingLine[]
  readonly orders: readonly SupplierOrder[]
  readonly goodsMinor: number
  readonly freightMinor: number
  readonly totalMinor: number
  readonly leftoverMinor: number
  /** Whether nothing cheaper exists, or time ran out first. */
  readonly proved: boolean
  /** What can't be bought by the book. */
  readonly missing: readonly NoSupply[]
}

/** A list, or that none was found. */
export type BuyingAnswer = BuyingList | { readonly status: 'undecided' }

/** Money is whole, so what is within half a minor unit of the best is the best. */
export const GAP_MINOR = 0.5

/** A buying list to be solved: the program, and how its outcome is read. */
export interface BuyingQuestion {
  /** Null where nothing is to be bought. */
  readonly program: MixedProgram | null
  readonly read: (outcome: MixedOutcome) => BuyingAnswer
}

/**
 * The cheapest packs over all suppliers for the needs less what is there, freight of every order and price
 * steps taken in. HiGHS solves it, and not our own branch and bound: materials hang together only by
 * freight, and without cutting planes a search multiplies over them (12 materials of 9 packs each: 0.3 s
 * against none in 20 s). The money is reckoned anew from the packs; reading an answer that leaves a need
 * uncovered throws. To reach a sum that a supplier asks for, more is bought of what is needed, and nothing
 * else.
 */
export function askBuying(
  needs: readonly BuyingNeed[],
  { book, materialOf, on }: Pricing,
  wastePercent: number,
): BuyingQuestion {
  const asked = needs.map(({ material, need, stock = 0 }) => {
    const gross = grossNeed(need, wastePercent)
    const { supplies, missing } = suppliesOf(material, book, materialOf, on)
    return { material, need: gross, stock, amount: Math.max(0, gross - stock), supplies, missing }
  })
  const wanted = asked.filter(({ amount, supplies }) => amount > 0 && supplies.length > 0)
  const { program, packs } = buyingProgram(wanted, book.suppliers)
  const read = (outcome: MixedOutcome): BuyingAnswer => {
    if (outcome.status === 'undecided') return outcome
    if (outcome.status === 'infeasible')
      throw new Error('Packs that can be bought can cover any need.')
    const lines = asked.map((one): BuyingLine => {
      const at = wanted.indexOf(one)
      const counts = one.supplies.map((_, offer) =>
        packs
          .filter((pack) => pack.wanted === at && pack.offer === offer)
          .reduce((sum, pack) => sum + Math.round(outcome.point[pack.at] ?? 0), 0),
      )
      return lineOf(one, counts, materialOf(one.material)?.name ?? one.material)
    })
    const missing = asked.flatMap((one) => (one.amount > 0 ? one.missing : []))
    return listOf(lines, ordersOf(lines, book.suppliers), outcome.proved, missing)
  }
  return { program: wanted.length > 0 ? program : null, read }
}

/** The buying list at once, by a solver at hand; `seconds` limits its search. */
export function buyingList(
  needs: readonly BuyingNeed[],
  pricing: Pricing,
  { wastePercent, seconds }: { readonly wastePercent: number; readonly seconds: number },
  solve: SolveMixed,
): BuyingAnswer {
  const { program, read } = askBuying(needs, pricing, wastePercent)
  return read(program ? solve(program, GAP_MINOR, seconds) : NOTHING_TO_BUY)
}

function listOf(
  lines: readonly BuyingLine[],
  orders: readonly SupplierOrder[],
  proved: boolean,
  missing: readonly NoSupply[],
): BuyingList {
  const goodsMinor = sumOf(orders, ({ goodsMinor: minor }) => minor)
  const freightMinor = sumOf(orders, ({ freightMinor: minor }) => minor)
  return {
    status: 'ready',
    lines,
    orders,
    goodsMinor,
    freightMinor,
    totalMinor: goodsMinor + freightMinor,
    leftoverMinor: sumOf(lines, ({ leftoverMinor: minor }) => minor),
    proved,
    missing,
  }
}

/** What a solver would say where nothing is to be bought. */
export const NOTHING_TO_BUY: MixedOutcome = { status: 'found', point: [], proved: true }

function lineOf(
  {
    material,
    need,
    stock,
    amount,
    supplies,
  }: Wanted & { readonly need: number; readonly stock: number },
  counts: readonly number[],
  name: string,
): BuyingLine {
  const cover = coverOf(supplies, counts, true)
  if (supplies.length > 0 && !covers(cover.amount, amount))
    throw new Error(`The list leaves ${name} short: ${cover.amount} of ${amount}.`)
  const spare = Math.max(0, cover.amount - amount)
  return {
    material,
    name,
    need,
    stock,
    packs: cover.bought,
    minor: cover.minor,
    leftover: Math.max(0, stock + cover.amount - need),
    leftoverMinor: cover.amount > 0 ? roundMinor((cover.minor * spare) / cover.amount) : 0,
    better: betterSize(supplies, cover, amount),
  }
}

/** The orders by supplier, with the freight that their terms ask for. */
function ordersOf(lines: readonly BuyingLine[], terms: readonly SupplierTerms[]): SupplierOrder[] {
  const goods = new Map<string, { supplier: string; minor: number }>()
  for (const { supply, minor } of lines.flatMap(({ packs }) => packs)) {
    const { supplier } = supply.offer
    const known = [...goods.values()].find((one) => sameSupplier(one.supplier, supplier))
    goods.set(known?.supplier ?? supplier, {
      supplier: known?.supplier ?? supplier,
      minor: (known?.minor ?? 0) + minor,
    })
  }
  return [...goods.values()].map(({ supplier, minor }) => {
    const own = terms.find((one) => sameSupplier(one.supplier, supplier))
    const freight = own?.freightMinor ?? 0
    const lacks = (own?.freeFromMinor ?? Infinity) - minor
    const free = lacks <= 0
    return {
      supplier,
      goodsMinor: minor,
      freightMinor: free ? 0 : freight,
      toFreeMinor: !free && freight > 0 && lacks < Infinity ? lacks : null,
    }
  })
}

function sumOf<T>(items: readonly T[], value: (item: T) => number): number {
  return items.reduce((sum, item) => sum + value(item), 0)
}
