import { attainableRanges } from '../../../../src/domain/optimise/ranges/attainable-linear'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { contest } from '../contest'
import { type Problem, problemOf } from '../problem'
import { recorded, replay } from '../questions'
import type { Rivals } from '../rivals/all'
import type { Effort, TaskResult } from '../task'

/** The least and most of every measure and of every oil's share. */
export function ranges(rivals: Rivals, { pick }: Effort): TaskResult {
  let solves = 0
  const standings = contest({
    instances: pick(8, 3),
    rounds: pick(8, 2),
    warmUps: 3,
    judge: rivals.highs.name,
    makeHeat(seed) {
      const problem = problemOf(seed)
      const space = spaceOf(problem)
      const recording = spaceOf(problem)
      const questions = recorded(recording.simplex, () => attainableRanges(recording))
      solves = questions.length
      const { yalps, yalpsLean, jslp, glpk, highs, highsKept } = rivals
      const others = [
        ...[yalps, yalpsLean, glpk, highsKept].map((one) => replay(one, space.program, questions)),
        ...[jslp, highs].map((one) => replay(one, space.program, questions, 2)),
      ]
      return {
        entries: [ownEntry(space), ...others.map(({ entry }) => entry)],
        dispose: () => others.forEach(({ dispose }) => dispose()),
      }
    },
  })
  return { id: 'ranges', standings, facts: `${solves} solves` }
}

function ownEntry(space: BlendSpace) {
  return {
    name: 'barwright',
    run() {
      space.simplex.reset()
      const found = attainableRanges(space)
      return () =>
        [...Object.values(found?.measures ?? {}), ...Object.values(found?.oils ?? {})].flatMap(
          ({ min, max }) => [min, -max],
        )
    },
  }
}

export function spaceOf({ brief, library }: Problem): BlendSpace {
  return new BlendSpace(brief, library)
}
