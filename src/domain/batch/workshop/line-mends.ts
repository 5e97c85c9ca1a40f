import { dissolvedAcid } from '../actual/fixes'
import { freeLyeLikely } from '../actual/free-lye-likely'
import type { Ingredient } from '../result/ingredients'
import { moreOil, type MoreOil } from './more-oil'
import { type PartOfLye, partOfLye } from './part-of-lye'
import type { ReadyPlan } from '../result/plan'
import { superfatAt } from '../superfat/reach'
import { type BenchRun, type Known, type Standing, standingOf } from './standing'

/** Where the hydroxide is: not yet out of its bag, dissolved in the jug, or in the pot with the oils. */
export type LyePlace = 'none' | 'jug' | 'pot'

/** What can be done about a weight that is off. */
export type Mend =
  /** Take so much out again and weigh once more. */
  | { readonly kind: 'takeOut'; readonly grams: number }
  /** Add so much. */
  | { readonly kind: 'add'; readonly grams: number }
  /** Leave it: the hydroxide follows (g by key), or the superfat does. */
  | {
      readonly kind: 'leave'
      readonly follows: readonly {
        readonly key: string
        readonly fromG: number
        readonly toG: number
      }[]
      readonly superfatPercent: number
    }
  /** Make the whole batch so many times as large. */
  | { readonly kind: 'grow'; readonly factor: number; readonly oilG: number }
  /** Hydroxide dry in its cup: spoon so much into a labelled tub. */
  | { readonly kind: 'spoonOut'; readonly grams: number }
  | ({ readonly kind: 'usePart' } & PartOfLye)
  | ({ readonly kind: 'moreOil' } & MoreOil)
  | { readonly kind: 'dissolveAcid'; readonly grams: number; readonly waterG: number }
  /** Throw it away as caustic waste. */
  | { readonly kind: 'discard' }

/** A line that is off, and the batch around it. */
export interface Situation {
  readonly standing: Standing
  readonly lye: LyePlace
  readonly known: Known
}

/** What mends a line that is over or under, the best first. */
export function mendsFor(
  plan: ReadyPlan,
  run: BenchRun,
  line: Ingredient,
  state: string,
  situation: Situation,
): Mend[] {
  if (state !== 'over' && state !== 'under') return []
  const weighedG = run.actual[line.key] ?? 0
  const grams = Math.abs(weighedG - (situation.standing.asked[line.key] ?? line.grams))
  const off = { line, grams, weighedG, over: state === 'over' }
  if (line.kind === 'alkali') return alkaliMends(plan, run, off, situation)
  if (line.kind === 'acid') return acidMends(plan, run, off, situation)
  if (line.kind === 'oil' || line.kind === 'extraFat') return oilMends(plan, run, off, situation)
  return [{ kind: 'add', grams }]
}

interface Off {
  readonly line: Ingredient
  readonly grams: number
  readonly weighedG: number
  readonly over: boolean
}

function alkaliMends(plan: ReadyPlan, run: BenchRun, off: Off, situation: Situation): Mend[] {
  const { line, grams, over } = off
  if (!over) return [{ kind: 'add', grams }, ...leaveIt(plan, run, line, situation)]
  const spoonOut: Mend[] = situation.lye === 'pot' ? [] : [{ kind: 'spoonOut', grams }]
  return [...spoonOut, ...lyeMends(plan, run, situation.lye, situation.known)]
}

/**
 * Before there is lye acid is simply weighed right, and too much of it only takes lye away. Where it is
 * short beside caustic lye oil comes first; else it goes in dissolved; dry it never does.
 */
function acidMends(plan: ReadyPlan, run: BenchRun, off: Off, situation: Situation): Mend[] {
  const { line, grams, over } = off
  const { lye, known } = situation
  if (over) return [{ kind: 'takeOut', grams }, ...leaveIt(plan, run, line, situation)]
  if (lye === 'none') return [{ kind: 'add', grams }, ...leaveIt(plan, run, line, situation)]
  const mends = lyeMends(plan, run, lye, known).filter(({ kind }) => kind !== 'discard')
  const { waterG } = dissolvedAcid(plan, line, grams)
  const rest: Mend[] = [{ kind: 'dissolveAcid', grams, waterG }, { kind: 'discard' }]
  return [...mends, ...rest]
}

function oilMends(plan: ReadyPlan, run: BenchRun, off: Off, situation: Situation): Mend[] {
  const { line, grams, weighedG, over } = off
  const inPot = situation.lye === 'pot' && line.stage !== 'afterCook'
  if (!over) return [{ kind: 'add', grams }, ...(inPot ? [] : leaveIt(plan, run, line, situation))]
  return [
    ...(inPot ? [] : [{ kind: 'takeOut', grams } as const]),
    ...leaveIt(plan, run, line, situation),
    ...growIt(plan, line, weighedG, situation.lye),
  ]
}

/** What mends lye that is too much once it is in the water or in the oils. */
export function lyeMends(plan: ReadyPlan, run: BenchRun, lye: LyePlace, known: Known): Mend[] {
  const whole = standingOf(plan, lye === 'pot' ? run : { ...run, part: undefined }, known)
  const part = lye === 'pot' ? null : partOfLye(plan, whole, known)
  const more = moreOil(plan, whole.reckoning, (mended) => freeLyeLikely(plan, mended))
  return [
    ...(part ? [{ kind: 'usePart', ...part } as const] : []),
    ...(more ? [{ kind: 'moreOil', ...more } as const] : []),
    { kind: 'discard' },
  ]
}

/** The weight left as it is, where free lye is then not likely. */
function leaveIt(
  plan: ReadyPlan,
  run: BenchRun,
  line: Ingredient,
  { standing, known }: Situation,
): Mend[] {
  const grams = run.actual[line.key]
  if (grams === undefined) return []
  const left = standingOf(plan, { ...run, left: { ...run.left, [line.key]: grams } }, known)
  const follows = Object.entries(left.asked).flatMap(([key, toG]) => {
    const fromG = standing.asked[key] ?? toG
    return key.startsWith('alkali:') && fromG !== toG ? [{ key, fromG, toG }] : []
  })
  // What was weighed already may be more than what is then asked: that stops at its own line.
  if (follows.length === 0 && freeLyeLikely(plan, left.reckoning)) return []
  return [{ kind: 'leave', follows, superfatPercent: superfatAt(left.reckoning, 'typical') }]
}

/** More of all: only where the size is free, and no hydroxide was weighed yet. */
function growIt(plan: ReadyPlan, line: Ingredient, weighedG: number, lye: LyePlace): Mend[] {
  const free = plan.order.mould === undefined && plan.order.bars === undefined
  if (!free || lye !== 'none' || line.kind !== 'oil') return []
  const factor = weighedG / line.grams
  return [{ kind: 'grow', factor, oilG: (plan.order.oilGrams ?? 0) * factor }]
}
