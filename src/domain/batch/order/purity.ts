import type { AlkaliKind } from '../../chemistry/alkali'
import { fractionFromPercent, WHOLE_PERCENT } from '../../units'
import type { BatchOrder } from './order'

/** What a certificate of analysis says of one lot of alkali. */
export interface PurityCertificate {
  /** Its number, or the lot's. */
  readonly certificate: string
  /** How far the figure may be off either way, points of percent; see `CERTIFICATE_WITHIN_PERCENT`. */
  readonly within?: number | undefined
}

/**
 * How a stated purity is meant. Bags state a minimum, so `atLeast` is what it is where nothing is said;
 * `exactly` is a jar somebody titrated.
 */
export type PurityIs = 'atLeast' | 'exactly' | PurityCertificate

/** What is known of each alkali's purity. */
export type PurityKnown = Readonly<{ [kind in AlkaliKind]?: PurityIs | undefined }>

/**
 * Purities that dry alkali is sold with, percent: NaOH flakes and pearls 97 to 99, KOH flakes 85 to 92,
 * most often 90 (common practice), with room either way. A figure outside needs a certificate.
 */
export const PLAUSIBLE_PURITY_PERCENT = {
  naoh: { min: 95, max: WHOLE_PERCENT },
  koh: { min: 80, max: 95 },
} as const

/** What a bag most often states, percent: common practice. Where a maker picks an alkali for the first time. */
export const USUAL_PURITY_PERCENT = { naoh: 99, koh: 90 } as const

/** Under this no dry alkali is sold, percent: the figure is a slip, whatever paper is named. */
export const LEAST_PURITY_PERCENT = 50

/** The strongest usual KOH flakes, percent (common practice): what an "at least" counts up to. */
const USUAL_KOH_UP_TO_PERCENT = 92

/** How far a certificate of purity may be off where it does not say, points of percent: an assumption. */
const CERTIFICATE_WITHIN_PERCENT = 0.5

/** How much stronger than stated a bought solution may be, as a part: 50 % is sold as 49 to 51. Assumed. */
const SOLUTION_WITHIN = 0.02

/** Whether a purity rests on a certificate. */
export function isCertified(is: PurityIs | undefined): is is PurityCertificate {
  return typeof is === 'object'
}

/** Purity of an alkali as a fraction; 1 where none is stated, which errs towards more fat. */
export function purityOf(order: BatchOrder, kind: AlkaliKind): number {
  const percent = order.purity[kind]
  return percent === undefined ? 1 : fractionFromPercent(percent)
}

/** Pure hydroxide in what is weighed, as a fraction: the strength of a solution, else the purity. */
export function contentOf(order: BatchOrder, kind: AlkaliKind): number {
  const strength = order.lyeSolution?.[kind]
  return strength === undefined ? purityOf(order, kind) : fractionFromPercent(strength)
}

/**
 * The most pure hydroxide that what is weighed may hold, as a fraction: of an "at least" up to 100 % NaOH
 * or 92 % KOH (95 where 92 or more is stated), of a certificate its figure and tolerance. `purityUpTo`
 * widens this and never narrows it.
 */
export function contentUpTo(order: BatchOrder, kind: AlkaliKind): number {
  const percent = Math.max(upToPercent(order, kind), order.purityUpTo?.[kind] ?? 0)
  return fractionFromPercent(Math.min(WHOLE_PERCENT, percent))
}

function upToPercent({ purity, purityIs, lyeSolution }: BatchOrder, kind: AlkaliKind): number {
  const is = purityIs?.[kind]
  const strength = lyeSolution?.[kind]
  if (strength !== undefined)
    return isCertified(is) ? strength + within(is) : strength * (1 + SOLUTION_WITHIN)
  const stated = purity[kind]
  if (stated === undefined) return WHOLE_PERCENT
  if (isCertified(is)) return stated + within(is)
  if (is === 'exactly') return stated
  if (kind === 'naoh') return WHOLE_PERCENT
  const most =
    stated < USUAL_KOH_UP_TO_PERCENT ? USUAL_KOH_UP_TO_PERCENT : PLAUSIBLE_PURITY_PERCENT.koh.max
  return Math.max(stated, most)
}

function within({ within: points }: PurityCertificate): number {
  return points ?? CERTIFICATE_WITHIN_PERCENT
}
