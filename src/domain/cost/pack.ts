import { GRAMS_PER_KG, gramsFrom, type MassUnit, ML_PER_LITRE } from '../units'

/** Units that packs are sold in. */
export type PackUnit = MassUnit | 'ml' | 'l'

/** An oil as it is bought; either figure may not be known yet. */
export interface Pack {
  /** What one pack holds, in `unit`. */
  readonly size?: number | undefined
  readonly unit: PackUnit
  /** Price of one pack, in the maker's money. */
  readonly price?: number | undefined
}

/** Mass of one pack in g; undefined where the size, or for a volume the density in g/ml, is not known. */
export function packGrams(pack: Pack, densityGPerMl: number | undefined): number | undefined {
  const { size, unit } = pack
  if (size === undefined) return undefined
  if (unit !== 'ml' && unit !== 'l') return gramsFrom(size, unit)
  if (densityGPerMl === undefined) return undefined
  return size * (unit === 'l' ? ML_PER_LITRE : 1) * densityGPerMl
}

/**
 * Price per kg of an oil bought in packs, in the maker's money; undefined where a figure is missing or
 * the pack holds nothing. A volume is turned into mass with the oil's density near 25 °C, in g/ml.
 */
export function pricePerKgOfPack(
  pack: Pack,
  densityGPerMl: number | undefined,
): number | undefined {
  const grams = packGrams(pack, densityGPerMl)
  if (grams === undefined || pack.price === undefined || !(grams > 0)) return undefined
  return (pack.price * GRAMS_PER_KG) / grams
}
