import { library, type Library } from '../data/library'
import { readOwnOils, withOwnOils } from '../data/own-oil-file'
import type { Problem } from '../domain/blend/check-blend'
import type { OwnOil } from '../domain/blend/own-oil'
import type { Flags } from './command'
import { readText } from './read-text'
import type { Surroundings } from './surroundings'

/** The flag that names a file of one's own oils. */
export const OILS_FLAG = { oils: { type: 'string' } } as const
export const OILS_HELP =
  '--oils oils.json   oils of your own (barwright-oils/1), beside those in the file itself'

/** The library that a call reckons with, or what is wrong with the oils beside it. */
export type LibraryRead =
  | { readonly status: 'parsed'; readonly value: Library }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** The library with the oils that a file carries and those of the file flagged. */
export async function libraryFor(
  carried: readonly OwnOil[] | undefined,
  flags: Flags,
  around: Surroundings,
): Promise<LibraryRead> {
  const within = withOwnOils(library, carried ?? [])
  if (within.status === 'invalid' || typeof flags.oils !== 'string') return within
  if (flags.oils === '-') return wrong('Standard input holds the file itself. Name a file of oils.')
  const read = await readText(flags.oils, around)
  if (!('text' in read)) return wrong(read.message)
  const file = readOwnOils(read.text)
  if (file.status === 'invalid') return { ...file, problems: file.problems.map(ofTheFlag) }
  const both = withOwnOils(within.value, file.value, 'oils')
  return both.status === 'invalid' ? { ...both, problems: both.problems.map(ofTheFlag) } : both
}

function wrong(message: string): LibraryRead {
  return { status: 'invalid', problems: [{ path: '--oils', message }] }
}

/** A problem in the file that the flag names. */
function ofTheFlag({ path, message }: Problem): Problem {
  return { path: path === '' ? '--oils' : `--oils: ${path}`, message }
}
