import type { Blend } from '../../blend/blend'
import { type BlendSpace, negated } from '../space/blend-space'
import { withoutWishesOn } from '../brief/ranges'
import { BriefCheck } from '../space/verify'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { Watch } from '../../lp/pareto/grow'
import { aroundFaces } from '../../lp/pareto/ring'
import { vectorSurface } from '../../lp/pareto/vector-surface'

/** Two axes at least, and no more than a hull is computed in. */
const LEAST_AXES = 2
const MOST_AXES = 4

/** One axis of a surface: a measure that can be reckoned for the brief, and which way is wanted. */
export interface SurfaceAxis {
  readonly measure: string
  readonly wanted: 'more' | 'less'
}

/** What to find, and who watches. */
export interface SurfaceOptions extends Watch {
  /** The hull of all that can be reached, instead of the side that nothing beats. */
  readonly wholeHull?: boolean | undefined
  /** Leaves the brief's wishes on the axes out, to show what lies around them. */
  readonly withoutWishesOnAxes?: boolean | undefined
}

/** A corner of the surface and a blend that reaches it. */
export interface SurfaceVertex {
  /** The axes' measures, in their units. */
  readonly measures: Readonly<Record<string, number>>
  /** Shares in percent, checked against the brief. */
  readonly blend: Blend
  /** Direction, in the axes' units and of length 1, in which this corner alone lies furthest out. */
  readonly direction: readonly number[]
}

/** The exact trade-off surface of a brief over two to four measures. */
export type Surface =
  ({ readonly status: 'optimal' } & FoundSurface) | { readonly status: 'infeasible' }

interface FoundSurface {
  readonly axes: readonly SurfaceAxis[]
  /** With two axes in order along the side, or counter-clockwise around the hull. */
  readonly vertices: readonly SurfaceVertex[]
  /**
   * Numbers of each facet's vertices. Of the wanted side these are its largest faces, which together
   * hold all that nothing beats: mostly facets, an edge or a point where it is as thin as that. Of the
   * whole hull they are its facets; if it is flat, those within its flat, such as the two ends of a
   * line. With three axes they run counter-clockwise, seen from outside.
   */
  readonly facets: readonly (readonly number[])[]
  /**
   * Outward normal of each facet, of length 1 in the axes' units: the rates at which the axes trade. To
   * stay on the facet, 1 of axis i given up buys normal[i] / normal[j] of axis j. On the wanted side no
   * entry points away from what is wanted.
   */
  readonly normals: readonly (readonly number[])[]
  /** 0 for a point, 1 for a line, up to the number of axes. */
  readonly dimension: number
  /**
   * Points nearer than this are taken for one, and no blend lies further beyond a facet: a fraction of
   * each measure's attainable range, or of a hundredth of the largest value any oil has where the range
   * is narrower than that.
   */
  readonly tolerance: number
  /** False if stopped early: vertices are on the boundary and facets final, but some are missing. */
  readonly complete: boolean
}

/**
 * The surface over two to four different measures, every limit of the brief kept. Wishes on the axes
 * that were left out are put back; the cost of the space's simplex is left changed.
 */
export function surfaceOf(
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
  options: SurfaceOptions = {},
): Surface {
  const ids = axes.map(({ measure }) => measure)
  requireDifferent(ids)
  if (!options.withoutWishesOnAxes) return surfaceAsLimited(space, axes, options, space.check)
  const check = new BriefCheck(withoutWishesOn(space.brief, ids), space.library)
  for (const id of ids) space.limit(id, {})
  try {
    return surfaceAsLimited(space, axes, options, check)
  } finally {
    for (const id of ids) space.restore(id)
  }
}

/** The surface with the limits the simplex has now, which must be no wider than those checked. */
function surfaceAsLimited(
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
  options: SurfaceOptions,
  check: BriefCheck,
): Surface {
  // A whole hull is the same whichever way is wanted.
  const wanted = axes.map((axis) => (options.wholeHull ? 'less' : axis.wanted))
  const objectives = axes.map(({ measure }, i) => {
    const worth = space.perPercent(measure)
    return wanted[i] === 'more' ? negated(worth) : worth
  })
  const found = vectorSurface(space.simplex, objectives, options)
  if (found.status === 'infeasible') return found
  if (found.status === 'unbounded') {
    throw new UnsoundAnswer('A surface of limited shares was called unbounded')
  }
  const { corners, faces, dimension, tolerance, complete } = found
  const points = corners.map(({ values }) => turned(values, wanted, 'more'))
  const around = aroundFaces(points)
  const normals = faces.map(({ weights }) => turned(weights, wanted, 'less'))
  return {
    status: 'optimal',
    axes,
    vertices: corners.map(({ x, weights }, k) => ({
      measures: Object.fromEntries(axes.map(({ measure }, i) => [measure, points[k]?.[i] ?? NaN])),
      blend: space.checkedBlend(x, check),
      direction: turned(weights, wanted, 'less'),
    })),
    facets: faces.map((face, k) => around(face.corners, normals[k] ?? [])),
    normals,
    dimension,
    tolerance,
    complete,
  }
}

/**
 * Numbers with the sign of those turned that are wanted one way. Objectives are least where they are
 * best: their values turn where more is wanted, and weights become outward directions where less is.
 */
function turned(
  numbers: readonly number[],
  wanted: readonly SurfaceAxis['wanted'][],
  which: SurfaceAxis['wanted'],
): number[] {
  return numbers.map((one, i) => (wanted[i] === which && one !== 0 ? -one : one))
}

function requireDifferent(measures: readonly string[]): void {
  if (measures.length < LEAST_AXES || measures.length > MOST_AXES) {
    throw new RangeError(
      `A surface has ${LEAST_AXES} to ${MOST_AXES} axes; ${measures.length} given.`,
    )
  }
  const repeated = measures.find((measure, k) => measures.indexOf(measure) !== k)
  if (repeated !== undefined) {
    throw new RangeError(`Measure ${repeated} is on two axes of a surface; name each once.`)
  }
}
