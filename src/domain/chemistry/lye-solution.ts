import { fractionFromPercent } from '../units'
import { ALKALI_MOLAR_MASS, type AlkaliKind } from './alkali'
import { MOLAR_MASS_WATER } from './atoms'
import { interpolated } from './interpolate'

/** A figure at a strength, percent of pure hydroxide by weight. */
export interface AtStrength {
  readonly percent: number
  readonly value: number
}

/** An alkali sold with water bound in it: that part gave off its heat when it was made. */
export interface BoundWater {
  /** Heat a mol of hydroxide gave when it took up a mol of water, kJ. */
  readonly kjPerMol: number
  /** The purest that is sold, percent; no alkali is taken to hold less water than that. */
  readonly mostPurePercent: number
  /** The purest that a usual bag may be, though it states less, percent. */
  readonly usualMostPercent: number
}

/** What is known of one hydroxide in water (data/lye-solution.json). */
export interface LyeTable {
  /** Heat set free per mol of solid, kJ, by mol of water per mol of hydroxide; null is endless water. */
  readonly heatOfSolution: readonly {
    readonly waterPerAlkaliMol: number | null
    readonly kjPerMol: number
  }[]
  /** J per g and K near 20 to 25 °C. */
  readonly heatCapacityJPerGK: readonly AtStrength[]
  /** g/ml at some temperatures, which rise. */
  readonly densityGPerMl: readonly {
    readonly tempC: number
    readonly points: readonly AtStrength[]
  }[]
  /** Boiling point at 1 atm, °C. */
  readonly boilingC: readonly AtStrength[]
  /** Water that the dry alkali holds as its hydrate; null where what is beside the alkali is not water. */
  readonly boundWater: BoundWater | null
  /** What a litre of ice-cold water keeps dissolved: percent of pure hydroxide by weight at 0 °C. */
  readonly iceColdHolds: { readonly percent: number }
  /** How far a reckoned peak temperature may be wrong, K. */
  readonly peakUncertaintyK: number
}

/**
 * Heat in kJ that a mol of solid hydroxide sets free in `waterMol` mol of water. Read in 1/r (r mol of
 * water per mol), where the table is nearly straight and endless water is 0. Valid from the strongest
 * row (about 50 %) down.
 */
export function heatOfSolutionKj({ heatOfSolution }: LyeTable, waterPerAlkaliMol: number): number {
  const rows = heatOfSolution
    .map((row) => ({
      x: row.waterPerAlkaliMol === null ? 0 : 1 / row.waterPerAlkaliMol,
      y: row.kjPerMol,
    }))
    .sort((a, b) => a.x - b.x)
  return interpolated(rows, 1 / waterPerAlkaliMol)
}

/**
 * Heat in kJ per mol that dry alkali no longer gives, as it holds a mol of water for a part of its own mol:
 * n(H2O) / n(KOH) × 42.97. `mostPurePercent` is the purest that the bag may be: less water is bound in it
 * then, so less heat is taken off. By hand, KOH of 92 %: (8 / 18.015) / (92 / 56.105) = 0.2708; 11.6 kJ.
 */
export function boundHeatKj(
  { boundWater }: LyeTable,
  kind: AlkaliKind,
  mostPurePercent: number,
): number {
  if (!boundWater) return 0
  const purest = Math.max(mostPurePercent, boundWater.usualMostPercent)
  const pure = fractionFromPercent(Math.min(purest, boundWater.mostPurePercent))
  const waterPerAlkaliMol = (1 - pure) / MOLAR_MASS_WATER / (pure / ALKALI_MOLAR_MASS[kind])
  return waterPerAlkaliMol * boundWater.kjPerMol
}

/** Heat capacity in J per g and K of a solution of `percent` pure hydroxide by weight. */
export function heatCapacityJPerGK({ heatCapacityJPerGK: rows }: LyeTable, percent: number) {
  return interpolated(rows.map(asPoint), percent)
}

/** Boiling point in °C at 1 atm of a solution of `percent` pure hydroxide by weight. */
export function boilingC({ boilingC: rows }: LyeTable, percent: number): number {
  return interpolated(rows.map(asPoint), percent)
}

/** Density in g/ml of a solution of `percent` pure hydroxide by weight at `tempC` °C. */
export function lyeDensityGPerMl({ densityGPerMl }: LyeTable, percent: number, tempC: number) {
  const atStrength = densityGPerMl.map((column) => ({
    x: column.tempC,
    y: interpolated(column.points.map(asPoint), percent),
  }))
  return interpolated(atStrength, tempC)
}

function asPoint({ percent, value }: AtStrength) {
  return { x: percent, y: value }
}
