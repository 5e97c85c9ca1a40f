import { line, polygonContains, scaleLinear, type ScaleLinear } from 'd3'
import type { Corner } from '../domain/optimise/map/region'

/** A place on the map in its axes' units. */
export interface MapPoint {
  readonly x: number
  readonly y: number
}

/** Where the drawing stands inside its box, px. */
export interface Margins {
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
}

/** A map's scales over a box in px. */
export interface MapScales {
  readonly x: ScaleLinear<number, number>
  readonly y: ScaleLinear<number, number>
}

/** Bare paper around the region, as a part of its size. */
const PADDING = 0.08

/**
 * Scales that show some places with paper around them. A single place gets a window of `least` units,
 * so that a region without size is still a map.
 */
export function mapScales(
  places: readonly MapPoint[],
  least: readonly [number, number],
  width: number,
  height: number,
  margins: Margins,
  padding = PADDING,
): MapScales {
  const extent = (values: readonly number[], atLeast: number): [number, number] => {
    const [low, high] = [Math.min(...values), Math.max(...values)]
    const spare = Math.max((high - low) * padding, (atLeast - (high - low)) / 2)
    return [low - spare, high + spare]
  }
  return {
    x: scaleLinear(
      extent(
        places.map(({ x }) => x),
        least[0],
      ),
      [margins.left, width - margins.right],
    ),
    y: scaleLinear(
      extent(
        places.map(({ y }) => y),
        least[1],
      ),
      [height - margins.bottom, margins.top],
    ),
  }
}

/** SVG path through places; closed for a region's edge. */
export function pathThrough(
  places: readonly MapPoint[],
  scales: MapScales,
  closed = false,
): string {
  const draw = line<MapPoint>(
    ({ x }) => scales.x(x),
    ({ y }) => scales.y(y),
  ).digits(2)
  const path = draw(places) ?? ''
  return closed && path !== '' ? `${path}Z` : path
}

/** Whether a place lies in a region; a region of one or two corners holds nothing but its own line. */
export function isInside(place: MapPoint, region: readonly Corner[]): boolean {
  const corners = region.map(({ x, y }): [number, number] => [x, y])
  return corners.length > 2 && polygonContains(corners, [place.x, place.y])
}

/** The place of a region nearest to a place, measured in px so that both axes weigh what the eye sees. */
export function nearestInside(
  place: MapPoint,
  region: readonly Corner[],
  { x, y }: MapScales,
): MapPoint | undefined {
  if (isInside(place, region)) return place
  let nearest: MapPoint | undefined
  let least = Infinity
  region.forEach((from, index) => {
    const to = region[(index + 1) % region.length] ?? from
    const on = nearestOnEdge(place, from, to, x, y)
    const away = Math.hypot(x(on.x) - x(place.x), y(on.y) - y(place.y))
    if (away < least) [nearest, least] = [on, away]
  })
  return nearest
}

function nearestOnEdge(
  place: MapPoint,
  from: MapPoint,
  to: MapPoint,
  x: MapScales['x'],
  y: MapScales['y'],
): MapPoint {
  const [ex, ey] = [x(to.x) - x(from.x), y(to.y) - y(from.y)]
  const [px, py] = [x(place.x) - x(from.x), y(place.y) - y(from.y)]
  const length = ex * ex + ey * ey
  const part = length === 0 ? 0 : Math.min(1, Math.max(0, (px * ex + py * ey) / length))
  return { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) }
}
