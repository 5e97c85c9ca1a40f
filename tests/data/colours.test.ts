import { hsl, lab, lch, rgb } from 'd3'
import { describe, expect, it } from 'vitest'
import type { OilFamily } from '../../src/domain/blend/oil'
import { OWN_COLOURS } from '../../src/domain/blend/own-colours'
import { allOils, oilOf } from './oils'

/** Colours of the design; they stay as they are for good. */
const FIXED: Readonly<Record<string, string>> = {
  coconut: '#1872B4',
  babassu: '#1A475F',
  'palm-kernel': '#79CCF6',
  palm: '#C67A45',
  'tallow-beef': '#8B674E',
  lard: '#EABCB1',
  'cocoa-butter': '#632711',
  shea: '#F2BD5D',
  olive: '#5F6300',
  'sunflower-high-oleic': '#ECE2A1',
  'rapeseed-low-erucic': '#8AAA77',
  almond: '#244B3C',
  'rice-bran': '#53B5BB',
  castor: '#CD6688',
}

/** Hue of each family in degrees of CIE LCh, the middle of its oils in the design. */
const FAMILY_HUE_DEGREES: Readonly<Record<OilFamily, number>> = {
  lauric: 248,
  hard: 55,
  oleic: 118,
  polyunsaturated: 203,
  ricinoleic: 2,
}

const others = allOils.filter(({ id }) => !(id in FIXED))

/** Relative luminance, WCAG 2.2. */
function luminance(colour: string): number {
  const { r, g, b } = rgb(colour)
  const linear = (eightBit: number) => {
    const share = eightBit / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  }
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (Number(light) + 0.05) / (Number(dark) + 0.05)
}

describe('the colours kept for oils of one’s own', () => {
  const kept = Object.entries(OWN_COLOURS).flatMap(([family, colours]) =>
    colours.map((colour) => [colour, family as OilFamily] as const),
  )

  it.each(kept)(
    '%s carries text, is of the hue of the %s oils and of none of them',
    (colour, family) => {
      const best = Math.max(contrast(colour, '#FFFFFF'), contrast(colour, '#191B1A'))
      expect(best).toBeGreaterThanOrEqual(4.5)
      const turn = Math.abs(lch(colour).h - FAMILY_HUE_DEGREES[family])
      expect(Math.min(turn, 360 - turn)).toBeLessThanOrEqual(20)
      expect(allOils.map((oil) => oil.colour)).not.toContain(colour)
    },
  )

  it('are thirty, no two alike', () => {
    expect(new Set(kept.map(([colour]) => colour)).size).toBe(30)
  })
})

describe('the colour of an oil', () => {
  it.each(Object.entries(FIXED))('%s stays %s', (id, colour) => {
    expect(oilOf(id).colour).toBe(colour)
  })

  // WCAG 2.2, success criterion 1.4.3: 4.5 for text.
  it.each(allOils.map(({ id, colour }) => [id, colour] as const))(
    'of %s carries white or ink text at a contrast of at least 4.5',
    (_, colour) => {
      const best = Math.max(contrast(colour, '#FFFFFF'), contrast(colour, '#191B1A'))
      expect(best).toBeGreaterThanOrEqual(4.5)
    },
  )

  it.each(others.map((oil) => [oil.id, oil] as const))(
    'of %s lies within 20 degrees of the hue of its family',
    (_, { colour, family }) => {
      const turn = Math.abs(lch(colour).h - FAMILY_HUE_DEGREES[family])
      // Hexes round to 1/255, which turns the faintest colour by up to 3 degrees; they aim at 18.
      expect(Math.min(turn, 360 - turn)).toBeLessThanOrEqual(20)
    },
  )

  it('has a lightness of its own in its family', () => {
    for (const oil of others) {
      const near = allOils.filter(
        ({ id, family, colour }) =>
          id !== oil.id &&
          family === oil.family &&
          Math.abs(lab(colour).l - lab(oil.colour).l) < 1.5,
      )
      expect(
        near.map(({ id }) => id),
        oil.id,
      ).toEqual([])
    }
  })

  it('is no grey', () => {
    for (const { id, colour } of allOils) expect(hsl(colour).s, id).toBeGreaterThan(0.05)
  })
})
