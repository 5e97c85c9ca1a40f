import type { Library } from '../../blend/library'
import { blendValues } from '../../blend/values'
import type { Brief } from '../brief/brief'
import { heldBrief } from './hold'
import { withoutSteps } from './keep-rules'
import { NearSpace } from './near-space'
import type { LikeStudy, StudyAnswer, StudyResult } from './question'
import { distinct, resultOf, type StudyFrame } from './result'

/**
 * What a percentage point of total change weighs beside a tie: 20 points, which is a tenth of the oils
 * swapped for others, as much as one tie of one measure. An assumption of this project: of two bars
 * that feel alike the one with fewer changes is wanted.
 */
export const TIES_PER_POINT = 1 / 20

/**
 * Other blends that make much the same bar: for every oil of the shelf the blend that has more of it, or
 * less, by a stated step, and moves the bar least. The best first: least moved, few changes.
 */
export function likeStudy(brief: Brief, question: LikeStudy, library: Library): StudyAnswer {
  const { base: blend, prices, stepPoints, most } = question
  const base = blendValues(library, prices, blend)
  const held = heldBrief(brief, question, base, library)
  const under = withoutSteps(held.brief)
  const frame = { brief, library, question }
  const space = new NearSpace({ brief: under, base: blend, prices, library, changes: true })
  const results = Object.keys(under.oils)
    .flatMap((oil) => shifts(oil, frame, space, question, under))
    .sort((a, b) => distance(a) - distance(b))
  if (results.length === 0)
    return { status: 'none', base, reason: { kind: 'nothing holds', nearest: undefined } }
  const different = distinct(results, stepPoints)
  return { status: 'found', base, results: different.slice(0, most), leftOut: held.leftOut }
}

/** How far a result lies from the base, in ties, its changes of oils counted in. */
export function distance({
  movedTies,
  changePoints,
}: Pick<StudyResult, 'movedTies' | 'changePoints'>): number {
  return movedTies + TIES_PER_POINT * changePoints
}

function shifts(
  oil: string,
  frame: StudyFrame,
  space: NearSpace,
  { base, stepPoints }: LikeStudy,
  held: Brief,
): StudyResult[] {
  const share = base[oil] ?? 0
  const { min = 0, max = 100 } = held.oils[oil] ?? {}
  const steps = [
    ...(share + stepPoints <= max ? [{ points: stepPoints, min: share + stepPoints, max }] : []),
    ...(share - stepPoints >= min ? [{ points: -stepPoints, min, max: share - stepPoints }] : []),
  ]
  return steps.flatMap(({ points, ...limits }) => {
    space.limitOil(oil, limits)
    const found = space.nearest({ perTie: 1, perPoint: TIES_PER_POINT })
    space.restoreOil(oil)
    if (found.status !== 'found') return []
    return [resultOf(frame, found.blend, { kind: 'shift', oil, points }, held)]
  })
}
