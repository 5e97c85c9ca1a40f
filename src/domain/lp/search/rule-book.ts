import type { LinearProgram } from '../program'
import { requireReadable, type BlendRules, type CountRule } from './rules'

/** What is settled about a variable's use in a part of the search. */
export const OPEN = 0
export const UNUSED = 1
export const USED = 2

/** Below this part of its upper limit a value counts as zero, and a miss of `leastUse` as none. */
export const USE_TOLERANCE = 1e-9

/** One part of the search: what is settled, and the limits that follow. */
export interface Region {
  readonly use: Uint8Array
  readonly lower: Float64Array
  readonly upper: Float64Array
}

/** Rules applied to one program: what follows from what is settled, and what values break. */
export class RuleBook {
  /** Least value where used: the rule's, the variable's own lower limit or the step. */
  readonly leastUse: Float64Array
  private readonly unit: Float64Array

  constructor(
    private readonly program: LinearProgram,
    readonly rules: BlendRules,
  ) {
    const n = program.cost.length
    this.leastUse = new Float64Array(n)
    this.unit = new Float64Array(n)
    requireReadable(rules, program)
    for (let j = 0; j < n; j++) {
      const least = Math.max(rules.leastUse[j]!, program.lower[j]!)
      this.leastUse[j] = rules.step > 0 ? Math.max(rules.step, this.roundUp(least)) : least
      this.unit[j] = USE_TOLERANCE * Math.max(1, program.upper[j]!)
    }
  }

  private roundUp(value: number): number {
    return Math.ceil(value / this.rules.step - USE_TOLERANCE) * this.rules.step
  }

  private roundDown(value: number): number {
    return Math.floor(value / this.rules.step + USE_TOLERANCE) * this.rules.step
  }

  /** Everything open, limits as the program has them, or rounded to the step. */
  firstRegion(): Region {
    const { program, rules } = this
    const region = {
      use: new Uint8Array(program.cost.length),
      lower: Float64Array.from(program.lower),
      upper: Float64Array.from(program.upper),
    }
    if (rules.step > 0) {
      region.lower.forEach((value, j) => (region.lower[j] = this.roundUp(value)))
      region.upper.forEach((value, j) => (region.upper[j] = this.roundDown(value)))
    }
    return region
  }

  /**
   * Draws the conclusions of what is settled, until there are no more: limits that force use,
   * full and short groups, and needs. False when they contradict one another.
   */
  propagate(region: Region): boolean {
    for (let changed = true; changed;) {
      changed = false
      for (let j = 0; j < region.use.length; j++) {
        const verdict = this.settleByLimits(region, j)
        if (verdict === 'broken') return false
        if (verdict === 'changed') changed = true
      }
      for (const rule of this.rules.counts) {
        const verdict = settleGroup(region, rule)
        if (verdict === 'broken') return false
        if (verdict === 'changed') changed = true
      }
      for (const [variable, needed] of this.rules.requires) {
        const verdict = settleNeed(region, variable, needed)
        if (verdict === 'broken') return false
        if (verdict === 'changed') changed = true
      }
    }
    return true
  }

  private settleByLimits(region: Region, j: number): Verdict {
    const { use, lower, upper } = region
    const least = this.leastUse[j]!
    const before = use[j]!
    if (use[j] === OPEN && lower[j]! > 0) use[j] = USED
    if (use[j] === OPEN && (upper[j]! < least || upper[j]! <= 0)) use[j] = UNUSED
    if (use[j] === USED && lower[j]! < least) lower[j] = least
    if (use[j] === UNUSED) upper[j] = 0
    if (lower[j]! > upper[j]! + this.unit[j]!) return 'broken'
    return use[j] === before ? 'same' : 'changed'
  }

  /** Whether a value counts as used. */
  isUsed(value: number, j: number): boolean {
    return value > this.unit[j]!
  }

  /** Whether a value lies in the forbidden gap between zero and its least use. */
  isTooLittle(value: number, j: number): boolean {
    return this.isUsed(value, j) && value < this.leastUse[j]! - this.unit[j]!
  }

  /** Distance to the nearest whole multiple of the step, as part of the step; 0 without one. */
  offStep(value: number): number {
    if (this.rules.step === 0) return 0
    const part = value / this.rules.step
    const off = Math.abs(part - Math.round(part))
    return off <= USE_TOLERANCE * Math.max(1, part) ? 0 : off
  }

  /** The multiples of the step on either side of a value. */
  neighbours(value: number): [below: number, above: number] {
    const below = Math.floor(value / this.rules.step) * this.rules.step
    return [below, below + this.rules.step]
  }

  /** The value at its nearest multiple of the step. */
  onStep(value: number): number {
    return this.rules.step === 0 ? value : Math.round(value / this.rules.step) * this.rules.step
  }

  /** Counts the used of each group and notes which rules the values break. */
  judge(x: Float64Array): Judgement {
    const excess = new Int32Array(x.length)
    for (const { variables, least, most } of this.rules.counts) {
      let used = 0
      for (const j of variables) if (this.isUsed(x[j]!, j)) used++
      const verdict = used > most ? 1 : used < least ? -1 : 0
      if (verdict !== 0) for (const j of variables) excess[j] = verdict
    }
    const missing = new Int32Array(x.length).fill(-1)
    for (const [variable, needed] of this.rules.requires) {
      const lacks = x[needed]! < this.leastUse[needed]! - this.unit[needed]!
      if (lacks && this.isUsed(x[variable]!, variable)) missing[variable] = needed
    }
    return { excess, missing }
  }
}

/** Rules that values break, by variable. */
export interface Judgement {
  /** 1 where a group has too many used, -1 where too few, 0 elsewhere. */
  readonly excess: Int32Array
  /** What a used variable needs and lacks, or -1. */
  readonly missing: Int32Array
}

type Verdict = 'same' | 'changed' | 'broken'

function settleGroup({ use }: Region, { variables, least, most }: CountRule): Verdict {
  let used = 0
  let open = 0
  for (const j of variables) {
    if (use[j] === USED) used++
    else if (use[j] === OPEN) open++
  }
  if (used > most || used + open < least) return 'broken'
  if (open === 0) return 'same'
  const settled = used === most ? UNUSED : used + open === least ? USED : OPEN
  if (settled === OPEN) return 'same'
  for (const j of variables) if (use[j] === OPEN) use[j] = settled
  return 'changed'
}

function settleNeed({ use }: Region, variable: number, needed: number): Verdict {
  if (use[variable] === USED && use[needed] !== USED) {
    if (use[needed] === UNUSED) return 'broken'
    use[needed] = USED
    return 'changed'
  }
  if (use[needed] === UNUSED && use[variable] === OPEN) {
    use[variable] = UNUSED
    return 'changed'
  }
  return 'same'
}
