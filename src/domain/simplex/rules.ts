import { ProgramError, type LinearProgram, type LinearRow } from './program'

/**
 * Rules over which variables a blend uses at all. A variable is *used* when it is above zero, and
 * then it is at least its `leastUse`; otherwise it is zero.
 */
export interface BlendRules {
  /** Least value of each variable where it is used at all; 0 for no such limit. */
  readonly leastUse: ArrayLike<number>
  /** How many of a group may be used: at most 5 of all, exactly one of these three, and so on. */
  readonly counts: readonly CountRule[]
  /** Where the first is used, so is the second. */
  readonly requires: readonly (readonly [variable: number, needed: number])[]
  /** Whole multiples of this only, or 0 for any value; in the variables' unit. */
  readonly step: number
}

/** From `least` to `most` of these variables are used. */
export interface CountRule {
  readonly variables: readonly number[]
  readonly least: number
  readonly most: number
}

/** No rules at all, to be spread and overridden. */
export function noRules(variableCount: number): BlendRules {
  return { leastUse: new Float64Array(variableCount), counts: [], requires: [], step: 0 }
}

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

/** Reads rules for one program: smallest uses, the first region, propagation, and rule breaks. */
export class RuleBook {
  readonly leastUse: Float64Array
  private readonly unit: Float64Array

  constructor(
    private readonly program: LinearProgram,
    readonly rules: BlendRules,
  ) {
    const n = program.cost.length
    this.leastUse = new Float64Array(n)
    this.unit = new Float64Array(n)
    this.check()
    for (let j = 0; j < n; j++) {
      const least = rules.leastUse[j]!
      this.leastUse[j] = rules.step > 0 ? Math.max(rules.step, this.roundUp(least)) : least
      this.unit[j] = USE_TOLERANCE * Math.max(1, program.upper[j]!)
    }
  }

  private check(): void {
    const { program, rules } = this
    const n = program.cost.length
    for (let j = 0; j < n; j++) {
      const lower = program.lower[j]!
      const upper = program.upper[j]!
      if (!(lower >= 0 && upper < Infinity)) {
        throw new ProgramError(
          `Variable ${j} may go from ${lower} to ${upper}; rules on use need limits from 0 up to a number.`,
        )
      }
    }
    const named = [...rules.counts.flatMap((count) => count.variables), ...rules.requires.flat()]
    const stranger = named.find((j) => !Number.isInteger(j) || j < 0 || j >= n)
    if (stranger !== undefined || rules.leastUse.length !== n) {
      throw new ProgramError(
        `Rules name variable ${stranger ?? n}; there are 0 to ${n - 1}, one least use each.`,
      )
    }
    const needed = [
      ...rules.counts.filter((c) => c.least > 0).flatMap((c) => c.variables),
      ...rules.requires.map(([, j]) => j),
    ]
    const vague = needed.find(
      (j) => rules.leastUse[j] === 0 && rules.step === 0 && program.lower[j] === 0,
    )
    if (vague !== undefined) {
      throw new ProgramError(
        `Variable ${vague} must be used but has no least use; give it one above 0.`,
      )
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
        if (region.use[variable] === USED && region.use[needed] !== USED) {
          if (region.use[needed] === UNUSED) return false
          region.use[needed] = USED
          changed = true
        }
        if (region.use[needed] === UNUSED && region.use[variable] === OPEN) {
          region.use[variable] = UNUSED
          changed = true
        }
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

  /**
   * Rows that every blend obeying the rules obeys, for the relaxation: with x/u at most 1 where
   * used and x/leastUse at least 1, a group's counts bound sums of those parts; a need ties the
   * least use of one to the part of the other.
   */
  cuts(region: Region): LinearRow[] {
    const n = region.use.length
    const rows: LinearRow[] = []
    for (const { variables, least, most } of this.rules.counts) {
      const atMost = new Float64Array(n)
      const atLeast = new Float64Array(n)
      for (const j of variables) {
        atMost[j] = region.upper[j]! > 0 ? 1 / region.upper[j]! : 0
        atLeast[j] = this.leastUse[j]! > 0 ? 1 / this.leastUse[j]! : 0
      }
      if (most < variables.length)
        rows.push({ coefficients: atMost, lower: -Infinity, upper: most })
      if (least > 0) rows.push({ coefficients: atLeast, lower: least, upper: Infinity })
    }
    for (const [variable, needed] of this.rules.requires) {
      const tie = new Float64Array(n)
      tie[variable] = -(this.leastUse[needed]! / Math.max(region.upper[variable]!, 1e-9))
      tie[needed] = 1
      rows.push({ coefficients: tie, lower: 0, upper: Infinity })
    }
    return rows
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
