import { expect, test } from 'vitest'
import { batchAsFile } from '../../src/data/batch-as-file'
import { library } from '../../src/data/library'
import { RecipeReader } from '../../src/data/recipe/recipe-reader'
import { recipeOrder } from '../../src/data/recipe/recipe-order'
import type { BatchOrder } from '../../src/domain/batch/order/order'
import { RECIPES } from '../data/recipes'
import { barwright } from './run-cli'

const reader = new RecipeReader(library.oils.values())

const BASE: BatchOrder = {
  blend: {},
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 5,
  water: { lyeConcentration: 33 },
}

/** The hydroxide that the command line prints for an order, g. */
async function printed(order: BatchOrder): Promise<Record<string, number>> {
  const { output, exitCode } = await barwright(['batch', '-'], batchAsFile(order, {}))
  expect(exitCode).toBe(0)
  return (JSON.parse(output) as { alkaliGrams: Record<string, number> }).alkaliGrams
}

const read = RECIPES.filter(({ expected }) => expected.order !== undefined)

test.each(read)(
  '$name: the order read and the one written by hand print the same lye',
  async (one) => {
    const order = recipeOrder(reader.read(one.text), BASE)
    if (!order) throw new Error('A recipe with a blend has an order')
    const [ours, byHand] = [await printed(order), await printed({ ...BASE, ...one.expected.order })]
    expect(Object.keys(ours)).toEqual(Object.keys(byHand))
    for (const [kind, grams] of Object.entries(byHand)) expect(ours[kind]).toBeCloseTo(grams, 6)
  },
)
