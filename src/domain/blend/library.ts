import type { Measure } from './measure'
import type { Oil } from './oil'

/** What the domain needs of the data files: the oils and the measures, by id. */
export interface Library {
  readonly oils: ReadonlyMap<string, Oil>
  readonly measures: readonly Measure[]
}

/** The oil of that id; throws for an unknown id, which the checks at the edge never let through. */
export function oilOf(library: Library, id: string): Oil {
  const oil = library.oils.get(id)
  if (!oil) throw new Error(`Unknown oil ${id}`)
  return oil
}

/** The measure of that id; throws for an unknown id, which the checks at the edge never let through. */
export function measureOf(library: Library, id: string): Measure {
  const measure = library.measures.find((one) => one.id === id)
  if (!measure) throw new Error(`Unknown measure ${id}`)
  return measure
}
