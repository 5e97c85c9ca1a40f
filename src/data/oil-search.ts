import type { Oil } from '../domain/blend/oil'
import { editDistance } from './edit-distance'
import { spellings, wordsOf } from './name-words'

/** An oil found by what was typed. */
export interface FoundOil {
  readonly oil: Oil
  /** The name that fits, where it is another than the oil's own: “Kokosöl”. */
  readonly by?: string | undefined
}

/** How well a name fits, the best first. */
const RANKS = { start: 0, otherStart: 1, meant: 2, within: 3, slip: 4, none: 5 }

/** Beginnings shorter than this are not guessed at. */
const LETTERS_FOR_A_SLIP = 4

/**
 * The oils that fit a text, all of them for an empty one: whose name starts with it, then another name, then
 * the one that it means, then names and tags that hold it, then beginnings one slip away.
 */
export function rankedOils(
  text: string,
  names: ReadonlyMap<Oil, readonly string[]>,
  meant: Oil | undefined,
): FoundOil[] {
  const typed = keyOf(text)
  if (typed === '') return [...names.keys()].map((oil) => ({ oil }))
  return [...names]
    .map(([oil, called]) => ({ oil, ...bestOf(typed, oil, called, meant === oil) }))
    .filter(({ rank }) => rank < RANKS.none)
    .sort((a, b) => a.rank - b.rank)
    .map(({ oil, by }) => ({ oil, by }))
}

function bestOf(typed: string, oil: Oil, called: readonly string[], isMeant: boolean) {
  const own = rankOf(typed, oil.name, true)
  const others = called.map((name) => ({ by: name, rank: rankOf(typed, name, false) }))
  const tag = oil.tags.some((one) => keyOf(one).includes(typed)) ? RANKS.within : RANKS.none
  const found = [
    { by: undefined, rank: own },
    { by: undefined, rank: isMeant ? RANKS.meant : RANKS.none },
    ...others,
    { by: undefined, rank: tag },
  ]
  return found.reduce((best, one) => (one.rank < best.rank ? one : best))
}

function rankOf(typed: string, name: string, isOwn: boolean): number {
  return Math.min(
    ...spellings(name).map((spelt) => {
      const key = keyOf(spelt)
      if (isOwn && key.startsWith(typed)) return RANKS.start
      if (` ${key}`.includes(` ${typed}`)) return RANKS.otherStart
      if (key.includes(typed)) return RANKS.within
      return isSlip(typed, key) ? RANKS.slip : RANKS.none
    }),
  )
}

/** Whether a word begins as typed but for one slip. */
function isSlip(typed: string, key: string): boolean {
  if (typed.length < LETTERS_FOR_A_SLIP) return false
  const lengths = [typed.length - 1, typed.length, typed.length + 1]
  const starts = [key, ...key.split(' ')]
  return starts.some(
    (start) =>
      start.startsWith(typed.charAt(0)) &&
      lengths.some((length) => editDistance(typed, start.slice(0, length), 1) <= 1),
  )
}

function keyOf(text: string): string {
  return wordsOf(text).join(' ')
}

/** Oils whose names share words with those given, or nearly, the most alike first. */
export function relatedOils(
  words: readonly string[],
  names: ReadonlyMap<Oil, readonly string[]>,
): Oil[] {
  if (words.length === 0) return []
  return [...names]
    .map(([oil, called]) => {
      const own = new Set(called.flatMap(wordsOf))
      return { oil, alike: words.filter((word) => own.has(word) || isNear(word, own)).length }
    })
    .filter(({ alike }) => alike > 0)
    .sort((a, b) => b.alike - a.alike)
    .map(({ oil }) => oil)
}

/** Slips between words that may be meant for each other, for each so many letters. */
const LETTERS_A_SLIP = 3

function isNear(word: string, others: ReadonlySet<string>): boolean {
  const most = Math.floor(word.length / LETTERS_A_SLIP)
  return [...others].some((other) => editDistance(word, other, most) <= most && other.length > most)
}
