import { fractionFromPercent } from '../../units'

/** The inside of a mould: one of these. Lengths in mm. */
export type MouldShape =
  | { readonly volumeMl: number }
  | { readonly boxMm: BoxMm }
  /** A loaf whose sides lean: its width at the bottom and at the fill line. */
  | { readonly loafMm: LoafMm }
  | { readonly cylinderMm: { readonly diameter: number; readonly length: number } }
  | { readonly cavities: { readonly count: number; readonly volumeMl: number } }
  /** Water that fills it, weighed at about 20 °C. */
  | { readonly waterGrams: number }

export interface BoxMm {
  readonly length: number
  readonly width: number
  readonly height: number
}

export interface LoafMm {
  readonly length: number
  readonly bottomWidth: number
  readonly topWidth: number
  readonly height: number
}

/** A mould to fill. */
export type Mould = MouldShape & {
  /** How much of the volume the batter takes, percent; left out means all of it. */
  readonly fillPercent?: number | undefined
  /** Density of the batter in g/ml; see `batterDensity` for what is taken where it is left out. */
  readonly densityGPerMl?: number | undefined
  /** How many such moulds; 1 where left out. */
  readonly count?: number | undefined
}

/** So many bars of such a weight, which is meant wet, dry, or as it will be declared. */
export interface Bars {
  readonly count: number
  readonly grams: number
  readonly weight: 'wet' | 'cured' | 'declared'
  /** Lost in cutting and trimming, percent of the bars' weight. */
  readonly trimPercent?: number | undefined
}

/** How what comes out of the mould is cut. */
export type Cut =
  | { readonly thicknessMm: number }
  /** Weight of a bar as cut, g. */
  | { readonly barGrams: number }

/** Density of water at 20 °C, g/ml: CRC Handbook. */
const WATER_G_PER_ML = 0.9982

/** Cubic millimetres in a millilitre. */
const MM3_PER_ML = 1000

/** Volume of one mould to its brim (or fill line) in ml. */
export function mouldVolumeMl(mould: MouldShape): number {
  if ('volumeMl' in mould) return mould.volumeMl
  if ('waterGrams' in mould) return mould.waterGrams / WATER_G_PER_ML
  if ('cavities' in mould) return mould.cavities.count * mould.cavities.volumeMl
  if ('boxMm' in mould) {
    const { length, width, height } = mould.boxMm
    return (length * width * height) / MM3_PER_ML
  }
  if ('loafMm' in mould) {
    const { length, bottomWidth, topWidth, height } = mould.loafMm
    return (length * ((bottomWidth + topWidth) / 2) * height) / MM3_PER_ML
  }
  const { diameter, length } = mould.cylinderMm
  return (Math.PI * (diameter / 2) ** 2 * length) / MM3_PER_ML
}

/** Volume of batter to pour, over all moulds, in ml. */
export function pouredMl(mould: Mould): number {
  const fill = mould.fillPercent === undefined ? 1 : fractionFromPercent(mould.fillPercent)
  return mouldVolumeMl(mould) * fill * (mould.count ?? 1)
}

/** Length of a mould that is cut across, in mm; undefined where it is not cut so. */
export function cutLengthMm(mould: Mould): number | undefined {
  if ('boxMm' in mould) return mould.boxMm.length
  if ('loafMm' in mould) return mould.loafMm.length
  return 'cylinderMm' in mould ? mould.cylinderMm.length : undefined
}
