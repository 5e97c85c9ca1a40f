import { library } from './library'
import type { Oil } from '../domain/blend/oil'
import type { Draft, ShelfRow } from './draft'

/** An oil with this tag may be made of anything: only its supplier knows. */
export const ORIGIN_VARIES = 'origin-varies'

/** What an oil of varying origin may be made of. */
const POSSIBLE_ORIGINS: readonly string[] = ['palm-derived', 'animal']

/** A tag on the shelf, and how many of its oils stand there open and banned. */
export interface ShelfTag {
  readonly tag: string
  readonly open: number
  readonly banned: number
}

/** The tags of the oils on the shelf, and those that an oil there may have; by name. */
export function tagsOnShelf({ shelf }: Draft): ShelfTag[] {
  const tags = new Set(shelf.flatMap(({ oil }) => tagsOf(oil)))
  if (tags.has(ORIGIN_VARIES)) for (const origin of POSSIBLE_ORIGINS) tags.add(origin)
  const count = (tag: string, banned: boolean) =>
    shelf.filter((row) => row.banned === banned && tagsOf(row.oil).includes(tag)).length
  return [...tags].sort().map((tag) => ({ tag, open: count(tag, false), banned: count(tag, true) }))
}

/** The oils on the shelf with a tag. */
export function oilsTagged({ shelf }: Draft, tag: string): string[] {
  return shelf.map(({ oil }) => oil).filter((oil) => tagsOf(oil).includes(tag))
}

/** The draft with every oil of a tag banned, or let back in. */
export function withTagBanned(draft: Draft, tag: string, banned: boolean): Draft {
  const change = (row: ShelfRow): ShelfRow =>
    tagsOf(row.oil).includes(tag) && row.banned !== banned
      ? { ...row, banned, lockedAt: undefined }
      : row
  return { ...draft, shelf: draft.shelf.map(change) }
}

/**
 * Open oils that may be made of what is banned as a whole, with the tags in doubt: where no oil that is
 * surely of palm, or of animals, is left open and at least one is banned.
 */
export function originDoubts(
  draft: Draft,
): { readonly oil: Oil; readonly tags: readonly string[] }[] {
  const banned = tagsOnShelf(draft)
    .filter((one) => POSSIBLE_ORIGINS.includes(one.tag) && one.banned > 0 && one.open === 0)
    .map(({ tag }) => tag)
  if (banned.length === 0) return []
  return draft.shelf
    .filter((row) => !row.banned && tagsOf(row.oil).includes(ORIGIN_VARIES))
    .flatMap(({ oil }) => library.oils.get(oil) ?? [])
    .map((oil) => ({ oil, tags: banned }))
}

function tagsOf(oil: string): readonly string[] {
  return library.oils.get(oil)?.tags ?? []
}
