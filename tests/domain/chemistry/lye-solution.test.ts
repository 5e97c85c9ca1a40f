import { describe, expect, test } from 'vitest'
import { lyeTables } from '../../../src/data/lye-file'
import { interpolated } from '../../../src/domain/chemistry/interpolate'
import {
  boilingC,
  heatCapacityJPerGK,
  heatOfSolutionKj,
  lyeDensityGPerMl,
} from '../../../src/domain/chemistry/lye-solution'

const { naoh, koh } = lyeTables

/*
 * A second table of NaOH densities, by molality (mol per kg water): thermodynamic tables of electrolytes,
 * consistent with the IAPWS-95 density of water, read; none of these rows is in data/.
 */
const SECOND_TABLE = [
  { molality: 1, at25: 1.03911, at40: 1.03323, at55: 1.0261, at70: 1.0179 },
  { molality: 3, at25: 1.11402, at40: 1.10659, at55: 1.0984, at70: 1.0898 },
  { molality: 5, at25: 1.17925, at40: 1.17093, at55: 1.16212, at70: 1.15308 },
  { molality: 6, at25: 1.20866, at40: 1.20013, at55: 1.19121, at70: 1.18192 },
]
/** Straight lines over 24 % of strength miss a bent curve by this part at most. */
const DENSITY_TOLERANCE = 0.003

describe('density of sodium hydroxide in water agrees with a second table within 0.3 %', () => {
  const rows = SECOND_TABLE.flatMap(({ molality, ...columns }) => {
    const percent = (100 * molality * 39.997) / (1000 + molality * 39.997)
    return Object.entries(columns).map(
      ([column, g]) => [percent, Number(column.slice(2)), g] as const,
    )
  })
  test.for(rows)('%f %% at %d °C is %f g/ml', ([percent, tempC, expected]) => {
    const ratio = lyeDensityGPerMl(naoh, percent, tempC) / expected
    expect(Math.abs(ratio - 1)).toBeLessThan(DENSITY_TOLERANCE)
  })
})

test('a maker gives 1.52 g/ml for 50 % sodium hydroxide at 20 °C', () => {
  expect(lyeDensityGPerMl(naoh, 50, 20)).toBeCloseTo(1.52, 1)
})

test('30 % potassium hydroxide weighs 1.290 g/ml at 18 °C (Cracow tables)', () => {
  expect(lyeDensityGPerMl(koh, 30, 18)).toBe(1.29)
})

/*
 * Perry's handbook, specific heats of NaOH solutions at 20 °C, recalled: 9.09 mol % (18.2 % by weight) 0.835
 * and 30.8 % by weight about 0.80 cal/g·K; they are not in data/. The table claims 4 %.
 */
test.for([
  [18.2, 3.49],
  [30.8, 3.35],
  [47.1, 3.28],
] as const)('heat capacity at %f %% is near %f J/g·K', ([percent, expected]) => {
  expect(Math.abs(heatCapacityJPerGK(naoh, percent) / expected - 1)).toBeLessThan(0.04)
})

describe('heat of solution', () => {
  test('in endless water is 44.51 kJ/mol for NaOH and 57.61 for KOH (CRC Handbook)', () => {
    expect(heatOfSolutionKj(naoh, 1e9)).toBeCloseTo(44.51, 3)
    expect(heatOfSolutionKj(koh, 1e9)).toBeCloseTo(57.61, 3)
  })

  test('is read in parts of hydroxide per water: between 5 and 10 mol, by hand', () => {
    // r = 5.233, 1/r = 0.19109; 39.36 + (0.2 - 0.19109) / 0.1 x 4.77 = 39.785.
    expect(heatOfSolutionKj(naoh, 5.233)).toBeCloseTo(39.785, 3)
  })

  test('falls as the lye gets stronger', () => {
    const heats = [20, 10, 7, 5, 4, 3, 2.3].map((r) => heatOfSolutionKj(naoh, r))
    expect(heats).toEqual(heats.toSorted((a, b) => b - a))
    const others = [20, 10, 7, 5, 4, 3.2].map((r) => heatOfSolutionKj(koh, r))
    expect(others).toEqual(others.toSorted((a, b) => b - a))
  })
})

test('50 % sodium hydroxide boils near 145 °C (a maker’s data), water at 100 °C', () => {
  expect(boilingC(naoh, 50)).toBe(145)
  expect(boilingC(naoh, 0)).toBe(100)
})

describe('a table', () => {
  const table = [
    { x: 0, y: 1 },
    { x: 2, y: 5 },
    { x: 3, y: 4 },
  ]

  test.for([
    [-1, 1],
    [0, 1],
    [1, 3],
    [2, 5],
    [2.5, 4.5],
    [9, 4],
  ] as const)('at %f reads %f', ([x, y]) => {
    expect(interpolated(table, x)).toBeCloseTo(y, 12)
  })

  test('without rows is an error', () => {
    expect(() => interpolated([], 1)).toThrow(/without rows/u)
  })
})
