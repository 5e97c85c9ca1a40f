import type { Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import type { AlkaliKind } from '../../chemistry/alkali'
import { type BatchFacts, NO_FACTS } from '../order/facts'
import { alkalisOf, type BatchOrder } from '../order/order'
import { planBatch } from '../result/plan'
import { superfatAt } from '../superfat/reach'
import { type Grams, sum, type Weights, weightsFor } from '../weigh/weights'

/** Hydroxide that somebody else's recipe states, g as weighed, by kind. */
export type StatedLye = Readonly<{ [kind in AlkaliKind]?: number | undefined }>

/** Why two amounts of lye differ; the parts add up to `statedG` less `oursG`. */
export interface LyeDifference {
  /** `purity`: ours is weighed out for the bag's purity. `rounding`: ours is rounded down to the scale.
   * `superfat`: the recipe's own superfat, or other figures for its oils. */
  readonly why: 'purity' | 'rounding' | 'superfat'
  readonly grams: number
}

/** A stated amount of lye beside the one reckoned for the same oils. */
export interface LyeCompared {
  readonly status: 'compared'
  readonly statedG: StatedLye
  readonly oursG: StatedLye
  /** What the stated lye leaves, and what ours does, percent at typical lots. Below 0 is free lye. */
  readonly statedSuperfatPercent: number
  readonly oursSuperfatPercent: number
  /** The largest part first; without those under a twentieth of a gram. */
  readonly differences: readonly LyeDifference[]
}

export type LyeComparison =
  | LyeCompared
  /** The recipe's alkali is not the order's. */
  | { readonly status: 'otherAlkali' }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** A part smaller than this is not worth a word, g: half of what the finest usual scale shows. */
const NOTEWORTHY_G = 0.05

/**
 * The stated lye beside the order's own, with the superfat that it leaves: 1 − (alkali − acids) / T over the
 * same oils, acids and liquids, at the order's purity, or at 100 % where that states none. Planning the
 * same oils with that superfat, liquids and extra fat aside, comes to the stated lye.
 */
export function lyeCompared(
  order: BatchOrder,
  statedG: StatedLye,
  library: Library,
  facts: BatchFacts = NO_FACTS,
): LyeComparison {
  const kinds = alkalisOf(order)
  const named = (['naoh', 'koh'] as const).filter((kind) => (statedG[kind] ?? 0) > 0)
  if (named.join() !== kinds.join()) return { status: 'otherAlkali' }
  const plan = planBatch(order, library, facts)
  if (plan.status === 'invalid') return plan
  const oilG = sum(plan.oilGrams)
  const superfatOf = (alkaliGrams: StatedLye) =>
    superfatAt({ order, weights: withLye(plan, alkaliGrams), library, facts }, 'typical')
  return {
    status: 'compared',
    statedG,
    oursG: plan.alkaliGrams,
    statedSuperfatPercent: superfatOf(statedG),
    oursSuperfatPercent: superfatOf(plan.alkaliGrams),
    differences: differences(sum(statedG), (changed) =>
      sum(weightsFor({ ...order, ...changed }, oilG, library, facts).alkaliGrams),
    ),
  }
}

function withLye({ ...weights }: Weights, alkaliGrams: StatedLye): Weights {
  const grams: Grams = Object.fromEntries(
    Object.entries(alkaliGrams).map(([kind, g]) => [kind, g ?? 0]),
  )
  return { ...weights, alkaliGrams: grams }
}

function differences(
  statedG: number,
  lyeG: (changed: Partial<BatchOrder>) => number,
): LyeDifference[] {
  const [rounded, exact] = [lyeG({}), lyeG({ scale: undefined })]
  const pure = lyeG({ scale: undefined, purity: {}, purityIs: undefined })
  const parts: LyeDifference[] = [
    { why: 'superfat', grams: statedG - pure },
    { why: 'purity', grams: pure - exact },
    { why: 'rounding', grams: exact - rounded },
  ]
  return parts
    .filter(({ grams }) => Math.abs(grams) >= NOTEWORTHY_G)
    .sort((a, b) => Math.abs(b.grams) - Math.abs(a.grams))
}
