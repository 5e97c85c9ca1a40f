import type { Actuals } from '../actual/actual-weights'
import { freeLyeLikely } from '../actual/free-lye-likely'
import { type Superfats, superfatsOf } from '../superfat/superfats'
import { mustBeWeighed, NOISE_G, toleranceOf } from './judge'
import { type LyePlace, lyeMends, type Mend } from './line-mends'
import type { MoreOil } from './more-oil'
import type { PartOfLye } from './part-of-lye'
import type { ReadyPlan } from '../result/plan'
import { type BenchRun, type Known, PART_KEY, standingOf } from './standing'

/** The stop before lye meets oil, or the one after the cook, and what mends it. */
export interface Gate extends GateStanding, Superfats {
  readonly mends: readonly Mend[]
}

/** How a stop stands. */
export interface GateStanding {
  /** Whether it opens. */
  readonly open: boolean
  /** Whether free lye is likely in the batch as it stands. */
  readonly likely: boolean
  /** Hydroxide and acids that nobody has weighed, by key. */
  readonly unweighed: readonly string[]
  /** Lines that count as asked because they were passed over, by key. */
  readonly assumed: readonly string[]
}

/** The whole batch at a stop, with what mends it. */
export function gateOf(plan: ReadyPlan, run: BenchRun, lye: LyePlace, known: Known): Gate {
  const stands = gateStanding(plan, run, known)
  const mends = stands.likely ? lyeMends(plan, run, lye, known) : []
  return { ...stands, ...superfatsOf(standingOf(plan, run, known).reckoning), mends }
}

/**
 * The whole batch at a stop: it opens only where every hydroxide and acid was weighed and free lye is not
 * likely, small slips that were each within their own tolerance added up.
 */
export function gateStanding(plan: ReadyPlan, run: BenchRun, known: Known): GateStanding {
  const { reckoning } = standingOf(plan, run, known)
  const likely = freeLyeLikely(plan, reckoning)
  const missing = plan.ingredients.filter(({ key }) => run.actual[key] === undefined)
  const unweighed = missing.filter(mustBeWeighed).map(({ key }) => key)
  return {
    open: !likely && unweighed.length === 0,
    likely,
    unweighed,
    assumed: missing.filter((line) => !mustBeWeighed(line)).map(({ key }) => key),
  }
}

/** How the part of the lye that went into the pot stands, and what mends it. */
export interface PartVerdict extends PartStanding, Superfats {
  readonly mends: readonly Mend[]
}

/** How the part of the lye that went into the pot stands. */
export interface PartStanding {
  /** Weighed less what was to be used, g. */
  readonly offG: number
  readonly over: boolean
  readonly under: boolean
  readonly open: boolean
}

/** Judges the weight of lye in the pot, g: what is over is in the oils already. */
export function judgePart(
  plan: ReadyPlan,
  run: BenchRun,
  usedG: number,
  known: Known,
): PartVerdict {
  const stands = partStanding(plan, run, usedG, known)
  const used = withPoured(run, usedG)
  return {
    ...stands,
    ...superfatsOf(standingOf(plan, used, known).reckoning),
    mends: stands.open ? [] : lyeMends(plan, used, 'pot', known),
  }
}

/** How the lye in the pot stands, g, without what mends it. */
export function partStanding(
  plan: ReadyPlan,
  run: BenchRun,
  usedG: number,
  known: Known,
): PartStanding {
  const { part } = run
  if (!part) throw new Error('The whole lye is used')
  const tolerance =
    NOISE_G + toleranceOf({ stepG: plan.order.scale?.oilStepG ?? null, kind: 'water' })
  const { reckoning } = standingOf(plan, withPoured(run, usedG), known)
  const offG = usedG - part.usedG
  const over = offG > tolerance
  const likely = freeLyeLikely(plan, reckoning)
  const left = run.left[PART_KEY] === usedG
  return {
    offG,
    over,
    under: -offG > tolerance,
    open: !(likely || (over && !left)),
  }
}

function withPoured(run: BenchRun, usedG: number): BenchRun {
  return { ...run, actual: { ...run.actual, [PART_KEY]: usedG } }
}

/**
 * The run with more of every oil put in; the weights are left as they then are. Before the pot the whole
 * lye is used again.
 */
export function withMoreOil(
  plan: ReadyPlan,
  run: BenchRun,
  { oilGrams }: MoreOil,
  lye: LyePlace,
): BenchRun {
  const oils = Object.entries(oilGrams).map(
    ([oil, grams]) =>
      [`oil:${oil}`, (run.actual[`oil:${oil}`] ?? plan.oilGrams[oil] ?? 0) + grams] as const,
  )
  return {
    ...run,
    part: lye === 'pot' ? run.part : undefined,
    actual: { ...run.actual, ...Object.fromEntries(oils) },
    left: { ...run.left, ...lyeOf(run), ...Object.fromEntries(oils) },
  }
}

/** The run with only a part of the lye in use; acids that were short are left so. */
export function withPartUsed(run: BenchRun, { useG, ofG, waterG }: PartOfLye): BenchRun {
  const actual = withoutPoured(run.actual)
  const part = { usedG: useG, ofG, waterG }
  return { ...run, actual, part, left: { ...run.left, ...lyeOf({ ...run, actual }) } }
}

/** Weights without the lye that went into the pot. */
export function withoutPoured(actual: Actuals): Actuals {
  return Object.fromEntries(Object.entries(actual).filter(([key]) => key !== PART_KEY))
}

/** What was weighed of hydroxide and acids, and of lye into the pot: mended, it is left so. g by key. */
function lyeOf({ actual }: BenchRun): Actuals {
  return Object.fromEntries(
    Object.entries(actual).filter(([key]) => key === PART_KEY || /^(alkali|acid):/u.test(key)),
  )
}
