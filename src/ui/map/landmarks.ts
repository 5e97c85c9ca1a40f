import type { MapPoint } from '../../charts/map'
import { library } from '../../state/library'
import type { Blend } from '../../domain/blend/blend'
import { COST } from '../../domain/blend/measure'
import { blendValue } from '../../domain/blend/values'
import { type Brief, pricesOf } from '../../domain/optimise/brief/brief'

/** A bar known for what it is, or the maker's own, at its place on the map. */
export interface Landmark extends MapPoint {
  readonly id: string
  readonly letter: string
  readonly name: string
}

/** Landmarks on two measures; on a map of cost only those of which all prices are known. */
export function landmarksOn(
  [across, up]: readonly [string, string],
  brief: Brief,
  bar: { readonly name: string; readonly blend: Blend } | undefined,
): readonly Landmark[] {
  const prices = pricesOf(brief)
  const own = bar ? [{ id: 'own', letter: 'F', ...bar }] : []
  const isPriced = (blend: Blend) => Object.keys(blend).every((oil) => oil in prices)
  return [...library.referenceBars, ...own]
    .filter(({ blend }) => ![across, up].includes(COST) || isPriced(blend))
    .map(({ id, letter, name, blend }) => ({
      id,
      letter,
      name,
      x: blendValue(library, prices, across, blend),
      y: blendValue(library, prices, up, blend),
    }))
}
