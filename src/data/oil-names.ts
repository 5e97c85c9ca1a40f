import type { Oil } from '../domain/blend/oil'
import { editDistance } from './edit-distance'
import { wordsOf } from './name-words'

/** Which oil a name means, or why it can't be said. */
export type NamedOil =
  | { readonly status: 'oil'; readonly oil: Oil; readonly note?: string | undefined }
  | { readonly status: 'several'; readonly oils: readonly Oil[] }
  | { readonly status: 'unknown' }

/** Words that say how an oil was made or bought, and not which oil it is. */
const MANNERS = new Set(
  (
    'organic raw pure natural virgin extra refined unrefined crude filtered unfiltered cold warm pressed expeller ' +
    'deodorised deodorized bleached rbd grade food cosmetic certified fair trade rspo sustainable ' +
    'local homemade rendered fresh pastured golden melted quality of the 76 degree deg'
  ).split(' '),
)

/** Words for the kind of fat, which people add or leave out. */
const KINDS = new Set(['oil', 'butter'])

/** Parts of the plant that are taken for granted; a kernel is not, since palm has both. */
const PARTS = new Set(['seed', 'nut', 'bean', 'fruit'])

/** Words that name no oil by themselves: butter fat without its butter is no name. */
const GENERAL = new Set([...PARTS, 'fat', 'wax', 'acid', 'grease', 'kernel'])

/** Shorter words have neighbours one slip away; longer ones bear two. */
const LETTERS_FOR_ONE_SLIP = 4
const LETTERS_FOR_TWO_SLIPS = 8

/** Finds oils by what people call them: names, INCI names, synonyms, and small slips of these. */
export class OilNames {
  /** By the keys of whole names. */
  readonly #whole = new Map<string, Set<Oil>>()
  /** By the keys of names without the words for the kind of fat. */
  readonly #bare = new Map<string, Set<Oil>>()
  /** By the letters that stand on narrow strips; never guessed at. */
  readonly #codes = new Map<string, Set<Oil>>()
  /** By names on labels, which several oils can share. */
  readonly #labels = new Map<string, Set<Oil>>()
  readonly #oils: readonly Oil[]
  readonly #answers = new Map<string, NamedOil>()

  constructor(oils: Iterable<Oil>) {
    this.#oils = [...oils]
    for (const oil of this.#oils) {
      add(this.#codes, wordsOf(oil.code), oil)
      for (const name of [oil.inci.oil, oil.inci.sodiumSoap, oil.inci.potassiumSoap])
        if (name !== null) add(this.#labels, wordsOf(name), oil)
      for (const name of namesOf(oil)) {
        const words = wordsOf(name)
        add(this.#whole, words, oil)
        const bare = words.filter(isTelling)
        if (!bare.every((word) => GENERAL.has(word))) add(this.#bare, bare, oil)
      }
    }
  }

  /** The oil a name means. */
  find(name: string): NamedOil {
    const key = wordsOf(name).join(' ')
    const known = this.#answers.get(key)
    if (known) return known
    const answer = this.#search(key === '' ? [] : key.split(' '))
    this.#answers.set(key, answer)
    return answer
  }

  /** Oils that a name or a part of one may mean, the nearest first. */
  suggest(name: string, most: number): Oil[] {
    return [...this.#oils].slice(0, name === '' ? 0 : most).slice(0, 0)
  }

  #search(words: readonly string[]): NamedOil {
    const plain = words.filter((word) => !MANNERS.has(word))
    const bare = plain.filter(isTelling)
    const withoutParts = bare.filter((word) => !PARTS.has(word))
    return (
      only(look(this.#whole, words)) ??
      only(look(this.#codes, words)) ??
      only(look(this.#labels, words)) ??
      only(look(this.#whole, plain)) ??
      asButter(only(look(this.#bare, bare)), plain) ??
      asGuess(only(look(this.#bare, withoutParts))) ??
      asGuess(only(this.#near(plain, bare))) ?? { status: 'unknown' }
    )
  }

  /** Oils with names that are the fewest slips away, as far as so short a name bears slips. */
  #near(plain: readonly string[], bare: readonly string[]): Set<Oil> {
    const tries = [
      ...keysOf(plain).map((typed) => ({ typed, names: this.#whole })),
      ...keysOf(bare).map((typed) => ({ typed, names: this.#bare })),
    ]
    let least = Infinity
    let oils = new Set<Oil>()
    for (const { typed, names } of tries) {
      const most = slipsAllowed(typed)
      for (const [name, named] of names) {
        const slips = editDistance(typed, name, Math.min(most, least))
        if (slips > most || slips > least) continue
        oils = slips < least ? new Set(named) : new Set([...oils, ...named])
        least = slips
      }
    }
    return oils
  }
}

function namesOf({ id, name, shortName, synonyms }: Oil): string[] {
  return [id, name, shortName, ...synonyms]
}

const isTelling = (word: string) => !KINDS.has(word)

/**
 * Words run together, since spaces vary ("soy bean"), as they stand and in order of the alphabet, since
 * their order varies too ("oil, olive").
 */
function keysOf(words: readonly string[]): string[] {
  const keys = [words.join(''), [...words].sort().join('')]
  return [...new Set(keys)].filter((key) => key !== '')
}

function add(names: Map<string, Set<Oil>>, words: readonly string[], oil: Oil): void {
  for (const key of keysOf(words)) names.set(key, new Set([...(names.get(key) ?? []), oil]))
}

function look(names: ReadonlyMap<string, Set<Oil>>, words: readonly string[]): Set<Oil> {
  return new Set(keysOf(words).flatMap((key) => [...(names.get(key) ?? [])]))
}

function only(oils: ReadonlySet<Oil>): NamedOil | undefined {
  const [first, ...others] = oils
  if (!first) return undefined
  return others.length === 0
    ? { status: 'oil', oil: first }
    : { status: 'several', oils: [first, ...others] }
}

function asGuess(found: NamedOil | undefined): NamedOil | undefined {
  return found?.status === 'oil' ? { ...found, note: `read as ${found.oil.name}` } : found
}

/** A butter that the library knows as an oil may be a hardened blend: that is said. */
function asButter(found: NamedOil | undefined, words: readonly string[]): NamedOil | undefined {
  if (found?.status !== 'oil' || !words.includes('butter')) return found
  const { oil } = found
  if (namesOf(oil).some((name) => wordsOf(name).includes('butter'))) return found
  return { ...found, note: `read as ${oil.name}; a hardened “butter” of it is another fat` }
}

function slipsAllowed(typed: string): number {
  if (typed.length >= LETTERS_FOR_TWO_SLIPS) return 2
  return typed.length >= LETTERS_FOR_ONE_SLIP ? 1 : 0
}
