import { describe, expect, it } from 'vitest'
import {
  ATOMIC_MASS,
  MOLAR_MASS_GLYCEROL,
  MOLAR_MASS_IODINE,
  MOLAR_MASS_KOH,
  MOLAR_MASS_NAOH,
  MOLAR_MASS_WATER,
} from '../../../src/domain/chemistry/atoms'

describe('atomic masses', () => {
  // IUPAC standard atomic weights 2021 (Prohaska et al. 2022), abridged to five figures; from memory.
  it.each([
    ['H', 1.008],
    ['C', 12.011],
    ['O', 15.999],
    ['Na', 22.99],
    ['K', 39.098],
    ['I', 126.9],
  ] as const)('give %s the abridged standard atomic weight %d', (element, standardWeight) => {
    // Half of the last of five figures: 0.005 for iodine, less for the others.
    expect(Math.abs(ATOMIC_MASS[element] - standardWeight)).toBeLessThanOrEqual(0.005)
  })
})

describe('molar masses', () => {
  // Handbook values (CRC Handbook of Chemistry and Physics), from memory, in g/mol.
  it.each([
    ['sodium hydroxide', MOLAR_MASS_NAOH, 39.997],
    ['potassium hydroxide', MOLAR_MASS_KOH, 56.106],
    ['water', MOLAR_MASS_WATER, 18.015],
    ['glycerol', MOLAR_MASS_GLYCEROL, 92.094],
    ['iodine', MOLAR_MASS_IODINE, 253.809],
  ])('give %s the handbook value to 0.002 g/mol', (_, massGPerMol, handbook) => {
    expect(Math.abs(massGPerMol - handbook)).toBeLessThanOrEqual(0.002)
  })
})
