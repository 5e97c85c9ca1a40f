import type { Constituent, ScentFact } from '../batch/order/facts'
import { finishedG } from '../batch/react/fresh-soap'
import type { ReadyPlan } from '../batch/result/plan'
import { molarMassOf } from '../chemistry/formula'
import { fractionFromPercent, percentFromFraction, WHOLE_PERCENT } from '../units'
import type { Allergen, AllergenList } from './allergen-list'

/** One listed allergen in the finished bar. */
export interface AllergenShare {
  readonly id: string
  readonly name: string
  /** Percent of the cured bar, at the low and the high end of what the fragrance may hold. */
  readonly lowPercent: number
  readonly highPercent: number
  /**
   * The most it may come to: high end, of the driest bar, with what esters may still turn into. Above the
   * list's limit it is named.
   */
  readonly mostPercent: number
  /** Above the limit at any rate; only at the high end; or below it. */
  readonly naming: 'certain' | 'toBeSafe' | 'below'
  /** Scents it comes from. */
  readonly from: readonly string[]
  /** Over a limit of its own in the finished product, percent; null where none is known or it is kept. */
  readonly overOwnLimitPercent: number | null
}

/** Grams of one allergen over all scents. */
interface Amount {
  lowG: number
  highG: number
  formedG: number
  readonly from: Set<string>
}

/**
 * The listed allergens of a batch, most first. The same name is summed over all scents; an essential oil
 * that is listed by itself counts whole beside its constituents. Esters partly fall apart in soap
 * (linalyl acetate to linalool): the most an allergen may come to counts them as wholly turned.
 */
export function allergenShares(
  plan: ReadyPlan,
  scents: ReadonlyMap<string, ScentFact>,
  list: AllergenList,
): AllergenShare[] {
  const amounts = new Map<string, Amount>()
  for (const [scent, grams] of Object.entries(plan.fragranceGrams)) {
    for (const { allergen, lowPercent, highPercent } of constituentsOf(scent, plan, scents)) {
      const amount = amountOf(amounts, allergen)
      amount.lowG += grams * fractionFromPercent(lowPercent)
      amount.highG += grams * fractionFromPercent(highPercent)
      amount.from.add(scent)
    }
  }
  addFormed(amounts, list)
  return [...amounts]
    .map(([id, amount]) => shareOf(id, amount, plan, list))
    .sort((a, b) => b.mostPercent - a.mostPercent)
}

/** A scent's listed constituents, the supplier's where there is a certificate, with itself where listed. */
export function constituentsOf(
  scent: string,
  { order }: ReadyPlan,
  scents: ReadonlyMap<string, ScentFact>,
): readonly Constituent[] {
  const fact = scents.get(scent)
  const own = order.fragrance?.certificates?.[scent]?.allergens ?? fact?.constituents ?? []
  const listed = fact?.listedAs
  if (listed === undefined || listed === null) return own
  return [{ allergen: listed, lowPercent: WHOLE_PERCENT, highPercent: WHOLE_PERCENT }, ...own]
}

/**
 * The most hydroxide that a fragrance's esters and phenols may take, mol: Σ g × groups / M at the high end.
 * It raises the superfat of a batch and is never counted on. By hand: 12 g of linalyl acetate take 2.45 g NaOH.
 */
export function fragranceTakesMol(
  plan: ReadyPlan,
  scents: ReadonlyMap<string, ScentFact>,
  list: AllergenList,
): number {
  const facts = new Map(list.allergens.map((one) => [one.id, one]))
  return Object.entries(plan.fragranceGrams).reduce((mol, [scent, grams]) => {
    return constituentsOf(scent, plan, scents).reduce((sum, { allergen, highPercent }) => {
      const alkali = facts.get(allergen)?.alkali
      if (!alkali) return sum
      const g = grams * fractionFromPercent(highPercent)
      return sum + (g * alkali.molesPerMol) / molarMassOf(alkali.formula)
    }, mol)
  }, 0)
}

function amountOf(amounts: Map<string, Amount>, id: string): Amount {
  const found = amounts.get(id) ?? { lowG: 0, highG: 0, formedG: 0, from: new Set<string>() }
  amounts.set(id, found)
  return found
}

/** What esters may turn into: g × M(new) / M(ester). */
function addFormed(amounts: Map<string, Amount>, { allergens }: AllergenList): void {
  for (const { id, alkali } of allergens) {
    const ester = amounts.get(id)
    if (!ester || !alkali?.forms) continue
    const formed = amountOf(amounts, alkali.forms.allergen)
    const ratio = molarMassOf(alkali.forms.formula) / molarMassOf(alkali.formula)
    formed.formedG += ester.highG * ratio
    for (const scent of ester.from) formed.from.add(scent)
  }
}

function shareOf(
  id: string,
  { lowG, highG, formedG, from }: Amount,
  plan: ReadyPlan,
  { allergens, rinseOffLimitPercent: limit }: AllergenList,
): AllergenShare {
  const fact: Allergen | undefined = allergens.find((one) => one.id === id)
  const { usualG, leastG } = finishedG(plan)
  const lowPercent = percentFromFraction(lowG / usualG)
  const mostPercent = percentFromFraction((highG + formedG) / leastG)
  const own = fact?.mostPercentInProduct ?? null
  return {
    id,
    name: fact?.name ?? id,
    lowPercent,
    highPercent: percentFromFraction(highG / usualG),
    mostPercent,
    naming: lowPercent > limit ? 'certain' : mostPercent > limit ? 'toBeSafe' : 'below',
    from: [...from],
    overOwnLimitPercent: own !== null && mostPercent > own ? own : null,
  }
}
