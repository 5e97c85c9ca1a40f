import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { faults } from '../../../property/recheck'

type Shares = Readonly<Record<string, number>>

/** In percent, as far as answers may miss limits. */
const SLACK = 1e-6

/**
 * All that is wrong with a blend as an answer to a brief with rules, told without a line of the product:
 * limits straight from the data files, rules by what they say.
 */
export function ruleFaults(brief: Brief, blend: Shares): string[] {
  const { atMostOils, absentOrAtLeast, shareStep, requires, oneOf } = brief.rules ?? {}
  const present = Object.entries(blend).filter(([, share]) => share > SLACK)
  const isIn = (oil: string) => (blend[oil] ?? 0) > SLACK
  const wrong = faults(brief, blend)
  if (present.length > (atMostOils ?? Infinity)) wrong.push(`${present.length} oils`)
  for (const [oil, share] of present) {
    if (share < (absentOrAtLeast ?? 0) - SLACK) wrong.push(`${oil} has only ${share}`)
    const steps = share / (shareStep ?? share)
    if (Math.abs(steps - Math.round(steps)) * (shareStep ?? 0) > SLACK)
      wrong.push(`${oil} has ${share}, off the step`)
  }
  for (const pair of requires ?? [])
    if (isIn(pair.oil) && !((blend[pair.with] ?? 0) >= 0.1 - SLACK))
      wrong.push(`${pair.oil} without ${pair.with}`)
  for (const group of oneOf ?? [])
    if (group.filter(isIn).length > 1) wrong.push(`${group.filter(isIn).join()} together`)
  return wrong
}

/** Whether a set of oils may be the one in use. */
export function mayBeUsed(brief: Brief, oils: ReadonlySet<string>): boolean {
  const { atMostOils, requires, oneOf } = brief.rules ?? {}
  return (
    oils.size <= (atMostOils ?? Infinity) &&
    (requires ?? []).every((pair) => !oils.has(pair.oil) || oils.has(pair.with)) &&
    (oneOf ?? []).every((group) => group.filter((oil) => oils.has(oil)).length <= 1)
  )
}

/** The least an oil must have where it is in, by the rules alone; percent. */
export function leastShare(brief: Brief, oil: string): number {
  const { absentOrAtLeast, requires } = brief.rules ?? {}
  const isCompanion = (requires ?? []).some((pair) => pair.with === oil)
  return Math.max(absentOrAtLeast ?? 0, isCompanion ? 0.1 : 0)
}
