import type { Formula } from '../chemistry/formula'

/** One name that a label may have to carry (data/allergens.json). */
export interface Allergen {
  readonly id: string
  /** As it stands on the label. */
  readonly name: string
  /** Number in Annex III of Regulation (EC) 1223/2009. */
  readonly annexEntry: number
  readonly cas: readonly string[]
  /** On the older list, or added by Regulation (EU) 2023/1545. */
  readonly listed: 'older' | '2023'
  /** An ester or phenol that takes hydroxide, and what else it may become; null for none. */
  readonly alkali: {
    readonly formula: Formula
    readonly molesPerMol: number
    readonly forms: { readonly allergen: string; readonly formula: Formula } | null
  } | null
  /** A limit of its own in the finished product, percent, where one is known. */
  readonly mostPercentInProduct: number | null
  readonly note: string | null
}

/** The names and the share from which they must stand on a product that is rinsed off. */
export interface AllergenList {
  /** Month to which the list was looked up, YYYY-MM. */
  readonly asOf: string
  readonly source: string
  /** Percent of the finished product; above it the name stands on the label. */
  readonly rinseOffLimitPercent: number
  readonly banned: readonly { readonly name: string; readonly cas: string }[]
  readonly allergens: readonly Allergen[]
}
