import type { Simplex } from '../simplex/simplex'
import type { Watch } from './grow'
import { ImageProgram } from './image-program'
import { grownSide, grownWhole, type Outline } from './outline'
import { SURFACE_TOLERANCE } from './tolerances'
import { passedSide, passedWhole } from './two-objectives'
import { unit } from './vectors'

/** What to find, and who watches. */
export interface SurfaceRequest extends Watch {
  /** The hull of all images instead of its efficient side. */
  readonly wholeHull?: boolean | undefined
}

/** An extreme point of the image. */
export interface VectorCorner {
  readonly x: Float64Array
  /** The objectives at x. */
  readonly values: readonly number[]
  /** Weights of length 1 for which Σ weight · objective is least here and nowhere else. */
  readonly weights: readonly number[]
}

/** A face of the surface: its corners' places, and weights for which all of it is least. */
export interface VectorFace {
  readonly corners: readonly number[]
  readonly weights: readonly number[]
}

/**
 * The trade-off surface of several objectives, each to be minimised. If unbounded it has what is
 * finite of it beside the directions in which it goes on for ever; of a whole hull only these.
 */
export type VectorSurface =
  | ({ readonly status: 'optimal' } & FiniteSurface)
  | ({
      readonly status: 'unbounded'
      readonly rays: readonly (readonly number[])[]
    } & FiniteSurface)
  | { readonly status: 'infeasible' }

interface FiniteSurface {
  readonly corners: readonly VectorCorner[]
  /**
   * Of the efficient side its largest faces, which together hold every non-dominated image: mostly
   * facets with all weights above 0, thinner where the surface is thin. Of the whole hull its facets;
   * if it is flat, those within its flat.
   */
  readonly faces: readonly VectorFace[]
  /** Dimension of the flat through all corners: 0 for a single one. */
  readonly dimension: number
  /**
   * What is nearer than this counts as one, and no image lies further beyond a face: a fraction of each
   * objective's attainable range, or of a hundredth of its size where the range is narrower than that.
   */
  readonly tolerance: number
  /** False if stopped early: then corners are on the boundary and faces final, but some are missing. */
  readonly complete: boolean
}

/**
 * Every non-dominated extreme point of a program's image under two to four objectives, each to be
 * minimised, and the faces between them; or on request all extreme points and facets of the image.
 * Afterwards the solver's cost is one of the weighted sums: set a cost before solving on.
 */
export function vectorSurface(
  simplex: Simplex,
  objectives: readonly Float64Array[],
  { wholeHull = false, ...watch }: SurfaceRequest = {},
): VectorSurface {
  simplex.reset() // so that the answer does not depend on what was asked before
  simplex.setCost(objectives[0] ?? [])
  if (simplex.solve().status === 'infeasible') return { status: 'infeasible' }
  const program = new ImageProgram(simplex, objectives)
  if (wholeHull && program.endless.length > 0) return endlessHull(program)
  return surfaceOf(outlineOf(program, wholeHull, watch), program)
}

/** Parametric passes for two objectives that have both ends, inner approximation for all else. */
function outlineOf(program: ImageProgram, wholeHull: boolean, watch: Watch): Outline {
  const tolerance = SURFACE_TOLERANCE
  const two = program.objectives.length === 2
  if (wholeHull)
    return two ? passedWhole(program, tolerance) : grownWhole(program, tolerance, watch)
  const passable = two && program.least.every((x) => x !== null)
  return passable ? passedSide(program, tolerance) : grownSide(program, tolerance, watch)
}

function endlessHull(program: ImageProgram): VectorSurface {
  const rays = program.endless.map((ray) => [...unit(ray)])
  const nothing = { corners: [], faces: [], dimension: 0, tolerance: 0, complete: false }
  return { status: 'unbounded', rays, ...nothing }
}

/** An outline in the objectives' own units. */
function surfaceOf(outline: Outline, program: ImageProgram): VectorSurface {
  const own = (weights: Float64Array) => [
    ...unit(weights.map((one, i) => one / (program.scale[i] ?? NaN))),
  ]
  const surface = {
    corners: outline.corners.map(({ x, weights }) => {
      return { x, values: [...program.valuesAt(x)], weights: own(weights) }
    }),
    faces: outline.faces.map(({ corners, weights }) => ({ corners, weights: own(weights) })),
    dimension: outline.dimension,
    tolerance: SURFACE_TOLERANCE,
    complete: outline.complete,
  }
  if (outline.rays.length === 0) return { status: 'optimal', ...surface }
  const rays = outline.rays.map((ray) => [
    ...unit(ray.map((one, i) => one * (program.scale[i] ?? NaN))),
  ])
  return { status: 'unbounded', rays, ...surface }
}
