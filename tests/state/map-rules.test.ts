import { afterEach, beforeEach, expect, test } from 'vitest'
import type { BriefRules } from '../../src/domain/optimise/brief/brief-rules'
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

const rules = (next: BriefRules) => explorer.edit((draft) => ({ ...draft, rules: next }))

/** Settles once the thread, which answers one question after another, has done with all before. */
const idle = () => solver.client.ask((service) => service.ready())

/** Asks for a land under rules and waits until a part of it is told. */
async function begun(next: BriefRules): Promise<void> {
  rules(next)
  view.ask()
  await until(() => expect(view.land?.ruled).toBeDefined())
}

test('the land under rules is told while it is found, and is whole in the end', async () => {
  await begun({ atMostOils: 3 })
  expect(view.busy).toBe(true)
  expect(view.land?.ruled?.underWay).toBeDefined()
  await until(() => expect(view.busy).toBe(false))
  expect(view.land?.ruled?.underWay).toBeUndefined()
  expect(view.land?.ruled?.terrain?.x).toHaveLength(60)
})

test('stopped, the land stays as it was told and nothing more is found', async () => {
  await begun({ atMostOils: 3 })
  view.stop()
  const { land } = view
  expect(view.busy).toBe(false)
  await idle()
  const told = solver.landsTold.length
  await idle()
  expect(solver.landsTold.length).toBe(told)
  expect(view.land).toBe(land)
  expect(land?.ruled?.underWay).toBeDefined()
})

test('a newer question ends the one before, which tells nothing more', async () => {
  await begun({ atMostOils: 3 })
  const before = solver.landsTold.length
  rules({ atMostOils: 2 })
  view.ask()
  await until(() => expect(view.land?.ruled?.underWay).toBeUndefined())
  const counts = solver.landsTold.map(({ brief }) => brief.rules?.atMostOils)
  // One more telling of the first may have been on its way.
  expect(counts.indexOf(2)).toBeLessThanOrEqual(before + 1)
  expect(counts.slice(counts.indexOf(2))).not.toContain(3)
})

test('a study under rules that is stopped leaves what was found before', async () => {
  explorer.ask()
  await until(() => expect(explorer.found).toBeDefined())
  const { found } = explorer
  solver.hold()
  rules({ atMostOils: 3 })
  explorer.ask()
  await until(() => expect(explorer.busy).toBe(true))
  explorer.stop()
  expect([explorer.busy, explorer.stopped]).toEqual([false, true])
  await idle()
  expect(explorer.found).toBe(found)
  expect(explorer.failure).toBeUndefined()
  solver.release()
  explorer.ask()
  expect(explorer.stopped).toBe(false)
  await until(() => expect(explorer.studied).toBe(explorer.draft))
})

test('under rules the reach of every measure follows the answer, and the blend stays the same one', async () => {
  rules({ atMostOils: 4 })
  explorer.ask()
  await until(() => expect(explorer.found).toBeDefined())
  const { found } = explorer
  await until(() => expect(explorer.study?.openReach).toEqual([]))
  expect(explorer.found).toBe(found)
  expect(Object.values(explorer.study?.reach ?? {})[0]).toMatchObject({ exact: true })
})

test('a sample under rules is whole unless it is stopped', async () => {
  rules({ atMostOils: 4 })
  view.wantsSample = true
  view.askSample()
  view.stop()
  expect(view.sampled).toBeUndefined()
  await idle()
  expect(view.sample).toBeUndefined()
  view.askSample()
  await until(() => expect(view.sample?.count).toBe(20_000))
  expect(view.sampled).toBeUndefined()
})
