import { noRules } from '../lp/search/rules'
import { solveWithRules } from '../lp/search/branch'
import { orderMinor } from './offer'
import type { Supply } from './supply'
import { NOISE_PART } from '../noise'

/** So many packs of one offer. */
export interface BoughtPacks {
  readonly supply: Supply
  readonly packs: number
  /** In g, or in pieces. */
  readonly amount: number
  readonly minor: number
}

/** The cheapest whole packs that hold at least a need. */
export interface Cover {
  readonly bought: readonly BoughtPacks[]
  readonly minor: number
  /** In g, or in pieces. */
  readonly amount: number
  /** Whether nothing cheaper exists, or the search was called off first. */
  readonly proved: boolean
}

/** Nodes of the search; a handful of packs needs some ten. */
const MOST_NODES = 5000

/** One price step of one offer, as a variable: its packs are 0, or from `least` to `most`. */
export interface StepChoice {
  /** Place of the offer among those asked about. */
  readonly offer: number
  readonly least: number
  readonly most: number
  readonly packMinor: number
  readonly amount: number
}

/**
 * The steps of some offers that an order for a need can rest on. No more packs are ever worth buying than
 * cover the need, but for those that reach a cheaper step.
 */
export function stepChoices(supplies: readonly Supply[], need: number): StepChoice[] {
  return supplies.flatMap(({ amount, steps }, offer) => {
    const enough = Math.ceil((need / amount) * (1 - NOISE_PART))
    return steps.map(({ fromPacks, packMinor }, at) => ({
      offer,
      least: fromPacks,
      most: Math.max(fromPacks, Math.min((steps[at + 1]?.fromPacks ?? Infinity) - 1, enough)),
      packMinor,
      amount,
    }))
  })
}

/**
 * The cheapest whole packs of one material that cover a need, price steps and fewest packs kept: a
 * covering knapsack, by branch and bound over whole packs. Undefined where there is nothing to buy.
 * `need` is in g or pieces, as the supplies are.
 */
export function cheapestCover(supplies: readonly Supply[], need: number): Cover | undefined {
  if (!(need > 0)) return { bought: [], minor: 0, amount: 0, proved: true }
  if (supplies.length === 0) return undefined
  const choices = stepChoices(supplies, need)
  const outcome = solveWithRules(
    {
      cost: choices.map(({ packMinor }) => packMinor),
      lower: choices.map(() => 0),
      upper: choices.map(({ most }) => most),
      rows: [
        {
          coefficients: choices.map(({ amount }) => amount / need),
          lower: 1 - NOISE_PART,
          upper: Infinity,
        },
      ],
    },
    {
      ...noRules(choices.length),
      leastUse: choices.map(({ least }) => least),
      counts: supplies.map((_, offer) => ({
        variables: choices.flatMap((choice, at) => (choice.offer === offer ? [at] : [])),
        least: 0,
        most: 1,
      })),
      step: 1,
    },
    ({ nodes }) => nodes < MOST_NODES,
  )
  const best = outcome.status === 'infeasible' ? null : outcome.best
  if (!best) throw new Error('Packs that can be bought at all can cover any need.')
  const packs = supplies.map((_, offer) =>
    choices.reduce(
      (sum, choice, at) => sum + (choice.offer === offer ? Math.round(best.x[at] ?? 0) : 0),
      0,
    ),
  )
  return coverOf(supplies, packs, outcome.status === 'optimal')
}

/** So many packs of each supply, with their money reckoned anew from the price steps. */
export function coverOf(
  supplies: readonly Supply[],
  packs: readonly number[],
  proved: boolean,
): Cover {
  const bought = supplies.flatMap((supply, at): BoughtPacks[] => {
    const count = packs[at] ?? 0
    const minor = count > 0 ? orderMinor(supply.steps, count) : undefined
    return minor === undefined
      ? []
      : [{ supply, packs: count, amount: count * supply.amount, minor }]
  })
  return {
    bought,
    minor: bought.reduce((sum, { minor }) => sum + minor, 0),
    amount: bought.reduce((sum, { amount }) => sum + amount, 0),
    proved,
  }
}

/** Whether an amount covers a need, noise of floating point aside. */
export function covers(amount: number, need: number): boolean {
  return amount >= need * (1 - NOISE_PART)
}
