import { type Library, library as shipped } from '../data/library'
import { libraryWith, ownOilsOf } from '../domain/blend/own-library'
import type { OwnOil } from '../domain/blend/own-oil'

export { shipped }

const known = new WeakMap<readonly OwnOil[], Library>()

/**
 * The library with a work's own oils in force: the same object for the same list, so that what is derived of it
 * stays. An oil that something is wrong with is left out; `ownOilsOf` says what.
 */
export function libraryOf(ownOils: readonly OwnOil[]): Library {
  let own = known.get(ownOils)
  if (!own) known.set(ownOils, (own = libraryWith(shipped, ownOilsOf(ownOils, shipped).oils)))
  return own
}

const NONE: readonly OwnOil[] = []
let ownOils: () => readonly OwnOil[] | undefined = () => undefined

/** Says where the maker's own oils stand; whatever reads the library follows them. */
export function takeOwnOilsFrom(source: () => readonly OwnOil[] | undefined): void {
  ownOils = source
}

/** The library in force, as one object: another as soon as an oil of one's own is another. */
export function libraryNow(): Library {
  return libraryOf(ownOils() ?? NONE)
}

/** The library of the page: the one that ships, with the maker's own oils in force. */
export const library: Library = {
  get acids() {
    return libraryNow().acids
  },
  get oils() {
    return libraryNow().oils
  },
  get measures() {
    return libraryNow().measures
  },
  get referenceBars() {
    return libraryNow().referenceBars
  },
  get sources() {
    return libraryNow().sources
  },
}
