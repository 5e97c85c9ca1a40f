import type { ReadyPlan } from '../../../domain/batch/plan'
import { type StepLine, type WorkStep, workSteps } from '../../../domain/batch/steps'

/** One screen of the workshop: the caution, one thing to weigh, or a step without weighing. */
export interface Screen {
  /** Under which it is ticked off, and the weight it is ticked at, g. */
  readonly key: string
  readonly grams: number
  readonly step: WorkStep | undefined
  readonly line: StepLine | undefined
}

/** The caution stands first, by itself. */
export const CAUTION_KEY = 'caution'

/** The screens of a batch that may be weighed out, in order. */
export function screensOf(plan: ReadyPlan): Screen[] {
  const caution: Screen = { key: CAUTION_KEY, grams: 0, step: undefined, line: undefined }
  return [
    caution,
    ...workSteps(plan).flatMap((step): Screen[] =>
      step.lines.length > 0
        ? step.lines.map((line) => ({ key: line.key, grams: line.grams, step, line }))
        : [{ key: step.id, grams: 0, step, line: undefined }],
    ),
  ]
}
