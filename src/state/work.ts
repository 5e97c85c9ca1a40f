import type { Blend } from '../domain/blend/blend'
import type { OwnOil } from '../domain/blend/own-oil'
import type { Bar } from './bar'
import type { BatchChoices } from './batch-choices'
import type { Draft } from './draft'
import type { Ledger } from './ledger'
import type { Pasting } from './pasting'

export type { BatchChoices } from './batch-choices'

/** A blend put on the Bench to be compared. */
export interface Candidate {
  readonly id: string
  /** Capital letter by which map and Bench name it; stays with it for good. */
  readonly letter: string
  readonly name: string
  readonly note: string
  readonly blend: Blend
  /** Where it came from, in words: "pinned on the map", "harder with the same lather". */
  readonly from: string
}

/** Candidates in the order of their columns, and which of them the others are compared with. */
export interface BenchSheet {
  readonly candidates: readonly Candidate[]
  readonly reference: string | undefined
  /** Letters given out so far: one taken off is not given again while others stand. */
  readonly lettersGiven?: number
  /** Weight of one bar as poured, g, for its cost. */
  readonly barGrams?: number
}

/** By what the oils of the shelf are ordered. */
export type ShelfOrder = 'share' | 'name' | 'price'

/** Everything a person has put in: what is kept between visits and what undo goes back over. */
export interface Work {
  readonly brief: Draft
  readonly batch: BatchChoices
  readonly bench: BenchSheet
  /** The maker's own bar; left out while none was begun. */
  readonly bar?: Bar | undefined
  /** Oils of the maker's own, each as it is described; left out while there is none. */
  readonly ownOils?: readonly OwnOil[] | undefined
  /** Left out means by share. */
  readonly shelfOrder?: ShelfOrder | undefined
  /** Left out while no formula is being pasted. */
  readonly pasting?: Pasting | undefined
  /** Left out while nothing was put into the Ledger. */
  readonly ledger?: Ledger | undefined
}
