import type { BlendRules } from '../../lp/search/rules'
import { PRESENT_PERCENT, RULE_TOLERANCE_PERCENT } from '../brief/brief-rules'

/** A part of a search: what is settled of each oil's use, the limits of its share, and a bound. */
export interface Part {
  readonly use: Use[]
  readonly lower: number[]
  readonly upper: number[]
  readonly bound: number
}

type Use = 'open' | 'in' | 'out'

/** Draws the conclusions of what is settled in a part; false where they contradict one another. */
export function settle({ use, lower, upper }: Part, rules: BlendRules): boolean {
  const before = use.join()
  use.forEach((one, oil) => {
    const least = Math.max(leastOf(rules, oil), lower[oil] ?? NaN)
    if (one === 'open' && (lower[oil] ?? NaN) > 0) use[oil] = 'in'
    if (one === 'open' && (upper[oil] ?? NaN) < least) use[oil] = 'out'
    if (use[oil] === 'in') lower[oil] = least
    if (use[oil] === 'out') upper[oil] = 0
  })
  for (const { variables, most } of rules.counts) {
    if (variables.filter((oil) => use[oil] === 'in').length < most) continue
    for (const oil of variables) if (use[oil] === 'open') use[oil] = 'out'
  }
  for (const [oil, companion] of rules.requires) {
    if (use[oil] === 'in' && use[companion] === 'open') use[companion] = 'in'
    if (use[companion] === 'out' && use[oil] === 'open') use[oil] = 'out'
  }
  const part = { use, lower, upper, bound: NaN }
  return use.join() === before ? isConsistent(part, rules) : settle(part, rules)
}

function isConsistent({ use, lower, upper }: Part, { counts, requires }: BlendRules): boolean {
  return (
    use.every((_, oil) => (lower[oil] ?? NaN) <= (upper[oil] ?? NaN) + RULE_TOLERANCE_PERCENT) &&
    counts.every(
      ({ variables, most }) => variables.filter((oil) => use[oil] === 'in').length <= most,
    ) &&
    requires.every(([oil, companion]) => use[oil] !== 'in' || use[companion] !== 'out')
  )
}

/** The parts that a part splits into where its best shares break a rule, likelier last; else none. */
export function childrenOf(part: Part, shares: Float64Array, rules: BlendRules): Part[] {
  const oil = oilToSettle(part, shares, rules)
  if (oil !== undefined) return [withUse(part, oil, 'in'), withUse(part, oil, 'out')]
  const off = [...shares.keys()].find((one) => offStep(shares[one] ?? NaN, rules.step))
  if (off === undefined) return []
  const below = Math.floor((shares[off] ?? NaN) / rules.step) * rules.step
  return [
    { ...copyOf(part), lower: part.lower.with(off, below + rules.step) },
    { ...copyOf(part), upper: part.upper.with(off, below) },
  ]
}

/**
 * The parts that a part splits into at any oil not settled yet, by its use or by the step its share
 * is nearest to; none where all is settled.
 */
export function splitAnywhere(part: Part, shares: Float64Array, { step }: BlendRules): Part[] {
  const open = part.use.indexOf('open')
  if (open >= 0) return [withUse(part, open, 'in'), withUse(part, open, 'out')]
  const { lower, upper } = part
  const oil = step > 0 ? lower.findIndex((least, one) => least < (upper[one] ?? NaN)) : -1
  if (oil < 0) return []
  const nearest = Math.round((shares[oil] ?? NaN) / step) * step
  return [
    { ...copyOf(part), upper: upper.with(oil, nearest - step) },
    { ...copyOf(part), lower: lower.with(oil, nearest + step) },
    { ...copyOf(part), lower: lower.with(oil, nearest), upper: upper.with(oil, nearest) },
  ]
}

/** An open oil through which the shares break a rule on use, that with the smallest share. */
function oilToSettle({ use }: Part, shares: Float64Array, rules: BlendRules): number | undefined {
  const shareOf = (oil: number) => shares[oil] ?? NaN
  const isIn = (oil: number) => shareOf(oil) > PRESENT_PERCENT
  const broken = new Set<number>()
  for (const oil of shares.keys()) {
    if (isIn(oil) && shareOf(oil) < leastOf(rules, oil) - RULE_TOLERANCE_PERCENT) broken.add(oil)
  }
  for (const { variables, most } of rules.counts) {
    const present = variables.filter(isIn)
    if (present.length > most) for (const oil of present) broken.add(oil)
  }
  for (const [oil, companion] of rules.requires) {
    const lacks = shareOf(companion) < leastOf(rules, companion) - RULE_TOLERANCE_PERCENT
    if (isIn(oil) && lacks) broken.add(oil)
  }
  const open = [...broken].filter((oil) => use[oil] === 'open')
  return open.toSorted((a, b) => shareOf(a) - shareOf(b))[0]
}

/** A part in which everything is settled as the shares have it. */
export function settled(part: Part, shares: Float64Array, rules: BlendRules): Part {
  const { use, lower, upper } = copyOf(part)
  const { step } = rules
  shares.forEach((share, oil) => {
    if (share <= PRESENT_PERCENT) upper[oil] = 0
    else lower[oil] = Math.max(lower[oil] ?? NaN, leastOf(rules, oil))
    if (step > 0) lower[oil] = upper[oil] = Math.round(share / step) * step
  })
  return { use, lower, upper, bound: part.bound }
}

function withUse(part: Part, oil: number, use: Use): Part {
  return { ...copyOf(part), use: part.use.with(oil, use) }
}

function copyOf({ use, lower, upper, bound }: Part): Part {
  return { use: [...use], lower: [...lower], upper: [...upper], bound }
}

function leastOf({ leastUse, step }: BlendRules, oil: number): number {
  return Math.max(leastUse[oil] ?? NaN, step)
}

function offStep(share: number, step: number): boolean {
  return step > 0 && Math.abs(share - Math.round(share / step) * step) > RULE_TOLERANCE_PERCENT
}
