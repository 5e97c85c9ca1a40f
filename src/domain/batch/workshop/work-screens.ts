import { type Gate, gateOf, gateStanding, partStanding, withoutPoured } from './gate'
import { judgeLine, type LineVerdict, lineStanding, mustBeWeighed } from './judge'
import type { LyePlace } from './line-mends'
import type { ReadyPlan } from '../result/plan'
import { type BenchRun, isInJug, type Known, PART_KEY } from './standing'
import { type StepLine, type WorkStep, workSteps } from '../sheet/steps'

/** What has been done on the bench. */
export interface Progress extends BenchRun {
  readonly cautionRead: boolean
  /** What is ticked off, by line or screen, at the weight it had then, g. */
  readonly ticks: Readonly<Record<string, number>>
}

/** One screen of the work: one thing to weigh, or one thing to do. */
export interface WorkScreen {
  readonly kind: 'caution' | 'step' | 'line' | 'gate' | 'part' | 'cook' | 'pot'
  /** Under which it is ticked off. */
  readonly key: string
  readonly step: WorkStep | undefined
  readonly line: StepLine | undefined
}

/** The caution stands first, by itself. */
export const CAUTION_KEY = 'caution'
/** The stops: before lye meets oil, and after the cook. */
export const GATE_KEYS = { combine: 'gate:combine', cooked: 'gate:cooked' } as const
export const POT_KEY = 'pot'

/** The screens of a batch that may be weighed out, in order. */
export function workScreens(plan: ReadyPlan, partUsed: boolean): WorkScreen[] {
  return [
    { kind: 'caution', key: CAUTION_KEY, step: undefined, line: undefined },
    ...workSteps(plan).flatMap((step) => screensOfStep(step, partUsed)),
  ]
}

function screensOfStep(step: WorkStep, partUsed: boolean): WorkScreen[] {
  const screen = (kind: WorkScreen['kind'], key: string): WorkScreen => ({
    kind,
    key,
    step,
    line: undefined,
  })
  if (step.lines.length > 0)
    return step.lines.map((line) => ({ kind: 'line', key: line.key, step, line }))
  if (step.id === 'combine')
    return [screen('gate', GATE_KEYS.combine), screen(partUsed ? 'part' : 'step', step.id)]
  if (step.id === 'cook') return [screen('cook', step.id), screen('pot', POT_KEY)]
  if (step.id === 'done') return [screen('step', step.id), screen('gate', GATE_KEYS.cooked)]
  return [screen('step', step.id)]
}

/** Where the hydroxide is, by what was done. */
export function lyePlaceOf({ actual, ticks }: Progress): LyePlace {
  if (ticks['combine'] !== undefined) return 'pot'
  return Object.keys(actual).some((key) => key.startsWith('alkali:')) ? 'jug' : 'none'
}

/** Progress with what was passed over, once the hydroxide is weighed and it can't change any more. */
export function withAssumed(plan: ReadyPlan, progress: Progress): Progress {
  if (lyePlaceOf(progress) === 'none') return progress
  const assumed = plan.ingredients.flatMap((line) => {
    const ticked = progress.ticks[line.key]
    const passed = progress.actual[line.key] === undefined && ticked !== undefined
    return passed && !mustBeWeighed(line) && isInJug(line) ? [[line.key, ticked] as const] : []
  })
  return { ...progress, assumed: Object.fromEntries(assumed) }
}

/** How a line stands after what was done. */
export function lineVerdict(
  plan: ReadyPlan,
  progress: Progress,
  key: string,
  known: Known,
): LineVerdict {
  const skipped = wasSkipped(plan, progress, key, known)
  return judgeLine(plan, progress, key, { skipped, lye: lyePlaceOf(progress) }, known)
}

/** Whether a line was passed over at the weight it is asked now. */
function wasSkipped(plan: ReadyPlan, progress: Progress, key: string, known: Known): boolean {
  const ticked = progress.ticks[key]
  if (ticked === undefined) return false
  const { askedG } = lineStanding(plan, progress, key, false, known)
  return ticked === (progress.assumed?.[key] ?? askedG)
}

/**
 * How a stop stands, by its key. The one before lye meets oil does not know yet what was poured of a part:
 * too much of that stops at its own weighing.
 */
export function gateVerdict(plan: ReadyPlan, progress: Progress, key: string, known: Known): Gate {
  return gateOf(plan, runAtGate(progress, key), lyePlaceOf(progress), known)
}

function runAtGate(progress: Progress, key: string): BenchRun {
  if (key !== GATE_KEYS.combine) return progress
  return { ...progress, actual: withoutPoured(progress.actual) }
}

/**
 * How many screens are open: all up to the first that is not done. A weight that is off closes what comes
 * after it, however late it was changed; so no way, by key or touch, leads past it.
 */
export function openScreens(
  plan: ReadyPlan,
  screens: readonly WorkScreen[],
  progress: Progress,
  known: Known,
): number {
  const first = screens.findIndex((screen) => !isDone(plan, screen, progress, known))
  return first < 0 ? screens.length : first
}

/** Whether a screen may be left. */
export function mayLeave(
  plan: ReadyPlan,
  screen: WorkScreen,
  progress: Progress,
  known: Known,
): boolean {
  const { kind, key } = screen
  if (kind === 'line')
    return lineStanding(plan, progress, key, wasSkipped(plan, progress, key, known), known).open
  if (kind === 'gate') return gateStanding(plan, runAtGate(progress, key), known).open
  if (screen.kind !== 'part') return true
  const usedG = progress.actual[PART_KEY]
  return usedG !== undefined && partStanding(plan, progress, usedG, known).open
}

/** Whether a screen is done with. */
export function isDone(
  plan: ReadyPlan,
  screen: WorkScreen,
  progress: Progress,
  known: Known,
): boolean {
  if (screen.kind === 'caution') return progress.cautionRead
  if (!mayLeave(plan, screen, progress, known)) return false
  return screen.kind === 'line' || progress.ticks[screen.key] !== undefined
}
