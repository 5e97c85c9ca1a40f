import { expect, test } from 'vitest'
import { planOf } from '../../src/cli/batch-plan'
import { batchFile } from '../../src/data/batch-file'
import { batchAsFile } from '../../src/data/batch-as-file'
import { batchFacts } from '../../src/data/batch-facts'
import { library } from '../../src/data/library'
import { actualReport } from '../../src/domain/batch/actual/actuals'
import type { Titration } from '../../src/domain/batch/release/alkali-test'
import { BatchDesk } from '../../src/state/batch.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { LedgerDesk } from '../../src/state/ledger.svelte'
import { Workbench } from '../../src/state/workbench.svelte'
import { keptWork } from '../../src/storage/work-schema'

const TEST: Titration = {
  way: 'titration',
  on: '2026-02-10',
  who: 'M.',
  bar: '7',
  acidMl: 0.1,
  normality: 0.1,
  sampleG: 5,
}

function desk() {
  const work = new WorkHistory(EXAMPLE_WORK)
  const at = new BatchDesk(work, () => ({ olive: 60, coconut: 40 }))
  at.set({ superfatPercent: 12, papers: { madeOn: '2026-01-10' } })
  return { work, at }
}

function labelSays(at: BatchDesk) {
  return at.label?.status === 'ready' ? at.label.label.release.says : undefined
}

test('a batch is not released until a test is entered, and again once it is taken out', () => {
  const { at } = desk()
  expect(labelSays(at)).toMatch(/^Not released/u)
  at.addTest(TEST)
  expect(at.release.state).toBe('testPassed')
  expect(labelSays(at)).toMatch(/^Tested for free alkali on 2026-02-10: 0\.008 %/u)
  at.takeTestOut(0)
  expect(at.release.state).toBe('notReleased')
})

test('another superfat voids the test, and going back makes it stand again', () => {
  const { work, at } = desk()
  at.addTest(TEST)
  at.set({ superfatPercent: 11 })
  expect(at.release).toMatchObject({ state: 'notReleased', tests: [{ outcome: 'void' }] })
  work.undo()
  expect(at.release.state).toBe('testPassed')
})

test('another weighing, and another batch of the same order, void it too', () => {
  const { at } = desk()
  at.addTest(TEST)
  at.weigh('oil:olive', 3000, 3010)
  expect(at.release.state).toBe('notReleased')
  at.beginAgain()
  expect(at.choices.release).toBeUndefined()
})

test('a test without its figures is refused by field, and nothing is entered', () => {
  const { at } = desk()
  expect(at.testFaults({ ...TEST, sampleG: 0, normality: 10 })).toEqual({
    sampleG: expect.stringContaining('above 0') as string,
    normality: expect.stringContaining('10 N') as string,
  })
  expect(at.testFaults(TEST)).toEqual({})
})

test('with the day of making moved behind the tests none of them counts', () => {
  const { at } = desk()
  at.addTest(TEST)
  at.set({ papers: { madeOn: '2026-02-10' } })
  expect(at.tested?.status).toBe('invalid')
  expect(labelSays(at)).toMatch(/^Not released/u)
})

test('tests are kept between visits as they were entered', () => {
  const { work, at } = desk()
  at.addTest(TEST)
  at.addTest({ way: 'phenolphthalein', on: '2026-02-11', who: 'M.', bar: '8', colour: 'pink' })
  const kept = keptWork.parse(JSON.parse(JSON.stringify(work.now)))
  expect(kept.batch.release).toEqual(work.now.batch.release)
  expect(at.release.state).toBe('held')
})

test('the Ledger’s quote stands on the same tests', () => {
  const { work, at } = desk()
  const ledger = new LedgerDesk(work, () => at.order, '2026-03-01')
  at.addTest(TEST)
  expect(ledger.release.state).toBe(at.release.state)
  expect(ledger.release.state).toBe('testPassed')
})

test('a file saved after only a part of the lye was used reads the same at the command line', () => {
  const { at } = desk()
  const plan = () => {
    if (!at.ready) throw new Error('No plan')
    return at.ready
  }
  const bench = new Workbench(at, plan)
  const lye = plan().ingredients.find(({ kind }) => kind === 'alkali')
  if (!lye) throw new Error('No lye')
  for (const { key, grams } of plan().ingredients) bench.weigh(key, grams)
  bench.weigh(lye.key, Math.round(lye.grams * 2.8))
  const part = bench.verdict(lye.key).mends.find(({ kind }) => kind === 'usePart')
  if (!part) throw new Error('No part')
  bench.mend(lye.key, part)
  at.addTest(TEST)
  if (!at.order) throw new Error('No order')
  const file = planOf(
    batchFile.parse(JSON.parse(batchAsFile(at.order, at.inPot, at.choices.release))),
    library,
  )
  if (file.status === 'invalid') throw new Error(JSON.stringify(file.problems))
  expect(file.actual?.[lye.key]).toBeLessThan(lye.grams * 1.1)
  expect(actualReport(file.plan, file.actual ?? {}, library, batchFacts)).toEqual(at.really)
  expect(at.really).toMatchObject({ status: 'reckoned', report: { weights: { oilGrams: {} } } })
  expect(file.release).toEqual(at.release)
  expect(at.release.state).toBe('testPassed')
})
