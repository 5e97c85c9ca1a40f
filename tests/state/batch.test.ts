import { expect, test } from 'vitest'
import { BatchDesk } from '../../src/state/batch.svelte'
import { FIRST_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'

const BLEND = { olive: 60, coconut: 40 }

function desk(blend: Readonly<Record<string, number>> | undefined = BLEND) {
  const work = new WorkHistory(FIRST_WORK)
  return { work, desk: new BatchDesk(work, () => blend) }
}

test('a blend in hand is planned with the choices as they are', () => {
  const { plan } = desk().desk
  expect(plan?.status).toBe('ready')
  if (plan?.status !== 'ready') return
  // By hand: 60 and 40 % of 5 kg.
  expect(plan.oilGrams).toEqual({ olive: 3000, coconut: 2000 })
})

test('without a blend there is neither order nor plan', () => {
  const work = new WorkHistory(FIRST_WORK)
  const empty = new BatchDesk(work, () => undefined)
  expect([empty.order, empty.plan]).toEqual([undefined, undefined])
})

test('a choice changes the plan, and undo takes it back', () => {
  const { work, desk: at } = desk()
  at.set({ oilGrams: 1000 })
  expect(at.plan?.status === 'ready' && at.plan.oilGrams).toEqual({ olive: 600, coconut: 400 })
  work.undo()
  expect(at.choices.oilGrams).toBe(FIRST_WORK.batch.oilGrams)
})

test('the other alkali takes the purity along and does all the work', () => {
  const { desk: at } = desk()
  at.set({ alkali: 'koh', purityPercent: 90 })
  expect(at.order).toMatchObject({ alkali: { koh: 100 }, purity: { koh: 90 } })
  expect(at.plan?.status === 'ready' && Object.keys(at.plan.alkaliGrams)).toEqual(['koh'])
})

test('an order that can’t be weighed has problems and no weights', () => {
  const { desk: at } = desk()
  at.set({ water: { lyeConcentration: 62 } })
  expect(at.plan).toMatchObject({ status: 'invalid' })
  expect(at.plan).not.toHaveProperty('alkaliGrams')
})
