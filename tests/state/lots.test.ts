import { afterEach, beforeEach, expect, test } from 'vitest'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { FakeSolver } from './fake-solver'
import { until } from '../setup/until'

let solver: FakeSolver
let explorer: Explorer
beforeEach(() => {
  solver = new FakeSolver()
  explorer = new Explorer(new WorkHistory(EXAMPLE_WORK), solver.client)
})
afterEach(() => solver.close())

/** Asks one wish alone, which even the worst lots can keep, of typical lots or of any. */
async function asked(robust: boolean): Promise<number> {
  explorer.edit((draft) => ({
    ...draft,
    wishes: { hardness: { min: 38 } },
    robust: robust || undefined,
  }))
  explorer.ask()
  await until(() => expect(explorer.studied).toBe(explorer.draft))
  return explorer.found?.goalValue ?? NaN
}

const hardness = () => explorer.lots.of(explorer.present?.blend, 'hardness')

test('where any lot is asked about, the blend’s spread and the price of it are told', async () => {
  const typical = await asked(false)
  const robust = await asked(true)
  await until(() => expect(hardness()).toBeDefined())
  expect(hardness()?.span.low).toBeGreaterThanOrEqual(38 - 1e-6)
  expect(hardness()?.typical).toBeCloseTo(explorer.present?.measures['hardness'] ?? NaN, 6)
  expect(explorer.lots.price).toBeCloseTo(robust - typical, 6)
  expect(explorer.lots.price).toBeGreaterThan(0.1)
})

test('of typical lots nothing is asked, and what was told is forgotten', async () => {
  await asked(true)
  await until(() => expect(hardness()).toBeDefined())
  await asked(false)
  expect([hardness(), explorer.lots.price]).toEqual([undefined, undefined])
})

test('the spread told is never that of another blend than the one in hand', async () => {
  await asked(true)
  await until(() => expect(hardness()).toBeDefined())
  const { found } = explorer
  if (!found) throw new Error('One wish has a blend')
  const before = hardness()
  explorer.pick({ ...found, blend: { coconut: 50, shea: 50 } })
  expect(hardness()).toBeUndefined()
  await until(() => expect(hardness()).toBeDefined())
  expect(hardness()?.typical).not.toBeCloseTo(before?.typical ?? NaN, 1)
})
