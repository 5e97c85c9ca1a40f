import type { Optimal } from '../simplex/answer'
import { OpenNodes, type Node } from './open-nodes'
import type { LinearProgram } from '../program'
import { OPEN, RuleBook, UNUSED, USED, type Region } from './rule-book'
import { relaxationCuts } from './rule-cuts'
import type { BlendRules } from './rules'
import { Simplex } from '../simplex/simplex'
import { Splitter, useSplit, type Split } from './split'
import { ANSWER_TOLERANCE } from '../simplex/tolerances'

/** A blend that obeys all rules. */
export interface RuledBlend {
  readonly objective: number
  readonly x: Float64Array
}

/** What the search came to. */
export type RuledOutcome =
  /** Proved the cheapest, to 1e-9 of its cost. */
  | {
      readonly status: 'optimal'
      readonly best: RuledBlend
      readonly bound: number
      readonly nodes: number
    }
  /** Called off: the best so far, and a bound that no blend is below. */
  | {
      readonly status: 'stopped'
      readonly best: RuledBlend | null
      readonly bound: number
      readonly nodes: number
    }
  /** No blend obeys limits and rules; where limits were missed by next to nothing, one may with `touching`. */
  | { readonly status: 'infeasible'; readonly nodes: number; readonly mayTouch: boolean }

/** How the search stands, for deciding whether to go on. */
export interface SearchProgress {
  readonly nodes: number
  readonly best: number | null
  readonly bound: number
}

/**
 * The cheapest blend that obeys rules on use, by branch and bound on the variables themselves:
 * where the linear optimum breaks a rule, split into "this oil not at all" and "this oil, at least
 * its least use" (or below and above a step), and solve both warm by the dual simplex. No binary
 * variables are needed. `goOn` is asked at every node and may call the search off. Limits that touch
 * (`lp/touching.ts`) clash, unless `touching` says that they do not.
 *
 * Order: depth first into the likelier child until a blend is found or the branch is closed, then
 * on from the open node with the least bound, which is also the proof of how good the best is.
 *
 * Source: A.H. Land, A.G. Doig, Econometrica 28 (1960) 497-520; branching on semicontinuous
 * variables after E.M.L. Beale, J.A. Tomlin (1970).
 */
export function solveWithRules(
  program: LinearProgram,
  rules: BlendRules,
  goOn: (progress: SearchProgress) => boolean,
  touching = false,
): RuledOutcome {
  return new Search(program, rules, touching).run(goOn)
}

class Search {
  private readonly simplex: Simplex
  private readonly book: RuleBook
  private readonly splitter: Splitter
  private readonly open = new OpenNodes()
  private readonly root: Region
  private best: RuledBlend | null = null
  private nodes = 0
  private made = 0

  private mayTouch = false

  constructor(
    program: LinearProgram,
    rules: BlendRules,
    private readonly touching: boolean,
  ) {
    this.book = new RuleBook(program, rules)
    this.root = this.book.firstRegion()
    this.simplex = new Simplex(program)
    for (const cut of relaxationCuts(this.book, this.root)) this.simplex.addRow(cut)
    this.splitter = new Splitter(this.simplex, this.book)
  }

  run(goOn: (progress: SearchProgress) => boolean): RuledOutcome {
    let next: Node | null = {
      bound: -Infinity,
      number: this.made++,
      region: this.root,
      basis: null,
    }
    for (;;) {
      next ??= this.open.pop()
      if (next === null || next.bound >= this.cutoff()) break
      const bound = Math.min(next.bound, this.open.bound)
      if (!goOn({ nodes: this.nodes, best: this.best?.objective ?? null, bound })) {
        return { status: 'stopped', best: this.best, bound, nodes: this.nodes }
      }
      next = this.explore(next)
    }
    const { best, nodes, mayTouch } = this
    if (best === null) return { status: 'infeasible', nodes, mayTouch }
    return { status: 'optimal', best, bound: best.objective, nodes }
  }

  /** A node whose bound reaches this cannot better the best. */
  private cutoff(): number {
    if (this.best === null) return Infinity
    const { objective } = this.best
    return objective - ANSWER_TOLERANCE * Math.max(1, Math.abs(objective))
  }

  /** Solves a node; returns the child to go on with at once, the other one being put aside. */
  private explore({ region, basis, bound }: Node): Node | null {
    this.nodes++
    if (!this.book.propagate(region)) return null
    if (basis !== null) this.simplex.restoreBasis(basis)
    const relaxed = this.solve(region)
    if (relaxed === null || relaxed.objective >= this.cutoff()) return null
    this.dropDear(region, relaxed)
    const x = relaxed.x.slice()
    const value = Math.max(bound, relaxed.objective)
    const split = this.splitter.best(region, x)
    if (split !== null) return this.branch(region, split, value)
    if (this.take(region, x)) return null
    const rest = region.use.indexOf(OPEN)
    return rest < 0 ? null : this.branch(region, useSplit(rest, 0, 0), value)
  }

  private solve(region: Region): Optimal | null {
    for (let j = 0; j < region.use.length; j++) {
      this.simplex.setBounds(j, region.lower[j]!, Math.max(region.lower[j]!, region.upper[j]!))
    }
    const outcome = this.touching ? this.simplex.solve() : this.simplex.solveStrictly()
    if (this.simplex.mayTouch(outcome)) this.mayTouch = true
    if (outcome.status === 'unbounded')
      throw new Error('A program with boxed variables has no ray.')
    return outcome.status === 'optimal' ? outcome : null
  }

  /** Settles as unused what would cost more than the best if used at all: its reduced cost says. */
  private dropDear({ use }: Region, { objective, reducedCosts, x }: Optimal): void {
    const room = this.cutoff() - objective
    if (room === Infinity) return
    for (let j = 0; j < use.length; j++) {
      const price = reducedCosts[j]! * this.book.leastUse[j]!
      if (use[j] === OPEN && x[j] === 0 && price >= room) use[j] = UNUSED
    }
  }

  private branch(region: Region, split: Split, bound: number): Node | null {
    const basis = this.simplex.saveBasis()
    const downFirst = split.down < split.up
    const first = this.child(region, split, downFirst ? 'down' : 'up', bound, basis)
    const second = this.child(region, split, downFirst ? 'up' : 'down', bound, basis)
    if (second.bound < this.cutoff()) this.open.push(second)
    return first.bound < this.cutoff() ? { ...first, basis: null } : null
  }

  private child(
    region: Region,
    { variable, value, kind, down, up }: Split,
    side: 'down' | 'up',
    bound: number,
    basis: Uint8Array,
  ): Node {
    const child = {
      use: region.use.slice(),
      lower: region.lower.slice(),
      upper: region.upper.slice(),
    }
    if (kind === 'use') child.use[variable] = side === 'down' ? UNUSED : USED
    else {
      const [below, above] = this.book.neighbours(value)
      if (side === 'down') child.upper[variable] = below
      else child.lower[variable] = above
    }
    // A side that seems closed has its proof yet to come: it counts with its parent's bound.
    const rise = side === 'down' ? down : up
    return {
      bound: rise === Infinity ? bound : bound + rise,
      number: this.made++,
      region: child,
      basis,
    }
  }

  /**
   * Takes a point that keeps every rule up to rounding: settles all that it settles, solves once
   * more and keeps the exact answer if it is the best. False if rounding alone had kept the rules.
   */
  private take(region: Region, x: Float64Array): boolean {
    const settled = {
      use: region.use.slice(),
      lower: region.lower.slice(),
      upper: region.upper.slice(),
    }
    for (let j = 0; j < x.length; j++) {
      if (settled.use[j] === OPEN) settled.use[j] = this.book.isUsed(x[j]!, j) ? USED : UNUSED
      if (this.book.rules.step > 0) settled.lower[j] = settled.upper[j] = this.book.onStep(x[j]!)
    }
    if (!this.book.propagate(settled)) return false
    const exact = this.solve(settled)
    if (exact === null) return false
    if (exact.objective < this.cutoff()) {
      this.best = { objective: exact.objective, x: exact.x.slice() }
    }
    return true
  }
}
