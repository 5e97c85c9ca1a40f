import { ALKALI_TITLES } from '../../chemistry/alkali'
import { type Library, oilOf } from '../../blend/library'
import { percentFromFraction } from '../../units'
import { alkalisOf, type BatchOrder } from '../order/order'
import { type BatchFacts, factOf } from '../order/facts'
import { USUAL_START_C } from '../react/heat'
import type { Reckoning } from '../weigh/reckoning'
import { sum, type Weights } from '../weigh/weights'

/** What kind of thing is weighed. */
export type IngredientKind =
  'oil' | 'extraFat' | 'alkali' | 'water' | 'cookWater' | 'liquid' | 'acid' | 'additive' | 'scent'

/** When it goes in. */
export type Stage = 'hardFats' | 'liquidOils' | 'water' | 'lye' | 'oils' | 'trace' | 'afterCook'

/** One line of the weighing list. */
export interface Ingredient {
  /** Unique in its batch, and the same for the same order: `oil:olive`, `acid:0`. */
  readonly key: string
  readonly kind: IngredientKind
  /** Id of the oil, alkali, acid, liquid, additive or scent. */
  readonly id: string
  readonly name: string
  readonly grams: number
  /** Step of the scale it is weighed on, g; null for exact weights. */
  readonly stepG: number | null
  /** What the line says beside the name: share, purity, strength. */
  readonly detail: string
  /** The supplier's lot, where known. */
  readonly lot: string | null
  readonly stage: Stage
  readonly note: string | null
  /** Of a scent: the lowest temperature at which it may catch fire, °C. */
  readonly flashC: number | null
}

/** Fats that are solid in a cool room are melted first; °C. */
const ROOM_C = 20

/** Everything to weigh, in working order. Nothing that weighs 0 g is in it. */
export function ingredientsOf({ order, weights, library, facts }: Reckoning): Ingredient[] {
  const oils = oilLines(order, weights, library)
  return [
    ...oils.filter(({ stage }) => stage === 'hardFats'),
    ...oils.filter(({ stage }) => stage === 'liquidOils'),
    ...additiveLines(order, weights, facts, 'oils'),
    ...waterLines(order, weights),
    ...additiveLines(order, weights, facts, 'water'),
    ...acidLines(order, weights, facts),
    ...liquidLines(order, weights, facts, 'lye'),
    ...alkaliLines(order, weights),
    ...additiveLines(order, weights, facts, 'lye'),
    ...liquidLines(order, weights, facts, 'trace'),
    ...extraFatLines(order, weights, library),
    ...additiveLines(order, weights, facts, 'trace'),
    ...scentLines(order, weights, facts),
  ].filter(({ grams }) => grams > 0)
}

function oilLines(order: BatchOrder, { oilGrams }: Weights, library: Library): Ingredient[] {
  const total = sum(oilGrams)
  return Object.entries(oilGrams).map(([id, grams]) => {
    const { name, meltingC } = oilOf(library, id)
    return {
      key: `oil:${id}`,
      kind: 'oil',
      id,
      name,
      grams,
      stepG: coarse(order),
      detail: `${percentFromFraction(grams / total).toFixed(1)} % of the oils`,
      lot: order.lots?.[id]?.name ?? null,
      stage: meltingC !== null && meltingC > ROOM_C ? 'hardFats' : 'liquidOils',
      note: null,
      flashC: null,
    }
  })
}

function extraFatLines(order: BatchOrder, weights: Weights, library: Library): Ingredient[] {
  const late = order.extraFat?.when === 'afterCook'
  return Object.entries(weights.extraFatGrams).map(([id, grams]) => ({
    key: `extraFat:${id}`,
    kind: 'extraFat',
    id,
    name: oilOf(library, id).name,
    grams,
    stepG: coarse(order),
    detail: late ? 'kept back, after the cook' : 'extra fat, no alkali of its own',
    lot: order.lots?.[id]?.name ?? null,
    stage: late ? 'afterCook' : 'oils',
    note: null,
    flashC: null,
  }))
}

function alkaliLines(order: BatchOrder, { alkaliGrams }: Weights): Ingredient[] {
  return alkalisOf(order).map((kind) => {
    const strength = order.lyeSolution?.[kind]
    const purity = order.purity[kind]
    return {
      key: `alkali:${kind}`,
      kind: 'alkali',
      id: kind,
      name: ALKALI_TITLES[kind],
      grams: alkaliGrams[kind] ?? 0,
      stepG: fine(order),
      detail:
        strength !== undefined
          ? `as solution of ${strength} %`
          : purity === undefined
            ? 'taken as pure'
            : `${purity} % pure`,
      lot: null,
      stage: 'lye',
      note: null,
      flashC: null,
    }
  })
}

function waterLines(order: BatchOrder, { water }: Weights): Ingredient[] {
  const line = {
    id: 'water',
    stepG: coarse(order),
    lot: null,
    stage: 'water',
    note: null,
    flashC: null,
  } as const
  const ice = order.lye?.iceGrams ?? 0
  const startC = order.lye?.startC ?? USUAL_START_C
  const detail = ice > 0 ? `of it ${ice} g as ice` : `at ${startC} °C, in the jug`
  return [
    { ...line, key: 'water', kind: 'water', name: 'Water', grams: water.plainG, detail },
    {
      ...line,
      key: 'cookWater',
      kind: 'cookWater',
      name: 'Water to boil off',
      grams: water.cookG,
      detail: 'into the jug with the rest',
    },
  ]
}

function acidLines(order: BatchOrder, weights: Weights, facts: BatchFacts): Ingredient[] {
  return (order.acids ?? []).map((use, index) => {
    const { name, note } = factOf(facts.acids, use.acid)
    const strength = use.strengthPercent === undefined ? '' : `${use.strengthPercent} %, `
    const paid =
      use.alkali === 'add' ? 'its hydroxide is weighed with the rest' : 'raises the superfat'
    return {
      key: `acid:${index}`,
      kind: 'acid',
      id: use.acid,
      name,
      grams: weights.acidGrams[index] ?? 0,
      stepG: fine(order),
      detail: strength + paid,
      lot: null,
      stage: 'water',
      note,
      flashC: null,
    }
  })
}

function liquidLines(
  order: BatchOrder,
  weights: Weights,
  facts: BatchFacts,
  when: 'lye' | 'trace',
): Ingredient[] {
  return (order.liquids ?? []).flatMap((use, index) => {
    if (use.when !== when) return []
    const { name, note, waterPercent, heatsUp } = factOf(facts.liquids, use.liquid)
    return [
      {
        key: `liquid:${index}`,
        kind: 'liquid',
        id: use.liquid,
        name,
        grams: weights.liquidGrams[index] ?? 0,
        stepG: coarse(order),
        detail: `${use.waterPercent ?? waterPercent} % water${heatsUp && when === 'lye' ? ', frozen' : ''}`,
        lot: null,
        stage: when === 'lye' ? 'water' : 'trace',
        note,
        flashC: null,
      },
    ]
  })
}

function additiveLines(
  order: BatchOrder,
  weights: Weights,
  facts: BatchFacts,
  stage: 'water' | 'lye' | 'oils' | 'trace',
): Ingredient[] {
  const oils = sum(weights.oilGrams)
  return (order.additives ?? []).flatMap(({ additive }, index) => {
    const fact = factOf(facts.additives, additive)
    const grams = weights.additiveGrams[index] ?? 0
    if (fact.stage !== stage) return []
    return [
      {
        key: `additive:${index}`,
        kind: 'additive',
        id: additive,
        name: fact.name,
        grams,
        stepG: fine(order),
        detail: `${percentFromFraction(grams / oils).toFixed(1)} % of the oils`,
        lot: null,
        stage,
        note: fact.note,
        flashC: null,
      },
    ]
  })
}

function scentLines(order: BatchOrder, weights: Weights, facts: BatchFacts): Ingredient[] {
  return Object.entries(weights.fragranceGrams).map(([id, grams]) => {
    const fact = facts.scents.get(id)
    return {
      key: `scent:${id}`,
      kind: 'scent',
      id,
      name: fact?.name ?? id,
      grams,
      stepG: fine(order),
      detail: 'fragrance',
      lot: null,
      stage: order.process === 'hot' ? 'afterCook' : 'trace',
      note: fact?.note ?? null,
      flashC: order.fragrance?.certificates?.[id]?.flashC ?? fact?.flashC?.low ?? null,
    }
  })
}

function coarse({ scale }: BatchOrder): number | null {
  return scale?.oilStepG ?? null
}

function fine({ scale }: BatchOrder): number | null {
  return scale?.lyeStepG ?? null
}
