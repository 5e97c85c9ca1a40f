import {
  boxAround,
  boxesAlong,
  type Box,
  type Obstacle,
  overlapArea,
  type PlacedLabel,
  placeLabels,
  type Side,
} from '../../charts/labels'
import type { MapPoint } from '../../charts/map'
import { number } from '../words/format'
import type { Landmark } from './landmarks'

/** Words beside a spot of the map, px. */
export interface MapWord {
  readonly id: string
  readonly kind: 'now' | 'best' | 'landmark'
  readonly at: MapPoint
  readonly lines: readonly string[]
  readonly gap: number
  readonly sides: readonly Side[]
}

/** Spots that words stand beside, px. */
export interface Spots {
  /** The blend in hand, and what it costs, as written. */
  readonly present: { readonly at: MapPoint; readonly cost: string | undefined } | undefined
  /** A place of the edge where no blend has more of both, and what both are. */
  readonly best: { readonly at: MapPoint; readonly words: string } | undefined
  readonly landmarks: readonly { readonly landmark: Landmark; readonly at: MapPoint }[]
}

const BELOW_FIRST = ['below right', 'below left', 'above right', 'above left'] as const
const ABOVE_FIRST = ['above right', 'above left', 'below right', 'below left'] as const
const BESIDE_FIRST = ['right', 'left', ...BELOW_FIRST] as const

/** The words of a map, the first with the first choice of room; a narrow one has letters for names. */
export function mapWords({ present, best, landmarks }: Spots, narrow: boolean): MapWord[] {
  const now: MapWord[] = present
    ? [
        {
          id: 'now',
          kind: 'now',
          at: present.at,
          lines: ['now', ...(present.cost === undefined ? [] : [`${present.cost} per kg`])],
          gap: 12,
          sides: BELOW_FIRST,
        },
      ]
    : []
  const edge: MapWord[] =
    best && !narrow
      ? [
          {
            id: 'best',
            kind: 'best',
            at: best.at,
            lines: ['no blend has both', best.words],
            gap: 24,
            sides: ABOVE_FIRST,
          },
        ]
      : []
  const bars = landmarks.map(({ landmark: { id, letter, name }, at }): MapWord => ({
    id,
    kind: 'landmark',
    at,
    lines: [narrow ? letter : `${letter} ${name}`],
    gap: 10,
    sides: BESIDE_FIRST,
  }))
  return [...now, ...edge, ...bars]
}

/** Room of the upright axis' name, px. */
const NAME_PX = { width: 80, height: 16 }
const EDGE_PX = 6
const MARK_PX = 16
/** A mark that is covered is worse than a line. */
const MARK_WEIGHT = 20

/** What words keep off: the upright axis' name, the edge of the land and the marks; all in px. */
export function takenOn(
  { left, top }: Box,
  edge: readonly MapPoint[],
  marks: readonly MapPoint[],
): readonly Obstacle[] {
  return [
    { left, right: left + NAME_PX.width, top, bottom: top + NAME_PX.height },
    ...boxesAlong(edge, EDGE_PX),
    ...marks.map(({ x, y }) => ({ ...boxAround(x, y, MARK_PX, MARK_PX), weight: MARK_WEIGHT })),
  ]
}

/** Rough width of a character at 12 px, by the weight of the words. */
const CHAR_PX = { now: 6.7, best: 6.5, landmark: 6 }

/** Where words stand that keep off what is taken; the first have the first choice. */
export function placeWords(
  words: readonly MapWord[],
  taken: readonly Obstacle[],
  frame: Box,
): ReadonlyMap<string, PlacedLabel> {
  const labels = words.map(({ id, kind, at, lines, gap, sides }) => {
    const width = CHAR_PX[kind] * Math.max(...lines.map(({ length }) => length))
    return { id, ...at, width, lines: lines.length, gap, sides }
  })
  return placeLabels(labels, taken, frame)
}

/** Room of what bare paper means, px below the frame's top. */
const OUTSIDE_PX = { width: 270, top: 18, height: 16 }

/** Whether what bare paper means can be said without disturbing a word. */
export function outsideIsFree({ left, top }: Box, words: readonly Box[]): boolean {
  const room = {
    left,
    right: left + OUTSIDE_PX.width,
    top: top + OUTSIDE_PX.top,
    bottom: top + OUTSIDE_PX.top + OUTSIDE_PX.height,
  }
  return words.every((box) => overlapArea(box, room) === 0)
}

/** What lies off the map and where, '' where nothing does. */
export function offInWords(off: readonly Landmark[]): string {
  const all = off.map(
    ({ letter, name, x, y }) => `${letter} ${name} at ${number(x, 0)} and ${number(y, 0)}`,
  )
  return all.length === 0 ? '' : `Off the map: ${all.join('; ')}`
}
