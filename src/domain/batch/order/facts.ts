import type { Ends } from '../../interval'
import type { AcidMolecule } from '../../chemistry/acids'
import type { AlkaliKind } from '../../chemistry/alkali'
import type { Basis } from '../../chemistry/fatty-acid'
import type { LyeTable } from '../../chemistry/lye-solution'

/** Every fact carries how sure it is and where it comes from. */
interface Fact {
  readonly id: string
  readonly name: string
  readonly basis: Basis
  readonly source: string
  readonly note: string | null
}

/** An acid, or a salt that takes hydroxide like one (data/acids.json). */
export interface AcidFact extends Fact, AcidMolecule {
  /** Sold pure, or as a solution whose strength must be stated. */
  readonly strength: 'pure' | 'stated'
  readonly usualStrengthsPercent: readonly number[]
  /** Pure acid, percent of the oils: what workshops use, and the most that is no slip of the pen. */
  readonly usualPercentOfOils: Ends
  readonly mostPercentOfOils: number
  /** How much of what is stated is in it at the least, 0 to 1: moisture, age, a rounded label. */
  readonly leastPart: number
  /** Id of the same acid in a form that holds less of it, which a bag may be taken for. */
  readonly weakerForm: string | null
  readonly inci: string
  readonly saltInci: Readonly<Record<AlkaliKind, string>>
}

/** A liquid that takes the place of water (data/liquids.json). */
export interface LiquidFact extends Fact {
  readonly waterPercent: number
  readonly fatPercent: number
  /** Of its fat, mg KOH/g; 0 where it has none. */
  readonly fatSaponificationValue: number
  readonly inci: string
  /** Sugars, milk or alcohol in it heat the lye and make it foam. */
  readonly heatsUp: boolean
  /** What it is that people may be allergic to, in a word. */
  readonly allergenWord: string | null
}

/** When something is put in. */
export type AdditiveStage = 'water' | 'lye' | 'oils' | 'trace'

/** A thing dosed by the oils' weight that takes no alkali (data/additives.json). */
export interface AdditiveFact extends Fact {
  readonly usualPercentOfOils: Ends
  readonly waterPercent: number
  readonly densityGPerMl: number
  readonly stage: AdditiveStage
  readonly colourant: boolean
  readonly heatsUp: boolean
  /** Sodium chloride: asks for a salt bar's superfat and cutting time where there is much of it. */
  readonly salt: boolean
  readonly inci: string
}

/** One allergen's share of a fragrance, percent by weight. */
export interface Constituent {
  readonly allergen: string
  readonly lowPercent: number
  readonly highPercent: number
}

/** An essential oil (data/essential-oils.json). */
export interface ScentFact extends Fact {
  readonly inci: string
  /** The allergen the oil is listed as by itself, if any. */
  readonly listedAs: string | null
  readonly flashC: Ends | null
  readonly usualPercentOfOils: Ends
  readonly constituents: readonly Constituent[]
}

/** What a batch can be reckoned with beside oils. */
export interface BatchFacts {
  readonly acids: ReadonlyMap<string, AcidFact>
  readonly liquids: ReadonlyMap<string, LiquidFact>
  readonly additives: ReadonlyMap<string, AdditiveFact>
  readonly scents: ReadonlyMap<string, ScentFact>
  /** Null where heat and density of lye are not to be reckoned. */
  readonly lye: Readonly<Record<AlkaliKind, LyeTable>> | null
}

/** Nothing but oils, hydroxide and water. */
export const NO_FACTS: BatchFacts = {
  acids: new Map(),
  liquids: new Map(),
  additives: new Map(),
  scents: new Map(),
  lye: null,
}

/** The fact of that id; throws for an unknown id, which the checks never let through. */
export function factOf<T>(facts: ReadonlyMap<string, T>, id: string): T {
  const fact = facts.get(id)
  if (!fact) throw new Error(`Unknown ${id}`)
  return fact
}
