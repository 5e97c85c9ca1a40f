import { expect, test } from 'vitest'
import oils from '../../data/oils.json'
import sources from '../../data/sources.json'

const ITSELF = new Set(sources.flatMap((source) => ('standardItself' in source ? [source.id] : [])))

/** One supplier's limits are no limit for another's lots: the lean end keeps 2 % under the calculated value. */
test('the low end of a saponification value lies 2 % under the calculated one, unless the standard was read', () => {
  const narrow = oils.filter(
    ({ saponificationValue: { low, typical, source } }) =>
      low > typical * 0.98 && !ITSELF.has(source),
  )
  expect(narrow.map(({ id }) => id)).toEqual([])
})

test('where a low end was moved it was moved down, and what was printed is kept', () => {
  const moved = oils.flatMap(({ saponificationValue: value }) =>
    'printedLow' in value ? [[value.low, value.printedLow] as const] : [],
  )
  expect(moved.length).toBeGreaterThan(10)
  for (const [low, printed] of moved) expect(low).toBeLessThan(printed ?? NaN)
})
