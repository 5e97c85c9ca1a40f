import { COST } from '../domain/blend/measure'
import type { LibraryFiles } from './library-schema'

/** What is wrong between the data files, one sentence each; empty when they fit together. */
export function libraryFindings(files: LibraryFiles): string[] {
  return [
    ...repeats('acid id', files.acids, ({ id }) => [id]),
    ...repeats('oil id', files.oils, ({ id }) => [id]),
    ...repeats('oil code', files.oils, ({ code }) => [code.toLowerCase()]),
    ...repeats('oil colour', files.oils, ({ colour }) => [colour]),
    ...repeats('name of an oil', files.oils, namesOf),
    ...repeats('measure id', files.measures, ({ id }) => [id]),
    ...repeats('bar id', files.referenceBars, ({ id }) => [id]),
    ...repeats('bar letter', files.referenceBars, ({ letter }) => [letter]),
    ...repeats('source id', files.sources, ({ id }) => [id]),
    ...unknownSources(files),
    ...unknownAcids(files),
    ...unknownOils(files),
    ...missingWeights(files),
    ...(files.measures.some(({ id }) => id === COST) ? [] : ['There is no cost measure: add one']),
  ]
}

function namesOf(oil: LibraryFiles['oils'][number]): string[] {
  const names = [oil.id, oil.name, oil.shortName, ...oil.synonyms]
  return [...new Set(names.map((name) => name.toLowerCase()))]
}

/** Each key that more than one item claims; keys of one item must already differ. */
function repeats<T>(
  what: string,
  items: readonly T[],
  keys: (item: T) => readonly string[],
): string[] {
  const times = new Map<string, number>()
  for (const item of items) {
    for (const key of keys(item)) times.set(key, (times.get(key) ?? 0) + 1)
  }
  return [...times]
    .filter(([, count]) => count > 1)
    .map(([key, count]) => `The ${what} "${key}" is used ${count} times: keep one`)
}

interface Reference {
  readonly where: string
  readonly source: string
  readonly basis: string
}

/** A source must exist, and a figure may not be surer than what was read in its source. */
function unknownSources({ sources, acids, oils, referenceBars }: LibraryFiles): string[] {
  const bases = new Map(sources.map(({ id, basis }) => [id, basis]))
  const references = [
    ...acids.flatMap(referencesOfAcid),
    ...oils.flatMap(referencesOfOil),
    ...referenceBars.map(({ id, source, basis }) => ({ where: `bar ${id}`, source, basis })),
  ]
  return references.flatMap(({ where, source, basis }) => {
    const sourceBasis = bases.get(source)
    if (sourceBasis === undefined) return [`${where} cites source ${source}, which is not listed`]
    if (sourceBasis !== basis) {
      return [`${where} is marked ${basis}, but its source ${source} is marked ${sourceBasis}`]
    }
    return []
  })
}

function referencesOfAcid(acid: LibraryFiles['acids'][number]): Reference[] {
  return [
    { where: `mass of ${acid.id}`, source: acid.massSource, basis: acid.massBasis },
    {
      where: `melting point of ${acid.id}`,
      source: acid.meltingSource,
      basis: acid.meltingBasis,
    },
  ]
}

function referencesOfOil(oil: LibraryFiles['oils'][number]): Reference[] {
  const figures = [
    ...Object.entries(oil.acids),
    ['saponification value', oil.saponificationValue] as const,
    ['iodine value', oil.iodineValue] as const,
    ['unsaponifiables', oil.unsaponifiableGPerKg] as const,
  ]
  return [
    { where: `INCI of ${oil.id}`, source: oil.inci.source, basis: oil.inci.basis },
    ...figures.flatMap(([what, { source, basis, typicalSource, typicalBasis }]) => [
      { where: `${what} of ${oil.id}`, source, basis },
      { where: `typical ${what} of ${oil.id}`, source: typicalSource, basis: typicalBasis },
    ]),
  ]
}

function unknownAcids({ acids, oils, measures }: LibraryFiles): string[] {
  const known = new Set(acids.map(({ id }) => id))
  const users = [
    ...oils.map(({ id, acids: profile }) => ({ user: `Oil ${id}`, named: profile })),
    ...measures.flatMap((measure) =>
      'weights' in measure ? [{ user: `Measure ${measure.id}`, named: measure.weights }] : [],
    ),
  ]
  return users.flatMap(({ user, named }) =>
    Object.keys(named)
      .filter((acid) => !known.has(acid))
      .map((acid) => `${user} names the acid ${acid}, which is not listed`),
  )
}

function unknownOils({ oils, referenceBars }: LibraryFiles): string[] {
  const known = new Set(oils.map(({ id }) => id))
  return referenceBars.flatMap(({ id, blend }) =>
    Object.keys(blend)
      .filter((oil) => !known.has(oil))
      .map((oil) => `Bar ${id} names the oil ${oil}, which is not listed`),
  )
}

/** An acid without a weight would count as 0 by silence. */
function missingWeights({ acids, measures }: LibraryFiles): string[] {
  return measures.flatMap((measure) => {
    if (!('weights' in measure)) return []
    return acids
      .filter(({ id }) => !(id in measure.weights))
      .map(({ id }) => `Measure ${measure.id} has no weight for the acid ${id}: add one`)
  })
}
