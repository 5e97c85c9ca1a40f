import { describe, expect, test } from 'vitest'
import acidsFile from '../../data/acids.json'
import additivesFile from '../../data/additives.json'
import liquidsFile from '../../data/liquids.json'
import scentsFile from '../../data/essential-oils.json'
import {
  acidsSchema,
  additives,
  additivesSchema,
  liquidsSchema,
} from '../../src/data/additions-file'
import { batchFacts } from '../../src/data/batch-facts'
import { scentsSchema } from '../../src/data/fragrance-file'
import { labelFacts } from '../../src/data/label-facts'
import { lyeSolutionSchema } from '../../src/data/lye-file'
import lyeFile from '../../data/lye-solution.json'

describe('ids are given once', () => {
  test.for([
    ['acids', acidsFile],
    ['liquids', liquidsFile],
    ['additives', additivesFile],
    ['essential oils', scentsFile],
  ] as const)('%s', ([, file]) => {
    const ids = file.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })

  test('over all sets and oils, so that a price belongs to one thing', async () => {
    const { library } = await import('../../src/data/library')
    const { acids, liquids, additives, scents } = batchFacts
    const ids = [library.oils, acids, liquids, additives, scents].flatMap((set) => [...set.keys()])
    expect(ids.toSorted()).toEqual([...new Set(ids)].toSorted())
  })
})

describe('every row carries how sure it is and where it comes from', () => {
  test.for([acidsFile, liquidsFile, additivesFile, scentsFile])('%#', (file) => {
    for (const { id, basis, source } of file) {
      expect(basis, id).toMatch(/^(published|derived|common practice|memory|assumption)$/u)
      expect(source, id).toMatch(/\w/u)
    }
  })
})

describe('a faulty row is refused', () => {
  const [acid] = acidsFile
  const [liquid] = liquidsFile
  const [additive] = additivesFile
  const [scent] = scentsFile

  test.for([
    ['an acid without groups', acidsSchema, [{ ...acid, acidGroups: 0 }]],
    ['an acid with an element nobody knows', acidsSchema, [{ ...acid, formula: { Xx: 1 } }]],
    ['a liquid of over 100 %', liquidsSchema, [{ ...liquid, waterPercent: 99, fatPercent: 9 }]],
    [
      'fat without a saponification value',
      liquidsSchema,
      [{ ...liquid, fatSaponificationValue: 0 }],
    ],
    ['an additive without density', additivesSchema, [{ ...additive, densityGPerMl: 0 }]],
    ['an additive put in at no stage', additivesSchema, [{ ...additive, stage: 'later' }]],
    ['a basis nobody knows', additivesSchema, [{ ...additive, basis: 'hearsay' }]],
    [
      'a scent with an allergen that is not listed',
      scentsSchema,
      [{ ...scent, constituents: [{ allergen: 'oud', lowPercent: 1, highPercent: 2 }] }],
    ],
    [
      'a constituent whose low is above its high',
      scentsSchema,
      [{ ...scent, constituents: [{ allergen: 'linalool', lowPercent: 3, highPercent: 2 }] }],
    ],
    [
      'a table that falls',
      lyeSolutionSchema,
      { ...lyeFile, koh: { ...lyeFile.koh, boilingC: lyeFile.koh.boilingC.toReversed() } },
    ],
  ] as const)('%s', ([, schema, file]) => {
    expect(schema.safeParse(file).success).toBe(false)
  })
})

/** FAO, Milk and Dairy Products in Human Nutrition, Table 3.1, averages, read. */
test.for([
  ['cow-milk', 87.8, 3.3],
  ['goat-milk', 87.7, 3.9],
  ['sheep-milk', 82.1, 6.4],
  ['buffalo-milk', 83.2, 7.5],
] as const)('%s holds %f %% water and %f %% fat', ([id, water, fat]) => {
  expect(batchFacts.liquids.get(id)).toMatchObject({ waterPercent: water, fatPercent: fat })
})

test('the usual dose of every additive rises', () => {
  for (const { id, usualPercentOfOils } of additives)
    expect(usualPercentOfOils.low, id).toBeLessThan(usualPercentOfOils.high)
})

test('what the law asks is dated and defers to the place of sale', () => {
  for (const { asOf, duties } of labelFacts.duties) {
    expect(asOf).toMatch(/^\d{4}-\d{2}$/u)
    expect(duties.length).toBeGreaterThan(2)
  }
})
