import type { Blend } from '../../blend/blend'
import type { AlkaliKind } from '../../chemistry/alkali'
import { type AlkaliShares, equivalentsFromWeights, shared } from '../../chemistry/alkali-shares'
import type { ExtraFatOf } from '../../chemistry/superfat'
import type { Acid, Additive, Fragrance, Liquid } from './additions'
import type { Bars, Cut, Mould } from './mould'
import type { PurityKnown } from './purity'

export type { Mould } from './mould'

/** How much water: one of three ways, all reckoned on the hydroxide as weighed, impurities and all. */
export type WaterRule =
  /** Hydroxide in g per 100 g of lye solution. */
  | { readonly lyeConcentration: number }
  /** Water in g per g of hydroxide. */
  | { readonly ratio: number }
  /** Water in g per 100 g of oils. */
  | { readonly percentOfOils: number }

/** No water but what vinegar and other liquids bring. */
export interface LiquidsOnly {
  readonly onlyFromLiquids: true
}

/** The smallest steps of the scales in use, in g. */
export interface Scale {
  readonly oilStepG: number
  /** Step of the finer scale, for hydroxide, acids, additives and fragrance. */
  readonly lyeStepG: number
}

/** Scales with what is known of their error. */
export interface ScaleInUse extends Scale {
  /** How far a weight may be off, in g either way; one step where left out. */
  readonly oilErrorG?: number | undefined
  readonly lyeErrorG?: number | undefined
}

/** A figure for each alkali in use. */
export type PerAlkali = Readonly<{ [kind in AlkaliKind]?: number | undefined }>

/** Fat beside the blend that gets no alkali of its own. */
export interface ExtraFat {
  /** How much, in percent of the whole that `of` names. */
  readonly percent: number
  readonly of: ExtraFatOf
  /** Its oils, in percent of its weight, adding to 100. */
  readonly oils: Blend
  /** With the other oils, or stirred in when the cook is done. */
  readonly when: 'withOils' | 'afterCook'
}

/** A supplier's figure for one lot of an oil, from its certificate. */
export interface OilLot {
  /** mg KOH per g; goes before the library's. */
  readonly saponificationValue?: number | undefined
  /** How far it may be off either way, mg KOH per g, but at least 0.5 %; see `lots.ts` where left out. */
  readonly tolerance?: number | undefined
  /** The supplier's name for the lot. */
  readonly name?: string | undefined
  /** Number of the certificate; a value outside the oil's natural range needs it, and the lot's name. */
  readonly certificate?: string | undefined
}

/** Cold process: poured raw. Hot process: cooked in the pot until it is soap. */
export type Process = 'cold' | 'hot'

/** What the lye starts from. */
export interface LyeStart {
  /** Temperature of the water, °C. */
  readonly startC?: number | undefined
  /** How much of the water is ice, g. */
  readonly iceGrams?: number | undefined
}

/** The cook of a hot process. */
export interface Cook {
  /** Water on top of the lye's, expected to boil off; percent of the oils. */
  readonly extraWaterPercentOfOils: number
}

/** How the bars dry. */
export interface Cure {
  readonly days?: number | undefined
  /** Water left in a dry bar, percent; 12 where left out. */
  readonly finalMoisturePercent?: number | undefined
}

/** What is written on sheet and label and does not touch the weights. */
export interface Papers {
  readonly product?: string | undefined
  /** Day of making, YYYY-MM-DD. */
  readonly madeOn?: string | undefined
  /** Short product code for the batch code, letters and figures. */
  readonly productCode?: string | undefined
  /** Which batch of that day. */
  readonly number?: number | undefined
  /** Name and address that the law asks for on the bar. */
  readonly responsiblePerson?: string | undefined
}

/** What a maker asks a batch to be. Shares, purities and superfat are percent, as makers and files write them. */
export interface BatchOrder {
  readonly blend: Blend
  /** One of the three: the weight of all oils, a mould, or bars. */
  readonly oilGrams?: number | undefined
  readonly mould?: Mould | undefined
  readonly bars?: Bars | undefined
  /** How much of the work each alkali does, percent, adding to 100; `alkaliBy` says of what. */
  readonly alkali: PerAlkali
  /** Percent of the equivalents (mol), as where left out, or of the weight of pure hydroxide. */
  readonly alkaliBy?: 'mol' | 'weight' | undefined
  /** Percent of pure alkali in what is weighed; left out means 100. */
  readonly purity: PerAlkali
  /** How each purity is meant: at least (where left out), exactly, or by a certificate of the lot. */
  readonly purityIs?: PurityKnown | undefined
  /** The highest purity the bag may really have, percent; widens the span, never narrows it. */
  readonly purityUpTo?: PerAlkali | undefined
  /** Alkali that comes as a solution: percent of pure hydroxide by weight in it. */
  readonly lyeSolution?: PerAlkali | undefined
  /** Lye discount in percent: the part of the fat's equivalents that gets no alkali. */
  readonly superfat: number
  readonly extraFat?: ExtraFat | undefined
  /** By oil id: what the supplier says of the lot in hand. */
  readonly lots?: Readonly<Record<string, OilLot>> | undefined
  readonly water: WaterRule | LiquidsOnly
  /** What the water is reckoned on; as weighed where left out. Dissolved alkali always counts pure. */
  readonly waterOn?: 'weighed' | 'pure' | undefined
  readonly acids?: readonly Acid[] | undefined
  readonly liquids?: readonly Liquid[] | undefined
  readonly additives?: readonly Additive[] | undefined
  readonly fragrance?: Fragrance | undefined
  /** Cold where left out. */
  readonly process?: Process | undefined
  readonly cook?: Cook | undefined
  readonly lye?: LyeStart | undefined
  readonly cut?: Cut | undefined
  readonly cure?: Cure | undefined
  /** Left out means exact weights. */
  readonly scale?: ScaleInUse | undefined
  /** Why the maker weighs out a batch of which more than one lot in 200 would hold free alkali. */
  readonly confirmedLean?: string | undefined
  /** Ticked by hand: the maker has read that the leanest lots of all would leave free lye. */
  readonly leanSeen?: boolean | undefined
  /** Money per kg, by what is weighed: oil, naoh, koh, acid, liquid, additive or scent. */
  readonly pricesPerKg?: Readonly<Record<string, number>> | undefined
  readonly papers?: Papers | undefined
}

/**
 * Density of fresh batter in g/ml used for moulds of stated volume: common practice, 1.00 to 1.05; the
 * middle is taken.
 */
export const BATTER_DENSITY_G_PER_ML = 1.03

/** Alkalis an order uses, in a fixed order. */
export function alkalisOf(order: BatchOrder): AlkaliKind[] {
  return (['naoh', 'koh'] as const).filter((kind) => (order.alkali[kind] ?? 0) > 0)
}

/**
 * The part of the equivalents that each alkali takes, 0 to 1. Shares by mol are that themselves; shares
 * by weight of pure hydroxide are turned by their molar masses.
 */
export function alkaliShares({ alkali, alkaliBy }: BatchOrder): AlkaliShares {
  const shares = { naoh: alkali.naoh ?? 0, koh: alkali.koh ?? 0 }
  return alkaliBy === 'weight' ? equivalentsFromWeights(shares) : shared(shares)
}
