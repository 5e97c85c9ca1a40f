/** A rectangle in px, y downward. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** What labels keep off; `weight` says how much more than a plain box, 1 if left out. */
export interface Obstacle extends Box {
  readonly weight?: number
}

/** Where words can stand beside their spot. */
export type Side = 'right' | 'left' | 'below right' | 'below left' | 'above right' | 'above left'

/** Words to be put beside a spot, all in px. */
export interface Label {
  readonly id: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly lines: number
  /** Room between the spot and the words. */
  readonly gap: number
  /** Sides to try; of equally good ones the first is taken. */
  readonly sides: readonly Side[]
}

/** Where words are drawn: the start or end of their first line, px. */
export interface PlacedLabel {
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'end'
  readonly box: Box
}

/** Height of a line of labels, and from its top to where its letters stand, px. */
export const LABEL_LINE_PX = 14
const BASELINE_PX = 11

/** A px outside the drawing is worse than so many px over something else. */
const OUTSIDE_WEIGHT = 20

/**
 * Puts labels beside their spots, one after another, each on the side where it lies over least: over
 * what is taken, over labels before it, and least of all beyond the frame.
 */
export function placeLabels(
  labels: readonly Label[],
  taken: readonly Obstacle[],
  frame: Box,
): ReadonlyMap<string, PlacedLabel> {
  const placed = new Map<string, PlacedLabel>()
  for (const label of labels) {
    const before: Obstacle[] = [...taken, ...[...placed.values()].map(({ box }) => box)]
    const cost = ({ box }: PlacedLabel) =>
      before.reduce((sum, other) => sum + (other.weight ?? 1) * overlapArea(box, other), 0) +
      OUTSIDE_WEIGHT * (areaOf(box) - overlapArea(box, frame))
    const choices = label.sides.map((side) => beside(label, side))
    const best = choices.reduce((one, other) => (cost(other) < cost(one) ? other : one))
    placed.set(label.id, best)
  }
  return placed
}

/** Square boxes along a line through places in px, so that labels keep off it. */
export function boxesAlong(
  places: readonly { readonly x: number; readonly y: number }[],
  size: number,
): Box[] {
  return places.slice(1).flatMap((to, index) => {
    const from = places[index] ?? to
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / size))
    return Array.from({ length: steps + 1 }, (_, step) => {
      const part = step / steps
      return boxAround(from.x + part * (to.x - from.x), from.y + part * (to.y - from.y), size, size)
    })
  })
}

/** A box about its middle. */
export function boxAround(x: number, y: number, width: number, height: number): Box {
  return { left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 }
}

/** Area in px² that two boxes share. */
export function overlapArea(one: Box, other: Box): number {
  const width = Math.min(one.right, other.right) - Math.max(one.left, other.left)
  const height = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
  return width > 0 && height > 0 ? width * height : 0
}

function areaOf({ left, right, top, bottom }: Box): number {
  return (right - left) * (bottom - top)
}

function beside({ x, y, width, lines, gap }: Label, side: Side): PlacedLabel {
  const height = lines * LABEL_LINE_PX
  const toLeft = side.endsWith('left')
  const left = toLeft ? x - gap - width : x + gap
  const top = side.startsWith('below')
    ? y + gap / 2
    : side.startsWith('above')
      ? y - gap / 2 - height
      : y - height / 2
  const box = { left, right: left + width, top, bottom: top + height }
  return {
    x: toLeft ? box.right : box.left,
    y: top + BASELINE_PX,
    anchor: toLeft ? 'end' : 'start',
    box,
  }
}
