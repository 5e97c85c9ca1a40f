import { NOISE_PERCENT } from '../../noise'
import { MOST_LYE_CONCENTRATION_PERCENT } from '../order/dissolving'
import type { Ingredient } from '../result/ingredients'
import { jugConcentrationPercent } from '../result/late-problems'
import { type LyePlace, type Mend, mendsFor } from './line-mends'
import type { ReadyPlan } from '../result/plan'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import { type BenchRun, type Known, reckoningOf, type Standing, standingOf } from './standing'

/** How one line stands, the whole batch with it, and what mends it. */
export interface LineVerdict extends LineStanding, Superfats {
  readonly mends: readonly Mend[]
}

/** How one line stands. */
export interface LineStanding {
  readonly key: string
  /** What it is asked now and what the plan had, g. */
  readonly askedG: number
  readonly plannedG: number
  /** Null while nothing was entered. */
  readonly weighedG: number | null
  /** Weighed less asked, g. */
  readonly offG: number
  /** How far off still counts as on, g: two steps of its scale. */
  readonly toleranceG: number
  /**
   * - `waiting`, nothing entered; `assumed`, skipped and counted as asked
   * - `on`, within two steps; `over`, `under`, beyond
   * - `left`, off and left so; `part`, too much hydroxide of which only a part is used
   * - `off`, beyond, but it changes no superfat: go on
   */
  readonly state: 'waiting' | 'assumed' | 'on' | 'over' | 'under' | 'left' | 'part' | 'off'
  /** Whether to stop: hydroxide over, or an acid off. */
  readonly stop: boolean
  /** Whether one may go on from it. */
  readonly open: boolean
  readonly skippable: boolean
}

/** Scale steps within which a weight is on. */
const STEPS_ON = 2

/** Steps where no scale is stated, g. */
const FINE_STEP_G = 0.1
const COARSE_STEP_G = 1

/** Weight that is floating point, g. */
export const NOISE_G = 1e-6

const FINE: readonly Ingredient['kind'][] = ['alkali', 'acid', 'additive', 'scent']

/** How far a line may be off and still be on, g. */
export function toleranceOf({ stepG, kind }: Pick<Ingredient, 'stepG' | 'kind'>): number {
  return STEPS_ON * (stepG ?? (FINE.includes(kind) ? FINE_STEP_G : COARSE_STEP_G))
}

/** Lines that must be weighed: nobody assumes hydroxide or acid. */
export function mustBeWeighed({ kind }: Pick<Ingredient, 'kind'>): boolean {
  return kind === 'alkali' || kind === 'acid'
}

function matters(kind: Ingredient['kind']): boolean {
  return kind === 'oil' || kind === 'extraFat' || kind === 'alkali' || kind === 'acid'
}

/**
 * Judges one line of a batch at the bench: pure, and with everything not yet weighed taken as asked.
 *
 * @param skipped whether its weighing was passed over
 * @param lye where the hydroxide is
 */
export function judgeLine(
  plan: ReadyPlan,
  run: BenchRun,
  key: string,
  { skipped, lye }: { readonly skipped: boolean; readonly lye: LyePlace },
  known: Known,
): LineVerdict {
  const stands = lineStanding(plan, run, key, skipped, known)
  const standing = standingOf(plan, run, known)
  const mends = mendsFor(plan, run, lineOf(plan, key), stands.state, { standing, lye, known })
  return { ...stands, ...superfatsOf(standing.reckoning), mends }
}

/** How a line stands, without what mends it: enough to say whether one may go on. */
export function lineStanding(
  plan: ReadyPlan,
  run: BenchRun,
  key: string,
  skipped: boolean,
  known: Known,
): LineStanding {
  const line = lineOf(plan, key)
  const standing = standingOf(plan, run, known)
  const askedG = standing.asked[key] ?? line.grams
  const weighedG = run.actual[key] ?? null
  const toleranceG = toleranceOf(line)
  const state = stateOf(line, run, standing, { askedG, weighedG, toleranceG, skipped })
  const tooStrong = (state === 'off' || state === 'on') && isTooStrong(plan, line, standing, known)
  const shown = tooStrong ? 'under' : state
  return {
    key,
    askedG,
    plannedG: line.grams,
    weighedG,
    offG: weighedG === null ? 0 : weighedG - askedG,
    toleranceG,
    state: shown,
    stop: isStop(line, shown),
    open: !['waiting', 'over', 'under'].includes(shown),
    skippable: !mustBeWeighed(line),
  }
}

function lineOf(plan: ReadyPlan, key: string): Ingredient {
  const line = plan.ingredients.find((one) => one.key === key)
  if (!line) throw new Error(`The plan has no line ${key}`)
  return line
}

/** Whether so little water would be in the jug that the hydroxide asked does not stay dissolved. */
function isTooStrong(plan: ReadyPlan, { kind }: Ingredient, standing: Standing, known: Known) {
  if (kind !== 'water' && kind !== 'cookWater') return false
  const alkalis = Object.entries(standing.asked).filter(([key]) => key.startsWith('alkali:'))
  const asked = { ...standing.weighed, ...Object.fromEntries(alkalis) }
  const percent = jugConcentrationPercent(reckoningOf(plan, asked, known))
  return percent > MOST_LYE_CONCENTRATION_PERCENT + NOISE_PERCENT
}

function stateOf(
  line: Ingredient,
  run: BenchRun,
  { part }: Standing,
  weighing: { askedG: number; weighedG: number | null; toleranceG: number; skipped: boolean },
): LineVerdict['state'] {
  const { askedG, weighedG, toleranceG, skipped } = weighing
  if (weighedG === null) return skipped && !mustBeWeighed(line) ? 'assumed' : 'waiting'
  if (part && run.part && line.kind === 'alkali') {
    // What was to be used of it: lye poured beyond that stops at its own weighing.
    const used = weighedG * (run.part.usedG / run.part.ofG)
    return used - askedG > toleranceG + NOISE_G ? 'over' : 'part'
  }
  const off = weighedG - askedG
  if (Math.abs(off) <= toleranceG + NOISE_G) return 'on'
  if (!matters(line.kind)) return 'off'
  const left = run.left[line.key] === weighedG
  if (off > 0) return left && line.kind !== 'alkali' ? 'left' : 'over'
  return left ? 'left' : 'under'
}

function isStop({ kind }: Ingredient, state: LineVerdict['state']): boolean {
  if (kind === 'alkali') return state === 'over'
  return kind === 'acid' && (state === 'over' || state === 'under')
}
