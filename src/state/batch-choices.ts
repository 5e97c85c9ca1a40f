import type { Actuals } from '../domain/batch/actual/actuals'
import type { Cook, TakenTemperature } from '../domain/batch/workshop/cook-clock'
import type { BatchOrder, PerAlkali, Process, ScaleInUse } from '../domain/batch/order/order'
import type { ReleaseRecord } from '../domain/batch/release/alkali-test'
import { soapKindOf } from '../domain/batch/order/soap-kind'
import type { LyePart, Tares } from '../domain/batch/actual/vessels'
import { type Blend, normalised, totalShare } from '../domain/blend/blend'
import type { AlkaliKind } from '../domain/chemistry/alkali'
import { type MassUnit, WHOLE_PERCENT } from '../domain/units'

/** The other alkali beside the first. */
export interface SecondAlkali {
  /** How much of the work it does, percent; the first does the rest. */
  readonly percent: number
  readonly by: 'mol' | 'weight'
}

/** What has been done of the batch on the bench; kept, so that a reload loses no tick. */
export interface BatchRun {
  /** What is ticked off, by line or step, at the weight it had then, g; another weight unticks it. */
  readonly ticks: Readonly<Record<string, number>>
  /** What was really weighed, g. */
  readonly actual: Actuals
  readonly cautionRead: boolean
  /** Weights off the plan that are left as they are, g by line. */
  readonly left?: Actuals | undefined
  /** Where only a part of the lye is used. */
  readonly part?: LyePart | undefined
  /** What the empty vessels weigh, g. */
  readonly tares?: Tares | undefined
  readonly cook?: Cook | undefined
  readonly temperatures?: readonly TakenTemperature[] | undefined
  /** The pot after the cook, g: as it read, and the water put back. */
  readonly pot?: { readonly readsG: number; readonly putBackG?: number | undefined } | undefined
}

export const PAPERS = ['A4', 'Letter'] as const
export type Paper = (typeof PAPERS)[number]

/** What a plain batch does without, just as the order has it. */
type OrderExtras = Pick<
  BatchOrder,
  | 'mould'
  | 'bars'
  | 'purityIs'
  | 'purityUpTo'
  | 'lyeSolution'
  | 'extraFat'
  | 'lots'
  | 'waterOn'
  | 'acids'
  | 'liquids'
  | 'additives'
  | 'fragrance'
  | 'process'
  | 'cook'
  | 'lye'
  | 'cut'
  | 'cure'
  | 'confirmedLean'
  | 'leanSeen'
  | 'pricesPerKg'
  | 'papers'
>

/** What the batch page lets a maker change. */
export interface BatchChoices extends OrderExtras {
  /** Weight of all oils; where a mould or bars say the size, what it last came to. */
  readonly oilGrams: number
  readonly alkali: AlkaliKind
  /** Percent of pure alkali in what is weighed, each kept though the other is picked. */
  readonly purity: Readonly<Record<AlkaliKind, number>>
  readonly secondAlkali?: SecondAlkali | undefined
  readonly superfatPercent: number
  readonly water: BatchOrder['water']
  /** Whether the water was said by hand; else it follows the process. */
  readonly waterTyped?: boolean | undefined
  readonly scale: ScaleInUse
  /** Whether the lye's step was picked; a small batch is weighed finer where it was not. */
  readonly lyeStepChosen?: boolean | undefined
  /** The superfat of the leanest lots that `confirmedLean` was said of, percent. */
  readonly confirmedLeanAt?: number | undefined
  /** The superfat of the leanest lots that `leanSeen` was ticked at, percent. */
  readonly leanSeenAt?: number | undefined
  /** The unit that this person weighs in; g where left out. */
  readonly unit?: MassUnit | undefined
  /** A4 where left out. */
  readonly paper?: Paper | undefined
  readonly run?: BatchRun | undefined
  /** What is known of the bars since they were made. */
  readonly release?: ReleaseRecord | undefined
}

/** A batch on which nothing has been done yet. */
export const NOTHING_DONE: BatchRun = { ticks: {}, actual: {}, cautionRead: false }

/** The order that weighs out a blend under these choices. */
export function orderFor(blend: Blend, choices: BatchChoices): BatchOrder {
  const { extraFat, fragrance, ...all } = orderExtras(choices)
  const extras = isPaste(choices) ? { ...all, ...NO_BARS } : all
  return {
    ...extras,
    blend,
    ...(extras.mould || extras.bars ? {} : { oilGrams: choices.oilGrams }),
    ...alkalisFor(choices),
    purity: purityFor(choices),
    superfat: choices.superfatPercent,
    scale: scaleOf(choices),
    ...(extraFat && { extraFat: { ...extraFat, oils: wholeOf(extraFat.oils) } }),
    ...(fragrance && { fragrance: { ...fragrance, blend: wholeOf(fragrance.blend) } }),
  }
}

/** What is not asked of a paste; the choices keep it for when it is a bar again. */
const NO_BARS = { bars: undefined, cut: undefined, cure: undefined } as const

/** Whether these choices make a paste, which has no bars, no cut and no cure. */
export function isPaste(choices: BatchChoices): boolean {
  const { superfatPercent: superfat, water } = choices
  return soapKindOf({ blend: {}, ...alkalisFor(choices), purity: {}, superfat, water }) === 'paste'
}

/** The usual lye of each process, percent: common practice, 28 to 35 cold and 25 to 30 hot. */
export const USUAL_LYE: Readonly<Record<Process, { readonly lyeConcentration: number }>> = {
  cold: { lyeConcentration: 33 },
  hot: { lyeConcentration: 28 },
}

/**
 * The choices that go with another process: what belongs to a cook goes with it, and a lye that nobody said by
 * hand becomes the process's usual one.
 */
export function withProcess(choices: BatchChoices, process: Process): Partial<BatchChoices> {
  const { extraFat, water, waterTyped } = choices
  const usual = USUAL_LYE[choices.process ?? 'cold'].lyeConcentration
  const untouched =
    waterTyped !== true && 'lyeConcentration' in water && water.lyeConcentration === usual
  return {
    process: process === 'hot' ? process : undefined,
    ...(untouched && { water: USUAL_LYE[process] }),
    ...(process === 'cold' && {
      cook: undefined,
      extraFat: extraFat && { ...extraFat, when: 'withOils' as const },
    }),
  }
}

/** What goes into the order as it is. */
function orderExtras({
  oilGrams: _oilGrams,
  alkali: _alkali,
  purity: _purity,
  secondAlkali: _secondAlkali,
  superfatPercent: _superfatPercent,
  scale: _scale,
  lyeStepChosen: _lyeStepChosen,
  confirmedLeanAt: _confirmedLeanAt,
  waterTyped: _waterTyped,
  leanSeenAt: _leanSeenAt,
  unit: _unit,
  paper: _paper,
  run: _run,
  release: _release,
  ...extras
}: BatchChoices) {
  return extras
}

/** The order with nothing but oils, alkali and water, for comparing blends. */
export function plainOrderFor(blend: Blend, choices: BatchChoices): BatchOrder {
  const { oilGrams, water, superfatPercent } = choices
  return {
    blend,
    oilGrams,
    ...alkalisFor(choices),
    purity: purityFor({ ...choices, lyeSolution: undefined }),
    purityIs: choices.purityIs,
    superfat: superfatPercent,
    water: 'onlyFromLiquids' in water ? PLAIN_WATER : water,
    scale: scaleOf(choices),
  }
}

/** Below this weight of oils a step of 1 g is too much of the lye, g: common practice. */
const SMALL_BATCH_G = 500

/** The step of the lye scale that a small batch begins with, g. */
const FINE_STEP_G = 0.1

/** Whether the lye is weighed finer than the oils because the batch is small and nobody picked its step. */
export function finerForSmall({ oilGrams, scale, lyeStepChosen }: BatchChoices): boolean {
  const { oilStepG, lyeStepG, lyeErrorG } = scale
  const picked = lyeStepChosen === true || lyeErrorG !== undefined || lyeStepG !== oilStepG
  return !picked && oilGrams < SMALL_BATCH_G && lyeStepG > FINE_STEP_G
}

/** The scales in use. */
export function scaleOf(choices: BatchChoices): ScaleInUse {
  const { scale } = choices
  return finerForSmall(choices) ? { ...scale, lyeStepG: FINE_STEP_G } : scale
}

/** Where all water comes from liquids, a comparison takes plain water: 2 g for each g of hydroxide. */
const PLAIN_WATER = { ratio: 2 } as const

/** The alkali that is not this one. */
export function otherAlkali(kind: AlkaliKind): AlkaliKind {
  return kind === 'naoh' ? 'koh' : 'naoh'
}

function alkalisFor({
  alkali,
  secondAlkali,
}: BatchChoices): Pick<BatchOrder, 'alkali' | 'alkaliBy'> {
  if (!secondAlkali) return { alkali: { [alkali]: WHOLE_PERCENT } }
  const { percent, by } = secondAlkali
  const shares = { [alkali]: WHOLE_PERCENT - percent, [otherAlkali(alkali)]: percent }
  return { alkali: shares, alkaliBy: by }
}

/** Alkali that comes as a solution has its strength and no purity. */
function purityFor({ alkali, purity, secondAlkali, lyeSolution = {} }: BatchChoices) {
  const stated: PerAlkali = secondAlkali ? purity : { [alkali]: purity[alkali] }
  const dissolved = (kind: AlkaliKind) => lyeSolution[kind] !== undefined
  return Object.fromEntries(
    ALKALIS.flatMap((kind) =>
      dissolved(kind) || stated[kind] === undefined ? [] : [[kind, stated[kind]]],
    ),
  )
}

const ALKALIS: readonly AlkaliKind[] = ['naoh', 'koh']

/** Parts of anything as percent of their whole; as they are where they come to nothing. */
function wholeOf(parts: Blend): Blend {
  return totalShare(parts) > 0 ? normalised(parts) : parts
}
