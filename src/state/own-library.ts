import { type Library, library } from '../data/library'
import { ownOilsOf, libraryWith } from '../domain/blend/own-library'
import type { OwnOil } from '../domain/blend/own-oil'

const known = new WeakMap<readonly OwnOil[], Library>()

/**
 * The library with a work's own oils in force: the same object for the same list, so that what is derived of it
 * stays. An oil that something is wrong with is left out; `ownOilsOf` says what.
 */
export function libraryOf(ownOils: readonly OwnOil[]): Library {
  let own = known.get(ownOils)
  if (!own) known.set(ownOils, (own = libraryWith(library, ownOilsOf(ownOils, library).oils)))
  return own
}
