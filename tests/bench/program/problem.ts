import { library as realLibrary } from '../../../src/data/library'
import { type Library, measureOf, oilOf } from '../../../src/domain/blend/library'
import { COST, type AcidMeasure } from '../../../src/domain/blend/measure'
import type { Oil } from '../../../src/domain/blend/oil'
import { BlendSpace } from '../../../src/domain/optimise/space/blend-space'
import type { Brief, Limits } from '../../../src/domain/optimise/brief/brief'
import type { LinearProgram, LinearRow } from '../../../src/domain/lp/program'
import { at, Random } from '../../generator/random'
import { blendInstance } from '../../generator/random-programs'

/** How large a problem is. */
export interface Size {
  readonly oils: number
  readonly measures: number
  readonly groups: number
}

/** The size all rows of the table have unless they say otherwise. */
export const USUAL: Size = { oils: 50, measures: 8, groups: 3 }

/** A random blend problem: as a brief for the product, and as a bare program for any solver. */
export interface Problem {
  readonly name: string
  readonly brief: Brief
  readonly library: Library
  /** Price in money per kg for the least of which the brief asks; no row that limits nothing. */
  readonly program: LinearProgram
}

/** Figures of the generator are per percent of an oil. */
const PERCENT = 100

/** Fatty acids of one oil: the median of the library, so that checks from the oils cost what they do there. */
const ACIDS_PER_OIL = 10

/** Prices are drawn as the generator draws costs: 1 to 31 money per kg, the low ones more often. */
const LEAST_PRICE = 1
const PRICE_SPAN = 30

/**
 * The problem of a seed: the generator's oils, measures, ranges and groups (invented figures), which a
 * planted blend is known to keep, and the least price as the goal.
 */
export function problemOf(seed: number, size: Size = USUAL): Problem {
  const { name, program } = blendInstance(seed, { kind: 'plain', ...size })
  const random = new Random(seed)
  const oils = Array.from({ length: size.oils }, (_, j) => `oil-${j}`)
  const measureRows = program.rows.slice(1, 1 + size.measures)
  const groupRows = program.rows.slice(1 + size.measures)
  const library = libraryOf(oils, measureRows)
  const brief: Brief = {
    oils: Object.fromEntries(
      oils.map((oil, j) => [
        oil,
        {
          pricePerKg: LEAST_PRICE + random.next() * random.next() * PRICE_SPAN,
          min: program.lower[j],
          max: program.upper[j],
        },
      ]),
    ),
    groups: groupRows.map((row, k) => ({
      name: `group ${k}`,
      oils: oils.filter((_, j) => row.coefficients[j] === 1),
      ...limitsOf(row),
    })),
    measures: Object.fromEntries(measureRows.map((row, i) => [measureId(i), limitsOf(row)])),
    goal: { minimise: COST },
  }
  return { name, brief, library, program: programOf(new BlendSpace(brief, library)) }
}

export function measureId(index: number): string {
  return `measure-${index}`
}

/** The limits of a space and the price as cost; rows that limit nothing are left out. */
function programOf(space: BlendSpace): LinearProgram {
  return {
    ...space.program,
    cost: space.perPercent(COST),
    rows: space.program.rows.filter(isLimiting),
  }
}

export function isLimiting({ lower, upper }: LinearRow): boolean {
  return lower > -Infinity || upper < Infinity
}

function limitsOf({ lower, upper }: LinearRow): Limits {
  return {
    ...(lower > -Infinity ? { min: lower } : {}),
    ...(upper < Infinity ? { max: upper } : {}),
  }
}

function libraryOf(oils: readonly string[], rows: readonly LinearRow[]): Library {
  return {
    oils: new Map(oils.map((id) => [id, oilMadeOf(id)])),
    measures: [
      ...rows.map((row, i) => measureFrom(measureId(i), oils, row)),
      measureOf(realLibrary, COST),
    ],
  }
}

function acidsOf(oil: string): string[] {
  return Array.from({ length: ACIDS_PER_OIL }, (_, k) => `${oil}-acid-${k}`)
}

/** An oil of equal parts of acids that no other oil has. */
function oilMadeOf(id: string): Oil {
  const typical = PERCENT / ACIDS_PER_OIL
  const share = { ...at(Object.values(SOME_OIL.acids), 0), low: typical, typical, high: typical }
  const acids = Object.fromEntries(acidsOf(id).map((acid) => [acid, share]))
  return { ...SOME_OIL, id, name: id, acids }
}

const SOME_OIL = oilOf(realLibrary, 'olive')

/** A measure that has the row's coefficient for each percent of an oil. */
function measureFrom(id: string, oils: readonly string[], row: LinearRow): AcidMeasure {
  const weights = oils.flatMap((oil, j) => {
    const weight = { weight: row.coefficients[j] ?? NaN, basis: 'assumption', source: 'invented' }
    return acidsOf(oil).map((acid) => [acid, weight] as const)
  })
  return {
    id,
    name: id,
    meaning: 'Invented for measuring speed.',
    better: 'more',
    unit: 'points',
    shown: true,
    tie: 1,
    offset: 0,
    weights: Object.fromEntries(weights) as AcidMeasure['weights'],
    unsaponifiable: null,
    limits: [],
  }
}
