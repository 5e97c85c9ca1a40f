import type { Brief, Limits } from '../brief/brief'
import type { Interval } from '../../interval'
import type { Axes, Corner } from './region'
import type { Terrain } from './terrain-linear'
import type { RuledTerrain } from './terrain-ruled'

/** What a map asks for. */
export interface LandQuestion {
  readonly brief: Brief
  readonly axes: Axes
  /** The measure drawn as height: its best value at each place; none draws only the region. */
  readonly height: string | undefined
  /** The part of the map to reckon heights for, in the axes' units; the whole region if left out. */
  readonly window?: { readonly x: Interval; readonly y: Interval } | undefined
  /** A measure whose limit is tried at several values beside the brief's own. */
  readonly lens?: Lens | undefined
  /** Heights on a grid of so many columns and rows. */
  readonly grid: number
}

/** One end of one measure's range at several values, in its unit. */
export interface Lens {
  readonly measure: string
  readonly side: 'min' | 'max'
  readonly values: readonly number[]
}

/** What lies on a map: all of it exact, heights at the points of their grid. */
export interface Land {
  readonly axes: Axes
  readonly height: string | undefined
  /**
   * Corners of what the axes can reach, counter-clockwise. Under rules of what they reach without them:
   * the land lies within, and these blends need not keep the rules.
   */
  readonly region: readonly Corner[]
  /** The part of its edge that nothing beats on both axes. */
  readonly frontier: readonly Corner[]
  /** Missing where the region has no area. */
  readonly terrain: Terrain | undefined
  /** The region at each value of the lens. */
  readonly rings: readonly { readonly value: number; readonly region: readonly Corner[] }[]
  /** Under rules: what is known so far. Then frontier and rings are left empty. */
  readonly ruled?: RuledLand | undefined
}

/** What is known of a land under rules, which need not be convex or in one piece. */
export interface RuledLand {
  /** The finest whole grid, with what is known of each of its points; undefined before the first one. */
  readonly terrain: RuledTerrain | undefined
  /**
   * All that nothing beats on both axes: straight pieces of two corners, or single ones. The corners'
   * blends keep the rules.
   */
  readonly pieces: readonly (readonly Corner[])[]
  /** Whether these pieces are proved to be all. */
  readonly piecesAreProved: boolean
  /** What is being found and how much of it is done, 0 to 1; undefined where nothing is left to do. */
  readonly underWay:
    { readonly stage: 'heights' | 'edge'; readonly size: number; readonly part: number } | undefined
}

/** The brief with the lens's end of its measure's range at a value. */
export function withLens(brief: Brief, lens: Lens | undefined, value: number): Brief {
  if (!lens) return brief
  const limits: Limits = { ...brief.measures[lens.measure], [lens.side]: value }
  return { ...brief, measures: { ...brief.measures, [lens.measure]: limits } }
}
