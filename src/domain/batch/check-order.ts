import type { Library } from '../blend/library'
import type { AlkaliKind } from '../chemistry/alkali'
import {
  checkBlend,
  plain,
  problem,
  type Problem,
  SHARE_SUM_SLACK_PERCENT,
  shareProblem,
} from '../blend/check-blend'
import { percentFromFraction, WHOLE_PERCENT } from '../units'
import { alkalisOf, type BatchOrder } from './order'

/**
 * Hydroxide above this part of the solution does not stay dissolved, percent by weight. A saturated
 * solution of NaOH holds about 52 % at 20 °C and 50 % starts to freeze near 14 °C (handbook solubility
 * tables); KOH holds a little more, and is kept to the same limit.
 */
export const MOST_LYE_CONCENTRATION_PERCENT = 50

/** Step of the finest balance that stands outside a laboratory, in g: common practice. */
const FINEST_STEP_G = 0.001

const KINDS: readonly AlkaliKind[] = ['naoh', 'koh']

/** All that is wrong with a batch order; empty when it can be weighed out. */
export function checkOrder(order: BatchOrder, library: Library): Problem[] {
  return [
    ...checkBlend(order.blend, library, 'blend'),
    ...sizeProblems(order),
    ...alkaliProblems(order),
    ...superfatProblems(order.superfat),
    ...waterProblems(order),
    ...scaleProblems(order),
  ]
}

function sizeProblems({ oilGrams, mould }: BatchOrder): Problem[] {
  if ((oilGrams === undefined) === (mould === undefined))
    return [problem('oilGrams', 'Give either the weight of all oils or a mould, and not both.')]
  if (oilGrams !== undefined) return positive('oilGrams', oilGrams, 'g of oils')
  if (mould === undefined) return []
  const fill = mould.fillPercent
  return [
    ...positive('mould.volumeMl', mould.volumeMl, 'ml'),
    ...(fill === undefined || (fill > 0 && fill <= WHOLE_PERCENT)
      ? []
      : [
          problem(
            'mould.fillPercent',
            `The fill is ${fill} %. Give more than 0 and at most 100 %.`,
          ),
        ]),
    ...(mould.densityGPerMl === undefined
      ? []
      : positive('mould.densityGPerMl', mould.densityGPerMl, 'g/ml')),
  ]
}

function alkaliProblems(order: BatchOrder): Problem[] {
  const wrong = KINDS.flatMap((kind) => {
    const share = order.alkali[kind]
    if (share === undefined || (share >= 0 && share <= WHOLE_PERCENT)) return []
    return [shareProblem(`alkali.${kind}`, share)]
  })
  if (wrong.length > 0) return wrong
  const total = (order.alkali.naoh ?? 0) + (order.alkali.koh ?? 0)
  if (Math.abs(total - WHOLE_PERCENT) > SHARE_SUM_SLACK_PERCENT)
    return [problem('alkali', alkaliSumMessage(total))]
  return alkalisOf(order).flatMap((kind) => purityProblems(kind, order.purity[kind]))
}

function alkaliSumMessage(total: number): string {
  return `The alkalis turn ${plain(total)} % of the fat to soap; their shares add to 100 %. Change them until they do.`
}

function purityProblems(kind: AlkaliKind, purity: number | undefined): Problem[] {
  if (purity === undefined || (purity > 0 && purity <= WHOLE_PERCENT)) return []
  const message = `The purity is ${purity} %. Give more than 0 and at most 100 %; the bag or its certificate states it.`
  return [problem(`purity.${kind}`, message)]
}

function superfatProblems(superfat: number): Problem[] {
  if (superfat >= 0 && superfat < WHOLE_PERCENT) return []
  const reason =
    superfat < 0
      ? 'Below 0 the bar keeps free lye and burns skin.'
      : 'At 100 % no lye is left to make soap.'
  return [problem('superfat', `The superfat is ${superfat} %. Give 0 to under 100 %. ${reason}`)]
}

function waterProblems(order: BatchOrder): Problem[] {
  const { water } = order
  if ('ratio' in water) {
    const concentration = percentFromFraction(1 / (1 + water.ratio))
    return [
      ...positive('water.ratio', water.ratio, 'g of water per g of hydroxide'),
      ...(water.ratio > 0 ? dissolving('water.ratio', concentration) : []),
    ]
  }
  if ('percentOfOils' in water)
    return positive('water.percentOfOils', water.percentOfOils, '% of the oils')
  const { lyeConcentration } = water
  if (!(lyeConcentration > 0 && lyeConcentration < WHOLE_PERCENT)) {
    const message = `The lye concentration is ${lyeConcentration} %. Give more than 0 and at most ${MOST_LYE_CONCENTRATION_PERCENT} %.`
    return [problem('water.lyeConcentration', message)]
  }
  return dissolving('water.lyeConcentration', lyeConcentration)
}

/** A lye too strong to dissolve, in percent of hydroxide by weight. */
export function dissolving(path: string, concentrationPercent: number): Problem[] {
  if (concentrationPercent <= MOST_LYE_CONCENTRATION_PERCENT) return []
  const message =
    `The lye would hold ${concentrationPercent.toFixed(1)} % hydroxide, and more than ` +
    `${MOST_LYE_CONCENTRATION_PERCENT} % does not stay dissolved. Give more water.`
  return [problem(path, message)]
}

function scaleProblems({ scale }: BatchOrder): Problem[] {
  if (!scale) return []
  return [
    ...stepProblems('scale.oilStepG', scale.oilStepG),
    ...stepProblems('scale.lyeStepG', scale.lyeStepG),
  ]
}

function stepProblems(path: string, stepG: number): Problem[] {
  if (Number.isFinite(stepG) && stepG >= FINEST_STEP_G) return []
  const message = `The scale shows steps of ${stepG} g. Give its step, ${FINEST_STEP_G} g or more.`
  return [problem(path, message)]
}

function positive(path: string, value: number, unit: string): Problem[] {
  if (Number.isFinite(value) && value > 0) return []
  return [problem(path, `The value is ${value} ${unit}. Give a number above 0.`)]
}
