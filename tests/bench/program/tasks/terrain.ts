import { COST } from '../../../../src/domain/blend/measure'
import { measureRange } from '../../../../src/domain/optimise/ranges/attainable-linear'
import type { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Axes } from '../../../../src/domain/optimise/map/region'
import { terrainOver } from '../../../../src/domain/optimise/map/terrain-linear'
import { contest } from '../contest'
import { measureId, problemOf } from '../problem'
import { recorded, replay } from '../questions'
import type { Rivals } from '../rivals/all'
import type { Verdict } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'
import { spaceOf } from './ranges'

const GRID = 60
export const MAP_AXES: Axes = [measureId(0), measureId(1)]

/** The least cost over a grid of two measures, from end to end of what they can reach. */
export function terrain(rivals: Rivals, { pick }: Effort): TaskResult {
  let feasible = 0
  let cells = 0
  const { yalps, yalpsLean, jslp, glpk, highs, highsKept } = rivals
  const rounds = pick(3, 1)
  const standings = contest({
    instances: pick(4, 1),
    rounds: pick(8, 4),
    warmUps: 2,
    judge: highs.name,
    makeHeat(seed) {
      const problem = problemOf(seed)
      const [space, recording] = [spaceOf(problem), spaceOf(problem)]
      const [x, y] = [steps(space, MAP_AXES[0]), steps(space, MAP_AXES[1])]
      const questions = recorded(recording.simplex, () =>
        terrainOver(recording, MAP_AXES, COST, x, y),
      )
      cells += questions.length
      feasible += questions.filter(({ verdict }) => verdict !== 'infeasible').length
      const others = [
        ...[yalps, yalpsLean, glpk].map((one) => replay(one, space.program, questions, rounds)),
        replay(highsKept, space.program, questions, rounds),
        ...[jslp, highs].map((one) => replay(one, space.program, questions, 1)),
      ]
      return {
        entries: [ownEntry(space, x, y), ...others.map(({ entry }) => entry)],
        dispose: () => others.forEach(({ dispose }) => dispose()),
      }
    },
  })
  const part = Math.round((100 * feasible) / cells)
  return { id: 'terrain', standings, facts: `${part} % of the points have a blend` }
}

function ownEntry(space: BlendSpace, x: readonly number[], y: readonly number[]) {
  return {
    name: 'barwright',
    run() {
      space.simplex.reset()
      const { values } = terrainOver(space, MAP_AXES, COST, x, y)
      return () => values.flatMap(serpentine)
    },
  }
}

/** A row as the terrain walks it: every other one from right to left. */
function serpentine(row: readonly (number | null)[], index: number): Verdict[] {
  const verdicts = row.map((value): Verdict => value ?? 'infeasible')
  return index % 2 === 0 ? verdicts : verdicts.reverse()
}

/** A grid over what one axis can reach with the wishes on both set aside. */
function steps(space: BlendSpace, axis: string): number[] {
  for (const one of MAP_AXES) space.hold(one, {})
  const range = measureRange(space, axis)
  for (const one of MAP_AXES) space.restore(one)
  if (!range) throw new Error('A brief with a planted blend reaches nothing')
  const { min, max } = range
  return Array.from({ length: GRID }, (_, i) => min + ((max - min) * i) / (GRID - 1))
}
