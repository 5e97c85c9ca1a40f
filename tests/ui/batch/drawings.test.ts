import { expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { library } from '../../../src/data/library'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch } from '../../../src/domain/batch/result/plan'
import { workSteps } from '../../../src/domain/batch/sheet/steps'
import { CAUTION_KEY, workScreens } from '../../../src/domain/batch/workshop/work-screens'
import { readingsOf } from '../../../src/domain/batch/actual/vessels'
import { cureDrawing } from '../../../src/ui/batch/results/cure-drawing'

const ORDER: BatchOrder = {
  blend: { olive: 60, coconut: 40 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: {},
  superfat: 6,
  water: { ratio: 2 },
  additives: [{ additive: 'kaolin', grams: 20 }],
  scale: { oilStepG: 1, lyeStepG: 0.1 },
}

function ready() {
  const plan = planBatch(ORDER, library, batchFacts)
  if (plan.status === 'invalid') throw new Error(JSON.stringify(plan.problems))
  return plan
}

test('pot and jug read what was put in, with what was really weighed in its place', () => {
  const plan = ready()
  const [naoh, water] = [plan.alkaliGrams.naoh ?? NaN, plan.waterGrams]
  const planned = readingsOf(workSteps(plan))
  // By hand: the coconut melts first, then olive; the jug has water and then the hydroxide.
  expect(planned.get('oil:coconut')?.holdsG).toBe(400)
  expect(planned.get('oil:olive')?.holdsG).toBe(1000)
  expect(planned.get('water')?.holdsG).toBe(water)
  expect(planned.get('alkali:naoh')?.holdsG).toBeCloseTo(water + naoh, 9)
  expect(planned.get('additive:0')?.holdsG).toBeCloseTo(1000 + water + naoh + 20, 9)
  const real = readingsOf(workSteps(plan), { 'oil:coconut': 410, water: water - 5 })
  expect(real.get('oil:olive')?.holdsG).toBe(1010)
  expect(real.get('alkali:naoh')?.holdsG).toBeCloseTo(water - 5 + naoh, 9)
  expect(real.get('additive:0')?.holdsG).toBeCloseTo(1010 + water - 5 + naoh + 20, 9)
})

test('the workshop has the caution first and every line on a screen of its own', () => {
  const plan = ready()
  const screens = workScreens(plan, false)
  expect(screens[0]?.key).toBe(CAUTION_KEY)
  const weighed = screens.flatMap(({ line }) => (line ? [line.key] : []))
  expect(weighed.toSorted()).toEqual(plan.ingredients.map(({ key }) => key).toSorted())
  expect(new Set(screens.map(({ key }) => key)).size).toBe(screens.length)
})

test('the curve of the cure begins at all that was poured and ends inside its band', () => {
  const { cure } = ready()
  if (!cure) throw new Error('A bar has a cure')
  const drawing = cureDrawing(cure, 400, 124)
  expect(drawing.end?.percent).toBeCloseTo((cure.curve.at(-1)?.left ?? NaN) * 100, 9)
  expect(drawing.end?.x).toBe(drawing.right)
  expect(drawing.percents.at(-1)?.percent).toBe(100)
  expect(`${drawing.band}${drawing.middle}`).not.toMatch(/NaN|undefined/u)
  expect(
    cureDrawing({ ...cure, days: 0, curve: cure.curve.slice(0, 1) }, 400, 124).middle,
  ).not.toMatch(/NaN/u)
})
