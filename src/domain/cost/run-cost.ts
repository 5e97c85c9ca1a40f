import type { Ingredient, IngredientKind } from '../batch/result/ingredients'
import type { ReadyPlan } from '../batch/result/plan'
import { fractionFromPercent, GRAMS_PER_KG } from '../units'
import { type LandedCost, type LandedChoices, landedCost } from './landed'
import { roundMinor } from './money'
import type { MaterialOf, PriceBook } from './offer'
import { type NoSupply, suppliesOf } from './supply'

/** What money goes into. */
export type CostGroup =
  'oils' | 'alkali' | 'fragrance' | 'additives' | 'labour' | 'overhead' | 'packaging'

/**
 * What is charged for materials: their marginal price, as if packs could be parted; what must be bought,
 * less what is left over; or all that must be bought.
 */
export type Charge = 'proRata' | 'boughtLessLeftovers' | 'allBought'

/** What goes onto every bar: a carton, a label. */
export interface PackagingUse {
  readonly material: string
  /** Of it, pieces or g a bar. */
  readonly perBar: number
}

/** All that turns a batch into money beside the prices. Money in minor units. */
export interface CostChoices {
  readonly charge: Charge
  /** Lost of every material that is weighed, percent of what is bought. */
  readonly wastePercent: number
  readonly packaging: readonly PackagingUse[]
  readonly minutesPerBatch: number
  /** For every bar cut: cutting, stamping, wrapping. */
  readonly minutesPerBar: number
  readonly rateMinorPerHour: number
  readonly overheadMinorPerBatch: number
  readonly overheadMinorPerMonth: number
  readonly batchesPerMonth: number
  /** Bars that can't be sold, percent of those cut. */
  readonly rejectPercent: number
}

/** One line of a run's cost. */
export interface CostLine {
  readonly group: CostGroup
  /** Id of the material; the group for labour and overhead. */
  readonly id: string
  readonly name: string
  /** In g, pieces or minutes; null for overhead. */
  readonly amount: number | null
  readonly minor: number
  /** What the materials' money rests on; null for the rest. */
  readonly landed: LandedCost | null
}

/** What a run of whole batches yields. Bars may be parts: what is to be expected, over many runs. */
export interface RunYield {
  readonly batches: number
  /** Bars, if all that is poured became bars. */
  readonly pouredBars: number
  readonly cutBars: number
  readonly goodBars: number
  /** Weight of one bar, g. */
  readonly wetG: number
  readonly curedG: number
}

/** What a run costs. */
export interface RunCost {
  readonly yield: RunYield
  readonly lines: readonly CostLine[]
  readonly totalMinor: number
  /** Minor units, unrounded. */
  readonly perBar: number
  readonly perBatch: number
  /** Of cured soap. */
  readonly perKg: number
  /** What could not be priced and is not in the total. */
  readonly missing: readonly NoSupply[]
}

/** A cost, or why there is none. */
export type RunCostAnswer =
  | { readonly status: 'ready'; readonly cost: RunCost }
  | { readonly status: 'no bars'; readonly message: string }

/** All that prices are looked up with. */
export interface Pricing {
  readonly book: PriceBook
  readonly materialOf: MaterialOf
  /** The day, YYYY-MM-DD. */
  readonly on: string
}

const GROUP_OF: Readonly<Record<IngredientKind, CostGroup>> = {
  oil: 'oils',
  extraFat: 'oils',
  alkali: 'alkali',
  water: 'additives',
  cookWater: 'additives',
  liquid: 'additives',
  acid: 'additives',
  additive: 'additives',
  scent: 'fragrance',
}

const MINUTES_PER_HOUR = 60

/** What a run of so many batches of a plan costs at the prices of a day. Plain water is free. */
export function runCost(
  plan: ReadyPlan,
  choices: CostChoices,
  pricing: Pricing,
  batches: number,
): RunCostAnswer {
  const yields = runYield(plan, choices, batches)
  if (!yields) {
    const message = plan.cure
      ? 'The batch is not cut into bars. Give the weight of a bar, or how it is cut.'
      : 'This batch is a paste: it makes no bars, and costs and quotes are reckoned by the bar.'
    return { status: 'no bars', message }
  }
  const needs = [...batchNeeds(plan, batches), ...packagingNeeds(choices, yields)]
  const priced = needs.map((need) => priceOf(need, choices, pricing))
  const lines = [
    ...priced.flatMap(({ line }) => line ?? []),
    labourLine(choices, yields),
    overheadLine(choices, batches),
  ].filter(({ minor }) => minor !== 0)
  const totalMinor = lines.reduce((sum, { minor }) => sum + minor, 0)
  const perBar = totalMinor / yields.goodBars
  return {
    status: 'ready',
    cost: {
      yield: yields,
      lines: GROUP_ORDER.flatMap((group) => lines.filter((line) => line.group === group)),
      totalMinor,
      perBar,
      perBatch: totalMinor / batches,
      perKg: (perBar / yields.curedG) * GRAMS_PER_KG,
      missing: priced.flatMap(({ missing }) => missing),
    },
  }
}

/** The groups as they come about: what is weighed, the work, the wrapping. */
export const GROUP_ORDER: readonly CostGroup[] = [
  'oils',
  'alkali',
  'fragrance',
  'additives',
  'labour',
  'overhead',
  'packaging',
]

function runYield(
  { bars, fresh }: ReadyPlan,
  { rejectPercent }: CostChoices,
  batches: number,
): RunYield | undefined {
  if (!bars) return undefined
  const cutBars = bars.count * batches
  return {
    batches,
    pouredBars: (fresh.freshG * batches) / bars.wetG,
    cutBars,
    goodBars: cutBars * (1 - fractionFromPercent(rejectPercent)),
    wetG: bars.wetG,
    curedG: bars.curedG,
  }
}

/** A quantity of one material that a run needs, in g or pieces. */
export interface Need {
  readonly group: CostGroup
  readonly id: string
  readonly amount: number
}

/** What is weighed for so many batches, a material at a time. Plain water is left out. */
export function batchNeeds({ ingredients }: ReadyPlan, batches: number): Need[] {
  const needs = new Map<string, Need>()
  for (const { kind, id, grams } of ingredients.filter(isBought)) {
    const group = GROUP_OF[kind]
    const before = needs.get(id)
    needs.set(id, { group, id, amount: (before?.amount ?? 0) + grams * batches })
  }
  return [...needs.values()]
}

const isBought = ({ kind }: Ingredient) => kind !== 'water' && kind !== 'cookWater'

function packagingNeeds({ packaging }: CostChoices, { goodBars }: RunYield): Need[] {
  return packaging.map(({ material, perBar }) => ({
    group: 'packaging',
    id: material,
    amount: goodBars * perBar,
  }))
}

function priceOf(need: Need, choices: CostChoices, { book, materialOf, on }: Pricing) {
  const { supplies, missing } = suppliesOf(need.id, book, materialOf, on)
  const landed = landedCost(supplies, need.amount, {
    wastePercent: need.group === 'packaging' ? 0 : choices.wastePercent,
    leftovers: LEFTOVERS[choices.charge],
  })
  const line: CostLine | undefined = landed && {
    ...need,
    name: materialOf(need.id)?.name ?? need.id,
    minor: choices.charge === 'proRata' ? landed.proRataMinor : landed.chargedMinor,
    landed,
  }
  return { line, missing: landed ? [] : missing }
}

const LEFTOVERS: Readonly<Record<Charge, LandedChoices['leftovers']>> = {
  proRata: 'valued',
  boughtLessLeftovers: 'valued',
  allBought: 'lost',
}

function labourLine(choices: CostChoices, { batches, cutBars }: RunYield): CostLine {
  const minutes = choices.minutesPerBatch * batches + choices.minutesPerBar * cutBars
  return {
    group: 'labour',
    id: 'labour',
    name: 'Labour',
    amount: minutes,
    minor: roundMinor((minutes / MINUTES_PER_HOUR) * choices.rateMinorPerHour),
    landed: null,
  }
}

function overheadLine(choices: CostChoices, batches: number): CostLine {
  const { overheadMinorPerBatch: own, overheadMinorPerMonth: month, batchesPerMonth } = choices
  const share = month === 0 ? 0 : month / batchesPerMonth
  return {
    group: 'overhead',
    id: 'overhead',
    name: 'Overhead',
    amount: null,
    minor: roundMinor((own + share) * batches),
    landed: null,
  }
}
