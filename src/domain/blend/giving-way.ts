import { WHOLE_PERCENT } from '../units'
import type { Blend } from './blend'

/** One oil of a bar that is changed by hand. */
export interface Part {
  readonly oil: string
  /** Percent of the oils' weight; all parts add to 100. */
  readonly percent: number
  /** A locked part keeps its share. */
  readonly locked: boolean
}

/** Which part takes up what another one leaves or needs: an oil, or all free ones in proportion. */
export type GivesWay = { readonly oil: string } | 'all'

/** Parts after a change by hand, and which oils gave way for it; or that none was free to. */
export type Changed =
  | {
      readonly status: 'changed'
      readonly parts: readonly Part[]
      readonly gave: readonly string[]
    }
  | { readonly status: 'nothing free' }

/** Shares closer than this are the same: floating point, percent. */
const NOISE_PERCENT = 1e-9

/** The shares of some parts as a blend, those at 0 left out. */
export function blendOfParts(parts: readonly Part[]): Blend {
  return Object.fromEntries(
    parts.filter(({ percent }) => percent > 0).map(({ oil, percent }) => [oil, percent]),
  )
}

/** The parts of a blend, the largest first, none locked. */
export function partsOf(blend: Blend): Part[] {
  return Object.entries(blend)
    .sort(([, a], [, b]) => b - a)
    .map(([oil, percent]) => ({ oil, percent, locked: false }))
}

/** The most that one part may have beside the locked ones, percent. */
export function mostOf(parts: readonly Part[], oil: string): number {
  const others = parts.filter((part) => part.oil !== oil && part.locked)
  return Math.max(0, WHOLE_PERCENT - total(others))
}

/**
 * The oil that gives way where none was named: the largest free one beside the one that is changed.
 * Undefined where all others are locked.
 */
export function usualGiver(parts: readonly Part[], changed: string): string | undefined {
  const free = parts.filter(({ oil, locked }) => oil !== changed && !locked)
  return free.reduce<Part | undefined>(
    (most, part) => (most === undefined || part.percent > most.percent ? part : most),
    undefined,
  )?.oil
}

/**
 * Gives one part another share, percent, kept between 0 and what the locked parts leave. One oil gives way,
 * or all free ones in proportion; where the one named has too little, the other free ones go on in
 * proportion. All stays 100.
 */
export function withShare(
  parts: readonly Part[],
  oil: string,
  percent: number,
  givesWay?: GivesWay,
): Changed {
  const share = Math.min(mostOf(parts, oil), Math.max(0, percent))
  const before = parts.find((part) => part.oil === oil)?.percent ?? 0
  const need = share - before
  if (Math.abs(need) <= NOISE_PERCENT) return { status: 'changed', parts, gave: [] }
  const free = parts.filter((part) => part.oil !== oil && !part.locked)
  if (free.length === 0) return { status: 'nothing free' }
  const named = givesWay === 'all' ? undefined : (givesWay?.oil ?? usualGiver(parts, oil))
  const taken = shared(
    need,
    free,
    free.find((part) => part.oil === named),
  )
  const changed = parts.map((part) => {
    const percentOf = part.oil === oil ? share : part.percent - (taken.get(part.oil) ?? 0)
    return { ...part, percent: Math.max(0, percentOf) }
  })
  return { status: 'changed', parts: changed, gave: [...taken.keys()] }
}

/** How much each free part gives, percent; below 0 for what it gets. */
function shared(
  need: number,
  free: readonly Part[],
  first: Part | undefined,
): ReadonlyMap<string, number> {
  const taken = new Map<string, number>()
  const fromFirst = first ? Math.min(need, first.percent) : 0
  if (first && Math.abs(fromFirst) > NOISE_PERCENT) taken.set(first.oil, fromFirst)
  const rest = need - fromFirst
  const others = free.filter((part) => part !== first)
  if (Math.abs(rest) <= NOISE_PERCENT || others.length === 0) return taken
  const sum = total(others)
  for (const { oil, percent } of others) {
    const part = sum > NOISE_PERCENT ? percent / sum : 1 / others.length
    if (part > 0) taken.set(oil, rest * part)
  }
  return taken
}

/** Moves percentage points from the part on the right of a joint to the one on its left; neither goes under 0. */
export function withJointMoved(
  parts: readonly Part[],
  left: string,
  right: string,
  points: number,
): Changed {
  const shareOf = (oil: string) => parts.find((part) => part.oil === oil)?.percent ?? 0
  const held = parts.some((part) => (part.oil === left || part.oil === right) && part.locked)
  if (held) return { status: 'nothing free' }
  const moved = Math.min(shareOf(right), Math.max(-shareOf(left), points))
  return withShare(parts, left, shareOf(left) + moved, { oil: right })
}

/** Gives the parts other weights, g; the batch becomes their sum. Undefined where all of them are 0. */
export function withWeights(
  parts: readonly Part[],
  gramsOf: (part: Part) => number,
): { readonly parts: readonly Part[]; readonly grams: number } | undefined {
  const weights = parts.map(gramsOf)
  const grams = weights.reduce((sum, weight) => sum + weight, 0)
  if (!(grams > 0)) return undefined
  return {
    grams,
    parts: parts.map((part, at) => ({
      ...part,
      percent: ((weights[at] ?? 0) * WHOLE_PERCENT) / grams,
    })),
  }
}

/**
 * Takes a part out. The others share what it leaves in proportion, locked ones only where no other is
 * left. Empty where it was the last.
 */
export function withoutPart(parts: readonly Part[], oil: string): readonly Part[] {
  const others = parts.filter((part) => part.oil !== oil)
  const free = others.filter(({ locked, percent }) => !locked && percent > NOISE_PERCENT)
  const take = free.length > 0 ? free : others
  const room = WHOLE_PERCENT - total(others.filter((part) => !take.includes(part)))
  const sum = total(take)
  return others.map((part) => {
    if (!take.includes(part)) return part
    const share = sum > NOISE_PERCENT ? (part.percent * room) / sum : room / take.length
    return { ...part, percent: share }
  })
}

function total(parts: readonly Part[]): number {
  return parts.reduce((sum, { percent }) => sum + percent, 0)
}
