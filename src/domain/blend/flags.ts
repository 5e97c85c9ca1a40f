import type { Basis } from '../chemistry/fatty-acid'
import type { Blend } from './blend'
import type { MeasureValues } from './compare'
import { type Library, oilOf } from './library'

/** A corner of blends in which the measures can't say what a bar will be. */
export interface TrustLimit {
  readonly id: string
  /** Oils whose share is meant; null for any single oil. */
  readonly oils: readonly string[] | null
  /** Percent of oil weight that still counts as inside. */
  readonly mostPercent: number
  readonly reason: string
  readonly basis: Basis
}

/** Everything the page puts a flag on (data/flags.json). */
export interface FlagRules {
  readonly trust: readonly TrustLimit[]
  /** The least of a measure, in points, under which a bar is flagged for going off early. */
  readonly keeping: {
    readonly measure: string
    readonly least: number
    readonly reason: string
    readonly basis: Basis
  }
  /** Tags of oils that stand for something people are allergic to, with the word to say it by. */
  readonly allergens: readonly { readonly tag: string; readonly word: string }[]
  readonly allergenReason: string
}

/** One thing a maker should know of a blend before making it. */
export type Flag =
  | {
      readonly kind: 'trust'
      readonly oil: string
      /** Percent of oil weight, of the blend and of the limit it is over. */
      readonly sharePercent: number
      readonly mostPercent: number
      readonly reason: string
    }
  | {
      readonly kind: 'keeping'
      /** Points. */
      readonly value: number
      readonly least: number
      readonly reason: string
    }
  | {
      readonly kind: 'allergens'
      readonly words: readonly string[]
      readonly reason: string
    }

/** Shares this little over a limit are at it: solvers rest on limits to about this; percent. */
const SLACK_PERCENT = 1e-6

/** The flags of a blend whose measures are known, in a fixed order; empty where nothing is to be said. */
export function flagsOf(
  blend: Blend,
  values: MeasureValues,
  rules: FlagRules,
  library: Library,
): Flag[] {
  return [
    ...trustFlags(blend, rules),
    ...keepingFlags(values, rules),
    ...allergenFlags(blend, rules, library),
  ]
}

/** Whether a blend lies where the measures can't say what a bar will be: such blends come last. */
export function isBeyondTrust(flags: readonly Flag[]): boolean {
  return flags.some(({ kind }) => kind === 'trust')
}

function trustFlags(blend: Blend, { trust }: FlagRules): Flag[] {
  return trust.flatMap(({ oils, mostPercent, reason }) =>
    Object.entries(blend)
      .filter(([oil]) => oils === null || oils.includes(oil))
      .filter(([, share]) => share > mostPercent + SLACK_PERCENT)
      .map(([oil, share]) => ({
        kind: 'trust' as const,
        oil,
        sharePercent: share,
        mostPercent,
        reason,
      })),
  )
}

function keepingFlags(values: MeasureValues, { keeping }: FlagRules): Flag[] {
  const { measure, least, reason } = keeping
  const value = values[measure]
  if (value === undefined || value >= least) return []
  return [{ kind: 'keeping', value, least, reason }]
}

function allergenFlags(blend: Blend, rules: FlagRules, library: Library): Flag[] {
  const present = Object.entries(blend).filter(([, share]) => share > 0)
  const tags = new Set(present.flatMap(([oil]) => oilOf(library, oil).tags))
  const words = rules.allergens.filter(({ tag }) => tags.has(tag)).map(({ word }) => word)
  return words.length > 0 ? [{ kind: 'allergens', words, reason: rules.allergenReason }] : []
}

/** Less superfat than this in the leanest lots leaves no room for a slip of the scale, percent. */
export const NARROW_SUPERFAT_PERCENT = 0.5

/** What the leanest lots of a blend's oils leave at the superfat asked, both in percent. */
export function leanLots(leastSuperfatPercent: number): 'free lye' | 'narrow' | 'safe' {
  if (leastSuperfatPercent < 0) return 'free lye'
  return leastSuperfatPercent < NARROW_SUPERFAT_PERCENT ? 'narrow' : 'safe'
}
