import { type Bounds, rowOfTerms } from '../lp/program'
import { type StepChoice, stepChoices } from './cover'
import type { MixedProgram } from './mixed'
import type { SupplierTerms } from './offer'
import type { Supply } from './supply'
import { NOISE_PART } from '../noise'

/** One material to be covered. Amounts in g or pieces. */
export interface Wanted {
  readonly material: string
  readonly amount: number
  readonly supplies: readonly Supply[]
}

/** A program for the buying list, and where in it the packs stand. */
export interface BuyingProgram {
  readonly program: MixedProgram
  /** For every variable that counts packs: of which material and offer. */
  readonly packs: readonly {
    readonly wanted: number
    readonly offer: number
    readonly at: number
  }[]
}

/** A step of an offer with its two variables: packs, and whether it is used. */
interface PlacedChoice {
  readonly wanted: number
  readonly supplier: string
  readonly choice: StepChoice
  readonly packs: number
  readonly used: number
}

/** A supplier's three variables: an order is sent, its freight is paid, it goes free. */
interface PlacedSupplier {
  readonly terms: SupplierTerms
  readonly paid: number
  readonly free: number
}

/** A row by what is in it: pairs of a variable and its coefficient. */
interface Row extends Bounds {
  readonly terms: readonly (readonly [at: number, coefficient: number])[]
}

/** Makes a variable from 0 to a most, at a cost a unit; answers its place. */
type Put = (upper: number, cost: number) => number

const NO_LIMIT = Infinity

/**
 * The cheapest packs for several needs at once, as a mixed-integer program. For every step of every offer
 * there is a number of packs n and a 0-1 variable u of its use: least·u ≤ n ≤ most·u, one step an offer.
 * For every supplier with terms an order goes with freight paid (f) or free (g), or not at all:
 *
 *     minimise  Σ price·n + Σ freight·f
 *     Σ amount·n ≥ need        for every material, as a part of the need
 *     u ≤ f + g ≤ 1            for every step of the supplier
 *     goods ≥ freeFrom·g,  goods ≥ leastOrder·(f + g)
 *
 * with goods = Σ price·n over the supplier's packs. Packs of a supplier who sends free above a sum may be
 * worth buying beyond the need; `most` leaves room for that.
 */
export function buyingProgram(
  wanted: readonly Wanted[],
  suppliers: readonly SupplierTerms[],
): BuyingProgram {
  const [cost, upper]: [number[], number[]] = [[], []]
  const put: Put = (most, costEach) => {
    upper.push(most)
    return cost.push(costEach) - 1
  }
  const choices = placeChoices(wanted, suppliers, put)
  const asked = suppliers
    .filter(({ supplier }) => choices.some((one) => sameSupplier(one.supplier, supplier)))
    .map((terms): PlacedSupplier => {
      const free = terms.freeFromMinor !== undefined && (terms.freightMinor ?? 0) > 0 ? 1 : 0
      return {
        terms,
        paid: put(1, terms.freightMinor ?? 0),
        free: put(free, 0),
      }
    })
  const rows = [
    ...needRows(wanted, choices),
    ...useRows(choices),
    ...asked.flatMap((supplier) => supplierRows(supplier, choices)),
  ]
  const packs = choices.map(({ wanted: of, choice, packs: at }) => ({
    wanted: of,
    offer: choice.offer,
    at,
  }))
  const program = {
    cost,
    lower: new Float64Array(cost.length),
    upper,
    rows: rows.map((row) => rowOfTerms(cost.length, row.terms, row)),
    whole: new Set(cost.keys()),
  }
  return { program, packs }
}

/** Whether two names mean the same supplier. */
export function sameSupplier(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase()
}

function placeChoices(
  wanted: readonly Wanted[],
  suppliers: readonly SupplierTerms[],
  put: Put,
): PlacedChoice[] {
  return wanted.flatMap(({ amount, supplies }, at) =>
    stepChoices(supplies, amount).flatMap((choice): PlacedChoice[] => {
      const supplier = supplies[choice.offer]?.offer.supplier ?? ''
      const roomy = {
        ...choice,
        most: Math.max(choice.most, packsWorthMore(choice, supplies, supplier, suppliers)),
      }
      return [
        {
          wanted: at,
          supplier,
          choice: roomy,
          packs: put(roomy.most, choice.packMinor),
          used: put(1, 0),
        },
      ]
    }),
  )
}

/** Packs that by themselves would reach the sum a supplier asks for, but no more than the step goes to. */
function packsWorthMore(
  { packMinor, least, offer }: StepChoice,
  supplies: readonly Supply[],
  supplier: string,
  suppliers: readonly SupplierTerms[],
): number {
  const terms = suppliers.find((one) => sameSupplier(one.supplier, supplier))
  const sum = Math.max(terms?.freeFromMinor ?? 0, terms?.leastOrderMinor ?? 0)
  if (sum === 0 || packMinor <= 0) return 0
  const next = supplies[offer]?.steps.find(({ fromPacks }) => fromPacks > least)?.fromPacks
  return Math.min(Math.ceil(sum / packMinor), (next ?? NO_LIMIT) - 1)
}

function needRows(wanted: readonly Wanted[], choices: readonly PlacedChoice[]): Row[] {
  return wanted.map(({ amount }, at) => ({
    lower: 1 - NOISE_PART,
    upper: NO_LIMIT,
    terms: choices
      .filter((one) => one.wanted === at)
      .map(({ packs, choice }) => [packs, choice.amount / amount] as const),
  }))
}

function useRows(choices: readonly PlacedChoice[]): Row[] {
  const links = choices.flatMap(({ packs, used, choice }): Row[] => [
    {
      lower: -NO_LIMIT,
      upper: 0,
      terms: [
        [packs, 1],
        [used, -choice.most],
      ],
    },
    {
      lower: 0,
      upper: NO_LIMIT,
      terms: [
        [packs, 1],
        [used, -choice.least],
      ],
    },
  ])
  const offers = new Map<string, PlacedChoice[]>()
  for (const one of choices) {
    const key = `${one.wanted}/${one.choice.offer}`
    offers.set(key, [...(offers.get(key) ?? []), one])
  }
  const single = [...offers.values()]
    .filter((steps) => steps.length > 1)
    .map((steps): Row => ({
      lower: 0,
      upper: 1,
      terms: steps.map(({ used }) => [used, 1] as const),
    }))
  return [...links, ...single]
}

function supplierRows(
  { terms, paid, free }: PlacedSupplier,
  choices: readonly PlacedChoice[],
): Row[] {
  const own = choices.filter((one) => sameSupplier(one.supplier, terms.supplier))
  const goods = own.map(({ packs, choice }) => [packs, choice.packMinor] as const)
  const sent = (sum: number | undefined, orders: readonly number[]): Row[] =>
    sum === undefined || sum <= 0
      ? []
      : [
          {
            lower: 0,
            upper: NO_LIMIT,
            terms: [...goods, ...orders.map((at) => [at, -sum] as const)],
          },
        ]
  return [
    ...own.map(({ used }): Row => ({
      lower: -NO_LIMIT,
      upper: 0,
      terms: [
        [used, 1],
        [paid, -1],
        [free, -1],
      ],
    })),
    {
      lower: 0,
      upper: 1,
      terms: [
        [paid, 1],
        [free, 1],
      ],
    },
    ...sent(terms.freeFromMinor, [free]),
    ...sent(terms.leastOrderMinor, [paid, free]),
  ]
}
