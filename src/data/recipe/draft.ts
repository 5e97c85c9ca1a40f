import type { Oil } from '../../domain/blend/oil'
import type { Amount as Typed } from '../amount-text'
import type { EntryReading } from '../formula-lines'
import type { FactKind, RecipeFacts, SizeFound } from './recipe-reading'
import type { AlkaliKind } from '../../domain/chemistry/alkali'

/** One part of the text as it stood, with the line it began on. */
export interface Entry {
  readonly line: number
  readonly text: string
}

/** What is dosed by weight, and so waits for the unit of the oils. */
export type Dosed =
  | { readonly is: 'lye'; readonly alkali: AlkaliKind }
  | { readonly is: 'water' }
  | { readonly is: 'scent'; readonly id?: string | undefined; readonly name: string }
  | { readonly is: 'additive' | 'acid' | 'liquid'; readonly id: string; readonly name: string }
  /** A sum that the text gives itself: of the oils, or of everything. */
  | { readonly is: 'total'; readonly of: 'oils' | 'all' }

/** An entry as far as it can be understood by itself. */
export type Draft =
  | { readonly kind: 'oil'; readonly entry: EntryReading }
  | {
      readonly kind: 'dosed'
      readonly what: Dosed
      readonly amounts: readonly Typed[]
      readonly strengthPercent?: number | undefined
      readonly note?: string | undefined
    }
  /** A fact that needs nothing else. */
  | {
      readonly kind: 'fact'
      readonly about: FactKind
      readonly name: string
      readonly figure: string
      readonly note?: string | undefined
      readonly fact: FactFound
    }
  | Unread
  | { readonly kind: 'words' }

/** What a fact adds to the recipe. */
export type FactFound =
  | { readonly water: { readonly rule: NonNullable<RuleOf<RecipeFacts['water']>> } }
  | { readonly solution: SolutionFound }
  | { readonly superfat: number }
  | { readonly size: WithoutPlace<SizeFound> }
  | { readonly process: 'cold' | 'hot' }

/** Lye bought or kept as a solution: its hydroxide and its water. */
export interface SolutionFound {
  readonly alkali: AlkaliKind
  readonly grams: number
  readonly strengthPercent: number
}

type RuleOf<T> = T extends { readonly rule: infer Rule } ? Rule : never
type WithoutPlace<T> = T extends unknown ? Omit<T, 'line' | 'text'> : never

/** What is not understood, and why; see `recipe-reading.ts`. */
export interface Unread {
  readonly kind: 'unread'
  readonly name: string
  readonly short: string
  readonly reason: string
  readonly oil?: Oil | undefined
  readonly candidates: readonly Oil[]
  readonly touchesLye: boolean
}

/** An entry that is not understood; without candidates, and taken to touch the lye. */
export function unread(
  reason: string,
  short: string,
  more: Partial<Omit<Unread, 'kind' | 'reason' | 'short'>> = {},
): Unread {
  return { kind: 'unread', name: '', candidates: [], touchesLye: true, ...more, reason, short }
}
