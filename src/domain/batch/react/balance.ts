import { neutralisationWaterGrams } from '../../chemistry/acids'
import type { AlkaliShares } from '../../chemistry/alkali-shares'
import { fractionFromPercent } from '../../units'
import { type Charge, chargeOf, type Salt, saltsOf } from './charge'
import { factOf } from '../order/facts'
import { fatParts } from './fat-parts'
import { type FatOutcome, fatOutcome, type Reaction, reactionOf } from './outcome'
import type { Reckoning } from '../weigh/reckoning'
import { liquidFatG, liquidWaterG } from '../weigh/water-weights'
import { sum } from '../weigh/weights'

/** What the pot holds when all alkali has found its fat, g. */
export interface Balance {
  readonly soapG: number
  readonly glycerolG: number
  readonly unreactedFatG: number
  /** Fatty alcohols set free from a wax. */
  readonly waxAlcoholG: number
  /** Hydroxide left over, where there is more than fat and acids take. */
  readonly freeAlkaliG: number
  /** Salts of the acids. */
  readonly saltsG: number
  /** Additives without their water, and what liquids hold beside water and fat. */
  readonly additivesG: number
  readonly fragranceG: number
  /** All water: weighed, brought and formed; impurities of the hydroxide are counted with it. */
  readonly waterG: number
  /** Of that water: formed by acids, fatty ones too. */
  readonly waterFormedG: number
  /** Of that water: impurities of the hydroxide. */
  readonly impuritiesG: number
}

/** The batch after the reaction. */
export interface Outcome {
  readonly balance: Balance
  readonly fats: readonly FatOutcome[]
  readonly salts: readonly Salt[]
  /** The part of all equivalents that each alkali takes, as weighed, 0 to 1. */
  readonly alkaliShares: AlkaliShares
  /** Everything but water, g. */
  readonly solidsG: number
  /** Fatty acids, wax alcohols and unsaponifiables, g; predicted, not tested. */
  readonly totalFattyMatterG: number
}

/** What comes of the weights at typical values. Everything weighed is in it: the balance closes. */
export function outcomeOf(reckoning: Reckoning): Outcome {
  const { order, weights, library, facts } = reckoning
  const charge = chargeOf(reckoning)
  const parts = fatParts(order, weights, library, facts)
  const reaction = reactionOf(parts, charge.alkaliMol - charge.acidMol)
  const fats = parts.map((part) => fatOutcome(part, reaction, charge.shares))
  const salts = saltsOf(charge)
  const solids = solidsOf(reckoning, charge, reaction, fats, salts)
  return {
    balance: { ...solids, ...waterOf(reckoning, charge, fats) },
    fats,
    salts,
    alkaliShares: charge.shares,
    solidsG: sum(solids),
    totalFattyMatterG: totalOf(fats, 'fattyMatterG'),
  }
}

function solidsOf(
  { order, weights, facts }: Reckoning,
  charge: Charge,
  reaction: Reaction,
  fats: readonly FatOutcome[],
  salts: readonly Salt[],
) {
  const liquids = (order.liquids ?? []).map((use, index) => {
    const fact = factOf(facts.liquids, use.liquid)
    const grams = weights.liquidGrams[index] ?? 0
    return grams - liquidWaterG(use, fact, grams) - liquidFatG(use, fact, grams)
  })
  const additives = weights.additiveGrams.map(
    (grams, index) => grams * (1 - additiveWater(order.additives?.[index]?.additive, facts)),
  )
  return {
    soapG: fats.reduce((g, { soapG }) => g + soapG.naoh + soapG.koh, 0),
    glycerolG: totalOf(fats, 'glycerolG'),
    unreactedFatG: totalOf(fats, 'unreactedG'),
    waxAlcoholG: totalOf(fats, 'waxAlcoholG'),
    freeAlkaliG: reaction.freeMol * charge.gPerMol,
    saltsG: salts.reduce((g, { grams }) => g + grams, 0),
    additivesG: [...liquids, ...additives].reduce((g, one) => g + one, 0),
    fragranceG: sum(weights.fragranceGrams),
  }
}

function waterOf(
  { order, weights, facts }: Reckoning,
  { alkalis, acids, acidMol }: Charge,
  fats: readonly FatOutcome[],
) {
  const liquids = (order.liquids ?? []).map((use, index) =>
    liquidWaterG(use, factOf(facts.liquids, use.liquid), weights.liquidGrams[index] ?? 0),
  )
  const additives = weights.additiveGrams.map(
    (grams, index) => grams * additiveWater(order.additives?.[index]?.additive, facts),
  )
  const brought = [
    ...liquids,
    ...additives,
    ...acids.map(({ waterG }) => waterG),
    ...alkalis.map(({ waterG }) => waterG),
  ].reduce((g, one) => g + one, weights.waterGrams)
  const waterFormedG = totalOf(fats, 'waterG') + neutralisationWaterGrams(acidMol)
  const impuritiesG = alkalis.reduce((g, one) => g + one.grams - one.pureG - one.waterG, 0)
  return { waterG: brought + waterFormedG + impuritiesG, waterFormedG, impuritiesG }
}

function additiveWater(id: string | undefined, facts: Reckoning['facts']): number {
  return id === undefined ? 0 : fractionFromPercent(factOf(facts.additives, id).waterPercent)
}

function totalOf(
  fats: readonly FatOutcome[],
  of: 'glycerolG' | 'unreactedG' | 'waxAlcoholG' | 'waterG' | 'fattyMatterG',
): number {
  return fats.reduce((g, fat) => g + fat[of], 0)
}
