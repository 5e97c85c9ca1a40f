import { expect, test } from 'vitest'
import { acids } from '../../../src/data/additions-file'
import { acidEquivalents } from '../../../src/domain/chemistry/acids'
import { alkaliEquivalents, alkaliGrams, equivalentsIn } from '../../../src/domain/chemistry/alkali'
import { heatOfSolutionKj } from '../../../src/domain/chemistry/lye-solution'
import { lyeTables } from '../../../src/data/lye-file'

test('1000 g of a fat of 190 mg KOH/g bind 3.3864 mol, by hand: 1000 x 190 / 56105.6', () => {
  expect(alkaliEquivalents(1000, 190)).toBeCloseTo(3.38648, 4)
  expect(alkaliEquivalents(500, 190)).toBeCloseTo(1.69324, 4)
})

test('100 g of 98 % sodium hydroxide hold 2.4502 mol, by hand: 100 x 0.98 / 39.997', () => {
  expect(equivalentsIn(100, 0.98, 'naoh')).toBeCloseTo(2.45018, 4)
  expect(equivalentsIn(100, 0.9, 'koh')).toBeCloseTo(1.60412, 4)
})

test('a kg of a fat of 190 mg KOH/g takes 135.45 g of NaOH, by hand: 190 x 39.997 / 56.1056', () => {
  expect(alkaliGrams(alkaliEquivalents(1000, 190), 'naoh')).toBeCloseTo(135.449, 2)
})

test('3 g of citric acid take three times what 1 g takes: 3 x 3 / 192.124 mol', () => {
  const citric = acids.find(({ id }) => id === 'citric')
  if (!citric) throw new Error('No citric acid')
  expect(acidEquivalents(3, citric)).toBeCloseTo(0.046845, 6)
})

test('a table of heats is read in whatever order its rows stand', () => {
  const { heatOfSolution } = lyeTables.naoh
  const rows = [...heatOfSolution.slice(3), ...heatOfSolution.slice(0, 3)].toReversed()
  for (const r of [1e9, 20, 5.233, 3])
    expect(heatOfSolutionKj({ ...lyeTables.naoh, heatOfSolution: rows }, r)).toBe(
      heatOfSolutionKj(lyeTables.naoh, r),
    )
})
