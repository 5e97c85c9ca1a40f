import { plain, problem, type Problem } from '../../blend/check-blend'
import { fractionFromPercent, percentFromFraction } from '../../units'
import { weighedAcids } from '../weigh/acid-weights'
import { chargeOf } from '../react/charge'
import { dissolving } from '../order/dissolving'
import { lyeHeat } from '../react/heat'
import { heatBlock } from './heat-block'
import type { BatchOrder } from '../order/order'
import { endsOf, errorsOf } from '../superfat/reach'
import type { Reckoning } from '../weigh/reckoning'
import { waterPath } from '../order/water-path'
import { jugWaterG } from '../weigh/water-weights'
import { sum, type Weights } from '../weigh/weights'

/** Water over what was asked that rounding and guessing may leave, as a part of what was asked. */
const WATER_SLACK = 0.005

/** What a batch is too small to show on the scale in use. */
export function nothingLeft(weights: Weights, order: BatchOrder): Problem[] {
  if (!order.scale) return []
  const asked = (amount: { grams?: number | undefined; percentOfOils?: number | undefined }) =>
    (amount.grams ?? amount.percentOfOils ?? 0) > 0
  const listed = (name: 'acids' | 'additives', grams: readonly number[]) =>
    grams.flatMap((g, i) => {
      const one = order[name]?.[i]
      return one && asked(one) ? [{ path: `${name}[${i}]`, grams: g }] : []
    })
  const keyed = (name: string, grams: Readonly<Record<string, number | undefined>>) =>
    Object.entries(grams).map(([id, g]) => ({ path: `${name}.${id}`, grams: g ?? 0 }))
  const lost = [
    ...keyed('blend', weights.oilGrams),
    ...keyed('alkali', weights.alkaliGrams),
    ...listed('acids', weights.acidGrams),
    ...listed('additives', weights.additiveGrams),
    ...(order.fragrance && asked(order.fragrance)
      ? keyed('fragrance.blend', weights.fragranceGrams)
      : []),
  ].filter(({ grams }) => grams === 0)
  const message =
    'This rounds to 0 g on the scale in use. Make a larger batch, use a finer scale or leave it out.'
  return lost.map(({ path }) => ({ path, message }))
}

/** What only the weights tell. */
export function lateProblems(reckoning: Reckoning): Problem[] {
  return [
    ...acidProblems(reckoning),
    ...acidDoseProblems(reckoning),
    ...waterOverProblems(reckoning),
    ...iceProblems(reckoning),
    ...scaleProblems(reckoning),
    ...dissolving(waterPath(reckoning.order), jugConcentrationPercent(reckoning)),
    ...boilingProblems(reckoning),
  ]
}

/** A lye that would boil out of its jug. */
function boilingProblems(reckoning: Reckoning): Problem[] {
  const block = heatBlock(reckoning, lyeHeat(reckoning) ?? null)
  return block ? [problem(block.path, block.message)] : []
}

/** Hydroxide with its impurities in what the jug holds while it dissolves, percent by weight. */
export function jugConcentrationPercent(reckoning: Reckoning): number {
  const { alkalis } = chargeOf(reckoning)
  const hydroxideG = alkalis.reduce((g, one) => g + one.grams - one.waterG, 0)
  return percentFromFraction(hydroxideG / (hydroxideG + jugWaterG(reckoning.weights.water)))
}

function acidProblems(reckoning: Reckoning): Problem[] {
  const { alkaliMol, acidMol } = chargeOf(reckoning)
  if (acidMol < alkaliMol) return []
  return [problem('acids', 'The acids take all the hydroxide there is. Give less acid.')]
}

/** An acid beyond any dose that is no slip of the pen; its hydroxide would be as far out. */
function acidDoseProblems({ order, weights, facts }: Reckoning): Problem[] {
  const oils = sum(weights.oilGrams)
  return weighedAcids(order, weights.acidGrams, facts).flatMap(({ pureG, fact }, index) => {
    const percent = percentFromFraction(pureG / oils)
    const most = fact.mostPercentOfOils
    if (!(percent > most)) return []
    return [
      problem(
        `acids[${index}]`,
        `${fact.name}: ${plain(percent)} % of the oils as pure acid, and more than ${most} % is a slip of the pen (usual: ${fact.usualPercentOfOils.low} to ${fact.usualPercentOfOils.high} %). Give at most ${(oils * fractionFromPercent(most)).toFixed(0)} g of pure acid.`,
      ),
    ]
  })
}

/** A batch that a slip of the scale could make to nothing. */
function scaleProblems(reckoning: Reckoning): Problem[] {
  if (endsOf(reckoning, 'low', errorsOf(reckoning.order), 'inCook').fatMol > 0) return []
  return [
    problem(
      'scale.oilStepG',
      'The oils weigh no more than the scale may be off. Make a larger batch or use a finer scale.',
    ),
  ]
}

function waterOverProblems({ order, weights }: Reckoning): Problem[] {
  const { askedG } = weights.water
  const steps = 1 + (order.liquids ?? []).length
  const slack = askedG * WATER_SLACK + (order.scale?.oilStepG ?? 0) * steps
  if (weights.waterOverG <= slack) return []
  const brought = askedG + weights.waterOverG
  return [
    problem(
      waterPath(order),
      `Liquids, acids and lye solution bring ${brought.toFixed(0)} g of water, ${weights.waterOverG.toFixed(0)} g more than asked for. ` +
        'Take less of them, ask for more water, or give water { "onlyFromLiquids": true }.',
    ),
  ]
}

function iceProblems({ order, weights }: Reckoning): Problem[] {
  const ice = order.lye?.iceGrams ?? 0
  const plain = weights.water.plainG + weights.water.cookG
  if (ice <= plain) return []
  return [
    problem(
      'lye.iceGrams',
      `The ice weighs ${ice} g and the water ${plain.toFixed(0)} g. Give less ice.`,
    ),
  ]
}

/** More of a fragrance than its certificate allows in the finished soap: `finishedG` g of it, bars at their driest. */
export function ifraProblems({ order, weights }: Reckoning, finishedG: number): Problem[] {
  return Object.entries(order.fragrance?.certificates ?? {}).flatMap(
    ([id, { ifraMostPercent }]) => {
      const grams = weights.fragranceGrams[id] ?? 0
      const percent = percentFromFraction(grams / finishedG)
      if (ifraMostPercent === undefined || percent <= ifraMostPercent) return []
      const most = finishedG * fractionFromPercent(ifraMostPercent)
      return [
        problem(
          `fragrance.certificates.${id}`,
          `${id} would be ${percent.toFixed(2)} % of the finished soap; its certificate allows ${ifraMostPercent} %, which is ${most.toFixed(1)} g here. Give less.`,
        ),
      ]
    },
  )
}
