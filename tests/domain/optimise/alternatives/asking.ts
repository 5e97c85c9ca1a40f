import { library } from '../../../../src/data/library'
import { type Blend, totalChange } from '../../../../src/domain/blend/blend'
import {
  type Alternatives,
  alternativesTo,
  type AlternativesOrder,
} from '../../../../src/domain/optimise/alternatives/alternatives-linear'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { Found } from '../../../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { highs } from '../../lp/solvers/loaded-highs'

export type Several = Extract<Alternatives, { status: 'optimal' }>

/** Eight within 3 %, as a maker would ask. */
export const EIGHT: AlternativesOrder = { slack: { fraction: 0.03 }, count: 8, seed: 1 }

/** The alternatives of a brief from a space of its own; throws where there are none. */
export function asked(brief: Brief, order: AlternativesOrder = EIGHT): Several {
  const found = alternativesTo(new BlendSpace(brief, library), order)
  if (found.status !== 'optimal') throw new Error(`The brief is ${found.status}`)
  return found
}

/** What HiGHS calls best, or undefined where it finds no blend. */
export function bestByHighs(brief: Brief): Found | undefined {
  const answer = solveBrief(brief, library, highs)
  if (answer.status === 'invalid') throw new Error('The brief is invalid')
  return answer.status === 'optimal' ? answer : undefined
}

/** The smallest total change between any two blends, in percentage points. */
export function leastChangeOf(blends: readonly Blend[]): number {
  return Math.min(
    ...blends.flatMap((one, k) => blends.slice(0, k).map((other) => totalChange(one, other))),
  )
}
