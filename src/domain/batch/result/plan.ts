import type { Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { percentFromFraction } from '../../units'
import { type BarPlan, barPlan } from './bars'
import { type Outcome, outcomeOf } from '../react/balance'
import { chargeOf } from '../react/charge'
import { checkOrder } from '../check/check-order'
import { type Containers, containersFor } from './containers'
import { type CurePlan, curePlan, processOf } from '../react/cure'
import type { BatterDensity } from '../react/density'
import { type BatchFacts, NO_FACTS } from '../order/facts'
import { finishedG, freshSoap, type FreshSoap } from '../react/fresh-soap'
import { type LyeHeat, lyeHeat } from '../react/heat'
import { iceRemedies } from './heat-block'
import { type IfWrong, ifOneThingIsWrong } from '../superfat/if-wrong'
import { type Ingredient, ingredientsOf } from './ingredients'
import { ifraProblems, jugConcentrationPercent, lateProblems, nothingLeft } from './late-problems'
import { type MaterialCost, materialCost } from './material-cost'
import type { BatchOrder, Process } from '../order/order'
import { lastCheckProblems } from '../superfat/last-check'
import { FREE_SHARE_LIMIT, type LikelySuperfat } from '../superfat/likely'
import type { Interval } from '../../interval'
import type { Reckoning } from '../weigh/reckoning'
import { type Remark, type Remedy, remediesIn } from '../order/remedy'
import { batterDensity, oilGramsOf } from './size'
import { type SoapKind, soapKindOf } from '../order/soap-kind'
import { superfatReport, type SuperfatReport } from '../superfat/superfat-report'
import { remarksOn } from './warnings'
import { lyeBasisG, lyeWaterG } from '../weigh/water-weights'
import { sum, type Weights, weightsFor } from '../weigh/weights'

/** What the weights come to. Percentages as makers read them. */
export interface BatchFigures {
  /** Superfat that the weights really give at typical saponification values, percent. */
  readonly superfatPercent: number
  /** Superfat if every lot of oil stood at the low or at the high end of its natural range, percent. */
  readonly superfatSpanPercent: Interval
  /** Of all water for the lye, as asked; the cook's extra water is not in it. */
  readonly lyeConcentrationPercent: number
  readonly waterToHydroxide: number
  readonly waterPercentOfOils: number
  /** In the jug while the hydroxide dissolves: without what waits for trace, with the cook's extra water. */
  readonly jugConcentrationPercent: number
  readonly pureHydroxideGrams: number
  /** Batter density used to fill a mould, g/ml; null when not sized by a mould. */
  readonly densityGPerMl: number | null
}

/** Why a sheet is not printed until the maker says that these lots are safe. */
export interface Blocked {
  readonly code: 'blocked.lean'
  /** The superfat of the leanest lots, percent. */
  readonly leanestPercent: number
  /** The lye discount to ask for instead, percent; null where none is enough. */
  readonly leastSafePercent: number | null
  /** One lot in so many would hold free alkali. */
  readonly oneIn: number
  readonly message: string
}

/** All that is known of a batch that can be weighed out. */
export interface ReadyPlan extends Weights {
  readonly status: 'ready'
  /** The order it was made of. */
  readonly order: BatchOrder
  readonly process: Process
  readonly figures: BatchFigures
  readonly superfat: SuperfatReport
  /** Where the superfat goes if one thing is wrong, the worst first. */
  readonly ifWrong: readonly IfWrong[]
  /** Null where the sheet may be printed. */
  readonly blocked: Blocked | null
  /** What to mind, each with its code. */
  readonly remarks: readonly Remark[]
  /** The words of the remarks. */
  readonly warnings: readonly string[]
  /** Changes of the order that answer warnings, or what blocks the sheet. */
  readonly remedies: readonly Remedy[]
  /** Everything to weigh, in working order. */
  readonly ingredients: readonly Ingredient[]
  /** The batter as poured; null when not sized by a mould. */
  readonly density: BatterDensity | null
  readonly outcome: Outcome
  /** A bar, a bar that stays soft, or a paste, which has neither cure nor bars. */
  readonly kind: SoapKind
  readonly fresh: FreshSoap
  readonly cure: CurePlan | null
  readonly bars: BarPlan | null
  readonly cost: MaterialCost | null
  /** Null without tables of lye. */
  readonly heat: LyeHeat | null
  readonly containers: Containers | null
}

/** A batch ready to weigh, or what is wrong with its order. */
export type BatchPlan =
  ReadyPlan | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/**
 * Turns an order into weights and all that follows from them. Nothing is weighed out of an order with
 * anything wrong in it. Without facts there are only oils, hydroxide and water, and no heat.
 */
export function planBatch(
  order: BatchOrder,
  library: Library,
  facts: BatchFacts = NO_FACTS,
): BatchPlan {
  const problems = checkOrder(order, library, facts)
  if (problems.length > 0) return { status: 'invalid', problems }
  const oilG = oilGramsOf(order, library, facts)
  if (oilG <= 0) return { status: 'invalid', problems: [noRoom(order)] }
  const weights = weightsFor(order, oilG, library, facts)
  const reckoning = { order, weights, library, facts }
  const lost = nothingLeft(weights, order)
  if (lost.length > 0) return { status: 'invalid', problems: lost }
  const beyond = beyondReckoning(order, weights)
  if (beyond.length > 0) return { status: 'invalid', problems: beyond }
  const late = lateProblems(reckoning)
  return late.length > 0 ? { status: 'invalid', problems: late } : ready(reckoning)
}

/** The plan of weights with nothing wrong in them. */
function ready(reckoning: Reckoning): BatchPlan {
  const { order, weights } = reckoning
  const outcome = outcomeOf(reckoning)
  const kind = soapKindOf(order)
  const fresh = freshSoap(reckoning, outcome)
  const cure = kind === 'paste' ? null : curePlan(reckoning, outcome)
  const over = ifraProblems(reckoning, finishedG({ cure, fresh }).leastG)
  if (over.length > 0) return { status: 'invalid', problems: over }
  const superfat = superfatReport(reckoning)
  const doubted = lastCheckProblems(reckoning, superfat.reachPercent.min)
  if (doubted.length > 0) return { status: 'invalid', problems: doubted }
  const density = order.mould ? batterDensity(order.mould, reckoning) : null
  const figures = figuresOf(reckoning, superfat, density)
  const bars = cure && barPlan(order, cure)
  const ingredients = ingredientsOf(reckoning)
  const heat = lyeHeat(reckoning) ?? null
  const remarks = remarksOn(reckoning, superfat, figures.lyeConcentrationPercent)
  const blocked = blockedBy(order, superfat)
  return {
    status: 'ready',
    order,
    process: processOf(order),
    ...weights,
    figures,
    superfat,
    ifWrong: ifOneThingIsWrong(reckoning),
    blocked,
    remarks,
    warnings: remarks.map(({ message }) => message),
    remedies: [...blockRemedies(blocked), ...remediesIn(remarks), ...iceRemedies(reckoning, heat)],
    ingredients,
    density,
    outcome,
    kind,
    fresh,
    cure,
    bars,
    cost: materialCost(ingredients, order.pricesPerKg, bars),
    heat,
    containers: heat && containersFor(reckoning, heat, weights.totalGrams),
  }
}

function figuresOf(
  reckoning: Reckoning,
  superfat: SuperfatReport,
  density: BatterDensity | null,
): BatchFigures {
  const { order, weights } = reckoning
  const { alkalis } = chargeOf(reckoning)
  const [oils, alkali] = [sum(weights.oilGrams), lyeBasisG(order, alkalis)]
  const water = lyeWaterG(weights.water)
  return {
    superfatPercent: superfat.typicalPercent,
    superfatSpanPercent: superfat.lotsPercent,
    lyeConcentrationPercent: percentFromFraction(alkali / (alkali + water)),
    waterToHydroxide: water / alkali,
    waterPercentOfOils: percentFromFraction(water / oils),
    jugConcentrationPercent: jugConcentrationPercent(reckoning),
    pureHydroxideGrams: alkalis.reduce((grams, { pureG }) => grams + pureG, 0),
    densityGPerMl: density?.gPerMl ?? null,
  }
}

/** More than one lot in 200 with free alkali, and no reason of the maker's: no sheet. */
function blockedBy({ confirmedLean }: BatchOrder, superfat: SuperfatReport): Blocked | null {
  const { reachPercent, likely } = superfat
  if (likely.freeShare <= FREE_SHARE_LIMIT || confirmedLean !== undefined) return null
  const least = likely.leastSafePercent
  const ask = least === null ? 'Take' : `Ask for at least ${least.toFixed(1)} %, take`
  return {
    code: 'blocked.lean',
    leanestPercent: reachPercent.min,
    leastSafePercent: least,
    oneIn: likely.oneIn,
    message:
      `${commonly(likely)} would hold free lye: nineteen in twenty come to a superfat of ` +
      `${likely.percent.min.toFixed(1)} to ${likely.percent.max.toFixed(1)} %, the leanest to ` +
      `${reachPercent.min.toFixed(1)} %. ${ask} the saponification values and purity from your ` +
      `suppliers’ certificates, or say why these lots are safe. ${superfat.standsOnWords}`,
  }
}

/** "1 lot in 12", or "Most lots" where it is more than every second one. */
function commonly({ oneIn: n }: LikelySuperfat): string {
  return n > 1 ? `1 lot in ${n}` : 'Most lots'
}

function blockRemedies(blocked: Blocked | null): Remedy[] {
  if (!blocked || blocked.leastSafePercent === null) return []
  const superfat = blocked.leastSafePercent
  return [{ answers: blocked.code, says: `Ask for ${superfat.toFixed(1)} %`, change: { superfat } }]
}

/** Sizes at which floating point has no figures left, such as 1e308 g. */
function beyondReckoning(order: BatchOrder, weights: Weights): Problem[] {
  const { totalGrams, oilGrams, alkaliGrams, water } = weights
  const told = [totalGrams, ...Object.values(oilGrams), ...Object.values(alkaliGrams), water.plainG]
  const hydroxide = sum(alkaliGrams)
  if (told.every(Number.isFinite) && hydroxide > 0 && Number.isFinite(hydroxide / totalGrams))
    return []
  return [
    {
      path: sizePath(order),
      message: 'No weights come of this. Give a size that a scale can weigh.',
    },
  ]
}

function noRoom(order: BatchOrder): Problem {
  return {
    path: sizePath(order),
    message:
      'What is given in grams is more than the size asked for. Give a larger size or less of it.',
  }
}

/** What a mould carries beside its shape. */
const MOULD_OPTIONS: readonly string[] = ['fillPercent', 'densityGPerMl', 'count']

function sizePath({ mould, bars }: BatchOrder): string {
  if (bars) return 'bars.grams'
  if (!mould) return 'oilGrams'
  return `mould.${Object.keys(mould).find((key) => !MOULD_OPTIONS.includes(key)) ?? ''}`
}
