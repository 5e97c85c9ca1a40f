import type { Acid, Amount, Fragrance, Liquid } from '../../domain/batch/order/additions'
import type { BatchFacts } from '../../domain/batch/order/facts'
import type { BatchOrder, PerAlkali, WaterRule } from '../../domain/batch/order/order'
import {
  type LyeCompared,
  lyeCompared,
  type StatedLye,
} from '../../domain/batch/actual/lye-compared'
import type { Library } from '../../domain/blend/library'
import type { Problem } from '../../domain/blend/check-blend'
import { fractionFromPercent, WHOLE_PERCENT } from '../../domain/units'
import { sumOf } from '../formula-outcome'
import type { LyeFound, RecipeFacts, RecipeReading, ThingFound } from './recipe-reading'

/**
 * The order that a recipe asks for, on top of `base`, which gives what the text does not say. Its lye is never
 * taken; only which alkali it is, and its purity where that is stated. Undefined while there is no blend.
 */
export function recipeOrder(reading: RecipeReading, base: BatchOrder): BatchOrder | undefined {
  const { outcome, found } = reading
  if (outcome.status !== 'blend') return undefined
  const sized = { ...base, ...sizeOf(found, outcome.grams, base) }
  const oilG = sized.oilGrams
  return {
    ...sized,
    blend: outcome.blend,
    ...alkaliOf(found.lye, oilG),
    ...(found.superfat && { superfat: found.superfat.percent }),
    ...waterOf(found, oilG),
    ...(found.process && { process: found.process.process }),
    ...additionsOf(found),
  }
}

function sizeOf(
  { size }: RecipeFacts,
  grams: number | undefined,
  base: BatchOrder,
): Pick<BatchOrder, 'oilGrams' | 'mould' | 'bars'> {
  const none = { oilGrams: undefined, mould: undefined, bars: undefined }
  if (grams !== undefined) return { ...none, oilGrams: grams }
  if (!size) return {}
  if ('mouldMl' in size) return { ...none, mould: { volumeMl: size.mouldMl } }
  if ('grams' in size)
    return size.of === 'all'
      ? { ...none, bars: { count: 1, grams: size.grams, weight: 'wet' } }
      : { ...none, oilGrams: size.grams }
  const barGrams = size.barGrams ?? base.bars?.grams
  if (barGrams === undefined) return {}
  return { ...none, bars: { count: size.bars, grams: barGrams, weight: 'cured' } }
}

/** Which alkalis, by weight of pure hydroxide where there are two. */
function alkaliOf(
  lye: readonly LyeFound[],
  oilG: number | undefined,
): Partial<Pick<BatchOrder, 'alkali' | 'alkaliBy' | 'purity'>> {
  const [first, ...others] = lye
  if (!first) return {}
  const purity: PerAlkali = Object.fromEntries(
    lye.flatMap(({ alkali, purityPercent }) =>
      purityPercent === undefined ? [] : [[alkali, purityPercent]],
    ),
  )
  const stated = Object.keys(purity).length > 0 ? { purity } : {}
  if (others.length === 0) return { alkali: { [first.alkali]: WHOLE_PERCENT }, ...stated }
  const pure = lye.map((one) => ({
    kind: one.alkali,
    grams: gramsIn(one, oilG) * fractionFromPercent(one.purityPercent ?? WHOLE_PERCENT),
  }))
  const all = sumOf(pure.map(({ grams }) => grams))
  const alkali = Object.fromEntries(
    pure.map(({ kind, grams }) => [kind, (grams * WHOLE_PERCENT) / all]),
  )
  return { alkali, alkaliBy: 'weight', ...stated }
}

/** Grams of a dose; a share where the oils have no weight. */
function gramsIn({ grams, percentOfOils }: Amount, oilG = WHOLE_PERCENT): number {
  return grams ?? oilG * fractionFromPercent(percentOfOils ?? 0)
}

/** Water in grams is kept as a part of the oils, so that it stays as stated when the lye is another. */
function waterOf(found: RecipeFacts, oilG: number | undefined): { water?: WaterRule } {
  const { water } = found
  if (!water) return {}
  if ('rule' in water) return { water: water.rule }
  const liquids = sumOf(found.liquids.map((one) => gramsIn(one, oilG)))
  if (oilG !== undefined)
    return { water: { percentOfOils: ((water.grams + liquids) * WHOLE_PERCENT) / oilG } }
  const lyeG = sumOf(found.lye.map((one) => one.grams))
  return lyeG > 0 ? { water: { ratio: (water.grams + liquids) / lyeG } } : {}
}

function additionsOf(
  found: RecipeFacts,
): Partial<Pick<BatchOrder, 'acids' | 'liquids' | 'additives' | 'fragrance'>> {
  const acids = found.acids.map((one): Acid => ({
    acid: one.id,
    ...amountOf(one),
    ...(one.strengthPercent !== undefined && { strengthPercent: one.strengthPercent }),
    alkali: 'add',
  }))
  const liquids = found.liquids.flatMap(({ id, grams }): Liquid[] =>
    grams === undefined ? [] : [{ liquid: id, grams, when: 'lye' }],
  )
  const additives = found.additives.map((one) => ({ additive: one.id, ...amountOf(one) }))
  return {
    ...(acids.length > 0 && { acids }),
    ...(liquids.length > 0 && { liquids }),
    ...(additives.length > 0 && { additives }),
    ...scentOf(found),
  }
}

/** Scents that the data know, as one fragrance; another waits for its certificate. */
function scentOf({ scents }: RecipeFacts): { fragrance?: Fragrance } {
  const known = scents.flatMap(({ scent, ...one }) =>
    scent === undefined ? [] : [{ scent, ...amountOf(one) }],
  )
  const key = known.every(({ grams }) => grams !== undefined)
    ? ('grams' as const)
    : known.every(({ percentOfOils }) => percentOfOils !== undefined)
      ? ('percentOfOils' as const)
      : undefined
  if (known.length === 0 || key === undefined) return {}
  const all = sumOf(known.map((one) => one[key]))
  const parts: Record<string, number> = {}
  for (const one of known)
    parts[one.scent] = (parts[one.scent] ?? 0) + ((one[key] ?? 0) * WHOLE_PERCENT) / all
  return { fragrance: { blend: parts, [key]: all } }
}

function amountOf({ grams, percentOfOils }: Amount | ThingFound): Amount {
  return grams === undefined ? { percentOfOils } : { grams }
}

/** The recipe's own lye beside ours, or why the two can't be compared yet. */
export type RecipeLye =
  | LyeCompared
  | {
      readonly status: 'notCompared'
      /** `unread` and `question` end when the text is mended; `noLye` names none; `noSize` no weights. */
      readonly because: 'unread' | 'question' | 'noLye' | 'noSize' | 'otherAlkali'
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Compares the recipe's lye with the order's; never while a line that may touch it is unread. */
export function recipeLye(
  reading: RecipeReading,
  order: BatchOrder,
  library: Library,
  facts: BatchFacts,
): RecipeLye {
  const { outcome, found, unread } = reading
  const open = (because: 'unread' | 'question' | 'noLye' | 'noSize' | 'otherAlkali') =>
    ({ status: 'notCompared', because }) as const
  if (found.lye.length === 0) return open('noLye')
  if (unread.some(({ read }) => read.touchesLye)) return open('unread')
  if (outcome.status !== 'blend') return open('question')
  const weighed = found.lye.some(({ grams }) => grams !== undefined)
  if (order.oilGrams === undefined || (weighed && outcome.grams === undefined && !saysOils(found)))
    return open('noSize')
  const stated: StatedLye = Object.fromEntries(
    found.lye.map((one) => [one.alkali, gramsIn(one, order.oilGrams)]),
  )
  const compared = lyeCompared(order, stated, library, facts)
  return compared.status === 'otherAlkali' ? open('otherAlkali') : compared
}

function saysOils({ size }: RecipeFacts): boolean {
  return size !== undefined && 'grams' in size && size.of === 'oils'
}
