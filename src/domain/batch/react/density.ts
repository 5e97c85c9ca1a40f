import { type Library, oilOf } from '../../blend/library'
import { lyeDensityGPerMl } from '../../chemistry/lye-solution'
import { percentFromFraction } from '../../units'
import { chargeOf } from './charge'
import { factOf } from '../order/facts'
import type { Reckoning } from '../weigh/reckoning'
import { lyeWaterG } from '../weigh/water-weights'
import { sum } from '../weigh/weights'

/** The density of batter as poured, g/ml, and how it was come by. */
export interface BatterDensity {
  readonly gPerMl: number
  readonly lowGPerMl: number
  readonly highGPerMl: number
  readonly from: 'stated' | 'usual' | 'composition'
}

/** Temperature at which batter is poured, °C: common practice, 35 to 45. */
const POURED_C = 40

/** Temperature of the densities in data/oils.json, °C. */
const LISTED_C = 25

/** How much a fat lightens with heat, g/ml per K: 0.00065 for most oils (handbooks, recalled). */
const OIL_EXPANSION = 0.00065

/** Density of fats without one in the library, g/ml as if liquid near 25 °C: most lie in 0.90 to 0.92. */
const USUAL_FAT_G_PER_ML = 0.91

/** Density of fragrance, g/ml: essential oils lie in 0.84 to 1.06. */
const FRAGRANCE_G_PER_ML = 0.9

/** Density of the dry matter of milk, purée and acids' salts in the lye, g/ml: sugars and proteins, recalled. */
const DISSOLVED_G_PER_ML = 1.5

/**
 * How far a density from the composition may be off, as a part of it: an assumption. Stirred-in air
 * lightens by up to 3 %; mixing and the first soap tighten by 1 or 2 %.
 */
const UNCERTAINTY = 0.03

/**
 * Density of batter from what is in it, at 40 °C, on the rule that volumes add: Σ g / Σ (g / density).
 * Fats by the library, lye by the table of its strength, the rest by their own. Undefined without a
 * table of lye. Check: an everyday bar comes to about 1.00 to 1.05 (common practice).
 */
export function densityOfComposition(reckoning: Reckoning): BatterDensity | undefined {
  const volumeMl = batterMl(reckoning)
  if (volumeMl === undefined) return undefined
  const gPerMl = reckoning.weights.totalGrams / volumeMl
  return {
    gPerMl,
    lowGPerMl: gPerMl * (1 - UNCERTAINTY),
    highGPerMl: gPerMl * (1 + UNCERTAINTY),
    from: 'composition',
  }
}

function batterMl(reckoning: Reckoning): number | undefined {
  const { weights, library } = reckoning
  const lyeMl = lyeVolumeMl(reckoning)
  if (lyeMl === undefined) return undefined
  const fats = [...Object.entries(weights.oilGrams), ...Object.entries(weights.extraFatGrams)]
  const fatMl = fats.reduce((ml, [oil, grams]) => ml + grams / fatDensity(oil, library), 0)
  return fatMl + lyeMl + dryMl(reckoning) + sum(weights.fragranceGrams) / FRAGRANCE_G_PER_ML
}

function fatDensity(oil: string, library: Library): number {
  const listed = oilOf(library, oil).densityGPerMl ?? USUAL_FAT_G_PER_ML
  return listed - OIL_EXPANSION * (POURED_C - LISTED_C)
}

/** Volume of all water with the hydroxide in it at 40 °C, ml; of two alkalis, each as of the strength of both. */
function lyeVolumeMl(reckoning: Reckoning): number | undefined {
  const { weights, facts } = reckoning
  const { lye } = facts
  if (!lye) return undefined
  const { alkalis, shares } = chargeOf(reckoning)
  const hydroxideG = alkalis.reduce((g, one) => g + one.grams - one.waterG, 0)
  const waterG = lyeWaterG(weights.water) + weights.water.cookG
  const percent = percentFromFraction(hydroxideG / (hydroxideG + waterG))
  const gPerMl = (['naoh', 'koh'] as const).reduce(
    (sum, kind) => sum + shares[kind] * lyeDensityGPerMl(lye[kind], percent, POURED_C),
    0,
  )
  return (hydroxideG + waterG) / gPerMl
}

/** Volume of acids, of what liquids hold beside water, and of additives, ml. */
function dryMl({ order, weights, facts }: Reckoning): number {
  const lyeG = weights.water.fromAcidsG + weights.water.fromLiquidsG
  const othersG = [...weights.acidGrams, ...weights.liquidGrams].reduce((g, one) => g + one, -lyeG)
  const additives = weights.additiveGrams.reduce((ml, grams, index) => {
    const id = order.additives?.[index]?.additive
    return id === undefined ? ml : ml + grams / factOf(facts.additives, id).densityGPerMl
  }, 0)
  return Math.max(0, othersG) / DISSOLVED_G_PER_ML + additives
}
