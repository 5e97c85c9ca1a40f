import { expect, test } from 'vitest'
import { isSameShare, oilsInOrder, shareScale } from '../../src/charts/bench-oil'
import { library } from '../../src/data/library'

const A = { olive: 60, coconut: 25, shea: 15 }
const B = { olive: 60.04, coconut: 30, castor: 9.96, palm: 0 }

test('oils of all columns stand in the order of strips, those without a share left out', () => {
  const ids = oilsInOrder([A, B], library.oils).map(({ id }) => id)
  expect(ids).toEqual(['coconut', 'shea', 'olive', 'castor'])
})

test('a share that reads the same in every column is the same', () => {
  expect(isSameShare('olive', [A, B])).toBe(true)
  expect(isSameShare('coconut', [A, B])).toBe(false)
  expect(isSameShare('shea', [A, B])).toBe(false)
})

test('the longest bar takes the whole room and a half share half of it', () => {
  const scale = shareScale([A, { olive: 30, coconut: 70 }], 140)
  expect(scale(70)).toBe(140)
  expect(scale(35)).toBe(70)
})
