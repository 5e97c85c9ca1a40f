import type { Library } from '../../blend/library'
import type { Brief } from '../brief/brief'
import { conflictOf } from './conflict-linear'
import { type Limit, limitsOf, withLimit } from '../brief/limits'
import type { SolveProgram } from '../../lp/solvers/solve-program'
import type { Allowance, GoOn } from '../search/allowance'
import { bestUnderRules } from '../search/best-ruled'
import { type BriefRules, withoutRules } from '../brief/brief-rules'

/** What cannot hold together. */
export interface RuledConflict {
  /** Paths of limits and rules: measures.hardness.min, rules.atMostOils, rules.requires[0]. */
  readonly conflict: readonly string[]
  /** True where time ran out before each of them was shown to be needed. */
  readonly mayBeSmaller?: true | undefined
}

/** Kinds of limits in the order in which they are given up where any of them would do; rules come last. */
const GIVEN_UP_FIRST: readonly Limit['kind'][] = ['oil', 'group', 'measure']

/**
 * Limits and rules that cannot hold together, for a brief found to have no blend: irreducible, that is,
 * dropping any one of them lets the rest hold, unless it says that it may be smaller. Of limits alone if
 * these clash without the rules. Deletion filter: kinds of limits and then each limit and rule are
 * dropped in turn, and stay dropped if there is still proved to be no blend (J.W. Chinneck, E.W.
 * Dravnieks, ORSA J. Computing 3 (1991) 157-168).
 */
export function conflictUnderRules(
  brief: Brief,
  library: Library,
  solve: SolveProgram,
  allowance: Allowance,
): RuledConflict {
  const linear = withoutRules(brief)
  const conflict = conflictOf(linear, library)
  if (conflict.length > 0) return { conflict }
  const limits = limitsOf(brief)
  const rulePaths = pathsOfRules(brief.rules ?? {})
  let kept = [...limits.map(({ path }) => path), ...rulePaths]
  let mayBeSmaller = false
  const dropIfStillClashing = (paths: readonly string[], goOn: GoOn) => {
    const fewer = kept.filter((path) => !paths.includes(path))
    const verdict = anyBlendKeeping(brief, fewer, library, solve, goOn)
    if (verdict === 'none') kept = fewer
    return verdict
  }
  for (const kind of GIVEN_UP_FIRST) {
    const paths = limits.filter((limit) => limit.kind === kind).map(({ path }) => path)
    if (paths.length > 0) dropIfStillClashing(paths, allowance.share(kept.length))
  }
  const each = [...kept]
  for (const [done, path] of each.entries()) {
    const verdict = dropIfStillClashing([path], allowance.share(each.length - done))
    if (verdict === 'undecided') mayBeSmaller = true
  }
  return { conflict: kept, ...(mayBeSmaller ? { mayBeSmaller } : {}) }
}

/** The paths by which a brief's rules are named in a conflict. */
export function pathsOfRules(rules: BriefRules): string[] {
  const { atMostOils, absentOrAtLeast, shareStep, requires = [], oneOf = [] } = rules
  const figures = Object.entries({ atMostOils, absentOrAtLeast, shareStep })
  return [
    ...figures.flatMap(([rule, figure]) => (figure === undefined ? [] : [`rules.${rule}`])),
    ...requires.map((_, number) => `rules.requires[${number}]`),
    ...oneOf.map((_, number) => `rules.oneOf[${number}]`),
  ]
}

/** Whether any blend keeps those of a brief's limits and rules that are named. */
function anyBlendKeeping(
  brief: Brief,
  paths: readonly string[],
  library: Library,
  solve: SolveProgram,
  goOn: GoOn,
): 'some' | 'none' | 'undecided' {
  const part = keepingOnly(brief, paths)
  // The search heads for the goal, which leads it, and stops at the first blend it meets.
  const untilFound: GoOn = (progress) => progress.best === null && goOn(progress)
  const { status } = bestUnderRules(part, library, solve, untilFound)
  if (status === 'infeasible') return 'none'
  return status === 'undecided' ? 'undecided' : 'some'
}

/** The brief with only those limits and rules that are named by their paths. */
export function keepingOnly(brief: Brief, paths: readonly string[]): Brief {
  const limited = limitsOf(brief)
    .filter(({ path }) => !paths.includes(path))
    .reduce((kept, limit) => withLimit(kept, limit, undefined), brief)
  const { requires = [], oneOf = [], ...figures } = brief.rules ?? {}
  const isKept = (rule: string) => paths.includes(`rules.${rule}`)
  const keptFigures = Object.entries(figures).filter(([rule]) => isKept(rule))
  const rules: BriefRules = {
    ...Object.fromEntries(keptFigures),
    requires: requires.filter((_, number) => isKept(`requires[${number}]`)),
    oneOf: oneOf.filter((_, number) => isKept(`oneOf[${number}]`)),
  }
  return { ...limited, rules }
}
