import type { Blend } from '../../blend/blend'
import { fractionFromPercent } from '../../units'
import type { Constituent } from './facts'

/** How much of something: exactly one of the two. */
export interface Amount {
  readonly grams?: number | undefined
  /** Percent of the weight of the blend's oils. */
  readonly percentOfOils?: number | undefined
}

/** An acid, or a salt that takes hydroxide like one. */
export interface Acid extends Amount {
  /** An id of data/acids.json. */
  readonly acid: string
  /** Pure acid in what is weighed, percent by weight; 100 where left out. */
  readonly strengthPercent?: number | undefined
  /** The least its strength may really be, percent; for the span only. */
  readonly strengthFromPercent?: number | undefined
  /** Number or lot of the paper that states a strength above the usual ones, or a narrower span. */
  readonly certificate?: string | undefined
  /** The bag itself says that it is this form (anhydrous) and not the other. */
  readonly formSure?: boolean | undefined
  /** Weigh the hydroxide it takes on top, or let it raise the superfat. */
  readonly alkali: 'add' | 'leave'
}

/** A liquid in the place of water: grams, or the part of the water it replaces. */
export interface Liquid {
  /** An id of data/liquids.json. */
  readonly liquid: string
  readonly grams?: number | undefined
  /** Percent of the water asked for that is to come from this liquid. */
  readonly replacesPercent?: number | undefined
  /** Its own water content, percent; the library's where left out. */
  readonly waterPercent?: number | undefined
  /** Its own fat, percent; the library's where left out. */
  readonly fatPercent?: number | undefined
  /** Into the lye, or into the oils at trace, which leaves the lye stronger until then. */
  readonly when: 'lye' | 'trace'
}

/** A thing dosed by the oils. */
export interface Additive extends Amount {
  /** An id of data/additives.json. */
  readonly additive: string
}

/** What a supplier says of one fragrance. */
export interface Certificate {
  /** Its listed allergens; goes before the library's. */
  readonly allergens?: readonly Constituent[] | undefined
  /** The most of it in a finished product of IFRA category 9, percent. */
  readonly ifraMostPercent?: number | undefined
  /** Which amendment, which date. */
  readonly ifraStatement?: string | undefined
  readonly flashC?: number | undefined
}

/** What the bars smell of. */
export interface Fragrance extends Amount {
  /** Its parts in percent of its weight, by id of data/essential-oils.json or by any name with a certificate. */
  readonly blend: Blend
  readonly certificates?: Readonly<Record<string, Certificate>> | undefined
}

/** An amount in g beside so many grams of oils. */
export function gramsOf({ grams, percentOfOils }: Amount, oilG: number): number {
  return grams ?? oilG * fractionFromPercent(percentOfOils ?? 0)
}
