import type { SolveProgram } from '../../lp/solvers/solve-program'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { GoOn } from './allowance'
import { goalOf, type RuledQuestion } from './question'
import type { SearchOutcome } from './search'
import { childrenOf, type Part, settle, settled, splitAnywhere } from './second-splits'

/** A blend must be better than the best so far by this part of its goal to be worth looking for. */
const WORTHWHILE = 1e-9

/**
 * A plain search under rules around any solver of linear programs, for a second opinion: it shares
 * neither code nor numbers with our own search. Depth first, every program solved from scratch.
 */
export function searchBy(solve: SolveProgram, question: RuledQuestion, goOn: GoOn): SearchOutcome {
  return new PlainSearch(solve, question).run(goOn)
}

class PlainSearch {
  readonly #open: Part[]
  #best: { readonly objective: number; readonly shares: Float64Array } | undefined
  #nodes = 0

  constructor(
    private readonly solve: SolveProgram,
    private readonly question: RuledQuestion,
  ) {
    const { program, shareCount } = question
    const whole = {
      use: new Array<'open'>(shareCount).fill('open'),
      lower: Array.from(program.lower).slice(0, shareCount),
      upper: Array.from(program.upper).slice(0, shareCount),
      bound: -Infinity,
    }
    this.#open = [whole]
  }

  run(goOn: GoOn): SearchOutcome {
    for (let part = this.#open.pop(); part; part = this.#open.pop()) {
      if (part.bound >= this.#cutoff()) continue
      const bound = this.#open.reduce((least, one) => Math.min(least, one.bound), part.bound)
      if (!goOn({ nodes: this.#nodes, best: this.#best?.objective ?? null, bound })) {
        return this.#stopped(bound)
      }
      this.#explore(part)
    }
    if (!this.#best) return { status: 'infeasible', mayTouch: true }
    const { shares, objective } = this.#best
    return { status: 'optimal', shares, value: goalOf(this.question, objective) }
  }

  #stopped(least: number): SearchOutcome {
    const bound = goalOf(this.question, least)
    if (!this.#best) return { status: 'undecided', bound }
    const { shares, objective } = this.#best
    return { status: 'feasible', shares, value: goalOf(this.question, objective), bound }
  }

  #cutoff(): number {
    if (!this.#best) return Infinity
    return this.#best.objective - WORTHWHILE * Math.max(1, Math.abs(this.#best.objective))
  }

  #explore(part: Part): void {
    this.#nodes++
    if (!settle(part, this.question.rules)) return
    const relaxed = this.#leastIn(part)
    if (!relaxed || relaxed.objective >= this.#cutoff()) return
    const broken = childrenOf(part, relaxed.shares, this.question.rules)
    const children =
      broken.length > 0 || this.#takes(part, relaxed.shares)
        ? broken
        : splitAnywhere(part, relaxed.shares, this.question.rules)
    for (const child of children) {
      this.#open.push({ ...child, bound: Math.max(part.bound, relaxed.objective) })
    }
  }

  /**
   * Takes a point that keeps the rules up to rounding, solved once more with all it settles. Where
   * rounding was all that held it up, nothing is found then, and the part has to be split further.
   */
  #takes(part: Part, shares: Float64Array): boolean {
    const found = this.#leastIn(settled(part, shares, this.question.rules))
    if (found && found.objective < this.#cutoff()) this.#best = found
    return found !== undefined
  }

  #leastIn({ lower, upper }: Part): { objective: number; shares: Float64Array } | undefined {
    const { program, shareCount } = this.question
    const outcome = this.solve({
      ...program,
      lower: Array.from(program.lower, (least, place) => lower[place] ?? least),
      upper: Array.from(program.upper, (most, place) => upper[place] ?? most),
    })
    if (outcome.status === 'infeasible') return undefined
    if (outcome.status === 'unbounded')
      throw new UnsoundAnswer('The solver calls a blend of limited shares unbounded')
    const shares = Float64Array.from(outcome.point.slice(0, shareCount))
    return { objective: outcome.objective, shares }
  }
}
