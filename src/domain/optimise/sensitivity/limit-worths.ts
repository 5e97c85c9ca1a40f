import type { BlendSpace } from '../space/blend-space'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import { type LimitPlace, placesOf, quantityOf } from '../space/limit-place'
import { firstPiece, type Slide, wholeCost } from './pieces'

/** What a limit is worth on one side of its value. */
export interface SideWorth {
  /** By how much the best goal value changes per unit of the limit, in the goal's unit; 0 or more. */
  readonly perUnit: number
  /** How far this holds, as a value of the limit; null where it holds without end. */
  readonly until: number | null
}

/** The two worths of a limit that decides the answer. */
export interface LimitWorth {
  readonly place: LimitPlace
  /** How much better the goal gets when the limit gives way. */
  readonly relax: SideWorth
  /** How much worse it gets when the limit asks more; null where no blend is left or it can't ask more. */
  readonly tighten: SideWorth | null
}

/**
 * Parts of a quantity's size that are taken for rounding: 1e-5 of a percent or point. The solver keeps
 * rows to 1e-10 of their size, so a thousand times less could be neither reached nor ruled out.
 */
const GRAIN = 1e-7

/** A limit with less room than this can't be walked. */
const LEAST_ROOM_GRAINS = 2

/** Worths below this part of the goal's size per size of the limited quantity are rounding. */
const NO_WORTH = 1e-9

/**
 * The worths of all limits that decide the answer, for a feasible space whose cost is its goal: those
 * where a move changes the best goal value or leaves no blend. A share of at least 0 or at most 100 %
 * asks nothing and is left out. Each side is priced on its own, so left and right prices are true also
 * where they differ. `shares` is any best blend, in percent: a limit it stands clear of decides nothing,
 * because the best value is convex in the limit.
 */
export function limitWorths(space: BlendSpace, shares: ArrayLike<number>): LimitWorth[] {
  return placesOf(space)
    .filter((place) => standsAt(place, shares) && hasRoom(place, 'relax'))
    .map((place) => worthOf(space, place))
    .filter(({ place, relax, tighten }) => {
      const moves = relax.perUnit > 0 || (tighten?.perUnit ?? 0) > 0
      return moves || (tighten === null && hasRoom(place, 'tighten'))
    })
}

function standsAt(place: LimitPlace, shares: ArrayLike<number>): boolean {
  return Math.abs(quantityOf(place, shares) - place.limit.value) <= grainOf(place)
}

function worthOf(space: BlendSpace, place: LimitPlace): LimitWorth {
  const relax = sideWorth(space, place, 'relax')
  if (!relax) throw new UnsoundAnswer(`No blend was found with less asked by ${place.limit.path}`)
  return { place, relax, tighten: sideWorth(space, place, 'tighten') }
}

function sideWorth(
  space: BlendSpace,
  place: LimitPlace,
  way: 'relax' | 'tighten',
): SideWorth | null {
  const { limit, owner, stated } = place
  const slide: Slide = { owner, end: limit.side, rest: stated, grain: grainOf(place) }
  const to = lookTo(place, way)
  const piece = firstPiece(space, slide, limit.value, to)
  if (!piece) return null
  const negligible = (NO_WORTH * wholeCost(space)) / sizeOf(place)
  const size = Math.abs(piece.slope)
  const isOpen = piece.to === to && way === 'relax' && limit.kind === 'measure'
  return { perUnit: size <= negligible ? 0 : size, until: isOpen ? null : piece.to }
}

/** Whether a limit may move that way: shares end at 0 and 100 %, and no limit passes its range's other end. */
export function hasRoom(place: LimitPlace, way: 'relax' | 'tighten'): boolean {
  return Math.abs(lookTo(place, way) - place.limit.value) > LEAST_ROOM_GRAINS * grainOf(place)
}

/** A value beyond which moving the limit is senseless or can change nothing more. */
function lookTo(place: LimitPlace, way: 'relax' | 'tighten'): number {
  const { limit, shelf, stated } = place
  const isShare = limit.kind !== 'measure'
  if ((limit.side === 'min') === (way === 'relax')) {
    const least = isShare ? shelf.lower : Math.min(shelf.lower, limit.value) - sizeOf(place)
    return way === 'tighten' ? Math.max(least, stated.lower) : least
  }
  const most = isShare ? shelf.upper : Math.max(shelf.upper, limit.value) + sizeOf(place)
  return way === 'tighten' ? Math.min(most, stated.upper) : most
}

/** Steps of a limit below this are rounding, in its unit. */
export function grainOf(place: LimitPlace): number {
  return GRAIN * sizeOf(place)
}

/** Size of the limited quantity on this shelf, in its unit; never 0. */
function sizeOf({ shelf, limit }: LimitPlace): number {
  const size = Math.max(Math.abs(shelf.lower), Math.abs(shelf.upper), Math.abs(limit.value))
  return size > 0 ? size : 1
}
