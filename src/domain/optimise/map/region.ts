import type { Blend } from '../../blend/blend'

/** A pair of measure ids: what runs across and what runs up. */
export type Axes = readonly [string, string]

/** A corner of the region of two measures, and a blend that reaches it. */
export interface Corner {
  readonly x: number
  readonly y: number
  readonly blend: Blend
}
