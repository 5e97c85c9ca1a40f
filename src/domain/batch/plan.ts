import type { Library } from '../blend/library'
import { equivalentsIn } from '../chemistry/alkali'
import type { Problem } from '../blend/check-blend'
import { fractionFromPercent, percentFromFraction } from '../units'
import { checkOrder, dissolving } from './check-order'
import { alkalisOf, BATTER_DENSITY_G_PER_ML, type BatchOrder, type Mould } from './order'
import { roundedUp } from './rounding'
import { fatEquivalents, purityOf, sum, type Weights, weightsFor } from './weights'

/** What the weights come to. Percentages as makers read them. */
export interface BatchFigures {
  /** Superfat that the weights really give at typical saponification values, percent. */
  readonly superfatPercent: number
  /** Superfat if every lot of oil stood at the low or at the high end of its natural range, percent. */
  readonly superfatSpanPercent: { readonly min: number; readonly max: number }
  readonly lyeConcentrationPercent: number
  readonly waterToHydroxide: number
  readonly waterPercentOfOils: number
  readonly pureHydroxideGrams: number
  /** Batter density used to fill a mould, g/ml; null when sized by oil weight. */
  readonly densityGPerMl: number | null
}

/** A batch ready to weigh, or what is wrong with its order. */
export type BatchPlan =
  | ({
      readonly status: 'ready'
      readonly figures: BatchFigures
      readonly warnings: readonly string[]
    } & Weights)
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Turns an order into weights. Nothing is weighed out of an order with anything wrong in it. */
export function planBatch(order: BatchOrder, library: Library): BatchPlan {
  const problems = checkOrder(order, library)
  if (problems.length > 0) return { status: 'invalid', problems }
  const weights = weightsFor(order, oilGramsOf(order, library), library)
  const figures = figuresOf(order, weights, library)
  const lost = nothingLeft(weights, order)
  const late = lost.length > 0 ? lost : lateProblems(order, weights, figures)
  if (late.length > 0) return { status: 'invalid', problems: late }
  return { status: 'ready', ...weights, figures, warnings: warningsOf(figures) }
}

/** Oils in g: as ordered, or as many as make the batter fill the mould. */
function oilGramsOf(order: BatchOrder, library: Library): number {
  if (order.oilGrams !== undefined) return order.oilGrams
  if (!order.mould) throw new Error('A checked order has a weight of oils or a mould')
  const { totalGrams } = weightsFor({ ...order, scale: undefined }, 1, library)
  return batterGrams(order.mould) / totalGrams
}

function batterGrams({ volumeMl, fillPercent, densityGPerMl }: Mould): number {
  const fill = fillPercent === undefined ? 1 : fractionFromPercent(fillPercent)
  return volumeMl * fill * (densityGPerMl ?? BATTER_DENSITY_G_PER_ML)
}

function figuresOf(order: BatchOrder, weights: Weights, library: Library): BatchFigures {
  const [oils, alkali] = [sum(weights.oilGrams), sum(weights.alkaliGrams)]
  const kinds = alkalisOf(order).map((kind) => ({
    kind,
    weighed: weights.alkaliGrams[kind] ?? 0,
    purity: purityOf(order, kind),
  }))
  const bound = kinds.reduce(
    (mol, { kind, weighed, purity }) => mol + equivalentsIn(weighed, purity, kind),
    0,
  )
  const superfat = (end: 'low' | 'typical' | 'high') =>
    percentFromFraction(1 - bound / fatEquivalents(weights.oilGrams, library, end))
  return {
    superfatPercent: superfat('typical'),
    superfatSpanPercent: { min: superfat('low'), max: superfat('high') },
    lyeConcentrationPercent: percentFromFraction(alkali / (alkali + weights.waterGrams)),
    waterToHydroxide: weights.waterGrams / alkali,
    waterPercentOfOils: percentFromFraction(weights.waterGrams / oils),
    pureHydroxideGrams: kinds.reduce((grams, { weighed, purity }) => grams + weighed * purity, 0),
    densityGPerMl: order.mould ? (order.mould.densityGPerMl ?? BATTER_DENSITY_G_PER_ML) : null,
  }
}

/** What only the figures tell. The other two ways to give water were held against the lye before. */
function lateProblems(order: BatchOrder, weights: Weights, figures: BatchFigures): Problem[] {
  return [
    ...beyondReckoning(order, weights, figures),
    ...dissolving('water.percentOfOils', figures.lyeConcentrationPercent),
  ]
}

/** Sizes at which floating point has no figures left, such as 1e308 g. */
function beyondReckoning(order: BatchOrder, weights: Weights, figures: BatchFigures): Problem[] {
  const { superfatPercent, lyeConcentrationPercent, waterPercentOfOils } = figures
  const told = [weights.totalGrams, superfatPercent, lyeConcentrationPercent, waterPercentOfOils]
  if (told.every(Number.isFinite)) return []
  const path = order.mould ? 'mould.volumeMl' : 'oilGrams'
  return [{ path, message: 'No weights come of this. Give a size that a scale can weigh.' }]
}

/** What a batch is too small to show on the scale in use. */
function nothingLeft(weights: Weights, { scale }: BatchOrder): Problem[] {
  if (!scale) return []
  const lost = [
    ...Object.entries(weights.oilGrams).map(([oil, grams]) => ({ path: `blend.${oil}`, grams })),
    ...Object.entries(weights.alkaliGrams).map(([k, grams]) => ({ path: `alkali.${k}`, grams })),
  ].filter(({ grams }) => grams === 0)
  const message =
    'This rounds to 0 g on the scale in use. Make a larger batch, use a finer scale or leave it out.'
  return lost.map(({ path }) => ({ path, message }))
}

/** Lye concentrations outside these are unusual for bars, percent: common practice. */
const USUAL_CONCENTRATION_PERCENT = { min: 25, max: 40 }

function warningsOf(figures: BatchFigures): string[] {
  const { lyeConcentrationPercent: lye, superfatSpanPercent: span } = figures
  const { min, max } = USUAL_CONCENTRATION_PERCENT
  const warnings: string[] = []
  if (lye > max)
    warnings.push(
      `Lye at ${lye.toFixed(1)} % is stronger than the usual ${min} to ${max} %: it thickens fast and runs hot.`,
    )
  if (lye < min)
    warnings.push(
      `Lye at ${lye.toFixed(1)} % is weaker than the usual ${min} to ${max} %: slow to thicken, soft when young, shrinks more.`,
    )
  if (span.min < 0)
    warnings.push(
      `The leanest lots of these oils could leave free lye (superfat ${span.min.toFixed(1)} %). Ask for at least ${raise(figures)} % or use the supplier's saponification values.`,
    )
  return warnings
}

/** Step in which a safer superfat is offered, percent. */
const RAISE_STEP_PERCENT = 0.1

/** The superfat to ask for so that the leanest lots end at 0, percent. */
function raise({ superfatPercent: asked, superfatSpanPercent: span }: BatchFigures): string {
  const kept = (1 - fractionFromPercent(asked)) / (1 - fractionFromPercent(span.min))
  return roundedUp(percentFromFraction(1 - kept), RAISE_STEP_PERCENT).toFixed(1)
}
