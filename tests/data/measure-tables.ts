/** Measures in the order of the tables below; `oxidation` there is 100 less `keeping` here. */
export const TABLE_COLUMNS = [
  'hardness',
  'lather',
  'foam-life',
  'conditioning',
  'mildness',
  'wear',
  'oxidation',
] as const

type Row = readonly [number, number, number, number, number, number, number]

/**
 * Values of single oils from the design of the measures (data/measures.md): whole points, reckoned
 * from an earlier set of typical profiles that was recalled before data/oils.json existed.
 */
export const OIL_TABLE: Readonly<Record<string, Row>> = {
  olive: [21, 24, 63, 72, 75, 50, 9],
  coconut: [55, 71, 49, 10, 24, 79, 1],
  'palm-kernel': [52, 70, 52, 18, 29, 76, 2],
  babassu: [53, 68, 51, 16, 29, 76, 2],
  palm: [49, 22, 77, 49, 78, 38, 7],
  'palm-stearin': [62, 20, 84, 40, 80, 32, 5],
  'tallow-beef': [51, 21, 76, 50, 79, 36, 4],
  lard: [42, 22, 72, 55, 77, 41, 9],
  castor: [3, 36, 86, 97, 79, 86, 7],
  sunflower: [13, 27, 51, 66, 64, 59, 32],
  'sunflower-high-oleic': [16, 24, 61, 76, 74, 52, 9],
  'rapeseed-low-erucic': [13, 26, 55, 72, 70, 56, 23],
  soya: [17, 27, 53, 63, 65, 58, 35],
  linseed: [11, 28, 44, 57, 62, 64, 65],
  shea: [52, 15, 73, 65, 81, 32, 5],
  'cocoa-butter': [63, 15, 81, 45, 83, 27, 3],
  'mango-kernel': [54, 15, 74, 55, 81, 31, 5],
  avocado: [22, 25, 64, 71, 74, 50, 11],
  almond: [14, 26, 58, 74, 71, 55, 15],
  'rice-bran': [22, 25, 60, 70, 70, 53, 22],
  grapeseed: [12, 28, 50, 65, 62, 61, 36],
  hemp: [10, 29, 46, 62, 61, 64, 50],
  macadamia: [21, 25, 62, 74, 76, 49, 5],
  kokum: [64, 12, 78, 49, 84, 25, 3],
}

/** Bars of the same design, as percent of oil weight, with their values. */
export const BAR_TABLE: readonly (readonly [Readonly<Record<string, number>>, Row])[] = [
  [{ olive: 100 }, [21, 24, 63, 72, 75, 50, 9]],
  [{ coconut: 100 }, [55, 71, 49, 10, 24, 79, 1]],
  [{ 'tallow-beef': 80, coconut: 20 }, [52, 31, 71, 42, 68, 44, 4]],
  [{ 'tallow-beef': 60, coconut: 40 }, [53, 41, 66, 34, 57, 53, 3]],
  [{ olive: 72, coconut: 20, castor: 8 }, [27, 34, 62, 61, 65, 59, 7]],
  [{ olive: 72, shea: 14, coconut: 14 }, [30, 29, 63, 62, 68, 51, 8]],
  [{ olive: 33.4, coconut: 33.3, palm: 33.3 }, [42, 39, 63, 44, 59, 56, 6]],
  [
    { olive: 45, coconut: 25, shea: 15, 'cocoa-butter': 10, castor: 5 },
    [38, 34, 64, 54, 64, 54, 6],
  ],
  [{ olive: 45, coconut: 25, palm: 20, castor: 10 }, [33, 37, 65, 54, 63, 58, 7]],
  [{ olive: 55, coconut: 25, palm: 20 }, [35, 35, 63, 52, 63, 55, 7]],
  [{ sunflower: 30, coconut: 25, palm: 45 }, [40, 36, 62, 45, 60, 55, 13]],
  [{ palm: 80, 'palm-kernel': 20 }, [49, 31, 72, 43, 68, 46, 6]],
  [{ palm: 60, 'palm-kernel': 40 }, [50, 41, 67, 37, 58, 53, 5]],
]
