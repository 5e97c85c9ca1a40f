import { afterEach, beforeEach, expect, test } from 'vitest'
import { withWish } from '../../src/state/draft'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { MapView } from '../../src/state/map-view.svelte'
import { FakeSolver } from './fake-solver'
import { until } from '../setup/until'

let solver: FakeSolver
let explorer: Explorer
let view: MapView
beforeEach(() => {
  solver = new FakeSolver()
  explorer = new Explorer(new WorkHistory(EXAMPLE_WORK), solver.client)
  view = new MapView(explorer, solver.client)
})
afterEach(() => solver.close())

/** Two places inside the demo's land: hardness and lather in points. */
const HERE = { x: 38, y: 33 }
const THERE = { x: 34, y: 30 }

test('the blend under the cross hits its place', async () => {
  view.look(HERE)
  await until(() => expect(view.probe?.place).toEqual(HERE))
  const { answer } = view.probe ?? {}
  expect(answer?.status).toBe('optimal')
  if (answer?.status !== 'optimal') return
  expect(answer.measures['hardness']).toBeCloseTo(HERE.x, 5)
  expect(answer.measures['lather']).toBeCloseTo(HERE.y, 5)
})

test('a change of the brief lets go of what was under the cross', async () => {
  view.look(HERE)
  await until(() => expect(view.probe).toBeDefined())
  explorer.edit((draft) => withWish(draft, 'mildness', 'min', 59))
  expect(view.probe).toBeUndefined()
})

test('what was taken comes in hand although the cross has moved on', async () => {
  solver.hold()
  view.look(HERE)
  view.take(HERE)
  view.look(THERE)
  solver.release()
  await until(() => expect(explorer.picked).toBeDefined())
  expect(explorer.picked?.measures['hardness']).toBeCloseTo(HERE.x, 5)
  await until(() => expect(view.probe?.place).toEqual(THERE))
  expect(explorer.picked?.measures['hardness']).toBeCloseTo(HERE.x, 5)
})

test('what was taken is not put in hand once the brief has changed', async () => {
  solver.hold()
  view.take(HERE)
  await until(() => expect(solver.asked).toBe(1))
  explorer.edit((draft) => withWish(draft, 'mildness', 'min', 59))
  solver.release()
  view.look(THERE)
  await until(() => expect(view.probe?.place).toEqual(THERE))
  expect(explorer.picked).toBeUndefined()
})

test('a place where no blend is leaves the blend in hand', async () => {
  const nowhere = { x: 60, y: 60 }
  view.look(nowhere)
  view.take(nowhere)
  await until(() => expect(view.probe?.answer.status).toBe('infeasible'))
  view.look(HERE)
  await until(() => expect(view.probe?.place).toEqual(HERE))
  expect(explorer.picked).toBeUndefined()
})
