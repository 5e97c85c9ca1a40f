import { describe, expect, test } from 'vitest'
import { BatchDesk } from '../../src/state/batch.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'

const BLEND = { olive: 60, coconut: 40 }

function desk(blend: Readonly<Record<string, number>> | undefined = BLEND) {
  const work = new WorkHistory(EXAMPLE_WORK)
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
  const work = new WorkHistory(EXAMPLE_WORK)
  const empty = new BatchDesk(work, () => undefined)
  expect([empty.order, empty.plan]).toEqual([undefined, undefined])
})

test('a choice changes the plan, and undo takes it back', () => {
  const { work, desk: at } = desk()
  at.set({ oilGrams: 1000 })
  expect(at.plan?.status === 'ready' && at.plan.oilGrams).toEqual({ olive: 600, coconut: 400 })
  work.undo()
  expect(at.choices.oilGrams).toBe(EXAMPLE_WORK.batch.oilGrams)
})

test('the other alkali takes the purity along and does all the work', () => {
  const { desk: at } = desk()
  at.set({ alkali: 'koh' })
  expect(at.order).toMatchObject({ alkali: { koh: 100 }, purity: { koh: 90 } })
  expect(at.plan?.status === 'ready' && Object.keys(at.plan.alkaliGrams)).toEqual(['koh'])
})

test('an order that can’t be weighed has problems and no weights', () => {
  const { desk: at } = desk()
  at.set({ water: { lyeConcentration: 62 } })
  expect(at.plan).toMatchObject({ status: 'invalid' })
  expect(at.plan).not.toHaveProperty('alkaliGrams')
})

/** The plan, where there is one. */
function readyPlan(at: BatchDesk) {
  if (!at.ready) throw new Error('There is no plan')
  return at.ready
}

test('where a mould says the size the weight of oils follows, for the stock of the brief', () => {
  const { work, desk: at } = desk()
  at.set({ mould: { volumeMl: 1000 } })
  const oils = Object.values(readyPlan(at).oilGrams).reduce((g, one) => g + one, 0)
  expect(at.choices.oilGrams).toBe(oils)
  expect(oils).toBeLessThan(1000)
  at.set({ superfatPercent: 8 })
  work.undo()
  work.undo()
  expect(at.choices.oilGrams).toBe(EXAMPLE_WORK.batch.oilGrams)
})

test('the name of the brief stands on the sheet, and prices of the shelf in its cost', () => {
  const work = new WorkHistory(EXAMPLE_WORK)
  const brought = { name: 'Harbour bar', prices: { olive: 5, coconut: 3 } }
  const at = new BatchDesk(
    work,
    () => BLEND,
    () => brought,
  )
  at.set({ pricesPerKg: { naoh: 2 } })
  const plan = readyPlan(at)
  // By hand: 3 kg at 5, 2 kg at 3, and the hydroxide at 2.
  expect(plan.cost?.total).toBeCloseTo(21 + ((plan.alkaliGrams.naoh ?? NaN) / 1000) * 2, 9)
  expect(at.sheet).toMatchObject({ status: 'ready', sheet: { title: 'Harbour bar' } })
})

describe('what is done on the bench', () => {
  const grams = { 'oil:olive': 3000 }

  test('a tick stays while the weight does, and comes back with it', () => {
    const { work, desk: at } = desk()
    at.tick('oil:olive', grams['oil:olive'], true)
    expect(at.ticked('oil:olive', 3000)).toBe(true)
    at.set({ oilGrams: 4000 })
    expect(at.ticked('oil:olive', readyPlan(at).oilGrams['olive'] ?? NaN)).toBe(false)
    work.undo()
    expect(at.ticked('oil:olive', readyPlan(at).oilGrams['olive'] ?? NaN)).toBe(true)
    at.tick('oil:olive', 3000, false)
    expect(at.ticked('oil:olive', 3000)).toBe(false)
  })

  test('each tick is a step of undo of its own', () => {
    const { work, desk: at } = desk()
    at.tick('oil:olive', 3000, true)
    at.tick('oil:coconut', 2000, true)
    work.undo()
    expect([at.ticked('oil:olive', 3000), at.ticked('oil:coconut', 2000)]).toEqual([true, false])
  })

  test('a weighing ticks its line off and is reckoned with; taken back, nothing is', () => {
    const { desk: at } = desk()
    expect(at.really).toBeUndefined()
    const planned = readyPlan(at).alkaliGrams.naoh ?? NaN
    at.weigh('alkali:naoh', planned, planned * 1.2)
    expect(at.ticked('alkali:naoh', planned)).toBe(true)
    expect(at.really).toMatchObject({ status: 'reckoned', report: { verdict: 'freeLye' } })
    at.weigh('alkali:naoh', planned, undefined)
    expect(at.really).toBeUndefined()
  })

  test('a weighing of an oil that is no longer in the blend is left out', () => {
    let blend: Readonly<Record<string, number>> = BLEND
    const work = new WorkHistory(EXAMPLE_WORK)
    const at = new BatchDesk(work, () => blend)
    at.weigh('oil:coconut', 2000, 1900)
    blend = { olive: 100 }
    at.set({ superfatPercent: 7 })
    expect([at.actual, at.really]).toEqual([{}, undefined])
  })

  test('is cleared for the next batch, and undo brings it back', () => {
    const { work, desk: at } = desk()
    at.readCaution(true)
    at.weigh('oil:olive', 3000, 2990)
    at.beginAgain()
    expect(at.run).toEqual({ ticks: {}, actual: {}, cautionRead: false })
    work.undo()
    expect(at.run.actual).toEqual({ 'oil:olive': 2990 })
  })
})

test('a remedy becomes a choice', () => {
  const { desk: at } = desk()
  at.set({ superfatPercent: 1, water: { lyeConcentration: 45 } })
  expect(at.ready?.blocked).not.toBeNull()
  expect(at.sheet?.status).toBe('refused')
  for (const { change } of at.remedies) at.apply(change)
  expect(at.ready?.blocked).toBeNull()
  expect(at.choices.water).toEqual({ lyeConcentration: 40 })
  expect(at.sheet?.status).toBe('ready')
})

test('a value given as a NaOH factor is mended by its button', () => {
  const { desk: at } = desk()
  at.set({ lots: { olive: { saponificationValue: 0.135 } } })
  const [problem] = at.plan?.status === 'invalid' ? at.plan.problems : []
  const [remedy] = at.remedies
  expect(remedy?.answers).toBe(problem?.path)
  at.apply(remedy?.change ?? {})
  expect(at.choices.lots).toEqual({ olive: { saponificationValue: 189.4 } })
  expect(at.ready).toBeDefined()
})

test('a sheet is printed of a lean batch once it is said why', () => {
  const { desk: at } = desk()
  at.set({ superfatPercent: 1 })
  expect([at.sheet?.status, at.label?.status]).toEqual(['refused', 'refused'])
  at.confirmLean('Titrated these lots.')
  expect(at.sheet).toMatchObject({ status: 'ready' })
  expect(at.ready?.warnings.join(' ')).toContain('Titrated these lots.')
  at.takeConfirmationBack()
  expect(at.sheet?.status).toBe('refused')
})

test('a confirmation holds for lots as lean as were confirmed, and not for leaner ones', () => {
  let blend: Readonly<Record<string, number>> = BLEND
  const at = new BatchDesk(new WorkHistory(EXAMPLE_WORK), () => blend)
  at.set({ superfatPercent: 2 })
  at.confirmLean('Titrated these lots.')
  at.set({ superfatPercent: 2.5 })
  expect(at.sheet?.status).toBe('ready')
  at.set({ superfatPercent: 1 })
  expect(at.sheet?.status).toBe('refused')
  at.set({ superfatPercent: 2 })
  expect(at.sheet?.status).toBe('ready')
  // Shea varies far more from lot to lot than olive does.
  blend = { shea: 100 }
  at.set({ superfatPercent: 2 }, 'again')
  expect(at.sheet?.status).toBe('refused')
})

test('a batch is scaled up to what was weighed over', () => {
  const { desk: at } = desk()
  at.weigh('oil:olive', 3000, 3075)
  at.scaleUp(3075 / 3000)
  // By hand: 40 % of 5125 g.
  expect(readyPlan(at).oilGrams).toEqual({ olive: 3075, coconut: 2050 })
  expect(at.really).toMatchObject({ report: { verdict: 'asPlanned', deviations: [] } })
})

test('a figure that can’t be is held, and what stood before stays in force', () => {
  const { work, desk: at } = desk()
  const before = readyPlan(at).alkaliGrams
  at.offer('alkali', { purity: { naoh: 0.99, koh: 90 } })
  expect(at.heldProblems('alkali')).toMatchObject([
    { path: 'purity.naoh', message: expect.stringContaining('did you mean 99 %') as string },
  ])
  expect(at.wrongAt('alkali', 'purity.naoh')).toBe(true)
  expect([at.typed.purity.naoh, at.choices.purity.naoh]).toEqual([0.99, 98.5])
  expect(readyPlan(at).alkaliGrams).toEqual(before)
  // Another choice goes on, and what is held stays held.
  at.set({ oilGrams: 2000 })
  expect([at.typed.purity.naoh, at.choices.oilGrams]).toEqual([0.99, 2000])
  at.offer('alkali', { purity: { naoh: 99, koh: 90 } })
  expect(at.heldProblems('alkali')).toEqual([])
  expect(at.choices.purity.naoh).toBe(99)
  at.offer('superfat', { superfatPercent: 0.05 })
  expect(at.typed.superfatPercent).toBe(0.05)
  work.undo()
  expect(at.typed.superfatPercent).toBe(at.choices.superfatPercent)
})

test('a purity that only a certificate allows comes into force with its number', () => {
  const { desk: at } = desk()
  at.offer('alkali', { purity: { naoh: 90, koh: 90 } })
  at.offer('alkali', { purityIs: { naoh: { certificate: '' } } })
  expect(at.choices.purity.naoh).toBe(98.5)
  at.offer('alkali', { purityIs: { naoh: { certificate: 'NA-2207' } } })
  expect(at.choices).toMatchObject({
    purity: { naoh: 90 },
    purityIs: { naoh: { certificate: 'NA-2207' } },
  })
})

test('the tick that the worst was read holds for lots as lean, no leaner', () => {
  const { desk: at } = desk()
  at.set({ superfatPercent: 4.5 })
  expect(readyPlan(at).superfat.reachPercent.min).toBeLessThan(0)
  at.seeLean(true)
  expect(readyPlan(at).order.leanSeen).toBe(true)
  at.set({ superfatPercent: 4 })
  expect(readyPlan(at).order.leanSeen).toBeUndefined()
  at.set({ superfatPercent: 4.6 })
  expect(readyPlan(at).order.leanSeen).toBe(true)
})

describe('a lye that would boil', () => {
  test('is refused with changes that mend it, and taking one over makes it ready', () => {
    const { desk: at } = desk()
    at.set({ water: { lyeConcentration: 50 }, lye: { startC: 95 } })
    const problems = at.plan?.status === 'invalid' ? at.plan.problems : []
    expect(problems).toHaveLength(1)
    const [cooler] = at.remedies.filter(({ answers }) => answers === problems[0]?.path)
    expect(cooler?.says).toBe('Water at 20 °C')
    if (cooler) at.apply(cooler.change)
    expect(at.plan?.status).toBe('ready')
    expect(at.remedies.filter(({ says }) => says === cooler?.says)).toEqual([])
  })
})
