import { describe, expect, it } from 'vitest'
import { oilOf } from './oils'

type Pair = readonly [low: number, high: number]

/**
 * Saponification (mg KOH/g) and iodine value (g/100 g) of Codex CXS 210-1999, Table 2, as read in
 * restatements of the table; palm kernel, safflower, groundnut and grapeseed recalled.
 */
const CXS_210_TABLE_2: Readonly<Record<string, readonly [saponification: Pair, iodine: Pair]>> = {
  coconut: [
    [248, 265],
    [6.3, 10.6],
  ],
  palm: [
    [190, 209],
    [50, 55],
  ],
  'palm-kernel': [
    [230, 254],
    [14.1, 21],
  ],
  babassu: [
    [245, 256],
    [10, 18],
  ],
  'sunflower-high-oleic': [
    [182, 194],
    [78, 90],
  ],
  safflower: [
    [186, 198],
    [136, 148],
  ],
  'safflower-high-oleic': [
    [186, 194],
    [80, 100],
  ],
  'rapeseed-low-erucic': [
    [182, 193],
    [105, 126],
  ],
  soya: [
    [189, 195],
    [124, 139],
  ],
  maize: [
    [187, 195],
    [103, 135],
  ],
  cottonseed: [
    [189, 198],
    [100, 123],
  ],
  groundnut: [
    [187, 196],
    [77, 107],
  ],
  sesame: [
    [186, 195],
    [104, 120],
  ],
  grapeseed: [
    [188, 194],
    [128, 150],
  ],
  mustard: [
    [168, 184],
    [92, 125],
  ],
  linseed: [
    [185, 197],
    [170, 211],
  ],
}

/** Others: CXS 33-1981 (olive) and CXS 211-1999 (lard, tallow) recalled; the rest read. */
const OTHER_STANDARDS: typeof CXS_210_TABLE_2 = {
  // Codex CXS 33-1981, appendix, recalled.
  olive: [
    [184, 196],
    [75, 94],
  ],
  'olive-pomace': [
    [182, 193],
    [75, 92],
  ],
  // Codex CXS 211-1999, recalled.
  lard: [
    [192, 203],
    [55, 65],
  ],
  'tallow-beef': [
    [190, 202],
    [40, 53],
  ],
  // Codex CXS 325R-2017, Table 2, read in a national adoption.
  shea: [
    [160, 195],
    [30, 75],
  ],
  // British Pharmacopoeia 1993, read in a trade specification.
  castor: [
    [176, 187],
    [82, 90],
  ],
}

describe('saponification and iodine ranges', () => {
  it.each(Object.entries({ ...CXS_210_TABLE_2, ...OTHER_STANDARDS }))(
    'of %s are those of the standard',
    (id, [saponification, iodine]) => {
      const oil = oilOf(id)
      const { low, printedLow = low, high } = oil.saponificationValue
      expect([printedLow, high]).toEqual(saponification)
      expect([oil.iodineValue.low, oil.iodineValue.high]).toEqual(iodine)
    },
  )
})

/**
 * The acids that decide an oil, in g per 100 g of acids: Codex CXS 210-1999, Table 1, as read in
 * restatements; olive from CXS 33-1981, section 3.9, read in a stored copy.
 */
const CODEX_ACIDS: Readonly<Record<string, Readonly<Record<string, Pair>>>> = {
  coconut: { caprylic: [4.6, 10], lauric: [45.1, 53.2], myristic: [16.8, 21], oleic: [5, 10] },
  palm: { palmitic: [39.3, 47.5], stearic: [3.5, 6], oleic: [36, 44], linoleic: [9, 12] },
  'palm-kernel': { lauric: [45, 55], myristic: [14, 18], stearic: [1, 3], oleic: [12, 19] },
  'palm-stearin': { palmitic: [48, 74], oleic: [15.5, 36] },
  soya: { palmitic: [8, 13.5], oleic: [17, 30], linoleic: [48, 59], 'alpha-linolenic': [4.5, 11] },
  maize: { palmitic: [8.6, 16.5], oleic: [20, 42.2], linoleic: [34, 65.6] },
  cottonseed: { myristic: [0.6, 1], palmitic: [21.4, 26.4], linoleic: [46.7, 58.2] },
  mustard: { oleic: [8, 23], gondoic: [5, 13], erucic: [22, 50], nervonic: [0.5, 2.5] },
  linseed: { oleic: [9.8, 36], linoleic: [8.3, 30], 'alpha-linolenic': [43.8, 70] },
  'sunflower-high-oleic': { palmitic: [2.6, 5], oleic: [75, 90.7], linoleic: [2.1, 17] },
  'safflower-high-oleic': { palmitic: [3.6, 6], oleic: [70, 83.7], linoleic: [9, 19.9] },
  olive: { palmitic: [7.5, 20], palmitoleic: [0.3, 3.5], oleic: [55, 83], linoleic: [3.5, 21] },
}

describe('fatty-acid ranges', () => {
  it.each(Object.entries(CODEX_ACIDS))('of %s are those of the Codex', (id, expected) => {
    const { acids } = oilOf(id)
    const ours = Object.fromEntries(
      Object.keys(expected).map((acid) => [acid, [acids[acid]?.low, acids[acid]?.high]]),
    )
    expect(ours).toEqual(expected)
  })
})

/** Unsaponifiable matter in g/kg, at most: CXS 210 Table 2; CXS 86 for cocoa butter (read). */
describe('the limit of unsaponifiable matter', () => {
  it.each([
    ['coconut', 15],
    ['soya', 15],
    ['maize', 28],
    ['cottonseed', 15],
    ['linseed', 20],
    ['mustard', 15],
    ['rice-bran', 65],
    ['cocoa-butter', 7],
  ])('of %s is %d g/kg', (id, gPerKg) => {
    expect(oilOf(id).unsaponifiableGPerKg.high).toBe(gPerKg)
  })
})

/** European Pharmacopoeia, beeswax (0069) and medium-chain triglycerides (0868), read in restatements. */
describe('what the European Pharmacopoeia states', () => {
  it('of beeswax is a saponification value of 87 to 104', () => {
    const { low, high } = oilOf('beeswax').saponificationValue
    expect([low, high]).toEqual([87, 104])
  })

  it('of fractionated coconut oil is 310 to 360, caprylic acid 50 to 80 and capric acid 20 to 50 %', () => {
    const { saponificationValue, acids } = oilOf('coconut-fractionated')
    expect([saponificationValue.low, saponificationValue.high]).toEqual([310, 360])
    expect([acids['caprylic']?.low, acids['caprylic']?.high]).toEqual([50, 80])
    expect([acids['capric']?.low, acids['capric']?.high]).toEqual([20, 50])
  })

  // Hydrous wool fat (0135), 75 % wool fat: 67 to 79, so 67 / 0.75 = 89.3 and 79 / 0.75 = 105.3.
  it('of hydrous wool fat gives lanolin 89.3 to 105.3', () => {
    const { low, high } = oilOf('lanolin').saponificationValue
    expect([low, high]).toEqual([89.3, 105.3])
  })
})
