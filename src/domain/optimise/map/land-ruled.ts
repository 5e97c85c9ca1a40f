import type { Library } from '../../blend/library'
import { measureOf } from '../../blend/library'
import { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import type { Land, LandQuestion, RuledLand } from './land-question'
import type { Axes, Corner } from './region'
import { attainableRegion } from './attainable-region'
import { withoutWishesOn } from '../brief/ranges'
import { withoutRules } from '../brief/brief-rules'
import { frontierUnderRules } from '../pareto/front-ruled'
import { GRID_SIZES, type RuledTerrain, terrainUnderRules } from './terrain-ruled'

/** The frontier is looked for once a grid of this size shows roughly where the land is. */
const FRONTIER_FROM = 15

/** Milliseconds for the frontier of a map; what it does not prove in that time is told as not proved. */
const FRONTIER_TIME_MS = 2000

interface Watch {
  /** Asked at every program; true ends the land with what was yielded. */
  readonly shouldStop?: (() => boolean) | undefined
}

/**
 * What a map shows of a sound brief with rules, from coarse to fine: yielded again after every row. Of
 * heights the finest whole grid is told, so that nothing once seen goes away; the edge grows on the last.
 * Ends at once where there is no land.
 */
export function* landUnderRules(
  question: LandQuestion,
  library: Library,
  { shouldStop }: Watch = {},
): Generator<Land, void, void> {
  const { brief, axes, height, window, grid } = question
  const outline = attainableRegion(new BlendSpace(withoutRules(brief), library), axes)
  const around = { axes, height, frontier: [], rings: [] }
  const nothing = { ...around, region: [], terrain: undefined }
  if (outline.length === 0) return yield nothing
  yield { ...nothing, region: outline, ruled: NOTHING_YET }
  const space = new BlendSpace(brief, library)
  const sizes = [...GRID_SIZES.filter((size) => size < grid), grid]
  let whole: RuledTerrain | undefined
  let frontier: Frontier | undefined
  const all = terrainUnderRules(space, axes, height ?? axes[0], { window, sizes, shouldStop })
  for (let step = all.next(); ; step = all.next()) {
    if (step.done) {
      if (step.value === 'infeasible') yield nothing
      return
    }
    const terrain = step.value
    const { part, isWhole } = doneOf(terrain)
    if (isWhole) whole = terrain
    if (isWhole && terrain.x.length >= Math.min(FRONTIER_FROM, grid))
      frontier ??= frontierOf(brief, library, axes, shouldStop)
    const isDone = terrain.stage === 'complete'
    const stage = terrain.stage === 'heights' ? 'heights' : 'edge'
    const underWay = isDone ? undefined : ({ stage, size: terrain.x.length, part } as const)
    const ruled: RuledLand = { terrain: whole, ...(frontier ?? NO_FRONTIER), underWay }
    const terrainShown = height === undefined ? undefined : whole
    yield { ...around, region: outline, terrain: terrainShown, ruled }
  }
}

type Frontier = Pick<RuledLand, 'pieces' | 'piecesAreProved'>

const NO_FRONTIER: Frontier = { pieces: [], piecesAreProved: false }

const NOTHING_YET: RuledLand = {
  terrain: undefined,
  ...NO_FRONTIER,
  underWay: { stage: 'heights', size: GRID_SIZES[0] ?? 0, part: 0 },
}

/** How much of the present stage is done, 0 to 1, and whether every height of its grid was looked at. */
function doneOf({ stage, states, ends }: RuledTerrain): { part: number; isWhole: boolean } {
  const rows = Math.max(1, states.length)
  if (stage === 'complete') return { part: 1, isWhole: true }
  if (stage === 'edge') {
    const last = Math.max(0, ...ends.map(({ row }) => row + 1))
    return { part: last / rows, isWhole: true }
  }
  const open = states.findIndex((row) => row.every((state) => state === 'open'))
  return { part: (open < 0 ? rows : open) / rows, isWhole: open < 0 }
}

/** All that nothing beats on both axes, in pieces whose mixtures keep the rules. */
function frontierOf(
  brief: Brief,
  library: Library,
  axes: Axes,
  shouldStop: (() => boolean) | undefined,
): Frontier {
  const space = new BlendSpace(withoutWishesOn(brief, axes), library)
  const wantedOn = (measure: string) => ({ measure, wanted: measureOf(library, measure).better })
  const found = frontierUnderRules(space, [wantedOn(axes[0]), wantedOn(axes[1])], {
    timeMs: FRONTIER_TIME_MS,
    shouldStop,
  })
  if (!('vertices' in found)) return NO_FRONTIER
  const corners = found.vertices.map(({ measures, blend }): Corner => {
    return { x: measures[axes[0]] ?? NaN, y: measures[axes[1]] ?? NaN, blend }
  })
  const pieces = found.facets.map((facet) => facet.flatMap((place) => corners[place] ?? []))
  return { pieces, piecesAreProved: found.status === 'optimal' }
}
