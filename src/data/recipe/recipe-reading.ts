import type { Oil } from '../../domain/blend/oil'
import type { Amount } from '../../domain/batch/order/additions'
import type { Process, WaterRule } from '../../domain/batch/order/order'
import type { AlkaliKind } from '../../domain/chemistry/alkali'
import type { FormulaOutcome } from '../formula-outcome'

/** What a fact of a recipe is about. */
export type FactKind =
  | 'lye'
  | 'water'
  | 'superfat'
  | 'scent'
  | 'additive'
  | 'acid'
  | 'liquid'
  | 'size'
  | 'process'
  | 'total'

/** What one part of the text was read as. */
export type LineRead =
  /** A share, and grams where it was weighed; neither while it is not known how to reckon it. */
  | {
      readonly kind: 'oil'
      readonly oil: Oil
      readonly sharePercent?: number | undefined
      readonly grams?: number | undefined
      readonly note?: string | undefined
    }
  /** Such as “Your lye”, “142 g”, “read as sodium hydroxide”. */
  | {
      readonly kind: FactKind
      readonly name: string
      readonly figure: string
      readonly note?: string | undefined
    }
  | {
      readonly kind: 'unread'
      /** What the name was, where one was made out. */
      readonly name: string
      /** In a few words, beside the line: “a cup is no weight”. */
      readonly short: string
      /** What is wrong and what to do, a sentence without its full stop. */
      readonly reason: string
      /** The oil it is about, where only its weight is missing. */
      readonly oil?: Oil | undefined
      /** Oils it may mean, the nearest first. */
      readonly candidates: readonly Oil[]
      /** Whether it may be a fat, lye or acid: nothing is compared while one of these is unread. */
      readonly touchesLye: boolean
    }
  /** A heading or a sentence that says nothing to reckon with. */
  | { readonly kind: 'words' }

/** One part of the text, in its place: a line, or one of several things a line names. */
export interface RecipeLine {
  /** Line of the text, 0 the first; a name and figure on two lines have the first's. */
  readonly line: number
  readonly text: string
  readonly read: LineRead
}

/** A line that is not understood, as it stands in `lines`. */
export type UnreadRecipeLine = RecipeLine & { readonly read: Extract<LineRead, { kind: 'unread' }> }

/** Where a fact stood. */
interface Found {
  readonly line: number
  readonly text: string
}

/** Hydroxide that the recipe names; to be compared, never taken. */
export interface LyeFound extends Found, Amount {
  readonly alkali: AlkaliKind
  /** Pure hydroxide in what is weighed, percent, where the text says it. */
  readonly purityPercent?: number | undefined
}

/** How much water: in grams, or by a rule. */
export type WaterFound = Found & ({ readonly grams: number } | { readonly rule: WaterRule })

/** A scent: an id of data/essential-oils.json, or undefined for any other, under its name. */
export interface ScentFound extends Found, Amount {
  readonly scent?: string | undefined
  readonly name: string
}

/** Something the data know, by its id there. */
export interface ThingFound extends Found, Amount {
  readonly id: string
  /** Of an acid in solution, such as vinegar: percent of pure acid. */
  readonly strengthPercent?: number | undefined
}

/** How big the batch is to be. */
export type SizeFound = Found &
  (
    | { readonly bars: number; readonly barGrams?: number | undefined }
    /** Of the oils alone, or of all of it, or not said. */
    | { readonly grams: number; readonly of: 'oils' | 'all' | 'unsaid' }
    | { readonly mouldMl: number }
  )

/** The facts of a text beside its oils. */
export interface RecipeFacts {
  readonly lye: readonly LyeFound[]
  readonly water?: WaterFound | undefined
  readonly superfat?: (Found & { readonly percent: number }) | undefined
  readonly scents: readonly ScentFound[]
  readonly additives: readonly ThingFound[]
  readonly acids: readonly ThingFound[]
  readonly liquids: readonly ThingFound[]
  readonly size?: SizeFound | undefined
  readonly process?: (Found & { readonly process: Process }) | undefined
}

/** What the oils come to; percent that do not add to 100 are a question and never scaled unasked. */
export type RecipeOutcome = FormulaOutcome

/** A whole recipe: every line answered, what is not understood, and what it comes to. */
export interface RecipeReading {
  /** In the order of the text. */
  readonly lines: readonly RecipeLine[]
  /** Those of `lines` that are not understood. */
  readonly unread: readonly UnreadRecipeLine[]
  /** What a person should know about the whole. */
  readonly notes: readonly string[]
  readonly outcome: RecipeOutcome
  readonly found: RecipeFacts
}
