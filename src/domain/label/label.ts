import { batchCode } from '../batch/order/batch-code'
import type { BatchFacts } from '../batch/order/facts'
import { netWeight, type NetWeight } from '../batch/result/net-weight'
import type { ReadyPlan } from '../batch/result/plan'
import { type Release, UNTESTED } from '../batch/release/release'
import { readyOn } from '../batch/sheet/sheet'
import type { Library } from '../blend/library'
import type { Basis } from '../chemistry/fatty-acid'
import { GRAMS_PER_OUNCE } from '../units'
import { type AllergenShare, allergenShares } from './allergens'
import type { AllergenList } from './allergen-list'
import { asMade, asPutIn, type Listed } from './ingredient-list'

/** What the law of one market still asks of the maker (data/label-duties.json). */
export interface MarketDuties {
  readonly market: string
  readonly name: string
  readonly asOf: string
  readonly duties: readonly string[]
  readonly basis: Basis
  readonly source: string
}

/** What a label is made with beside the plan. */
export interface LabelFacts {
  readonly batch: BatchFacts
  readonly allergens: AllergenList
  readonly duties: readonly MarketDuties[]
  readonly cautions: readonly string[]
}

/** The words of a bar's label. Drafts for the maker and the assessor, never a clearance. */
export interface Label {
  readonly product: string | null
  readonly batchCode: string | null
  readonly responsiblePerson: string | null
  readonly madeOn: string | null
  /** Day the cure ends; null for a paste, which has none. */
  readonly readyOn: string | null
  /** Both accepted ways of naming, as they would be printed, allergens at the end. */
  readonly ingredientsAsPutIn: string
  readonly ingredientsAsMade: string
  readonly listedAsPutIn: readonly Listed[]
  readonly listedAsMade: readonly Listed[]
  /** Listed allergens, also those below the limit. */
  readonly allergens: readonly AllergenShare[]
  /** Of which month the list is, and from where. */
  readonly allergenListAsOf: string
  /** Of a bar at its driest, or of a vessel of fresh paste; null where that is not known. */
  readonly netWeight: (NetWeight & { readonly ounces: number }) | null
  readonly cautions: readonly string[]
  /** What must be settled before anything is printed. */
  readonly toSettle: readonly string[]
  readonly duties: readonly MarketDuties[]
  /** Whether a test for free alkali stands; until then the label says *not released*. */
  readonly release: Release
  readonly notice: string
}

/** A label, or why there is none. */
export type LabelAnswer =
  | { readonly status: 'ready'; readonly label: Label }
  | { readonly status: 'refused'; readonly reasons: readonly string[] }

/** What stands on the bar for those who wash with it. */
const USER_CAUTIONS = [
  'Keep out of the eyes; rinse with water if it gets in.',
  'For outward use only.',
]

const NOTICE =
  'A draft from the batch as planned. Names are recalled, not looked up in the INCI dictionary; limits of IFRA standards are not checked but where a certificate was given: the supplier’s certificate decides. The law of the place of sale goes before anything said here.'

/**
 * The label of a batch: refused while its sheet is, and without cautions. It says *not released* until the
 * batch has passed a test for free alkali, also where none is handed over.
 */
export function labelOf(
  plan: ReadyPlan,
  library: Library,
  facts: LabelFacts,
  release: Release = UNTESTED,
): LabelAnswer {
  if (plan.blocked) return { status: 'refused', reasons: [plan.blocked.message] }
  if (facts.cautions.length === 0)
    return { status: 'refused', reasons: ['No label without the cautions. Load them.'] }
  const { papers = {} } = plan.order
  const allergens = allergenShares(plan, facts.batch.scents, facts.allergens)
  const [putIn, made] = [asPutIn(plan, library, facts.batch), asMade(plan, library, facts.batch)]
  const net = netWeightOf(plan)
  const label: Label = {
    product: papers.product ?? null,
    batchCode: batchCode(papers),
    responsiblePerson: papers.responsiblePerson ?? null,
    madeOn: papers.madeOn ?? null,
    readyOn: readyOn(plan),
    ingredientsAsPutIn: asText(putIn, allergens),
    ingredientsAsMade: asText(made, allergens),
    listedAsPutIn: putIn,
    listedAsMade: made,
    allergens,
    allergenListAsOf: facts.allergens.asOf,
    netWeight: net && { ...net, ounces: net.nominalG / GRAMS_PER_OUNCE },
    cautions: USER_CAUTIONS,
    toSettle: [...toSettle(plan, [...putIn, ...made], allergens, facts), ...release.todo],
    duties: facts.duties,
    release,
    notice: NOTICE,
  }
  return { status: 'ready', label }
}

/** A bar at its driest; a paste as it is filled, in as many vessels as are planned, or all in one. */
function netWeightOf({ bars, cure, fresh, order: { mould } }: ReadyPlan): NetWeight | null {
  if (bars) return netWeight(bars.driestG)
  if (cure) return null
  const each = mould && 'cavities' in mould ? mould.cavities.count : 1
  return netWeight(fresh.freshG / (each * (mould?.count ?? 1)))
}

/** "Olea Europaea Fruit Oil, Aqua, …, Linalool". */
function asText(listed: readonly Listed[], allergens: readonly AllergenShare[]): string {
  const plainNames = listed.filter(({ colourant }) => !colourant).map(({ name }) => name)
  const colours = listed.filter(({ colourant }) => colourant).map(({ name }) => name)
  const named = allergens.filter(({ naming }) => naming !== 'below').map(({ name }) => name)
  return [...new Set([...plainNames, ...named, ...colours])].join(', ')
}

function toSettle(
  plan: ReadyPlan,
  listed: readonly Listed[],
  allergens: readonly AllergenShare[],
  facts: LabelFacts,
): string[] {
  const { papers = {}, liquids = [] } = plan.order
  const unsure = [...new Set(listed.filter((one) => one.unsure).map(({ name }) => name))]
  const words = liquids.flatMap(({ liquid }) => facts.batch.liquids.get(liquid)?.allergenWord ?? [])
  return [
    ...(unsure.length > 0 ? [`Look up the INCI names of: ${unsure.join(', ')}.`] : []),
    ...allergens
      .filter(({ overOwnLimitPercent }) => overOwnLimitPercent !== null)
      .map(
        ({ name, mostPercent, overOwnLimitPercent }) =>
          `${name} may reach ${mostPercent.toFixed(3)} % of the bar; ${String(overOwnLimitPercent)} % is its own limit. Use less, or a certificate that shows less.`,
      ),
    ...(allergens.some(({ naming }) => naming === 'toBeSafe')
      ? ['Some allergens are named to be safe: the supplier’s own list of the lot may show less.']
      : []),
    ...(words.length > 0 ? [`Contains ${[...new Set(words)].join(', ')}: say so.`] : []),
    ...(papers.responsiblePerson === undefined
      ? ['Name and address of the responsible person.']
      : []),
    ...(papers.madeOn === undefined ? ['The day of making, for batch code and cure date.'] : []),
    ...(plan.cure && plan.bars === null ? ['The weight of a bar, for the net weight.'] : []),
    plan.cure
      ? 'Weigh cured bars before the net weight is printed; on average none may be under it.'
      : 'Weigh what is filled into each jar before the net weight is printed; on average none may be under it.',
    plan.cure
      ? 'Test bars of every batch for free alkali (not by a pH strip) before any is sold.'
      : 'Test the paste for free alkali (not by a pH strip) before any is sold.',
  ]
}
