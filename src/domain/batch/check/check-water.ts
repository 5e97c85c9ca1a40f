import { problem, type Problem } from '../../blend/check-blend'
import { percentFromFraction, WHOLE_PERCENT } from '../../units'
import { between, fractionSlip, notNegative, positive } from './check-numbers'
import { dissolving, MOST_LYE_CONCENTRATION_PERCENT } from '../order/dissolving'
import type { BatchOrder, WaterRule } from '../order/order'

/** Most extra water for a cook, percent of oils, and the start temperatures that water can have, °C. */
const MOST_COOK_WATER_PERCENT = 100
const START_C = { least: 0, most: 100, unit: '°C' }

/** What is wrong with the water of an order, as far as it shows before anything is weighed. */
export function waterProblems(order: BatchOrder): Problem[] {
  const { water } = order
  return [
    ...('onlyFromLiquids' in water ? liquidsOnlyProblems(order) : ruleProblems(water)),
    ...between('cook.extraWaterPercentOfOils', order.cook?.extraWaterPercentOfOils, {
      least: 0,
      most: MOST_COOK_WATER_PERCENT,
      unit: '% of the oils',
    }),
    ...coldCookProblems(order),
    ...between('lye.startC', order.lye?.startC, START_C),
    ...notNegative('lye.iceGrams', order.lye?.iceGrams, 'g of ice'),
  ]
}

function coldCookProblems({ process, cook }: BatchOrder): Problem[] {
  if (!cook || process === 'hot') return []
  return [
    problem(
      'cook',
      'Water to boil off belongs to a hot process. Give "process": "hot" or take it out.',
    ),
  ]
}

function ruleProblems(water: WaterRule): Problem[] {
  if ('ratio' in water) {
    const concentration = percentFromFraction(1 / (1 + water.ratio))
    return [
      ...positive('water.ratio', water.ratio, 'g of water per g of hydroxide'),
      ...(water.ratio > 0 ? dissolving('water.ratio', concentration) : []),
    ]
  }
  if ('percentOfOils' in water) {
    const slip = fractionSlip('water.percentOfOils', water.percentOfOils, 'water')
    return slip.length > 0
      ? slip
      : positive('water.percentOfOils', water.percentOfOils, '% of the oils')
  }
  const { lyeConcentration } = water
  const slip = fractionSlip('water.lyeConcentration', lyeConcentration, 'lye concentration')
  if (slip.length > 0) return slip
  if (!(lyeConcentration > 0 && lyeConcentration < WHOLE_PERCENT)) {
    const message = `The lye concentration is ${lyeConcentration} %. Give more than 0 and at most ${MOST_LYE_CONCENTRATION_PERCENT} %.`
    return [problem('water.lyeConcentration', message)]
  }
  return dissolving('water.lyeConcentration', lyeConcentration)
}

function liquidsOnlyProblems(order: BatchOrder): Problem[] {
  const replacing = (order.liquids ?? []).findIndex(
    ({ replacesPercent }) => replacesPercent !== undefined,
  )
  if (replacing >= 0)
    return [
      problem(
        `liquids[${replacing}].replacesPercent`,
        'Where all water comes from liquids there is none to replace a part of. Give the liquid in grams.',
      ),
    ]
  const brings = (order.liquids ?? []).length + (order.acids ?? []).length
  if (brings > 0 || Object.keys(order.lyeSolution ?? {}).length > 0) return []
  return [problem('water', 'No liquid brings any water. Add one, or say how much water to weigh.')]
}
