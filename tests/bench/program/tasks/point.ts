import { COST } from '../../../../src/domain/blend/measure'
import type { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { solveAt } from '../../../../src/domain/optimise/solve/point'
import type { Corner } from '../../../../src/domain/optimise/map/region'
import { solveWithOwn } from '../../../../src/domain/lp/solvers/own'
import { attainableRegion } from '../../../../src/domain/optimise/map/attainable-region'
import { at, Random } from '../../../generator/random'
import { contest, type Entry } from '../contest'
import { type Problem, problemOf } from '../problem'
import { modelWith, type RowsModel } from '../questions'
import type { Rivals } from '../rivals/all'
import { NOTHING_TO_FREE } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'
import { spaceOf } from './ranges'
import { MAP_AXES } from './terrain'

/** A place of the map, in the axes' units. */
interface Place {
  readonly x: number
  readonly y: number
}

/** One problem with every solver's model of it, for many points. */
interface Ground {
  readonly problem: Problem
  readonly space: BlendSpace
  readonly region: readonly Corner[]
  readonly others: readonly (RowsModel & { readonly name: string })[]
}

/** The cheapest blend at a random point of the map: from the last one on, rivals cold. */
export function pointAndSolve(rivals: Rivals, { pick }: Effort): TaskResult {
  const grounds = Array.from({ length: pick(10, 3) }, (_, seed) => ground(seed, rivals))
  const standings = contest({
    instances: grounds.length * pick(30, 10),
    rounds: pick(6, 2),
    warmUps: 3,
    judge: rivals.highs.name,
    makeHeat(k) {
      const { problem, space, region, others } = at(grounds, k % grounds.length)
      const place = placeIn(region, k)
      return {
        entries: [
          warm(space, place),
          whole(problem, place),
          ...others.map((other) => rivalAt(other, space, place)),
        ],
        dispose: NOTHING_TO_FREE,
      }
    },
  })
  for (const { model } of grounds.flatMap(({ others }) => others)) model.dispose()
  return { id: 'point', standings, facts: `${grounds.length} problems, random points inside` }
}

function ground(seed: number, rivals: Rivals): Ground {
  const problem = problemOf(seed)
  const space = spaceOf(problem)
  const { yalps, yalpsLean, glpk, jslp, highs, highsKept } = rivals
  const rows = new Set(MAP_AXES.map((axis) => space.rowOf(axis)))
  const program = { ...space.program, cost: space.perPercent(COST) }
  const others = [yalps, yalpsLean, glpk, jslp, highs, highsKept].map((rival) => {
    return { name: rival.name, ...modelWith(rival, program, rows) }
  })
  return { problem, space, region: attainableRegion(space, MAP_AXES), others }
}

/** A random mixture of the region's corners, one corner weighing most. */
function placeIn(region: readonly Corner[], seed: number): Place {
  const random = new Random(seed)
  const weights = region.map(() => (-Math.log(1 - random.next())) ** SHARPNESS)
  const total = weights.reduce((sum, one) => sum + one, 0)
  const mean = (of: (corner: Corner) => number) =>
    region.reduce((sum, corner, k) => sum + (of(corner) * at(weights, k)) / total, 0)
  return { x: mean(({ x }) => x), y: mean(({ y }) => y) }
}

/** The larger, the nearer to a corner points lie; 1 heaps them up in the middle. */
const SHARPNESS = 3

/** What dragging a point needs: two rows held, and a solve from the last basis. */
function warm(space: BlendSpace, { x, y }: Place): Entry {
  const cost = space.perPercent(COST)
  return {
    name: 'barwright',
    run() {
      space.hold(MAP_AXES[0], { min: x, max: x })
      space.hold(MAP_AXES[1], { min: y, max: y })
      const verdict = space.least(cost)?.objective ?? 'infeasible'
      return () => [verdict]
    },
  }
}

/** What the page and the command line answer: from the brief, cold, checked from the oils alone. */
function whole({ brief, library }: Problem, { x, y }: Place): Entry {
  const point = { [MAP_AXES[0]]: x, [MAP_AXES[1]]: y }
  return {
    name: 'barwright, from the brief',
    run() {
      const answer = solveAt(brief, point, library, solveWithOwn)
      return () => [answer.status === 'optimal' ? answer.goalValue : 'infeasible']
    },
  }
}

function rivalAt(
  { name, model, places }: Ground['others'][number],
  space: BlendSpace,
  { x, y }: Place,
): Entry {
  const [across, up] = MAP_AXES.map((axis) => places.get(space.rowOf(axis)) ?? NaN)
  return {
    name,
    run() {
      model.setRow(across ?? NaN, x, x)
      model.setRow(up ?? NaN, y, y)
      model.solve()
      const verdict = model.verdict()
      return () => [verdict]
    },
  }
}
