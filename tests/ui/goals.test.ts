import { expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { shownMeasures } from '../../src/state/explorer.svelte'
import { GOAL_OPTIONS, optionOf } from '../../src/ui/brief/goals'

test('there is a goal for the best of each measure shown and for each reference bar', () => {
  const wanted = shownMeasures.map(({ id, better }) =>
    better === 'more' ? { maximise: id } : { minimise: id },
  )
  const near = library.referenceBars.map(({ blend }) => ({ closestTo: blend }))
  const goals = GOAL_OPTIONS.map(({ goal }) => goal)
  expect(goals).toHaveLength(wanted.length + near.length)
  for (const goal of [...wanted, ...near]) expect(goals).toContainEqual(goal)
})

test('the cheapest blend comes first', () => {
  expect(GOAL_OPTIONS[0]).toMatchObject({ label: 'cheapest blend', goal: { minimise: 'cost' } })
})

test('no two goals are called the same', () => {
  const labels = GOAL_OPTIONS.map(({ label }) => label)
  expect(new Set(labels).size).toBe(labels.length)
})

test('each goal is found again by what it asks for, and a goal from elsewhere is not', () => {
  for (const option of GOAL_OPTIONS) expect(optionOf(option.goal)).toBe(option)
  expect(optionOf({ closestTo: { olive: 70, coconut: 30 } })).toBeUndefined()
})
