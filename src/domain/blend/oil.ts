import type { Basis } from '../chemistry/fatty-acid'
import type { WaxRest } from '../chemistry/ester'
import type { AcidBinding } from '../chemistry/saponification'
import type { Ends } from '../interval'

/** A figure that varies by nature: the range of sound lots and the value to reckon with. */
export interface NaturalRange extends Ends {
  readonly typical: number
}

/** How a figure was found to vary from lot to lot, where somebody measured many. */
export interface MeasuredSpread {
  /** Standard deviation over the lots, in the figure's unit. */
  readonly sd: number
  readonly lots: number
  readonly source: string
}

/** A natural range with where its limits and its typical value come from (ids of data/sources.json). */
export interface SourcedRange extends NaturalRange {
  readonly basis: Basis
  readonly source: string
  readonly typicalBasis: Basis
  readonly typicalSource: string
  /** The low end that was printed, where this project reckons with a lower one. */
  readonly printedLow?: number | undefined
  readonly spread?: MeasuredSpread | undefined
}

/** What the fat is made of; decides which formula its alkali and glycerol follow. */
export type OilKind = AcidBinding

/** What an oil chiefly brings; gives it its texture and its place in a composition strip. */
export type OilFamily = 'lauric' | 'hard' | 'oleic' | 'polyunsaturated' | 'ricinoleic'

/** What is known of an oil that a maker described. */
export interface OwnFacts {
  /** Id of the library's oil that it was copied from. */
  readonly from: string
  readonly lot?: string | undefined
  readonly certificate?: string | undefined
  /** Why no lye is reckoned for it, and what to do; left out where lye may be. */
  readonly noLye?: string | undefined
}

/** One oil, fat, wax or fatty acid that can go into a bar. */
export interface Oil {
  readonly id: string
  readonly name: string
  /** Name for tables and strips, at most 16 letters. */
  readonly shortName: string
  /** Three or four letters for narrow strip segments. */
  readonly code: string
  readonly kind: OilKind
  readonly family: OilFamily
  /** #RRGGBB, the same in every theme. */
  readonly colour: string
  /** Such as vegan, animal, palm-derived, tree-nut. */
  readonly tags: readonly string[]
  /** Other names people type for it. */
  readonly synonyms: readonly string[]
  /** INCI names; null where none is known for sure. */
  readonly inci: {
    readonly oil: string | null
    readonly sodiumSoap: string | null
    readonly potassiumSoap: string | null
    readonly basis: Basis
    readonly source: string
  }
  /** Fatty acids in g per 100 g of fatty acids, by acid id; an acid left out is below detection. */
  readonly acids: Readonly<Record<string, SourcedRange>>
  /** mg KOH per g of oil (ISO 3657). */
  readonly saponificationValue: SourcedRange
  /**
   * What of it alkali really reaches in a workshop, 0 to 1, by process; waxes only, all of any other fat.
   */
  readonly reacts?:
    | {
        readonly cold: NaturalRange
        readonly hot: NaturalRange
        readonly basis: Basis
        readonly source: string
      }
    | undefined
  /** What a wax sets free beside its acids; left out for jojoba, and for what is no wax. */
  readonly waxRest?: (WaxRest & { readonly basis: Basis; readonly source: string }) | undefined
  /** g iodine per 100 g of oil (ISO 3961). */
  readonly iodineValue: SourcedRange
  /** Unsaponifiable matter in g per kg of oil; high is the limit of the standard where there is one. */
  readonly unsaponifiableGPerKg: {
    readonly typical: number
    readonly high: number
    readonly basis: Basis
    readonly source: string
    readonly typicalBasis: Basis
    readonly typicalSource: string
  }
  /** g/ml near 25 °C; null for fats that are solid there or where no figure was found. */
  readonly densityGPerMl: number | null
  /** Melting point or range end in °C; null for oils that are liquid at room temperature. */
  readonly meltingC: number | null
  /** Basis of density and melting point. */
  readonly physicalBasis: Basis
  readonly cas: string | null
  /** Of a maker's own oil: what it was copied from, and what its figures stand on. */
  readonly own?: OwnFacts | undefined
  /** What a reader should know before trusting the row. */
  readonly note: string | null
}
