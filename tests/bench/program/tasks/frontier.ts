import { COST } from '../../../../src/domain/blend/measure'
import { measureRange } from '../../../../src/domain/optimise/ranges/attainable-linear'
import { type BlendSpace, negated } from '../../../../src/domain/optimise/space/blend-space'
import {
  type Surface,
  surfaceOf,
  type SurfaceAxis,
} from '../../../../src/domain/optimise/pareto/blend-surface'
import { contest, type Entry, type Heat } from '../contest'
import { dichotomicFrontier, dot, largest, type Pair } from '../dichotomic'
import { figuresOf } from '../figures'
import { isLimiting, measureId, problemOf } from '../problem'
import { ownReplay, recorded, replay } from '../questions'
import type { Rivals } from '../rivals/all'
import type { Rival, Verdict } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'
import { spaceOf } from './ranges'

const MEASURES = [measureId(0), measureId(1)] as const

/** The sides of two found frontiers are compared in so many directions. */
const DIRECTIONS = 41

/** Cost against one measure, exact; rivals by dichotomic search, each solve cold. */
export function twoAxes(rivals: Rivals, { pick }: Effort): TaskResult {
  const corners: number[] = []
  const { yalps, yalpsLean, jslp, glpk, highs, highsKept } = rivals
  const standings = contest({
    instances: pick(40, 10),
    rounds: pick(8, 2),
    warmUps: 4,
    judge: highs.name,
    makeHeat(seed) {
      const space = spaceOf(problemOf(seed))
      const axes = opposedAxes(space, 1)
      corners.push(verticesOf(surfaceOf(space, axes)).length)
      const others = [
        ...[yalps, yalpsLean, glpk, jslp, highsKept].map((one) => dichotomic(one, space, axes)),
        dichotomic(highs, space, axes, 1),
      ]
      return heat(twoAxesEntry(space, axes), others)
    },
  })
  return { id: 'two-axes', standings, facts: cornersText(corners) }
}

/**
 * Cost against two measures, exact. Rivals answer the very weighted sums that our inner approximation
 * asks for, each solve cold, and are spared its geometry. javascript-lp-solver is left out: one of the
 * sums for the problem of seed 8 it never answers, and in this process nothing could stop it.
 */
export function threeAxes(rivals: Rivals, { pick }: Effort): TaskResult {
  const corners: number[] = []
  const solves: number[] = []
  const { yalps, yalpsLean, glpk, highs, highsKept } = rivals
  const standings = contest({
    instances: pick(15, 4),
    rounds: pick(8, 2),
    warmUps: 4,
    judge: highs.name,
    makeHeat(seed) {
      const space = spaceOf(problemOf(seed))
      const recording = spaceOf(problemOf(seed))
      const axes = opposedAxes(space, 2)
      let count = 0
      const questions = recorded(recording.simplex, () => {
        count = verticesOf(surfaceOf(recording, axes)).length
      })
      corners.push(count)
      solves.push(questions.length)
      const verdicts = questions.map(({ verdict }) => verdict)
      return heat(threeAxesEntry(space, axes, count, verdicts), [
        ownReplay(recording.program, questions),
        ...[yalps, yalpsLean, glpk, highsKept].map((one) => replay(one, space.program, questions)),
        replay(highs, space.program, questions, 1),
      ])
    },
  })
  const facts = `${cornersText(corners)}, ${figuresOf(solves).median} solves in the median`
  return { id: 'three-axes', standings, facts }
}

interface Disposable {
  readonly entry: Entry
  readonly dispose: () => void
}

function heat(own: Entry, others: readonly Disposable[]): Heat {
  return {
    entries: [own, ...others.map(({ entry }) => entry)],
    dispose: () => others.forEach(({ dispose }) => dispose()),
  }
}

function verticesOf(surface: Surface) {
  if (surface.status === 'optimal') return surface.vertices
  throw new Error('A brief with a planted blend was called infeasible')
}

function cornersText(corners: readonly number[]): string {
  return `${figuresOf(corners).median} corners in the median, ${Math.max(...corners)} at most`
}

/**
 * Cost, and so many measures each wanted the way the cheapest blend is not: further from the end of its
 * attainable range that the blend is nearer to. Wanted the other way there is often nothing to trade.
 */
function opposedAxes(space: BlendSpace, measures: 1 | 2): SurfaceAxis[] {
  const shares = space.least(space.perPercent(COST))?.x.slice() ?? new Float64Array()
  const opposed = MEASURES.slice(0, measures).map((measure): SurfaceAxis => {
    const value = dot(space.perPercent(measure), shares)
    const { min = NaN, max = NaN } = measureRange(space, measure) ?? {}
    return { measure, wanted: value - min > max - value ? 'less' : 'more' }
  })
  return [{ measure: COST, wanted: 'less' }, ...opposed]
}

/** What is to be least of an axis, for each percent of an oil. */
function objective(space: BlendSpace, { measure, wanted }: SurfaceAxis): Float64Array {
  const values = space.perPercent(measure)
  return wanted === 'more' ? negated(values) : values
}

function twoAxesEntry(space: BlendSpace, axes: readonly SurfaceAxis[]): Entry {
  return {
    name: 'barwright',
    run() {
      const surface = surfaceOf(space, axes)
      return () => {
        const pairs = verticesOf(surface).map(({ measures }): Pair => {
          const [a = NaN, b = NaN] = axes.map(({ measure, wanted }) => {
            return (measures[measure] ?? NaN) * (wanted === 'more' ? -1 : 1)
          })
          return [a, b]
        })
        return supports(pairs, space, axes)
      }
    },
  }
}

function dichotomic(
  rival: Rival,
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
  rounds?: number,
): Disposable {
  const model = rival.prepare({ ...space.program, rows: space.program.rows.filter(isLimiting) })
  const [first, second] = axes.map((axis) => objective(space, axis))
  if (!first || !second) throw new Error('A frontier of two axes needs two')
  const run = () => {
    const found = dichotomicFrontier(model, first, second)
    return () => (found === 'no answer' ? [found] : supports(found, space, axes))
  }
  return { entry: { name: rival.name, run, rounds }, dispose: () => model.dispose() }
}

/** How far corners reach in evenly spread directions: the same for two frontiers only if they are. */
function supports(
  corners: readonly Pair[],
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
): number[] {
  const [a = NaN, b = NaN] = axes.map((axis) => 1 / largest(objective(space, axis)))
  return Array.from({ length: DIRECTIONS }, (_, k) => {
    const weight = k / (DIRECTIONS - 1)
    return Math.min(...corners.map(([x, y]) => (1 - weight) * a * x + weight * b * y))
  })
}

/** The corners are those of the recorded run, whose solves are the ones compared. */
function threeAxesEntry(
  space: BlendSpace,
  axes: readonly SurfaceAxis[],
  count: number,
  verdicts: readonly Verdict[],
): Entry {
  return {
    name: 'barwright',
    run() {
      const surface = surfaceOf(space, axes)
      return () => (verticesOf(surface).length === count ? verdicts : [])
    },
  }
}
