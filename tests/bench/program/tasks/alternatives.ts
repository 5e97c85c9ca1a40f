import { alternativesTo } from '../../../../src/domain/optimise/alternatives/alternatives-linear'
import type { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { contest, type Entry } from '../contest'
import { figuresOf } from '../figures'
import { type Problem, problemOf } from '../problem'
import { ownReplay, recorded, replay } from '../questions'
import type { Rivals } from '../rivals/all'
import type { Rival, Verdict } from '../rivals/rival'
import type { Effort, TaskResult } from '../task'
import { spaceOf } from './ranges'

const COUNT = 8
const SLACK = 0.03
const ORDER = { slack: { fraction: SLACK }, count: COUNT, seed: 1 }

/** More than any blend costs: a limit that is not one yet. */
const NO_LIMIT = 1e6

/** A share above this is a use of the oil, in percent: far above what the rivals round to. */
const USED_PERCENT = 1e-6

/** Eight blends within 3 % of the least cost; rivals by hop, skip and jump: one cold solve for each blend. */
export function alternatives(rivals: Rivals, { pick }: Effort): TaskResult {
  const { yalps, yalpsLean, jslp, glpk, highs, highsKept } = rivals
  const standings = contest({
    instances: pick(20, 5),
    rounds: pick(10, 2),
    warmUps: 4,
    judge: highs.name,
    makeHeat(seed) {
      const problem = problemOf(seed)
      const others = [
        ...[yalps, yalpsLean, glpk, jslp, highsKept].map((one) => hopSkipJump(one, problem)),
        hopSkipJump(highs, problem, 2),
      ]
      return {
        entries: [ownEntry(spaceOf(problem)), ...others.map(({ entry }) => entry)],
        dispose: () => others.forEach(({ dispose }) => dispose()),
      }
    },
  })
  return { id: 'alternatives', standings, facts: 'the least cost is what is compared' }
}

/** The same with rivals asked all that our choice of the most different ones asks. */
export function alternativesSamePool(rivals: Rivals, { pick }: Effort): TaskResult {
  const solves: number[] = []
  const { yalps, yalpsLean, jslp, glpk, highs, highsKept } = rivals
  const standings = contest({
    instances: pick(10, 3),
    rounds: pick(8, 2),
    warmUps: 3,
    judge: highs.name,
    makeHeat(seed) {
      const problem = problemOf(seed)
      const [space, recording] = [spaceOf(problem), spaceOf(problem)]
      const questions = recorded(recording.simplex, () => alternativesTo(recording, ORDER))
      solves.push(questions.length)
      const verdicts = questions.map(({ verdict }) => verdict)
      const others = [
        ownReplay(recording.program, questions),
        ...[yalps, yalpsLean, glpk, highsKept].map((one) => replay(one, space.program, questions)),
        ...[jslp, highs].map((one) => replay(one, space.program, questions, 1)),
      ]
      const own = ownEntry(space)
      const checked = (): ReturnType<Entry['run']> => {
        const best = own.run()
        return () => (isNear(best()[0], verdicts[0]) ? verdicts : [])
      }
      return {
        entries: [{ ...own, run: checked }, ...others.map(({ entry }) => entry)],
        dispose: () => others.forEach(({ dispose }) => dispose()),
      }
    },
  })
  const facts = `${figuresOf(solves).median} solves each`
  return { id: 'alternatives-pool', standings, facts }
}

/** The recorded run found the same least cost, up to rounding. */
function isNear(a: Verdict | undefined, b: Verdict | undefined): boolean {
  return Math.abs(Number(a) - Number(b)) <= ROUNDING * Math.abs(Number(b))
}

const ROUNDING = 1e-9

function ownEntry(space: BlendSpace): Entry {
  return {
    name: 'barwright',
    run() {
      const found = alternativesTo(space, ORDER)
      return () => {
        if (found.status === 'infeasible') return ['infeasible']
        if (found.alternatives.length < COUNT) return ['no answer']
        return [found.alternatives[0]?.goalValue ?? NaN]
      }
    },
  }
}

/**
 * Each blend uses as little as it can of the oils used so far, within the slack of the best.
 *
 * Source: E.D. Brill, S.-Y. Chang, L.D. Hopkins, Management Science 28 (1982) 221-235.
 */
function hopSkipJump(rival: Rival, { program }: Problem, rounds?: number) {
  const limit = program.rows.length
  const row = { coefficients: program.cost, lower: -Infinity, upper: NO_LIMIT }
  const model = rival.prepare({ ...program, rows: [...program.rows, row] })
  const run = () => {
    model.setRow(limit, -Infinity, NO_LIMIT)
    model.setCost(program.cost)
    model.solve()
    const best = model.verdict()
    if (typeof best !== 'number') return () => [best]
    const found = [model.point()]
    model.setRow(limit, -Infinity, best + SLACK * Math.abs(best))
    const used = new Float64Array(program.cost.length)
    while (found.length < COUNT) {
      found.at(-1)?.forEach((share, oil) => {
        if (share > USED_PERCENT) used[oil] = 1
      })
      model.setCost(used)
      model.solve()
      if (typeof model.verdict() !== 'number') return () => ['no answer' as const]
      found.push(model.point())
    }
    return () => [best]
  }
  return { entry: { name: rival.name, run, rounds }, dispose: () => model.dispose() }
}
