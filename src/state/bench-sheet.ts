import { type Blend, totalChange } from '../domain/blend/blend'
import type { BenchSheet, Candidate } from './work'

/** As many candidates as stand on the Bench at once. */
export const MOST_CANDIDATES = 50

/** A blend to be put on the Bench. */
export interface Entry {
  readonly name: string
  readonly blend: Blend
  /** Where it came from, in words. */
  readonly from: string
}

const ALPHABET = 26
const CODE_OF_A = 65

/** The letter of the so-manieth candidate, from 0: A to Z, then AA, AB. */
export function letterOf(number: number): string {
  const last = String.fromCharCode(CODE_OF_A + (number % ALPHABET))
  return number < ALPHABET ? last : letterOf(Math.floor(number / ALPHABET) - 1) + last
}

/** The candidate the others are compared with: the chosen one, or else the first. */
export function referenceOf({ candidates, reference }: BenchSheet): Candidate | undefined {
  return candidates.find(({ id }) => id === reference) ?? candidates[0]
}

/** Candidates in the order of their columns: the reference, then the others as they were put. */
export function inColumns(sheet: BenchSheet): readonly Candidate[] {
  const reference = referenceOf(sheet)
  if (!reference) return []
  return [reference, ...sheet.candidates.filter((one) => one !== reference)]
}

/** Blends closer than this in total change are the same blend, in percentage points. */
const SAME_POINTS = 0.05

/** Whether two blends are one for anyone who weighs them. */
export function isSameBlend(a: Blend, b: Blend): boolean {
  return totalChange(a, b) < SAME_POINTS
}

/** The candidate of that blend, if it stands on the Bench already. */
export function candidateOf(sheet: BenchSheet, blend: Blend): Candidate | undefined {
  return sheet.candidates.find((one) => isSameBlend(one.blend, blend))
}

/**
 * The sheet with blends put at its end, as many as there is room for, each with the next letter. A
 * letter given once is not given again until the Bench has been emptied.
 */
export function withEntries(sheet: BenchSheet, entries: readonly Entry[]): BenchSheet {
  const room = MOST_CANDIDATES - sheet.candidates.length
  const given = sheet.candidates.length === 0 ? 0 : (sheet.lettersGiven ?? sheet.candidates.length)
  const added = entries.slice(0, room).map(({ name, blend, from }, index): Candidate => {
    const letter = letterOf(given + index)
    return { id: `candidate-${letter}`, letter, name, note: '', blend, from }
  })
  if (added.length === 0) return sheet
  return {
    ...sheet,
    candidates: [...sheet.candidates, ...added],
    lettersGiven: given + added.length,
  }
}

/** The sheet without a candidate. */
export function withoutCandidate(sheet: BenchSheet, id: string): BenchSheet {
  const candidates = sheet.candidates.filter((one) => one.id !== id)
  return { ...sheet, candidates, reference: sheet.reference === id ? undefined : sheet.reference }
}

/** The sheet with another name or note on a candidate. */
export function withWords(
  sheet: BenchSheet,
  id: string,
  words: Partial<Pick<Candidate, 'name' | 'note'>>,
): BenchSheet {
  const candidates = sheet.candidates.map((one) => (one.id === id ? { ...one, ...words } : one))
  return { ...sheet, candidates }
}

/** The sheet with a candidate moved to a column; column 0 is the reference's and is not taken. */
export function withMoved(sheet: BenchSheet, id: string, column: number): BenchSheet {
  const columns = inColumns(sheet)
  const [reference] = columns
  const moved = columns.find((one) => one.id === id)
  if (!reference || !moved || moved === reference) return sheet
  const others = columns.filter((one) => one !== reference && one !== moved)
  const place = Math.min(Math.max(1, column), columns.length - 1)
  if (columns[place] === moved) return sheet
  others.splice(place - 1, 0, moved)
  return { ...sheet, reference: reference.id, candidates: [reference, ...others] }
}

/** The sheet in the order of a value, most or least first; candidates without the value come last. */
export function withOrder(
  sheet: BenchSheet,
  valueOf: (candidate: Candidate) => number | undefined,
  first: 'most' | 'least',
): BenchSheet {
  const sign = first === 'most' ? -1 : 1
  const rank = (one: Candidate) => {
    const value = valueOf(one)
    return value === undefined ? Infinity : sign * value
  }
  const candidates = [...sheet.candidates].sort((a, b) => {
    const [x, y] = [rank(a), rank(b)]
    return x === y ? 0 : x - y
  })
  return { ...sheet, reference: referenceOf(sheet)?.id, candidates }
}
