import type { Interval } from '../domain/interval'
import type { MapScales, MapPoint } from './map'

/** A part of a map in its axes' units. */
interface Part {
  readonly x: Interval
  readonly y: Interval
}

/** A map part made smaller by a factor over 1, or larger by one under 1, about a place or its middle. */
export function zoomed(part: Part, factor: number, about: MapPoint | undefined): Part {
  const middle = { x: (part.x.min + part.x.max) / 2, y: (part.y.min + part.y.max) / 2 }
  const { x, y } = about ?? middle
  const around = ({ min, max }: Interval, at: number): Interval => ({
    min: at - (at - min) / factor,
    max: at + (max - at) / factor,
  })
  return { x: around(part.x, x), y: around(part.y, y) }
}

/** A map part after its drawing was dragged by some px under scales that show it. */
export function panned(part: Part, dx: number, dy: number, scales: MapScales): Part {
  const moved = ({ min, max }: Interval, by: number): Interval => ({ min: min - by, max: max - by })
  const perPx = (scale: MapScales['x']) => scale.invert(1) - scale.invert(0)
  return { x: moved(part.x, dx * perPx(scales.x)), y: moved(part.y, dy * perPx(scales.y)) }
}
