import type { BlendRules } from '../../lp/search/rules'
import type { LinearProgram, SolveProgram } from '../../lp/solvers/program'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { GoOn } from './allowance'
import type { SearchOutcome } from './search'
import { childrenOf, type Part, settle, settled, splitAnywhere } from './second-splits'

/** A blend must be better than the best so far by this part of its goal to be worth looking for. */
const WORTHWHILE = 1e-9

/**
 * A plain search under rules around any solver of linear programs, for a second opinion: it shares
 * neither code nor numbers with our own search. Depth first, every program solved from scratch.
 *
 * The first variables of the program are the shares the rules are about; `offset` is added to its
 * objective for the goal's value.
 */
export function searchBy(
  solve: SolveProgram,
  program: LinearProgram,
  rules: BlendRules,
  goOn: GoOn,
  offset = 0,
): SearchOutcome {
  return new PlainSearch(solve, program, rules, offset).run(goOn)
}

class PlainSearch {
  readonly #open: Part[]
  readonly #sign: 1 | -1
  #best: { readonly objective: number; readonly shares: Float64Array } | undefined
  #nodes = 0

  constructor(
    private readonly solve: SolveProgram,
    private readonly program: LinearProgram,
    private readonly rules: BlendRules,
    private readonly offset: number,
  ) {
    const shares = program.variables.slice(0, rules.leastUse.length)
    this.#sign = program.sense === 'min' ? 1 : -1
    const whole = {
      use: shares.map(() => 'open' as const),
      lower: shares.map(({ lower }) => lower),
      upper: shares.map(({ upper }) => upper),
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
    return { status: 'optimal', shares, value: this.#goalOf(objective) }
  }

  #stopped(least: number): SearchOutcome {
    const bound = this.#goalOf(least)
    if (!this.#best) return { status: 'undecided', bound }
    const { shares, objective } = this.#best
    return { status: 'feasible', shares, value: this.#goalOf(objective), bound }
  }

  #goalOf(objective: number): number {
    return this.#sign * objective + this.offset
  }

  #cutoff(): number {
    if (!this.#best) return Infinity
    return this.#best.objective - WORTHWHILE * Math.max(1, Math.abs(this.#best.objective))
  }

  #explore(part: Part): void {
    this.#nodes++
    if (!settle(part, this.rules)) return
    const relaxed = this.#leastIn(part)
    if (!relaxed || relaxed.objective >= this.#cutoff()) return
    const broken = childrenOf(part, relaxed.shares, this.rules)
    const children =
      broken.length > 0 || this.#takes(part, relaxed.shares)
        ? broken
        : splitAnywhere(part, relaxed.shares, this.rules)
    for (const child of children) {
      this.#open.push({ ...child, bound: Math.max(part.bound, relaxed.objective) })
    }
  }

  /**
   * Takes a point that keeps the rules up to rounding, solved once more with all it settles. Where
   * rounding was all that held it up, nothing is found then, and the part has to be split further.
   */
  #takes(part: Part, shares: Float64Array): boolean {
    const found = this.#leastIn(settled(part, shares, this.rules))
    if (found && found.objective < this.#cutoff()) this.#best = found
    return found !== undefined
  }

  #leastIn({ lower, upper }: Part): { objective: number; shares: Float64Array } | undefined {
    const variables = this.program.variables.map((variable, place) => ({
      ...variable,
      lower: lower[place] ?? variable.lower,
      upper: upper[place] ?? variable.upper,
    }))
    const outcome = this.solve({ ...this.program, variables })
    if (outcome.status === 'infeasible') return undefined
    if (outcome.status === 'unbounded')
      throw new UnsoundAnswer('The solver calls a blend of limited shares unbounded')
    const shares = Float64Array.from(outcome.point.slice(0, lower.length))
    return { objective: this.#sign * outcome.objective, shares }
  }
}
