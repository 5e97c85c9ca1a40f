import type { Blend } from '../../blend/blend'
import {
  type BriefRules,
  LEAST_COMPANION_PERCENT,
  PRESENT_PERCENT,
  RULE_TOLERANCE_PERCENT,
} from '../brief/brief-rules'

/**
 * Rules that a blend breaks, each as its path and what breaks it; found from the shares alone. Empty
 * where all hold or there are none.
 */
export function brokenRules(rules: BriefRules | undefined, blend: Blend): string[] {
  if (!rules) return []
  const { atMostOils = Infinity, absentOrAtLeast: least = 0, requires = [], oneOf = [] } = rules
  const shareOf = (oil: string) => blend[oil] ?? 0
  const isIn = (oil: string) => shareOf(oil) > PRESENT_PERCENT
  const present = Object.keys(blend).filter(isIn)
  const listed = (oils: readonly string[]) => oils.map((oil) => `${oil} ${shareOf(oil)}`).join(', ')
  const found: string[] = []
  const expect = (path: string, wrong: readonly string[]) => {
    if (wrong.length > 0) found.push(`${path}: ${listed(wrong)}`)
  }
  expect('rules.atMostOils', present.length > atMostOils ? present : [])
  expect(
    'rules.absentOrAtLeast',
    present.filter((oil) => shareOf(oil) < least - RULE_TOLERANCE_PERCENT),
  )
  expect(
    'rules.shareStep',
    present.filter((oil) => offStep(shareOf(oil), rules.shareStep) > RULE_TOLERANCE_PERCENT),
  )
  requires.forEach(({ oil, with: companion }, number) => {
    const lacks = shareOf(companion) < LEAST_COMPANION_PERCENT - RULE_TOLERANCE_PERCENT
    expect(`rules.requires[${number}]`, isIn(oil) && lacks ? [oil, companion] : [])
  })
  oneOf.forEach((group, number) => {
    const together = group.filter(isIn)
    expect(`rules.oneOf[${number}]`, together.length > 1 ? together : [])
  })
  return found
}

/** How far a share is from the nearest whole number of steps, in percent; 0 without a step. */
function offStep(share: number, step: number | undefined): number {
  return step === undefined ? 0 : Math.abs(share - Math.round(share / step) * step)
}
