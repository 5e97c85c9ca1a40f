import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { batchFile, orderOf } from '../../../src/data/batch-file'
import { planBatch } from '../../../src/domain/batch/result/plan'
import { libraryOfSaponification } from '../blend/stub-library'

const grams = z.number()
const worked = z
  .object({
    source: z.string(),
    toleranceGrams: grams,
    batches: z.array(
      z.object({
        name: z.string(),
        saponification: z.record(z.string(), z.number()),
        order: batchFile,
        expected: z.object({
          naoh: grams.optional(),
          koh: grams.optional(),
          water: grams,
          total: grams,
          pureHydroxide: grams,
        }),
      }),
    ),
  })
  .parse(
    JSON.parse(readFileSync(new URL('../../cases/worked-batches.json', import.meta.url), 'utf8')),
  )

describe('a batch comes to the weights worked by hand (tests/cases/worked-batches.json):', () => {
  for (const { name, saponification, order, expected } of worked.batches) {
    test(name, () => {
      const plan = planBatch(orderOf(order), libraryOfSaponification(saponification))
      if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
      const told = {
        ...plan.alkaliGrams,
        water: plan.waterGrams,
        total: plan.totalGrams,
        pureHydroxide: plan.figures.pureHydroxideGrams,
      }
      expect(Object.keys(told).sort()).toEqual(Object.keys(expected).sort())
      for (const [what, value] of Object.entries(told))
        expect(value, what).toSatisfy(near(expected[what as keyof typeof expected] ?? NaN))
    })
  }
})

test('shares of oils come to their part of the pot', () => {
  const [first] = worked.batches
  if (!first) throw new Error('There is no worked batch')
  const plan = planBatch(orderOf(first.order), libraryOfSaponification(first.saponification))
  expect(plan).toMatchObject({ oilGrams: { olive: 450, coconut: 250, palm: 250, castor: 50 } })
})

function near(expected: number) {
  return (value: number) => Math.abs(value - expected) <= worked.toleranceGrams
}
