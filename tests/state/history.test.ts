import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import type { Work } from '../../src/state/work'

beforeEach(() => vi.useFakeTimers({ toFake: ['performance'] }))
afterEach(() => vi.useRealTimers())

const named = (name: string) => (work: Work) => ({ ...work, brief: { ...work.brief, name } })
const nameOf = (history: WorkHistory) => history.now.brief.name
const FIRST = EXAMPLE_WORK.brief.name

test('undo goes back and redo forward, step by step', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  history.change(named('a'))
  history.change(named('b'))
  const seen: string[] = []
  for (const step of ['undo', 'undo', 'redo', 'redo'] as const) {
    history[step]()
    seen.push(nameOf(history))
  }
  expect(seen).toEqual(['a', FIRST, 'a', 'b'])
})

test('there is nothing to undo at first and nothing to redo at last', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  expect([history.canUndo, history.canRedo]).toEqual([false, false])
  history.undo()
  history.redo()
  expect(history.now).toBe(EXAMPLE_WORK)
  history.change(named('a'))
  expect([history.canUndo, history.canRedo]).toEqual([true, false])
  history.undo()
  expect([history.canUndo, history.canRedo]).toEqual([false, true])
})

test('a change after undo drops what was undone', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  history.change(named('a'))
  history.undo()
  history.change(named('b'))
  history.redo()
  expect(nameOf(history)).toBe('b')
})

test('close changes of one thing are one step, later ones another', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  history.change(named('a'), 'name')
  vi.advanceTimersByTime(500)
  history.change(named('ab'), 'name')
  vi.advanceTimersByTime(1500)
  history.change(named('abc'), 'name')
  history.undo()
  expect(nameOf(history)).toBe('ab')
  history.undo()
  expect(nameOf(history)).toBe(FIRST)
})

test('close changes of two things, or of none named, are steps of their own', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  history.change(named('a'), 'name')
  history.change(named('b'), 'other')
  history.change(named('c'))
  history.change(named('d'))
  const seen = [1, 2, 3, 4].map(() => {
    history.undo()
    return nameOf(history)
  })
  expect(seen).toEqual(['c', 'b', 'a', FIRST])
})

test('a change that changes nothing is no step', () => {
  const history = new WorkHistory(EXAMPLE_WORK)
  history.change((work) => work)
  expect(history.canUndo).toBe(false)
})
