import type { Limits } from '../domain/optimise/brief/brief'
import type { Interval } from '../domain/interval'
import type { Box } from './labels'
import type { MapScales, Margins, MapPoint } from './map'

/** Where a map is drawn, px: its edges in a box whose left top is 0, 0. */
export interface MapFrame extends Box {
  readonly width: number
  readonly height: number
  readonly margins: Margins
  /** Too narrow for long words. */
  readonly narrow: boolean
}

/** Under this width long words find no room, px. */
const NARROW_PX = 500
const HEIGHT_PX = { narrow: 240, wide: 436 }
/** Above a wide map there is room for the words beside its highest edge, px. */
const TOP_PX = { narrow: 12, wide: 36 }
const EDGE_PX = { right: 14, bottom: 34, left: 44 }

/** The frame of a map in a box of a width, px. */
export function mapFrame(width: number): MapFrame {
  const narrow = width < NARROW_PX
  const size = narrow ? 'narrow' : 'wide'
  const height = HEIGHT_PX[size]
  const margins = { top: TOP_PX[size], ...EDGE_PX }
  return {
    width,
    height,
    margins,
    narrow,
    left: margins.left,
    right: width - margins.right,
    top: margins.top,
    bottom: height - margins.bottom,
  }
}

/** Whether a point lies in a frame or on its edge, px. */
export function isInFrame({ x, y }: MapPoint, { left, right, top, bottom }: Box): boolean {
  return x >= left && x <= right && y >= top && y <= bottom
}

/** What a map must show: its region, the wishes near it, and a place beside both. */
export function sightsOf(
  region: readonly MapPoint[],
  wishes: { readonly x: Limits; readonly y: Limits },
  present: MapPoint | undefined,
): readonly MapPoint[] {
  const wished = region.flatMap(({ x, y }) => [
    { x: wishes.x.min ?? x, y: wishes.y.min ?? y },
    { x: wishes.x.max ?? x, y: wishes.y.max ?? y },
  ])
  return [...region, ...wished, ...(present ? [present] : [])]
}

/** The two corners of a part of a map. */
export function cornersOf(xs: Interval, ys: Interval): readonly MapPoint[] {
  return [
    { x: xs.min, y: ys.min },
    { x: xs.max, y: ys.max },
  ]
}

/** What a frame shows under some scales, in the axes' units. */
export function extentOf({ x, y }: MapScales, { left, right, top, bottom }: Box) {
  return {
    x: { min: x.invert(left), max: x.invert(right) },
    y: { min: y.invert(bottom), max: y.invert(top) },
  }
}
