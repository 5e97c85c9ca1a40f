import type { Blend } from '../domain/blend/blend'
import type { Oil, OilFamily } from '../domain/blend/oil'
import { WHOLE_PERCENT } from '../domain/units'

/** One oil's stretch of a composition strip; px from the left. */
export interface Segment {
  readonly oil: Oil
  readonly sharePercent: number
  readonly x: number
  readonly width: number
}

/** Families in the order they stand in every strip, so that blends compare by eye. */
const FAMILY_ORDER: readonly OilFamily[] = [
  'lauric',
  'hard',
  'oleic',
  'polyunsaturated',
  'ricinoleic',
]

/** Space between segments in px. */
export const GAP_PX = 2

/** Oils in the fixed order of strips: by family, then as the library lists them. */
export function inStripOrder(oils: Iterable<Oil>): Oil[] {
  return [...oils].sort((a, b) => FAMILY_ORDER.indexOf(a.family) - FAMILY_ORDER.indexOf(b.family))
}

/** The segments of a blend over a width in px, gaps included. Oils without a share take no place. */
export function stripSegments(
  blend: Blend,
  oils: ReadonlyMap<string, Oil>,
  width: number,
): Segment[] {
  const present = inStripOrder(oils.values()).filter(({ id }) => (blend[id] ?? 0) > 0)
  const room = Math.max(0, width - GAP_PX * Math.max(0, present.length - 1))
  let x = 0
  return present.map((oil) => {
    const sharePercent = blend[oil.id] ?? 0
    const segment = { oil, sharePercent, x, width: (room * sharePercent) / WHOLE_PERCENT }
    x += segment.width + GAP_PX
    return segment
  })
}

/** Whether dark or light text reads better on a colour: WCAG relative luminance of #RRGGBB against both. */
export function textOn(colour: string): 'dark' | 'light' {
  const luminance = relativeLuminance(colour)
  const onWhite = (1 + 0.05) / (luminance + 0.05)
  const onInk = (luminance + 0.05) / (relativeLuminance('#191B1A') + 0.05)
  return onInk >= onWhite ? 'dark' : 'light'
}

/** Relative luminance of an sRGB colour #RRGGBB, 0 to 1 (WCAG 2.2, definition of relative luminance). */
function relativeLuminance(colour: string): number {
  const channel = (at: number) => {
    const value = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
}
