import type { BlendRules } from '../../lp/search/rules'
import { type BriefRules, LEAST_COMPANION_PERCENT } from '../brief/brief-rules'

/** The rules of a brief over the shares of its oils in percent, in the order of `oils`. */
export function blendRules(oils: readonly string[], rules: BriefRules = {}): BlendRules {
  const {
    atMostOils = Infinity,
    absentOrAtLeast = 0,
    shareStep = 0,
    requires = [],
    oneOf = [],
  } = rules
  const placeOf = (oil: string) => oils.indexOf(oil)
  const companions = new Set(requires.map((one) => one.with))
  const leastOf = (oil: string) => (companions.has(oil) ? LEAST_COMPANION_PERCENT : 0)
  const atMost = (variables: readonly number[], most: number) => ({ variables, least: 0, most })
  return {
    leastUse: oils.map((oil) => Math.max(absentOrAtLeast, leastOf(oil))),
    counts: [
      ...(atMostOils < oils.length ? [atMost([...oils.keys()], atMostOils)] : []),
      ...oneOf.map((group) => atMost(group.map(placeOf), 1)),
    ],
    requires: requires.map(
      ({ oil, with: companion }) => [placeOf(oil), placeOf(companion)] as const,
    ),
    step: shareStep,
  }
}
