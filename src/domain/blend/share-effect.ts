import type { Blend } from './blend'
import { type Difference, differences } from './compare'
import { type GivesWay, blendOfParts, withShare } from './giving-way'
import type { Library } from './library'
import { blendValues } from './values'

/** What so much more of an oil does to a bar. */
export interface ShareEffect {
  readonly blend: Blend
  /** Oils that gave way for it. */
  readonly gave: readonly string[]
  /** Measures without cost, against the bar as it was; a tie can't be told apart. */
  readonly differences: readonly Difference[]
}

/**
 * What `percent` more of an oil does to a bar: the largest other oil gives way, or the one named, or all in
 * proportion. Undefined where nothing can give way.
 */
export function effectOfShare(
  library: Library,
  bar: Blend,
  oil: string,
  percent: number,
  givesWay?: GivesWay,
): ShareEffect | undefined {
  const parts = Object.entries({ [oil]: 0, ...bar }).map(([id, share]) => ({
    oil: id,
    percent: share,
    locked: false,
  }))
  const changed = withShare(parts, oil, (bar[oil] ?? 0) + percent, givesWay)
  if (changed.status === 'nothing free') return undefined
  const blend = blendOfParts(changed.parts)
  const [after, before] = [blend, bar].map((one) => blendValues(library, {}, one))
  return {
    blend,
    gave: changed.gave,
    differences: differences(library.measures, after ?? {}, before ?? {}),
  }
}
