import { MOLAR_MASS_WATER } from '../chemistry/atoms'
import {
  boilingC,
  heatCapacityJPerGK,
  heatOfSolutionKj,
  lyeDensityGPerMl,
  type LyeTable,
} from '../chemistry/lye-solution'
import type { AlkaliKind } from '../chemistry/alkali'
import { percentFromFraction } from '../units'
import { acidTakes } from './acid-weights'
import { type Charge, chargeOf } from './charge'
import { factOf } from './facts'
import type { Reckoning } from './reach'
import type { Remedy } from './remedy'
import { roundedDown } from './rounding'
import { jugWaterG, liquidWaterG } from './water-weights'

/** What happens in the jug when hydroxide meets water. */
export interface LyeHeat {
  readonly startC: number
  /** The hottest it can get if no heat were lost, °C. An open jug, stirred slowly, stays below. */
  readonly ceilingC: number
  readonly uncertaintyK: number
  /** Where a lye of this strength boils, °C. */
  readonly boilsC: number
  readonly level: 'calm' | 'hot' | 'mayBoil'
  readonly heatKj: number
  /** All that is in the jug, g, and its strength in pure hydroxide, percent by weight. */
  readonly solutionG: number
  readonly pureConcentrationPercent: number
  /** At 20 °C. */
  readonly densityGPerMl: number
  readonly volumeMl: number
  readonly advice: readonly string[]
}

/** Temperature of tap water where an order does not say, °C. */
export const USUAL_START_C = 20

/** Ceilings from which to warn, °C, and how near the boiling point to warn, K: a rule of this project. */
const WARN_C = { hot: 95, mayBoil: 105 }
const NEAR_BOILING_K = 10

/** Heat of melting ice, J/g, and of warming its water, J per g and K: CRC Handbook, recalled. */
const ICE_MELTING_J_PER_G = 334
const WATER_J_PER_G_K = 4.18

/**
 * Heat set free for each mol of hydroxide an acid takes, kJ: 55.8 for strong acids at 25 °C (CRC Handbook,
 * recalled); weak acids give 55 to 56 or a little less, so this is a ceiling.
 */
const NEUTRALISATION_KJ_PER_MOL = 55.8

/** Strength above which cold keeps some NaOH from dissolving, percent at 0 °C: 418 g in a litre of water. */
const DISSOLVES_ICE_COLD_PERCENT = 29.5
const ICE_COLD_C = 5

const J_PER_KJ = 1000
const VOLUME_AT_C = 20

/**
 * The ceiling: T = start + Q / (m·cp), with Q = Σ n·ΔH(r) for solid hydroxide at r mol of water per mol
 * (a solution gives only the difference to its own strength), plus what acids give, less what ice takes:
 * 334 J/g to melt and 4.18 J/g·K to reach the start. No heat is lost to the jug or the air. Undefined
 * without tables.
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
  const heatKj = dissolvingKj(charge, jug.waterG, lye) + acidKj(charge)
  const iceKj =
    ((order.lye?.iceGrams ?? 0) * (ICE_MELTING_J_PER_G + WATER_J_PER_G_K * startC)) / J_PER_KJ
  const capacity = mixed((table) => heatCapacityJPerGK(table, jug.percent)) * jug.massG
  const ceilingC = startC + ((heatKj - iceKj) * J_PER_KJ) / capacity
  const boilsC = mixed((table) => boilingC(table, jug.percent))
  const densityGPerMl = mixed((table) => lyeDensityGPerMl(table, jug.percent, VOLUME_AT_C))
  const level = levelOf(ceilingC, boilsC)
  return {
    startC,
    ceilingC,
    uncertaintyK: mixed(({ peakUncertaintyK }) => peakUncertaintyK),
    boilsC,
    level,
    heatKj,
    solutionG: jug.massG,
    pureConcentrationPercent: jug.percent,
    densityGPerMl,
    volumeMl: jug.massG / densityGPerMl,
    advice: adviceOn(reckoning, { level, startC, percent: jug.percent }),
  }
}

/** The part of the water to take as ice where the lye may boil: common practice. */
const ICE_PART = 0.5

/** Ice for half of the plain water where a lye may boil and has none yet. */
export function iceRemedies({ order, weights }: Reckoning, heat: LyeHeat | null): Remedy[] {
  const iceGrams = roundedDown(weights.water.plainG * ICE_PART, order.scale?.oilStepG)
  const needed = heat?.level === 'mayBoil' && (order.lye?.iceGrams ?? 0) === 0 && iceGrams > 0
  if (!needed) return []
  return [
    { answers: 'heat', says: 'Half the water as ice', change: { lye: { ...order.lye, iceGrams } } },
  ]
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
  { alkalis, alkaliMol }: Charge,
  waterG: number,
  lye: Readonly<Record<AlkaliKind, LyeTable>>,
): number {
  const waterPerMol = waterG / MOLAR_MASS_WATER / alkaliMol
  return alkalis.reduce((kj, { kind, equivalentsMol, waterG: ownG }) => {
    const whole = heatOfSolutionKj(lye[kind], waterPerMol)
    const before =
      ownG > 0 ? heatOfSolutionKj(lye[kind], ownG / MOLAR_MASS_WATER / equivalentsMol) : 0
    return kj + equivalentsMol * Math.max(0, whole - before)
  }, 0)
}

function acidKj({ acids, alkaliMol }: Charge): number {
  return Math.min(acidTakes(acids, 'all'), alkaliMol) * NEUTRALISATION_KJ_PER_MOL
}

function levelOf(ceilingC: number, boilsC: number): LyeHeat['level'] {
  if (ceilingC >= WARN_C.mayBoil || ceilingC >= boilsC - NEAR_BOILING_K) return 'mayBoil'
  return ceilingC >= WARN_C.hot ? 'hot' : 'calm'
}

function adviceOn(
  { order, facts }: Reckoning,
  lye: { level: LyeHeat['level']; startC: number; percent: number },
): string[] {
  const advice: string[] = []
  if (lye.level === 'mayBoil')
    advice.push(
      'It may boil if the hydroxide goes in fast: take ice for part of the water, add it by spoonfuls, and never pour water onto it.',
    )
  if (lye.level === 'hot')
    advice.push('It gets very hot: begin with cold water and add the hydroxide slowly.')
  const foaming = (order.liquids ?? []).filter(
    ({ liquid, when }) => when === 'lye' && factOf(facts.liquids, liquid).heatsUp,
  )
  if (foaming.length > 0)
    advice.push(
      'Milk, sugars and beer heat the lye further and make it foam: freeze them first, use a jug four times as large.',
    )
  const cold = lye.startC <= ICE_COLD_C || foaming.length > 0
  if (cold && lye.percent > DISSOLVES_ICE_COLD_PERCENT)
    advice.push(
      `Ice-cold lye holds only about ${DISSOLVES_ICE_COLD_PERCENT} % hydroxide, and this is ${lye.percent.toFixed(1)} %: stir until no grain is left, or grains burn in the bar.`,
    )
  return advice
}
