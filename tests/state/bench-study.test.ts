import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { Bench } from '../../src/state/bench.svelte'
import { BenchStudies } from '../../src/state/bench-study.svelte'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { nameResult } from '../../src/ui/bench/study-words'
import { benchSolver } from './bench-solver'

const WITH_PALM = { coconut: 28, palm: 34, olive: 22, 'rapeseed-low-erucic': 16 }

let solver: ReturnType<typeof benchSolver>
let bench: Bench
let work: WorkHistory
let studies: BenchStudies
beforeEach(() => {
  solver = benchSolver()
  work = new WorkHistory(EXAMPLE_WORK)
  const explorer = new Explorer(work, solver.client)
  bench = new Bench(work, explorer)
  studies = new BenchStudies(bench, explorer, solver.client, nameResult)
  bench.add([{ name: 'Last year’s bar', blend: WITH_PALM, from: 'Your formula' }])
})
afterEach(() => solver.close())

const results = () => (studies.done?.answer.status === 'found' ? studies.done.answer.results : [])
const tagsOf = (oil: string) => library.oils.get(oil)?.tags ?? []
const newcomers = () =>
  results().flatMap(({ role }) => (role.kind === 'replaces' ? [...role.oils] : []))

describe('without an oil', () => {
  beforeEach(() => {
    studies.kind = 'without'
    studies.chooseOil('palm')
  })

  test('puts the best three on the Bench in one step, and the base stays chosen', async () => {
    await studies.run()
    expect(results().length).toBeGreaterThan(3)
    expect(bench.columns.map(({ candidate }) => candidate.letter)).toEqual(['A', 'B', 'C', 'D'])
    expect(bench.columns[1]?.candidate.blend).toBe(results()[0]?.blend)
    expect(bench.chosen?.candidate.letter).toBe('A')
    work.undo()
    expect(bench.columns).toHaveLength(1)
  })

  test('keeps out what is banned, of palm or of animals unless it is let in', async () => {
    studies.wholeLibrary = true
    expect(studies.concerns).toEqual(['palm-derived', 'animal'])
    await studies.run()
    expect(newcomers().length).toBeGreaterThan(3)
    for (const oil of newcomers()) {
      expect(oil).not.toBe('palm')
      expect(tagsOf(oil)).not.toContain('palm-derived')
      expect(tagsOf(oil)).not.toContain('animal')
    }
    studies.allow('animal', true)
    await studies.run()
    expect(newcomers().some((oil) => tagsOf(oil).includes('animal'))).toBe(true)
    expect(newcomers().some((oil) => tagsOf(oil).includes('palm-derived'))).toBe(false)
  })

  test('does without the largest oil while none was picked', () => {
    const fresh = new BenchStudies(
      bench,
      new Explorer(work, solver.client),
      solver.client,
      nameResult,
    )
    expect(fresh.oil).toBe('palm')
  })

  test('puts one more on request, and none twice', async () => {
    await studies.run()
    const next = results()[3]
    if (!next) throw new Error('too few results')
    studies.putOne(next)
    studies.putOne(next)
    expect(bench.columns).toHaveLength(5)
  })
})

describe('more of one measure', () => {
  test('holds the others within a tie unless told otherwise, and cost not at all', async () => {
    studies.kind = 'better'
    studies.measure = 'hardness'
    await studies.run()
    if (studies.done?.question.kind !== 'better') throw new Error('another study')
    expect(studies.done.question.tolerances).toEqual({
      lather: 5,
      conditioning: 5,
      mildness: 5,
      wear: 5,
      keeping: 5,
    })
    studies.tolerate('lather', 2)
    studies.tolerate('wear', undefined)
    await studies.run()
    expect(studies.done.question.tolerances).toEqual({
      lather: 2,
      conditioning: 5,
      mildness: 5,
      keeping: 5,
    })
  })

  test('what it finds is told beside its base as harder, and all that was held as a tie', async () => {
    studies.kind = 'better'
    await studies.run()
    const [, best] = bench.columns
    expect(best?.differences.get('hardness')?.standing).toBe('more')
    for (const id of ['lather', 'conditioning', 'mildness', 'wear', 'keeping'])
      expect(best?.differences.get(id)?.standing).toBe('tie')
  })
})

test('a cheaper bar of the same feel is sought by cost with every measure of the bar held', async () => {
  studies.kind = 'cheaper'
  await studies.run()
  expect(studies.done?.question).toMatchObject({ kind: 'better', measure: 'cost' })
  // Palm at 2.15 is the cheapest oil of the example and is banned, so nothing comes cheaper.
  expect(studies.done?.answer).toMatchObject({ status: 'none', reason: { kind: 'no better' } })
  expect(bench.columns).toHaveLength(1)
})

test('a study that fails says so and can be asked again', async () => {
  solver.close()
  await studies.run()
  expect(studies.failure).toMatch(/closed/u)
  expect(studies.busy).toBe(false)
})

test('a study that is stopped leaves what was found before, and another can be asked', async () => {
  studies.kind = 'without'
  studies.chooseOil('palm')
  await studies.run()
  const { done } = studies
  const columns = bench.columns.length
  studies.kind = 'like'
  const running = studies.run()
  expect(studies.busy).toBe(true)
  studies.stop()
  await running
  expect([studies.busy, studies.slow, studies.failure]).toEqual([false, false, undefined])
  expect(studies.done).toBe(done)
  expect(bench.columns).toHaveLength(columns)
  await studies.run()
  expect(studies.done?.question.kind).toBe('like')
})
