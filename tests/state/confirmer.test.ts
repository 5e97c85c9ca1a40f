import { afterEach, beforeEach, expect, test } from 'vitest'
import { Confirmer } from '../../src/state/confirmer.svelte'
import { withWish } from '../../src/state/draft'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { FakeSolver } from './fake-solver'
import { until } from '../setup/until'

let solver: FakeSolver
let explorer: Explorer
let confirmer: Confirmer
beforeEach(() => {
  solver = new FakeSolver()
  explorer = new Explorer(new WorkHistory(EXAMPLE_WORK), solver.client)
  confirmer = new Confirmer(explorer, solver.client)
})
afterEach(() => solver.close())

/** Has the brief studied, as the page does, and its blend put before the second solver. */
async function asked(): Promise<void> {
  explorer.ask()
  await until(() => expect(explorer.studied).toBe(explorer.draft))
  confirmer.ask()
}

const CONFIRMED = { kind: 'confirmed', by: 'barwright' }

test('a blend under rules is put before a second solver as any other', async () => {
  explorer.edit((draft) => ({ ...draft, rules: { atMostOils: 4 } }))
  await asked()
  expect(confirmer.standing).toEqual({ kind: 'asking' })
  await until(() => expect(confirmer.standing).toEqual(CONFIRMED))
})

test('a changed brief is not confirmed by what was said of the one before', async () => {
  await asked()
  await until(() => expect(confirmer.standing).toEqual(CONFIRMED))
  explorer.edit((draft) => withWish(draft, 'hardness', 'min', 39))
  await asked()
  expect(confirmer.standing).toEqual({ kind: 'asking' })
  await until(() => expect(confirmer.standing).toEqual(CONFIRMED))
})

test('a blend chosen by hand is only checked against the brief', async () => {
  await asked()
  const { found } = explorer
  if (!found) throw new Error('The demo has a blend')
  explorer.pick({ ...found, blend: { olive: 100 } })
  expect(confirmer.standing).toEqual({ kind: 'chosen', keeps: false })
})

test('without a blend there is nothing to confirm', async () => {
  explorer.edit((draft) => withWish(draft, 'lather', 'min', 70))
  await asked()
  expect(confirmer.standing).toBeUndefined()
})
