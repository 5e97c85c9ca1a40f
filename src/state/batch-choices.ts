import type { Actuals } from '../domain/batch/actuals'
import type { BatchOrder, PerAlkali, ScaleInUse } from '../domain/batch/order'
import type { ReleaseRecord } from '../domain/batch/release/alkali-test'
import { type Blend, normalised, totalShare } from '../domain/blend/blend'
import type { AlkaliKind } from '../domain/chemistry/alkali'
import { type MassUnit, WHOLE_PERCENT } from '../domain/units'

/** The other alkali beside the first. */
export interface SecondAlkali {
  /** How much of the work it does, percent; the first does the rest. */
  readonly percent: number
  readonly by: 'mol' | 'weight'
  /** Percent of pure alkali in what is weighed. */
  readonly purityPercent: number
}

/** What has been done of the batch on the bench; kept, so that a reload loses no tick. */
export interface BatchRun {
  /** What is ticked off, by line or step, at the weight it had then, g; another weight unticks it. */
  readonly ticks: Readonly<Record<string, number>>
  /** What was really weighed, g. */
  readonly actual: Actuals
  readonly cautionRead: boolean
}

export const PAPERS = ['A4', 'Letter'] as const
export type Paper = (typeof PAPERS)[number]

/** What a plain batch does without, just as the order has it. */
type OrderExtras = Pick<
  BatchOrder,
  | 'mould'
  | 'bars'
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
  | 'pricesPerKg'
  | 'papers'
>

/** What the batch page lets a maker change. */
export interface BatchChoices extends OrderExtras {
  /** Weight of all oils; where a mould or bars say the size, what it last came to. */
  readonly oilGrams: number
  readonly alkali: AlkaliKind
  readonly purityPercent: number
  readonly secondAlkali?: SecondAlkali | undefined
  readonly superfatPercent: number
  readonly water: BatchOrder['water']
  readonly scale: ScaleInUse
  /** The superfat of the leanest lots that `confirmedLean` was said of, percent. */
  readonly confirmedLeanAt?: number | undefined
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
  const { extraFat, fragrance, ...extras } = orderExtras(choices)
  return {
    ...extras,
    blend,
    ...(extras.mould || extras.bars ? {} : { oilGrams: choices.oilGrams }),
    ...alkalisFor(choices),
    purity: purityFor(choices),
    superfat: choices.superfatPercent,
    ...(extraFat && { extraFat: { ...extraFat, oils: wholeOf(extraFat.oils) } }),
    ...(fragrance && { fragrance: { ...fragrance, blend: wholeOf(fragrance.blend) } }),
  }
}

/** What goes into the order as it is. */
function orderExtras({
  oilGrams: _oilGrams,
  alkali: _alkali,
  purityPercent: _purityPercent,
  secondAlkali: _secondAlkali,
  superfatPercent: _superfatPercent,
  confirmedLeanAt: _confirmedLeanAt,
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
  const { oilGrams, water, scale, superfatPercent } = choices
  return {
    blend,
    oilGrams,
    ...alkalisFor(choices),
    purity: purityFor({ ...choices, lyeSolution: undefined }),
    superfat: superfatPercent,
    water: 'onlyFromLiquids' in water ? PLAIN_WATER : water,
    scale,
  }
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
function purityFor({ alkali, purityPercent, secondAlkali, lyeSolution = {} }: BatchChoices) {
  const stated: PerAlkali = {
    [alkali]: purityPercent,
    ...(secondAlkali && { [otherAlkali(alkali)]: secondAlkali.purityPercent }),
  }
  const dissolved = (kind: AlkaliKind) => lyeSolution[kind] !== undefined
  return Object.fromEntries(
    ALKALIS.flatMap((kind) => (dissolved(kind) ? [] : [[kind, stated[kind]]])),
  )
}

const ALKALIS: readonly AlkaliKind[] = ['naoh', 'koh']

/** Parts of anything as percent of their whole; as they are where they come to nothing. */
function wholeOf(parts: Blend): Blend {
  return totalShare(parts) > 0 ? normalised(parts) : parts
}
