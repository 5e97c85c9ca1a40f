import { describe, expect, test } from 'vitest'
import { acids } from '../../../src/data/additions-file'
import {
  acidEquivalents,
  acidMolarMass,
  crystalWaterGrams,
  neutralisationWaterGrams,
} from '../../../src/domain/chemistry/acids'
import { alkaliGrams } from '../../../src/domain/chemistry/alkali'
import { molarMassOf } from '../../../src/domain/chemistry/formula'

function acid(id: string) {
  const found = acids.find((one) => one.id === id)
  if (!found) throw new Error(`No acid ${id}`)
  return found
}

/** Molar masses as handbooks print them, and by hand groups x 39.997 / M and groups x 56.106 / M. */
describe('an acid takes hydroxide by its molar mass and groups', () => {
  test.for([
    ['citric', 192.124, 0.62455, 0.87609],
    ['citric-monohydrate', 210.139, 0.57101, 0.80098],
    ['lactic', 90.078, 0.44403, 0.62286],
    ['acetic', 60.052, 0.66604, 0.93429],
    ['malic', 134.087, 0.59658, 0.83686],
    ['tartaric', 150.087, 0.53298, 0.74765],
    ['ascorbic', 176.124, 0.2271, 0.3186],
    ['bicarbonate', 84.007, 0.47612, 0.66787],
  ] as const)('%s', ([id, molarMass, naoh, koh]) => {
    expect(acidMolarMass(acid(id))).toBeCloseTo(molarMass, 2)
    const mol = acidEquivalents(1, acid(id))
    expect(alkaliGrams(mol, 'naoh')).toBeCloseTo(naoh, 4)
    expect(alkaliGrams(mol, 'koh')).toBeCloseTo(koh, 4)
  })
})

test('crystals of citric acid bring their water: 18.015 in 210.139', () => {
  expect(crystalWaterGrams(100, acid('citric-monohydrate'))).toBeCloseTo(8.573, 3)
  expect(crystalWaterGrams(100, acid('citric'))).toBe(0)
})

test('every mol of hydroxide makes 18.015 g of water with an acid', () => {
  expect(neutralisationWaterGrams(2)).toBeCloseTo(36.03, 3)
})

/** Molar masses from the handbook: linalyl acetate 196.29, eugenol 164.20, linalool 154.25, NaHCO3 84.01. */
test.for([
  [{ C: 12, H: 20, O: 2 }, 196.29],
  [{ C: 10, H: 12, O: 2 }, 164.2],
  [{ C: 10, H: 18, O: 1 }, 154.25],
  [{ Na: 1, C: 1, H: 1, O: 3 }, 84.01],
] as const)('%o weighs %f g/mol', ([formula, gPerMol]) => {
  expect(molarMassOf(formula)).toBeCloseTo(gPerMol, 1)
})
