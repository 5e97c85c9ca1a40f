import { expect, test } from 'vitest'
import { barOf, withBar } from '../../src/state/bar'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { additionsOf } from '../../src/ui/bench/additions'
import { benchSolver } from './bench-solver'

test('what can be put on the Bench: the blend in hand, the maker’s own bar, the reference bars', () => {
  const solver = benchSolver()
  const work = new WorkHistory(EXAMPLE_WORK)
  const explorer = new Explorer(work, solver.client)
  const labels = () => additionsOf(explorer).map(({ label, name }) => `${label}: ${name}`)
  const bars = labels()
  expect(bars).toContain('All olive: All olive')
  const blend = { olive: 60, coconut: 40 }
  work.change((now) => withBar(now, barOf(blend)))
  explorer.edit((draft) => ({ ...draft, name: 'Harbour bar' }))
  explorer.pick({ blend, measures: {}, goalValue: 0 })
  expect(labels()).toEqual(['The blend in hand: Picked blend', 'Harbour bar: Harbour bar', ...bars])
  solver.close()
})
