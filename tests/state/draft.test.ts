import { expect, test } from 'vitest'
import {
  briefOfDraft,
  type Draft,
  withoutOil,
  withOil,
  withRow,
  withWish,
} from '../../src/state/draft'

const DRAFT: Draft = {
  name: 'Two oils',
  currency: 'EUR',
  shelf: [
    { oil: 'coconut', pricePerKg: 3, max: 35, banned: false },
    { oil: 'olive', pricePerKg: 7, min: 15, banned: false },
    { oil: 'palm', pricePerKg: 2, banned: true },
  ],
  groups: [
    { name: 'tropical', oils: ['coconut', 'palm'], max: 40 },
    { name: 'palms', oils: ['palm'], max: 10 },
  ],
  wishes: { hardness: { min: 38 } },
  goal: { minimise: 'cost' },
  axes: ['hardness', 'lather'],
}

/** Weight of the batch's oils, g; no oil here is limited by what is there of it. */
const BATCH_G = 5000

const rowOf = (draft: Draft, oil: string) => draft.shelf.find((row) => row.oil === oil)

test('a banned oil is not in the brief, neither alone nor in a group', () => {
  const { oils, groups } = briefOfDraft(DRAFT, BATCH_G)
  expect(Object.keys(oils)).toEqual(['coconut', 'olive'])
  expect(groups).toEqual([{ name: 'tropical', oils: ['coconut'], max: 40 }])
})

test('wishes, prices, limits and the goal go into the brief as they are', () => {
  const { oils, measures, goal } = briefOfDraft(DRAFT, BATCH_G)
  expect(oils['coconut']).toEqual({ pricePerKg: 3, min: undefined, max: 35 })
  expect(measures).toEqual({ hardness: { min: 38 } })
  expect(goal).toEqual({ minimise: 'cost' })
})

test('a lock holds a share to half its last digit and goes before the limits', () => {
  // By hand: 28.2 is shown for all from 28.15 to 28.25.
  const { oils } = briefOfDraft(withRow(DRAFT, 'coconut', { lockedAt: 28.2 }), BATCH_G)
  expect(oils['coconut']?.min).toBeCloseTo(28.15, 9)
  expect(oils['coconut']?.max).toBeCloseTo(28.25, 9)
  expect(oils['coconut']?.pricePerKg).toBe(3)
})

test.each([
  [0, 0, 0.05],
  [100, 99.95, 100],
])('a lock at %d %% stays within 0 to 100 %%', (lockedAt, min, max) => {
  const { oils } = briefOfDraft(withRow(DRAFT, 'olive', { lockedAt }), BATCH_G)
  expect(oils['olive']?.min).toBeCloseTo(min, 9)
  expect(oils['olive']?.max).toBeCloseTo(max, 9)
})

test('one row changes and the others stay the very same', () => {
  const changed = withRow(DRAFT, 'olive', { pricePerKg: 8 })
  expect(rowOf(changed, 'olive')).toEqual({ oil: 'olive', pricePerKg: 8, min: 15, banned: false })
  expect(rowOf(changed, 'coconut')).toBe(rowOf(DRAFT, 'coconut'))
  expect(rowOf(DRAFT, 'olive')?.pricePerKg).toBe(7)
})

test('a new oil comes last, without price or limits', () => {
  const { shelf } = withOil(DRAFT, 'castor')
  expect(shelf.at(-1)).toEqual({ oil: 'castor', banned: false })
  expect(shelf).toHaveLength(4)
})

test('adding a banned oil lets it back in with its price', () => {
  const draft = withOil(DRAFT, 'palm')
  expect(rowOf(draft, 'palm')).toEqual({ oil: 'palm', pricePerKg: 2, banned: false })
  expect(draft.shelf).toHaveLength(3)
})

test('an oil taken off the shelf is gone from the brief and its groups', () => {
  const { oils, groups } = briefOfDraft(withoutOil(DRAFT, 'coconut'), BATCH_G)
  expect(Object.keys(oils)).toEqual(['olive'])
  expect(groups).toEqual([])
})

test('one end of a wish changes and the other stays', () => {
  const both = withWish(DRAFT, 'hardness', 'max', 44)
  expect(both.wishes['hardness']).toEqual({ min: 38, max: 44 })
  expect(withWish(both, 'hardness', 'min', undefined).wishes['hardness']?.min).toBeUndefined()
  expect(withWish(both, 'hardness', 'min', undefined).wishes['hardness']?.max).toBe(44)
})

test('a wish on a measure that had none leaves the other wishes', () => {
  const { wishes } = withWish(DRAFT, 'wear', 'max', 54)
  expect(wishes).toEqual({ hardness: { min: 38 }, wear: { max: 54 } })
})
