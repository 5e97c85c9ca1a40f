import { ALKALI_TITLES } from '../domain/chemistry/alkali'
import type { MaterialFact, MaterialOf, OwnMaterial } from '../domain/cost/offer'
import { batchFacts } from './batch-facts'
import { library } from './library'
import { wordsOf } from './name-words'
import { OilNames } from './oil-names'

const ALKALIS: readonly (readonly [string, string])[] = [
  ['naoh', ALKALI_TITLES.naoh],
  ['koh', ALKALI_TITLES.koh],
]

/** Everything that the library can price, by id: oils, alkalis, acids, liquids, additives, scents. */
const known: ReadonlyMap<string, MaterialFact> = new Map<string, MaterialFact>([
  ...[...library.oils.values()].map(
    ({ id, name, densityGPerMl }) =>
      [id, { name, ...(densityGPerMl === null ? {} : { densityGPerMl }) }] as const,
  ),
  ...ALKALIS.map(([id, name]) => [id, { name }] as const),
  ...[...batchFacts.acids.values()].map(({ id, name }) => [id, { name }] as const),
  ...[...batchFacts.liquids.values()].map(({ id, name }) => [id, { name }] as const),
  ...[...batchFacts.additives.values()].map(
    ({ id, name, densityGPerMl }) => [id, { name, densityGPerMl }] as const,
  ),
  ...[...batchFacts.scents.values()].map(({ id, name }) => [id, { name }] as const),
])

/** Looks materials up in the library, and in the maker's own. */
export function materialsWith(own: readonly OwnMaterial[]): MaterialOf {
  const mine = new Map(own.map((one) => [one.id, one]))
  return (id) => known.get(id) ?? mine.get(id)
}

/** Ids and names of all that the library can price. */
export const knownMaterials: readonly { readonly id: string; readonly name: string }[] = [
  ...known,
].map(([id, { name }]) => ({ id, name }))

/** Which material a name means, or why it can't be said. */
export type NamedMaterial =
  | { readonly status: 'material'; readonly id: string; readonly note?: string | undefined }
  | { readonly status: 'several'; readonly names: readonly string[] }
  | { readonly status: 'unknown' }

const oilNames = new OilNames(library.oils.values())
const otherNames = new Map<string, string>(
  knownMaterials
    .filter(({ id }) => !library.oils.has(id))
    .flatMap(({ id, name }) => [id, name].map((word) => [keyOf(word), id] as const)),
)
const ALSO: ReadonlyMap<string, string> = new Map([
  ['caustic soda', 'naoh'],
  ['lye', 'naoh'],
  ['caustic potash', 'koh'],
])

/** Finds the material that people call so: by id, by the maker's own names, then as oils are found. */
export function findMaterial(name: string, own: readonly OwnMaterial[]): NamedMaterial {
  const key = keyOf(name)
  if (known.has(name.trim())) return { status: 'material', id: name.trim() }
  const mine = own.find((one) => one.id === name.trim() || keyOf(one.name) === key)
  if (mine) return { status: 'material', id: mine.id }
  const other = otherNames.get(key) ?? ALSO.get(key)
  if (other !== undefined) return { status: 'material', id: other }
  const oil = oilNames.find(name)
  if (oil.status === 'oil') return { status: 'material', id: oil.oil.id, note: oil.note }
  if (oil.status === 'several') return { status: 'several', names: oil.oils.map((one) => one.name) }
  return { status: 'unknown' }
}

/** An id for a material of the maker's own that no other has. */
export function ownId(name: string, own: readonly OwnMaterial[]): string {
  const stem = wordsOf(name).join('-') || 'material'
  const taken = (id: string) => known.has(id) || own.some((one) => one.id === id)
  if (!taken(stem)) return stem
  let number = 2
  while (taken(`${stem}-${number}`)) number++
  return `${stem}-${number}`
}

function keyOf(text: string): string {
  return wordsOf(text).join(' ')
}
