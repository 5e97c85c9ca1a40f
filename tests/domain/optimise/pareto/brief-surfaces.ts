import { library } from '../../../../src/data/library'
import { measureOf } from '../../../../src/domain/blend/library'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import {
  surfaceOf,
  type Surface,
  type SurfaceAxis,
  type SurfaceOptions,
} from '../../../../src/domain/optimise/pareto/blend-surface'
import { Random } from '../../../generator/random'
import { type Finite, missedBy, outside, unsupported, widthsOf } from '../../lp/pareto/faults'

export type FoundSurface = Extract<Surface, { readonly status: 'optimal' }>

/** So many different axes of a brief, picked by a seed, mostly the way makers want them. */
export function axesFor(space: BlendSpace, count: number, seed: number): SurfaceAxis[] {
  const random = new Random(seed)
  const left = [...space.measures]
  return Array.from({ length: count }, () => {
    const [measure = ''] = left.splice(random.int(0, left.length - 1), 1)
    const { better } = measureOf(library, measure)
    const other = better === 'more' ? 'less' : 'more'
    return { measure, wanted: random.chance(0.8) ? better : other }
  })
}

/**
 * What is wrong with the surface of a brief, by HiGHS in random directions and in those of its facets and
 * vertices; null if no blend keeps the brief.
 */
export function briefFaults(
  brief: Brief,
  axisCount: number,
  options: SurfaceOptions,
  { directions, seed }: { directions: number; seed: number },
): { readonly surface: FoundSurface; readonly faults: string[] } | null {
  const space = new BlendSpace(brief, library)
  const axes = axesFor(space, axisCount, seed)
  const surface = surfaceOf(space, axes, options)
  if (surface.status === 'infeasible') return null
  const whole = options.wholeHull === true
  const signs = axes.map(({ wanted }) => (wanted === 'more' && !whole ? -1 : 1))
  const objectives = axes.map(({ measure }, i) =>
    space.perPercent(measure).map((one) => one * (signs[i] ?? NaN)),
  )
  const vector = asVector(surface, signs)
  const { program } = space
  const faults = [
    ...missedBy(vector, program, objectives, { directions, whole, seed }),
    ...unsupported(vector, widthsOf(program, objectives)),
    ...(whole ? outside(vector, program, objectives, 20, seed) : []),
  ]
  return { surface, faults: faults.map((fault) => `${JSON.stringify(axes)}: ${fault}`) }
}

/** A surface with its measures turned so that less of each is better. */
function asVector(surface: FoundSurface, signs: readonly number[]): Finite {
  const turn = (numbers: readonly number[], by: 1 | -1) =>
    numbers.map((one, i) => one * by * (signs[i] ?? NaN))
  const valuesOf = ({ measures }: FoundSurface['vertices'][number]) =>
    surface.axes.map(({ measure }) => measures[measure] ?? NaN)
  return {
    ...surface,
    corners: surface.vertices.map((vertex) => ({
      x: new Float64Array(),
      values: turn(valuesOf(vertex), 1),
      weights: turn(vertex.direction, -1),
    })),
    faces: surface.facets.map((corners, k) => ({
      corners,
      weights: turn(surface.normals[k] ?? [], -1),
    })),
  }
}
