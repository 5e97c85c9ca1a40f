import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { normalised, totalChange } from '../../src/domain/blend/blend'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import { checkBrief } from '../../src/domain/optimise/brief/check-brief'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../src/domain/optimise/solve/solve'
import { highs } from '../domain/lp/solvers/loaded-highs'
import { stoppableJslp, type StoppableJslp } from '../worker/stoppable-jslp'
import { sampleBriefs } from './briefs'
import { faults, valueOf } from './recheck'

const COUNT = 1_000
const SEED = 20_261
/** Relative, of the goal's value; javascript-lp-solver rounds to about 1e-8. */
const TOLERANCE = 1e-6
/** How long javascript-lp-solver may take over a brief before it is stopped; an answer takes 2 ms. */
const LIMIT_MS = 1_000
/** It never answers 2 of these briefs (measured); a busy machine may stop a few more. */
const MOST_WITHOUT_ANSWER = 5

describe(`over ${COUNT} random briefs`, () => {
  const briefs = sampleBriefs(COUNT, SEED)
  const answers = briefs.map((brief) => solveBrief(brief, library, highs))
  let jslp: StoppableJslp
  beforeAll(async () => {
    jslp = await stoppableJslp()
  })
  afterAll(() => jslp.close())

  test('the briefs are sound, most have a blend and many have none', () => {
    expect(briefs.flatMap((brief) => checkBrief(brief, library))).toEqual([])
    const infeasible = answers.filter(({ status }) => status === 'infeasible').length
    expect(infeasible).toBeGreaterThan(COUNT / 10)
    expect(infeasible).toBeLessThan(COUNT / 2)
  })

  test('every blend keeps its brief, reckoned from the data files alone', () => {
    expect(briefs.flatMap((brief, k) => wrongIn(brief, answers[k]))).toEqual([])
  })

  test('javascript-lp-solver and HiGHS agree whether there is a blend and how good it is', async () => {
    const differences: string[] = []
    let unanswered = 0
    for (const [k, brief] of briefs.entries()) {
      const outcome = await jslp.ask((thread) => thread.brief(brief), LIMIT_MS)
      if (outcome === 'no answer') unanswered += 1
      else
        differences.push(
          ...difference(outcome.answer, answers[k]),
          ...wrongIn(brief, outcome.answer),
        )
    }
    expect(differences).toEqual([])
    expect(unanswered).toBeLessThanOrEqual(MOST_WITHOUT_ANSWER)
  }, 60_000)
})

/** What is wrong with an answer, found without the product. */
function wrongIn(brief: Brief, answer: Answer | undefined): string[] {
  if (answer?.status !== 'optimal') return answer?.status === 'infeasible' ? [] : ['not answered']
  const { blend, goalValue, measures } = answer
  const named = Object.entries(measures).filter(
    ([id, value]) => !near(value, valueOf(brief, id, blend)),
  )
  const goal = goalOf(brief, blend)
  return [
    ...faults(brief, blend),
    ...named.map(([id, value]) => `${id} is told as ${value}`),
    ...(near(goal, goalValue) ? [] : [`the goal ${goal} is told as ${goalValue}`]),
  ]
}

function goalOf({ goal, ...brief }: Brief, blend: Readonly<Record<string, number>>): number {
  if ('closestTo' in goal) return totalChange(normalised(goal.closestTo), blend)
  const measure = 'minimise' in goal ? goal.minimise : goal.maximise
  return valueOf({ goal, ...brief }, measure, blend)
}

function difference(one: Answer, other: Answer | undefined): string[] {
  if (one.status !== other?.status) return [`${one.status} against ${other?.status}`]
  if (one.status !== 'optimal' || other.status !== 'optimal') return []
  return near(one.goalValue, other.goalValue) ? [] : [`${one.goalValue} against ${other.goalValue}`]
}

function near(one: number, other: number): boolean {
  return Math.abs(one - other) <= TOLERANCE * Math.max(1, Math.abs(other))
}
