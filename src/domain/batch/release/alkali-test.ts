import type { AlkaliKind } from '../../chemistry/alkali'

/** What every test for free alkali says of itself. */
interface TestFacts {
  /** Day of the test, YYYY-MM-DD. */
  readonly on: string
  /** Who made it. */
  readonly who: string
  /** The bar it was made on, as the maker marks bars. */
  readonly bar: string
  /** The batch it was made on, as `batchPin` writes it; a test without it stands for no batch. */
  readonly batch?: string | undefined
}

/** Soap dissolved in warm neutral alcohol, titrated with acid until phenolphthalein loses its colour. */
export interface Titration extends TestFacts {
  readonly way: 'titration'
  /** Acid used for the soap, ml. */
  readonly acidMl: number
  /** Acid used for the same alcohol without soap, ml; none where left out. */
  readonly blankMl?: number | undefined
  /** Acid in mol of hydrogen ions per litre, as the bottle says. */
  readonly normality: number
  /** Soap weighed in, g. */
  readonly sampleG: number
  /** The hydroxide that the result is given as; sodium hydroxide where left out. */
  readonly as?: AlkaliKind | undefined
}

/** The colour of phenolphthalein in soap dissolved in warm neutral alcohol. */
export interface ColourTest extends TestFacts {
  readonly way: 'phenolphthalein'
  /** Pink means that alkali is left. */
  readonly colour: 'colourless' | 'pink'
}

/** A test of a bar for free alkali. pH strips are none: they show the alkalinity of any soap. */
export type AlkaliTest = Titration | ColourTest

/** What is known of a batch after it was made, kept beside its order. */
export interface ReleaseRecord {
  readonly tests: readonly AlkaliTest[]
}

/** A batch of which nothing is known yet. */
export const NO_TESTS: ReleaseRecord = { tests: [] }

/** What tests are judged by (data/free-alkali.json). */
export interface AlkaliLimits {
  /** Most free caustic alkali that passes, percent of the bar as NaOH. */
  readonly mostPercent: number
  /** What a titration must be able to see, percent as NaOH. */
  readonly seePercent: number
  /** How far one reading of the burette may be off, ml. */
  readonly readingMl: number
  /** What the burette holds, ml. */
  readonly buretteMl: number
  /** Acid that is believed, mol per litre; under `weakUnder` the bottle is asked about. */
  readonly normality: { readonly least: number; readonly most: number; readonly weakUnder: number }
  /** Most soap that is believed to be one sample, g. */
  readonly mostSampleG: number
  /** What the limit rests on, in words to be printed beside it. */
  readonly restsOn: string
}
