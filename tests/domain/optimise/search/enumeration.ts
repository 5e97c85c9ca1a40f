import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { briefProgram, goalSign } from '../../../../src/domain/optimise/space/brief-program'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { valueOf } from '../../../property/recheck'
import { leastShare, mayBeUsed, ruleFaults } from './rule-faults'

/**
 * The plain way to an optimum under rules without steps: every set of oils that may be in use, each a
 * linear program of its own. The goal is that of the brief's linear program, in which staying close to a
 * blend has a rise and a fall for every oil.
 */
export class EverySet {
  readonly program: LinearProgram
  readonly #sets: readonly ReadonlySet<string>[]
  readonly #oils: readonly string[]
  readonly #simplex: Simplex
  readonly #sign: 1 | -1

  constructor(
    readonly brief: Brief,
    change: (program: LinearProgram) => LinearProgram = (program) => program,
  ) {
    this.#sign = goalSign(brief.goal)
    this.program = change(briefProgram({ ...brief, rules: undefined }, library))
    this.#simplex = new Simplex(this.program)
    this.#oils = Object.keys(brief.oils)
    this.#sets = everySetOf(this.#oils).filter((set) => mayBeUsed(brief, set))
  }

  setRowBounds(row: number, lower: number, upper: number): void {
    this.#simplex.setRowBounds(row, lower, upper)
  }

  /** The best goal over all sets, less what no blend can avoid; undefined where none has a blend. */
  best(): number | undefined {
    let best = Infinity
    for (const set of this.#sets) {
      this.#oils.forEach((oil, place) => {
        const { min = 0, max = 100 } = this.brief.oils[oil] ?? {}
        const least = Math.max(min, leastShare(this.brief, oil))
        this.#simplex.setVariableBounds(place, set.has(oil) ? least : min, set.has(oil) ? max : 0)
      })
      const outcome = this.#simplex.solve()
      if (outcome.status === 'optimal') best = Math.min(best, outcome.objective)
    }
    return best === Infinity ? undefined : this.#sign * best
  }
}

function everySetOf(oils: readonly string[]): ReadonlySet<string>[] {
  return Array.from(
    { length: 2 ** oils.length },
    (_, set) => new Set(oils.filter((_, place) => ((set >> place) & 1) === 1)),
  )
}

/** Every blend in steps that keeps a brief and its rules. */
export function everyBlendInSteps(brief: Brief): Record<string, number>[] {
  const step = brief.rules?.shareStep ?? NaN
  const blends = splits(Object.keys(brief.oils), Math.round(100 / step))
  return blends
    .map((split) => Object.fromEntries(split.map(([oil, steps]) => [oil, steps * step])))
    .filter((blend) => ruleFaults(brief, blend).length === 0)
}

/** Every way to give so many steps to some oils. */
function splits(oils: readonly string[], steps: number): (readonly [string, number])[][] {
  const [oil, ...rest] = oils
  if (oil === undefined) return steps === 0 ? [[]] : []
  return Array.from({ length: steps + 1 }, (_, given) =>
    splits(rest, steps - given).map((split) =>
      given === 0 ? split : [[oil, given] as const, ...split],
    ),
  ).flat()
}

/** What a blend is worth to a brief's goal, straight from the data files. */
export function goalOf(brief: Brief, blend: Readonly<Record<string, number>>): number {
  const { goal } = brief
  if ('minimise' in goal) return valueOf(brief, goal.minimise, blend)
  if ('maximise' in goal) return valueOf(brief, goal.maximise, blend)
  const whole = Object.values(goal.closestTo).reduce((sum, share) => sum + share, 0)
  const oils = new Set([...Object.keys(goal.closestTo), ...Object.keys(blend)])
  return [...oils].reduce(
    (sum, oil) => sum + Math.abs((blend[oil] ?? 0) - (100 * (goal.closestTo[oil] ?? 0)) / whole),
    0,
  )
}
