import { z } from 'zod'
import wordsFile from '../../../data/recipe-words.json'
import { spellings, wordsOf } from '../name-words'

const phrases = z.array(z.string().min(1)).min(1)
const things = z.record(z.string(), phrases)

/** data/recipe-words.json. */
export const recipeWordsSchema = z.strictObject({
  said: z.strictObject({
    naoh: phrases,
    koh: phrases,
    lye: phrases,
    solution: phrases,
    concentration: phrases,
    water: phrases,
    superfat: phrases,
    oils: phrases,
    total: phrases,
    batch: phrases,
    makes: phrases,
    bars: phrases,
    mould: phrases,
    cold: phrases,
    hot: phrases,
    essential: phrases,
    fragrance: phrases,
    heading: phrases,
  }),
  fillers: phrases,
  things: z.strictObject({
    additive: things,
    acid: things,
    liquid: things,
    scent: things,
  }),
})

const file = recipeWordsSchema.parse(wordsFile)

/** What a word of a recipe can be about. */
export type Subject = keyof typeof file.said
/** What a recipe can hold beside oils, lye and water. */
export type ThingKind = keyof typeof file.things

/** A phrase as its words, longest phrases first, so that “lye solution” is found before “lye”. */
type Phrase = readonly string[]

const said = new Map<Subject, readonly Phrase[]>(
  (Object.keys(file.said) as Subject[]).map((subject) => [
    subject,
    inWords(file.said[subject]).toSorted((a, b) => b.length - a.length),
  ]),
)

const fillers = new Set(inWords(file.fillers).map((words) => words.join(' ')))

/** By the words run together, as “coconutmilk”. */
const thingByName = new Map<string, { readonly kind: ThingKind; readonly id: string }>(
  (Object.keys(file.things) as ThingKind[]).flatMap((kind) =>
    Object.entries(file.things[kind]).flatMap(([id, names]) =>
      inWords(names).map((words) => [words.join(''), { kind, id }] as const),
    ),
  ),
)

function inWords(names: readonly string[]): Phrase[] {
  return names.flatMap((name) => spellings(name).map(wordsOf))
}

/** Whether the words hold one of the subject's phrases. */
export function speaksOf(subject: Subject, words: readonly string[]): boolean {
  return without(subject, words).length < words.length
}

/** The words without the subject's phrases. */
export function without(subject: Subject, words: readonly string[]): string[] {
  return (said.get(subject) ?? []).reduce<string[]>(cut, [...words])
}

function cut(words: string[], phrase: Phrase): string[] {
  const at = words.findIndex((_, start) => phrase.every((word, n) => words[start + n] === word))
  return at < 0 ? words : cut([...words.slice(0, at), ...words.slice(at + phrase.length)], phrase)
}

/** The words without small ones that say nothing, such as “of the”. */
export function withoutFillers(words: readonly string[]): string[] {
  return words.filter((word) => !fillers.has(word))
}

/** Text without small words at its ends, which keeps the middle as it was written. */
export function trimmed(text: string): string {
  const words = text.split(/\s+/u)
  const says = (word: string | undefined) => {
    const key = wordsOf(word ?? '').join(' ')
    return key !== '' && !fillers.has(key)
  }
  const from = words.findIndex(says)
  return from < 0 ? '' : words.slice(from, words.findLastIndex(says) + 1).join(' ')
}

/** What a name is of the things that are no oils. */
export function thingNamed(
  words: readonly string[],
): { readonly kind: ThingKind; readonly id: string } | undefined {
  return thingByName.get(words.join(''))
}
