import type { Ends } from '../../interval'
import type { Ingredient, Stage } from '../result/ingredients'
import type { ReadyPlan } from '../result/plan'
import { coldSteps, hotSteps } from './step-texts'
import { readingsOf, type Vessel } from '../actual/vessels'

/** One thing to weigh in a step. */
export interface StepLine extends Ingredient {
  /** What the pot or jug holds once this is in, g. */
  readonly vesselG: number
}

/** One step of the work: what to do, what to weigh, how warm, what to beware of. */
export interface WorkStep {
  readonly id: string
  readonly title: string
  readonly say: string
  /** What its lines are weighed into. */
  readonly vessel: Vessel
  readonly lines: readonly StepLine[]
  /** Temperature to hold or to come to, °C. */
  readonly tempC: Ends | null
  readonly minutes: Ends | null
  readonly cautions: readonly string[]
  /** How to tell that it is right. */
  readonly checks: readonly string[]
}

/** A step before its lines are weighed in. */
export interface StepText {
  readonly id: string
  readonly title: string
  readonly say: string
  /** Stages whose lines belong to the step, and where they go; none for steps without weighing. */
  readonly stages?: readonly Stage[]
  readonly into?: Vessel
  /** Left out where nothing is to be weighed in it. */
  readonly onlyWithLines?: boolean
  readonly tempC?: Ends
  readonly minutes?: Ends
  readonly cautions?: readonly string[]
  readonly checks?: readonly string[]
}

/**
 * The work in order, for the printed sheet and for one step a screen. Every line of the plan is weighed in
 * exactly one step. A blocked plan has no steps: throws, as nobody should come to it.
 */
export function workSteps(plan: ReadyPlan): WorkStep[] {
  if (plan.blocked) throw new Error('A blocked batch has no working order')
  const texts = plan.process === 'hot' ? hotSteps(plan) : coldSteps(plan)
  const steps = texts.flatMap((text) => {
    const { onlyWithLines = false, stages = [] } = text
    const lines = plan.ingredients.filter(({ stage }) => stages.includes(stage))
    return onlyWithLines && lines.length === 0 ? [] : [asStep(text, lines)]
  })
  const readings = readingsOf(steps)
  return steps.map((step) => ({
    ...step,
    lines: step.lines.map((line) => ({ ...line, vesselG: readings.get(line.key)?.holdsG ?? 0 })),
  }))
}

function asStep(text: StepText, lines: readonly Ingredient[]) {
  const { id, title, say, into = 'pot', tempC = null, minutes = null, ...rest } = text
  const { cautions = [], checks = [] } = rest
  return { id, title, say, vessel: into, lines, tempC, minutes, cautions, checks }
}
