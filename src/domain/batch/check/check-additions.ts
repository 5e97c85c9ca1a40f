import { checkBlend, problem, type Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { WHOLE_PERCENT } from '../../units'
import type { Acid, Additive, Amount, Liquid } from '../order/additions'
import { between, fractionSlip, notNegative, partPercent } from './check-numbers'
import { isPaperNumber } from '../../blend/paper-number'
import { paperNumberMessage } from './check-words'
import type { AcidFact, BatchFacts } from '../order/facts'
import type { BatchOrder, ExtraFat } from '../order/order'

/** Most of an addition, percent of the oils: a salt bar holds as much salt as oil. */
const MOST_PERCENT_OF_OILS = 150
/** Most fat beside the blend, percent: beyond it the blend is the addition. */
const MOST_EXTRA_FAT_PERCENT = 50

/** What is wrong with all that goes in beside oils, hydroxide and water. */
export function additionProblems(
  order: BatchOrder,
  library: Library,
  facts: BatchFacts,
): Problem[] {
  return [
    ...(order.extraFat ? extraFatProblems(order.extraFat, order, library) : []),
    ...(order.acids ?? []).flatMap((one, i) => acidProblems(one, `acids[${i}]`, facts)),
    ...(order.liquids ?? []).flatMap((one, i) => liquidProblems(one, `liquids[${i}]`, facts)),
    ...(order.additives ?? []).flatMap((one, i) => additiveProblems(one, `additives[${i}]`, facts)),
  ]
}

function extraFatProblems(fat: ExtraFat, { process }: BatchOrder, library: Library): Problem[] {
  const early = fat.when === 'afterCook' && process !== 'hot'
  return [
    ...checkBlend(fat.oils, library, 'extraFat.oils'),
    ...between('extraFat.percent', fat.percent, {
      least: 0,
      most: MOST_EXTRA_FAT_PERCENT,
      unit: '%',
    }),
    ...(early
      ? [
          problem(
            'extraFat.when',
            'Fat after the cook needs a cook. Give "process": "hot", or put it in "withOils".',
          ),
        ]
      : []),
  ]
}

function acidProblems(acid: Acid, path: string, facts: BatchFacts): Problem[] {
  const fact = facts.acids.get(acid.acid)
  if (!fact) return [unknown(`${path}.acid`, acid.acid, facts.acids)]
  const { strengthPercent, strengthFromPercent, certificate } = acid
  const slips = [
    ...fractionSlip(`${path}.strengthPercent`, strengthPercent, 'strength'),
    ...fractionSlip(`${path}.strengthFromPercent`, strengthFromPercent, 'least strength'),
  ]
  if (slips.length > 0) return slips
  const weaker =
    strengthFromPercent !== undefined && strengthFromPercent > (strengthPercent ?? WHOLE_PERCENT)
  const unstated = fact.strength === 'stated' && strengthPercent === undefined
  return [
    ...amountProblems(acid, path),
    ...partPercent(`${path}.strengthPercent`, strengthPercent, 'strength'),
    ...partPercent(`${path}.strengthFromPercent`, strengthFromPercent, 'least strength'),
    ...(weaker
      ? [
          problem(
            `${path}.strengthFromPercent`,
            'The least strength is above the strength. Give less.',
          ),
        ]
      : []),
    ...(unstated
      ? [
          problem(
            `${path}.strengthPercent`,
            `${fact.name} is sold as a solution. Give its strength in percent by weight, such as ${fact.usualStrengthsPercent.join(' or ')}.`,
          ),
        ]
      : []),
    ...strongProblems(acid, fact, path),
    ...(certificate === undefined || isPaperNumber(certificate)
      ? []
      : [problem(`${path}.certificate`, paperNumberMessage(certificate))]),
  ]
}

/** How far above its usual strengths a solution may be stated without a paper, as a part: an assumption. */
const STRENGTH_SLACK = 0.1

/** A strength ten times too high brings ten times the hydroxide, so it has to be on paper. */
function strongProblems(
  { strengthPercent, certificate }: Acid,
  { name, usualStrengthsPercent }: AcidFact,
  path: string,
): Problem[] {
  if (strengthPercent === undefined || strengthPercent > WHOLE_PERCENT) return []
  if (usualStrengthsPercent.length === 0) return []
  const most = Math.max(...usualStrengthsPercent)
  if (strengthPercent <= most * (1 + STRENGTH_SLACK) || certificate !== undefined) return []
  return [
    problem(
      `${path}.strengthPercent`,
      `${name} of ${strengthPercent} %: it is usually sold with ${usualStrengthsPercent.join(' or ')} %. Look at the bottle again, or give the number on its certificate in ${path}.certificate.`,
    ),
  ]
}

function liquidProblems(liquid: Liquid, path: string, facts: BatchFacts): Problem[] {
  const fact = facts.liquids.get(liquid.liquid)
  if (!fact) return [unknown(`${path}.liquid`, liquid.liquid, facts.liquids)]
  const water = liquid.waterPercent ?? fact.waterPercent
  const fat = liquid.fatPercent ?? fact.fatPercent
  return [
    ...oneOf(path, { grams: liquid.grams, replacesPercent: liquid.replacesPercent }),
    ...notNegative(`${path}.grams`, liquid.grams, 'g'),
    ...partPercent(`${path}.replacesPercent`, liquid.replacesPercent, 'part of the water'),
    ...partPercent(`${path}.waterPercent`, liquid.waterPercent, 'water content'),
    ...notNegative(`${path}.fatPercent`, liquid.fatPercent, '%'),
    ...(water + fat > WHOLE_PERCENT
      ? [problem(path, `Water and fat of this liquid come to ${water + fat} %. Give less of one.`)]
      : []),
  ]
}

function additiveProblems(additive: Additive, path: string, facts: BatchFacts): Problem[] {
  if (!facts.additives.has(additive.additive))
    return [unknown(`${path}.additive`, additive.additive, facts.additives)]
  return amountProblems(additive, path)
}

/** Grams or percent of the oils, one of the two and no nonsense. */
export function amountProblems({ grams, percentOfOils }: Amount, path: string): Problem[] {
  return [
    ...oneOf(path, { grams, percentOfOils }),
    ...notNegative(`${path}.grams`, grams, 'g'),
    ...between(`${path}.percentOfOils`, percentOfOils, {
      least: 0,
      most: MOST_PERCENT_OF_OILS,
      unit: '% of the oils',
    }),
  ]
}

function oneOf(path: string, values: Readonly<Record<string, number | undefined>>): Problem[] {
  const given = Object.values(values).filter((value) => value !== undefined)
  if (given.length === 1) return []
  return [problem(path, `Give either ${Object.keys(values).join(' or ')}, and not both.`)]
}

/** The problem of an id that no fact has. */
export function unknown(path: string, id: string, facts: ReadonlyMap<string, unknown>): Problem {
  const known =
    facts.size > 0 ? `Use one of ${[...facts.keys()].join(', ')}.` : 'None is known here.'
  return problem(path, `There is no "${id}". ${known}`)
}
