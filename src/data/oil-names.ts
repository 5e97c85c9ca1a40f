import type { Oil } from '../domain/blend/oil'
import { editDistance } from './edit-distance'
import { spellings, wordsOf } from './name-words'
import { type OtherNames, otherNames } from './oil-names-file'
import { type FoundOil, rankedOils, relatedOils } from './oil-search'

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
    'local homemade rendered fresh pastured golden melted quality of the 76 degree deg ' +
    // The same in German, French, Spanish and Italian, with the small words between names.
    'bio nativ native kaltgepresst kaltgepresstes raffiniert raffiniertes unraffiniert desodoriert reines geschmolzen ' +
    'vierge raffine raffinee biologique brut brute pure pressee froid desodorise desodorisee fondu ' +
    'virgen refinado refinada ecologico ecologica puro prensado frio desodorizado fundido ' +
    'vergine raffinato raffinata biologico biologica spremuto freddo grezzo grezza fuso ' +
    'de du des d l la le di del della dell von vom al el'
  ).split(' '),
)

/** Words for the kind of fat, which people add or leave out. */
const BUTTERS = ['butter', 'beurre', 'manteca', 'mantequilla', 'burro']
const KINDS = new Set(['oil', 'ol', 'oel', 'huile', 'aceite', 'olio', ...BUTTERS])

/** Parts of the plant that are taken for granted; a kernel is not, since palm has both. */
const PARTS = new Set(['seed', 'nut', 'bean', 'fruit'])

/** Words that name no oil by themselves: butter fat without its butter is no name. */
const GENERAL = new Set([
  ...[
    ...PARTS,
    ...KINDS,
    'fat',
    'wax',
    'acid',
    'grease',
    'kernel',
    'fett',
    'wach',
    'graisse',
    'cire',
  ],
  ...['acide', 'grasa', 'cera', 'acido', 'grasso', 'semi', 'semilla'],
])

/** What German runs together with the name of the plant. */
const RUN_ON = /(?<=[\p{L}]{4})(?:öl|butter|fett)$/u

/** Shorter words have neighbours one slip away; longer ones bear two. */
const LETTERS_FOR_ONE_SLIP = 4
const LETTERS_FOR_TWO_SLIPS = 8

/** Finds oils by what people call them: names, INCI names, synonyms, and small slips of these. */
export class OilNames {
  /** By the keys of whole names. */
  readonly #whole = new Map<string, Set<Oil>>()
  /** By the keys of names without the words for the kind of fat. */
  readonly #bare = new Map<string, Set<Oil>>()
  /** By the keys of both without words for how an oil was made: only where these alone do not tell. */
  readonly #unmannered = new Map<string, Set<Oil>>()
  /** By the letters that stand on narrow strips; never guessed at. */
  readonly #codes = new Map<string, Set<Oil>>()
  /** By names on labels, which several oils can share. */
  readonly #labels = new Map<string, Set<Oil>>()
  readonly #oils: readonly Oil[]
  /** Oils that a word for how they were made tells from another, such as refined shea: never guessed at. */
  readonly #told = new Set<Oil>()
  /** All that each is called, its own name first. */
  readonly #names = new Map<Oil, readonly string[]>()
  readonly #answers = new Map<string, NamedOil>()
  readonly #suggestions = new Map<string, readonly Oil[]>()

  constructor(oils: Iterable<Oil>, others: OtherNames = otherNames) {
    this.#oils = [...oils]
    for (const oil of this.#oils) {
      add(this.#codes, wordsOf(oil.code), oil)
      for (const name of [oil.inci.oil, oil.inci.sodiumSoap, oil.inci.potassiumSoap])
        if (name !== null) add(this.#labels, wordsOf(name), oil)
      const names = [...namesOf(oil), ...namesElsewhere(oil, others)]
      this.#names.set(oil, names)
      if (namesOf(oil).every((name) => wordsOf(name).some((word) => MANNERS.has(word))))
        this.#told.add(oil)
      for (const name of names) this.#addName(name, oil)
    }
    for (const { name, oils: ids } of others.shared)
      for (const oil of this.#oils) if (ids.includes(oil.id)) this.#addName(name, oil)
  }

  #addName(name: string, oil: Oil): void {
    for (const spelt of spellings(name)) {
      const words = wordsOf(spelt)
      add(this.#whole, words, oil)
      const plain = words.filter((word) => !MANNERS.has(word))
      add(this.#unmannered, plain, oil)
      for (const [names, bare] of [
        [this.#bare, words.filter(isTelling)],
        [this.#unmannered, plain.filter(isTelling)],
      ] as const)
        if (!bare.every((word) => GENERAL.has(word) || MANNERS.has(word))) add(names, bare, oil)
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

  /** Oils whose names begin like a text, hold it, or are small slips away, the best first; all for none. */
  search(text: string): FoundOil[] {
    const meant = this.find(text)
    return rankedOils(text, this.#names, meant.status === 'oil' ? meant.oil : undefined)
  }

  /** Oils that share words with a name which is none, the nearest first. */
  suggest(name: string, most: number): Oil[] {
    const telling = wordsOf(name).filter(
      (word) => !MANNERS.has(word) && !GENERAL.has(word) && word.length >= LETTERS_FOR_ONE_SLIP,
    )
    const key = telling.join(' ')
    const known = this.#suggestions.get(key) ?? relatedOils(telling, this.#names)
    this.#suggestions.set(key, known)
    return known.slice(0, most)
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
      only(look(this.#unmannered, plain)) ??
      asButter(only(look(this.#unmannered, bare)), plain) ??
      asGuess(only(look(this.#bare, withoutParts))) ??
      asGuess(only(this.#near(plain, bare))) ?? { status: 'unknown' }
    )
  }

  /** Oils with names that are the fewest slips away, as far as so short a name bears slips. */
  #near(plain: readonly string[], bare: readonly string[]): Set<Oil> {
    const tries = [
      ...keysOf(plain).flatMap((typed) => [
        { typed, names: this.#whole },
        { typed, names: this.#unmannered },
      ]),
      ...keysOf(bare).flatMap((typed) => [
        { typed, names: this.#bare },
        { typed, names: this.#unmannered },
      ]),
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
    const plainOnes = [...oils].filter((oil) => !this.#told.has(oil))
    return plainOnes.length > 0 ? new Set(plainOnes) : oils
  }
}

function namesOf({ id, name, shortName, synonyms }: Oil): string[] {
  return [id, name, shortName, ...synonyms]
}

function namesElsewhere({ id }: Oil, { names }: OtherNames): string[] {
  const { de = [], fr = [], es = [], it = [] } = names[id] ?? {}
  const stems = de.map((name) => name.replace(RUN_ON, '')).filter(isName)
  return [...de, ...stems, ...fr, ...es, ...it]
}

/** Whether a name cut short still says something: the butter of “Butterfett” does not. */
function isName(text: string): boolean {
  return wordsOf(text).some((word) => !GENERAL.has(word))
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
  if (found?.status !== 'oil' || !BUTTERS.some((butter) => words.includes(butter))) return found
  const { oil } = found
  if (namesOf(oil).some((name) => wordsOf(name).includes('butter'))) return found
  if (oil.tags.includes('animal')) return found
  return { ...found, note: `read as ${oil.name}; a hardened “butter” of it is another fat` }
}

/** Slips that a typed name of so many letters bears. */
function slipsAllowed(typed: string): number {
  if (typed.length >= LETTERS_FOR_TWO_SLIPS) return 2
  return typed.length >= LETTERS_FOR_ONE_SLIP ? 1 : 0
}
