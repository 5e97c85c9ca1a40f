import { leastRatio } from '../simplex/dual-ratio'
import { OPEN, type Judgement, type Region, type RuleBook } from './rule-book'
import type { Simplex } from '../simplex/simplex'
import { BASIC } from '../simplex/tableau'

/** A way of splitting a region in two. */
export interface Split {
  readonly variable: number
  readonly value: number
  readonly kind: 'use' | 'step'
  readonly score: number
  /** Estimated rise of the bound on either side. */
  readonly down: number
  readonly up: number
}

/** Chooses where to split a region, from its relaxed optimum just solved by `simplex`. */
export class Splitter {
  constructor(
    private readonly simplex: Simplex,
    private readonly book: RuleBook,
  ) {}

  /** The split that promises to raise the bound most, or null when every rule is kept. */
  best({ use }: Region, x: Float64Array): Split | null {
    const judgement = this.book.judge(x)
    let best: Split | null = null
    for (let j = 0; j < x.length; j++) {
      const onUse = use[j] === OPEN ? this.splitOnUse(j, x[j]!, judgement) : null
      const split = onUse ?? this.splitOnStep(j, x[j]!)
      if (split !== null && (best === null || split.score > best.score)) best = split
    }
    return best
  }

  /** Not at all, or at least the least use, if some rule on use is broken through this variable. */
  private splitOnUse(j: number, value: number, { excess, missing }: Judgement): Split | null {
    const { book } = this
    const least = book.leastUse[j]!
    const needed = missing[j]!
    if (book.isTooLittle(value, j)) return useSplit(j, this.rise(j, 0), this.rise(j, least))
    if (needed >= 0) {
      return useSplit(j, this.rise(j, 0), this.rise(needed, book.leastUse[needed]!))
    }
    if (excess[j]! > 0 && book.isUsed(value, j)) return useSplit(j, this.rise(j, 0), 0)
    if (excess[j]! < 0 && !book.isUsed(value, j)) return useSplit(j, 0, this.rise(j, least))
    return null
  }

  /** Below or above, if the value is off the step. */
  private splitOnStep(variable: number, value: number): Split | null {
    if (this.book.offStep(value) === 0) return null
    const [below, above] = this.book.neighbours(value)
    const down = this.rise(variable, below)
    const up = this.rise(variable, above)
    return { variable, value, kind: 'step', down, up, score: score(down, up) }
  }

  /**
   * Least rise of the optimum when a variable is moved to `target`, by the first step the dual
   * simplex would take (the penalties of N.J. Driebeek, Management Science 12 (1966) 576-587).
   */
  private rise(variable: number, target: number): number {
    const { tableau: t, program } = this.simplex
    const { costScale, scale } = program
    const distance = target / scale[variable]! - t.value[variable]!
    const status = t.status[variable]!
    const place = t.places[variable]!
    if (distance === 0) return 0
    if (status === BASIC) {
      return costScale * leastRatio(t, place, Math.sign(distance)) * Math.abs(distance)
    }
    return costScale * Math.max(0, t.reduced[place]! * distance)
  }
}

/** Weight of the lesser rise against the greater in a split's score: both sides should rise. */
const LESSER = 5 / 6

function score(down: number, up: number): number {
  return LESSER * Math.min(down, up) + (1 - LESSER) * Math.max(down, up)
}

/** A split on whether a variable is used at all. */
export function useSplit(variable: number, down: number, up: number): Split {
  return { variable, value: 0, kind: 'use', down, up, score: score(down, up) }
}
