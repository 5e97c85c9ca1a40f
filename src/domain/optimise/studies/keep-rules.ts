import type { BlendRules } from '../../lp/search/rules'
import type { LinearProgram } from '../../lp/program'
import { solveWithRules } from '../../lp/search/branch'
import type { BlendSpace } from '../space/blend-space'
import type { Brief } from '../brief/brief'
import { blendRules } from '../space/blend-rules'
import type { BriefRules } from '../brief/brief-rules'
import { brokenRules } from '../space/broken-rules'

/** What looking for a blend under rules came to. */
export type Looked =
  | {
      readonly status: 'found'
      readonly x: ArrayLike<number>
      readonly objective: number
      /** Whether it is proved the cheapest. */
      readonly proved: boolean
    }
  | { readonly status: 'none' }
  /** Called off before a blend was found or ruled out. */
  | { readonly status: 'undecided' }

/**
 * Programs solved before a search is called off. Searches of 40 oils take tens to hundreds of them (see
 * `searchFor`); where this many do not do, the limits are so tight that hardly a blend keeps the rules.
 */
const MOST_NODES = 5_000

/**
 * The cheapest blend under rules; where the search is called off, the best found so far, which keeps
 * limits and rules but is not proved the cheapest.
 */
export function lookUnderRules(program: LinearProgram, rules: BlendRules): Looked {
  const outcome = solveWithRules(program, rules, ({ nodes }) => nodes < MOST_NODES)
  if (outcome.status === 'infeasible') return { status: 'none' }
  if (outcome.best === null) return { status: 'undecided' }
  return { status: 'found', ...outcome.best, proved: outcome.status === 'optimal' }
}

/** The cheapest blend of a space under its brief's rules; searched for only where the linear one breaks one. */
export function cheapestIn(space: BlendSpace, cost: Float64Array): Looked {
  const linear = space.least(cost)
  if (!linear) return { status: 'none' }
  const { rules } = space.brief
  if (brokenRules(rules, space.blendOf(linear.x)).length === 0)
    return { status: 'found', x: linear.x, objective: linear.objective, proved: true }
  return lookUnderRules({ ...space.program, cost }, blendRules(space.oils, rules))
}

/** The brief without its step of shares. */
export function withoutSteps(brief: Brief): Brief {
  return { ...brief, rules: rulesAmong(brief.rules, () => true, { steps: false }) }
}

/** The rules as far as they speak of some oils; the step only where `steps`. */
export function rulesAmong(
  rules: BriefRules | undefined,
  isThere: (oil: string) => boolean,
  { steps }: { readonly steps: boolean },
): BriefRules | undefined {
  if (!rules) return undefined
  const { atMostOils, absentOrAtLeast, shareStep, requires = [], oneOf = [] } = rules
  return {
    atMostOils,
    absentOrAtLeast,
    shareStep: steps ? shareStep : undefined,
    requires: requires.filter((pair) => isThere(pair.oil) && isThere(pair.with)),
    oneOf: oneOf.map((group) => group.filter(isThere)).filter((group) => group.length > 1),
  }
}
