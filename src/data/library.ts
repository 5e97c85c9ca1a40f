import { prettifyError } from 'zod'
import fattyAcids from '../../data/fatty-acids.json'
import measures from '../../data/measures.json'
import oils from '../../data/oils.json'
import referenceBars from '../../data/reference-bars.json'
import sources from '../../data/sources.json'
import type { Library as BlendLibrary } from '../domain/blend/library'
import type { FattyAcid } from '../domain/chemistry/fatty-acid'
import { librarySchema, type ReferenceBar, type Source } from './library-schema'

/** The oils, acids, measures and bars that come with the program, with the sources of their figures. */
export interface Library extends BlendLibrary {
  readonly acids: ReadonlyMap<string, FattyAcid>
  readonly referenceBars: readonly ReferenceBar[]
  readonly sources: ReadonlyMap<string, Source>
}

/** Parses the contents of the data files; throws with every fault found, as they ship with the program. */
export function parseLibrary(files: Record<keyof Library, unknown>): Library {
  const parsed = librarySchema.safeParse(files)
  if (!parsed.success) {
    throw new Error(`The data files do not fit together:\n${prettifyError(parsed.error)}`)
  }
  const { data } = parsed
  return {
    acids: byId(data.acids),
    oils: byId(data.oils),
    measures: data.measures,
    referenceBars: data.referenceBars,
    sources: byId(data.sources),
  }
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]))
}

export const library: Library = parseLibrary({
  acids: fattyAcids,
  oils,
  measures,
  referenceBars,
  sources,
})
