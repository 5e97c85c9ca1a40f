import type { Library } from '../../blend/library'
import { measureOf } from '../../blend/library'
import { BlendSpace } from '../space/blend-space'
import { undominated } from '../pareto/undominated'
import type { Interval } from '../../interval'
import { type Land, type LandQuestion, withLens } from './land-question'
import type { Corner } from './region'
import { attainableRegion } from './attainable-region'
import { type Terrain, terrainOver } from './terrain-linear'

/** Finds what a map shows of a sound brief. Throws UnsoundAnswer like every solve. */
export function landOfLimits(question: LandQuestion, library: Library): Land {
  const { brief, axes, height, lens } = question
  const space = new BlendSpace(brief, library)
  const region = attainableRegion(space, axes)
  const wanted = [measureOf(library, axes[0]).better, measureOf(library, axes[1]).better] as const
  const rings = (lens?.values ?? []).map((value) => ({
    value,
    region: attainableRegion(new BlendSpace(withLens(brief, lens, value), library), axes),
  }))
  return {
    axes,
    height,
    region,
    frontier: undominated(region, wanted),
    terrain:
      region.length > 2 && height !== undefined
        ? heights(question, height, region, space)
        : undefined,
    rings,
  }
}

function heights(
  { axes, window, grid }: LandQuestion,
  height: string,
  region: readonly Corner[],
  space: BlendSpace,
): Terrain {
  const steps = (of: (corner: Corner) => number, part: Interval | undefined) => {
    const values = region.map(of)
    const low = Math.max(Math.min(...values), part?.min ?? -Infinity)
    const high = Math.min(Math.max(...values), part?.max ?? Infinity)
    return Array.from({ length: grid }, (_, i) => low + ((high - low) * i) / (grid - 1))
  }
  const x = steps((corner) => corner.x, window?.x)
  const y = steps((corner) => corner.y, window?.y)
  return terrainOver(space, axes, height, x, y)
}
