import { MOLAR_MASS_WATER } from '../../chemistry/atoms'
import {
  boilingC,
  boundHeatKj,
  heatCapacityJPerGK,
  heatOfSolutionKj,
  lyeDensityGPerMl,
  type LyeTable,
} from '../../chemistry/lye-solution'
import type { AlkaliKind } from '../../chemistry/alkali'
import { percentFromFraction } from '../../units'
import { acidTakes } from '../weigh/acid-weights'
import { type Charge, chargeOf } from './charge'
import { factOf } from '../order/facts'
import { heatAdvice } from './heat-advice'
import type { BatchOrder } from '../order/order'
import { contentUpTo } from '../order/purity'
import type { Reckoning } from '../weigh/reckoning'
import { jugWaterG, liquidWaterG } from '../weigh/water-weights'

/** What happens in the jug when hydroxide meets water. */
export interface LyeHeat {
  readonly startC: number
  /** What an open jug comes to while the hydroxide is stirred in over minutes, °C, and its usual span. */
  readonly expectedC: number
  readonly expectedLowC: number
  readonly expectedHighC: number
  /** The hottest it could get if it all dissolved at once and no heat were lost, °C. */
  readonly ceilingC: number
  /** How far the ceiling may be wrong, K either way. */
  readonly uncertaintyK: number
  /** Where a lye of this strength boils at 1 atm, °C. */
  readonly boilsC: number
  /**
   * By the ceiling: `hot` from 95 °C, `mayBoil` from 5 K (or what the ceiling may be wrong by) under the boiling
   * point, `boils` where it lies above it by more than it may be wrong by: such an order is refused, so no plan
   * has it. Two percent of citric acid in lye of 33 % come to the boiling point itself and are warned of.
   */
  readonly level: 'calm' | 'hot' | 'mayBoil' | 'boils'
  readonly heatKj: number
  /** All that is in the jug, g, and its strength in pure hydroxide, percent by weight. */
  readonly solutionG: number
  readonly pureConcentrationPercent: number
  /** At 20 °C. */
  readonly densityGPerMl: number
  readonly volumeMl: number
  /** What to do about it; the first line is about the heat itself, where there is any. */
  readonly advice: readonly string[]
}

/** Temperature of tap water where an order does not say, °C. */
export const USUAL_START_C = 20

/**
 * A ceiling from which lye is called hot, °C, and how near the boiling point to warn at the least, K: rules of
 * this project. Where the ceiling may be wrong by more than that, the warning begins as much earlier.
 */
const HOT_C = 95
const NEAR_BOILING_K = 5

/**
 * The part of the rise above the start that an open jug keeps: an assumption (data/lye-solution.md), so chosen
 * that lye of 30 to 35 % from 20 °C comes to the 70 to 95 °C that workshops measure (common practice). A
 * large jug, or hydroxide put in fast, keeps more; only the ceiling decides about warnings and blocks.
 */
export const OPEN_JUG_KEEPS = { low: 0.6, usual: 0.7, high: 0.8 }

/** Heat of melting ice, J/g, and of warming its water, J per g and K: CRC Handbook, recalled. */
const ICE_MELTING_J_PER_G = 334
const WATER_J_PER_G_K = 4.18

/**
 * Heat set free for each mol of hydroxide an acid takes, kJ: 55.8 for strong acids at 25 °C (CRC Handbook,
 * recalled); weak acids give 55 to 56 or a little less, so this is a ceiling.
 */
const NEUTRALISATION_KJ_PER_MOL = 55.8

const J_PER_KJ = 1000
const VOLUME_AT_C = 20

/**
 * The ceiling: T = start + Q / (m·cp), with Q = Σ n·ΔH(r) for solid hydroxide at r mol of water per mol
 * (less what water bound in it already gave; a solution gives only the difference to its own strength), plus
 * what acids give, less what ice takes: 334 J/g to melt and 4.18 J/g·K to reach the start. No heat is lost to
 * the jug or the air. Expected is start + 0.7 of the rise. Undefined without tables.
 */
export function lyeHeat(reckoning: Reckoning): LyeHeat | undefined {
  const { order, facts } = reckoning
  const { lye } = facts
  if (!lye) return undefined
  const charge = chargeOf(reckoning)
  const jug = jugOf(reckoning, charge)
  const mixed = (read: (table: LyeTable) => number) =>
    charge.shares.naoh * read(lye.naoh) + charge.shares.koh * read(lye.koh)
  const startC = order.lye?.startC ?? USUAL_START_C
  const heatKj = dissolvingKj(order, charge, jug.waterG, lye) + acidKj(charge)
  const capacity = mixed((table) => heatCapacityJPerGK(table, jug.percent)) * jug.massG
  const riseK = ((heatKj - iceKj(order, startC)) * J_PER_KJ) / capacity
  const boilsC = mixed((table) => boilingC(table, jug.percent))
  const uncertaintyK = mixed(({ peakUncertaintyK }) => peakUncertaintyK)
  const densityGPerMl = mixed((table) => lyeDensityGPerMl(table, jug.percent, VOLUME_AT_C))
  const heat = {
    startC,
    ...expectedFrom(startC, riseK),
    ceilingC: startC + riseK,
    uncertaintyK,
    boilsC,
    level: levelOf(startC + riseK, boilsC, uncertaintyK),
    heatKj,
    solutionG: jug.massG,
    pureConcentrationPercent: jug.percent,
    densityGPerMl,
    volumeMl: jug.massG / densityGPerMl,
  }
  return { ...heat, advice: heatAdvice(reckoning, heat) }
}

/** What an open jug comes to; where ice takes more than the hydroxide gives there is nothing to lose. */
function expectedFrom(startC: number, riseK: number) {
  const kept = (part: number) => startC + (riseK > 0 ? riseK * part : riseK)
  return {
    expectedC: kept(OPEN_JUG_KEEPS.usual),
    expectedLowC: kept(OPEN_JUG_KEEPS.low),
    expectedHighC: kept(OPEN_JUG_KEEPS.high),
  }
}

/** What the ice of an order takes until it is as warm as the water, kJ. */
function iceKj({ lye }: BatchOrder, startC: number): number {
  return ((lye?.iceGrams ?? 0) * (ICE_MELTING_J_PER_G + WATER_J_PER_G_K * startC)) / J_PER_KJ
}

/** What is in the jug while it dissolves: liquids and acids that go into the lye are there. */
function jugOf({ order, weights, facts }: Reckoning, { alkalis, acids }: Charge) {
  const waterG = jugWaterG(weights.water)
  const pureG = alkalis.reduce((g, one) => g + one.pureG, 0)
  const hydroxideG = alkalis.reduce((g, one) => g + one.grams - one.waterG, 0)
  const dryAcidsG = acids.reduce((g, one) => g + one.grams - one.waterG, 0)
  const dryLiquidsG = (order.liquids ?? []).reduce((g, use, index) => {
    const grams = use.when === 'lye' ? (weights.liquidGrams[index] ?? 0) : 0
    return g + grams - liquidWaterG(use, factOf(facts.liquids, use.liquid), grams)
  }, 0)
  const massG = waterG + hydroxideG + dryAcidsG + dryLiquidsG
  return { waterG, massG, percent: percentFromFraction(pureG / massG) }
}

function dissolvingKj(
  order: BatchOrder,
  { alkalis, alkaliMol }: Charge,
  waterG: number,
  lye: Readonly<Record<AlkaliKind, LyeTable>>,
): number {
  const waterPerMol = waterG / MOLAR_MASS_WATER / alkaliMol
  return alkalis.reduce((kj, { kind, form, equivalentsMol, waterG: ownG }) => {
    const whole = heatOfSolutionKj(lye[kind], waterPerMol)
    const before =
      form === 'solution'
        ? heatOfSolutionKj(lye[kind], ownG / MOLAR_MASS_WATER / equivalentsMol)
        : boundHeatKj(lye[kind], kind, percentFromFraction(contentUpTo(order, kind)))
    return kj + equivalentsMol * Math.max(0, whole - before)
  }, 0)
}

function acidKj({ acids, alkaliMol }: Charge): number {
  return Math.min(acidTakes(acids, 'all'), alkaliMol) * NEUTRALISATION_KJ_PER_MOL
}

function levelOf(ceilingC: number, boilsC: number, uncertaintyK: number): LyeHeat['level'] {
  if (ceilingC - uncertaintyK > boilsC) return 'boils'
  if (ceilingC >= boilsC - Math.max(NEAR_BOILING_K, uncertaintyK)) return 'mayBoil'
  return ceilingC >= HOT_C ? 'hot' : 'calm'
}
