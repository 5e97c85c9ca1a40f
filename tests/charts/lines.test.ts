import { expect, test } from 'vitest'
import { keptRows, lineAxes, lineHeights, rangeIn } from '../../src/charts/lines'
import type { Sample } from '../../src/domain/optimise/map/sample-linear'

/** Three blends of one oil with two measures each. */
const SAMPLE: Sample = {
  oils: ['olive'],
  measures: ['hardness', 'lather'],
  count: 3,
  shares: Float64Array.of(100, 100, 100),
  values: Float64Array.of(20, 30, 40, 30, 30, 30),
}

const EMPTY: Sample = {
  ...SAMPLE,
  count: 0,
  shares: new Float64Array(),
  values: new Float64Array(),
}

test('a measure’s range is its least and most in the sample', () => {
  expect(rangeIn(SAMPLE, 'hardness')).toEqual({ min: 20, max: 40 })
  expect(rangeIn(EMPTY, 'hardness')).toEqual({ min: 0, max: 1 })
})

test('axes stand in the middle of equal parts of the width, without those the sample lacks', () => {
  const axes = lineAxes(SAMPLE, ['hardness', 'cost', 'lather'], 200, 10, 110)
  expect(axes.map(({ measure, x }) => [measure, x])).toEqual([
    ['hardness', 50],
    ['lather', 150],
  ])
})

test('lines run from the least at the bottom to the most at the top', () => {
  const axes = lineAxes(SAMPLE, ['hardness', 'lather'], 200, 10, 110)
  // By hand: hardness 20 to 40 over 100 px; lather is 30 for all, in the middle of 29 to 31.
  expect([...lineHeights(SAMPLE, axes)]).toEqual([110, 60, 10, 60, 60, 60])
})

test('lines are kept that lie in every brush, its ends included', () => {
  expect([...keptRows(SAMPLE, {})]).toEqual([0, 1, 2])
  expect([...keptRows(SAMPLE, { hardness: { min: 30, max: 40 } })]).toEqual([1, 2])
  const both = { hardness: { min: 30, max: 40 }, lather: { min: 31, max: 40 } }
  expect([...keptRows(SAMPLE, both)]).toEqual([])
})
