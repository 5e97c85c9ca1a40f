import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { withoutOil, withRow, withWish } from '../../src/state/draft'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { FakeSolver } from './fake-solver'
import { until } from '../setup/until'

let solver: FakeSolver
let work: WorkHistory
let explorer: Explorer
beforeEach(() => {
  solver = new FakeSolver()
  work = new WorkHistory(EXAMPLE_WORK)
  explorer = new Explorer(work, solver.client)
})
afterEach(() => {
  vi.useRealTimers()
  solver.close()
})

/** Sends the draft off, as the page does after each change, and waits until it is dealt with. */
async function asked() {
  explorer.ask()
  const { draft } = explorer
  await until(() => {
    const dealtWith = explorer.studied === draft || explorer.problems.length > 0
    expect(dealtWith).toBe(true)
  })
}

const crossed = () => explorer.edit((draft) => withRow(draft, 'coconut', { min: 60, max: 40 }))
const wish = (value: number) => explorer.edit((draft) => withWish(draft, 'hardness', 'min', value))

test('the answer to the first brief is the blend in hand', async () => {
  await asked()
  expect(explorer.study?.answer.status).toBe('optimal')
  expect(explorer.present).toBe(explorer.found)
  expect(explorer.lastGood).toBe(explorer.found)
  expect(explorer.studied).toBe(explorer.draft)
  expect(explorer.problems).toEqual([])
})

test('a brief with a fault tells it and keeps the study and the draft it belongs to', async () => {
  await asked()
  const { study, studied, present } = explorer
  crossed()
  await asked()
  expect(explorer.problems.map(({ path }) => path)).toEqual(['oils.coconut'])
  expect(explorer.study).toBe(study)
  expect(explorer.studied).toBe(studied)
  expect(explorer.present).toBe(present)
  work.undo()
  explorer.ask()
  await until(() => expect(explorer.problems).toEqual([]))
})

test('a brief without a blend has none in hand and keeps the last good one in sight', async () => {
  await asked()
  const { found } = explorer
  explorer.edit((draft) => withWish(draft, 'lather', 'min', 70))
  await asked()
  expect(explorer.study?.answer.status).toBe('infeasible')
  expect(explorer.present).toBeUndefined()
  expect(explorer.lastGood).toBe(found)
})

test('a blend picked on the map is in hand until the brief changes or it is given back', async () => {
  await asked()
  const { found } = explorer
  if (!found) throw new Error('The demo has a blend')
  const picked = { ...found, goalValue: 9 }
  explorer.pick(picked)
  expect(explorer.present).toBe(picked)
  explorer.unpick()
  expect(explorer.present).toBe(found)
  explorer.pick(picked)
  wish(39)
  expect(explorer.picked).toBeUndefined()
  expect(explorer.present).toBe(found)
})

test('undoing the change that let a pick go brings the pick back', async () => {
  await asked()
  const { found } = explorer
  if (!found) throw new Error('The demo has a blend')
  const picked = { ...found, goalValue: 9 }
  explorer.pick(picked)
  wish(39)
  work.undo()
  expect(explorer.present).toBe(picked)
})

test('a shelf without oils forgets the study and its blend', async () => {
  await asked()
  for (const { oil } of explorer.draft.shelf) explorer.edit((draft) => withoutOil(draft, oil))
  explorer.ask()
  await until(() => expect(explorer.problems).toHaveLength(1))
  expect(explorer.problems[0]?.path).toBe('oils')
  expect([explorer.study, explorer.studied, explorer.lastGood]).toEqual([
    undefined,
    undefined,
    undefined,
  ])
  expect(explorer.present).toBeUndefined()
  expect(explorer.oilCount).toBe(0)
})

test('while a study is under way only the newest draft waits behind it', async () => {
  solver.hold()
  for (const value of [38, 39, 40, 41]) {
    wish(value)
    explorer.ask()
  }
  await until(() => expect(solver.asked).toBe(1))
  solver.release()
  await until(() => expect(explorer.studied).toBe(explorer.draft))
  expect(solver.asked).toBe(2)
  expect(explorer.present?.measures['hardness']).toBeCloseTo(41, 5)
})

test('the page is busy only once a study takes more than 150 ms', async () => {
  solver.hold()
  explorer.ask()
  expect(explorer.busy).toBe(false)
  await until(() => expect(explorer.busy).toBe(true))
  solver.release()
  await until(() => expect(explorer.busy).toBe(false))
})

test('a failure of the program is told, ends the wait, and goes with the next answer', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
  solver.failWith('the thread broke')
  explorer.ask()
  await until(() => expect(explorer.failure).toBe('the thread broke'))
  vi.advanceTimersByTime(200)
  expect(explorer.busy).toBe(false)
  vi.useRealTimers()
  solver.failWith(undefined)
  explorer.ask()
  await until(() => expect(explorer.failure).toBeUndefined())
  expect(explorer.found).toBeDefined()
})
