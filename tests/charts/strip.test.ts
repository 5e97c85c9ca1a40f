import { expect, test } from 'vitest'
import { inStripOrder, stripSegments, textOn } from '../../src/charts/strip'
import { library } from '../../src/data/library'

const oils = library.oils
const named = (ids: readonly string[]) => ids.flatMap((id) => oils.get(id) ?? [])

test('oils stand by family: lauric, hard, oleic, polyunsaturated, ricinoleic', () => {
  const shuffled = named(['castor', 'olive', 'rice-bran', 'shea', 'coconut'])
  expect(inStripOrder(shuffled).map(({ id }) => id)).toEqual([
    'coconut',
    'shea',
    'olive',
    'rice-bran',
    'castor',
  ])
})

test('the order of oils does not depend on the order of a blend', () => {
  const order = (blend: Record<string, number>) =>
    stripSegments(blend, oils, 100).map(({ oil }) => oil.id)
  expect(order({ olive: 60, shea: 10, coconut: 30 })).toEqual(['coconut', 'shea', 'olive'])
  expect(order({ coconut: 30, olive: 60, shea: 10 })).toEqual(['coconut', 'shea', 'olive'])
})

test('segments share the width less the gaps by percent', () => {
  // By hand: 104 px less two gaps of 2 px are 100 px, so 1 px a percent.
  const segments = stripSegments({ coconut: 30, shea: 10, olive: 60 }, oils, 104)
  expect(segments.map(({ x, width }) => [x, width])).toEqual([
    [0, 30],
    [32, 10],
    [44, 60],
  ])
})

test('an oil without a share takes no place and no gap', () => {
  const segments = stripSegments({ coconut: 50, castor: 0, olive: 50 }, oils, 102)
  expect(segments.map(({ oil, x }) => [oil.id, x])).toEqual([
    ['coconut', 0],
    ['olive', 52],
  ])
})

test('a strip without width has segments without width, none below 0', () => {
  const segments = stripSegments({ coconut: 50, olive: 50 }, oils, 0)
  expect(segments.map(({ width }) => width)).toEqual([0, 0])
})

/**
 * WCAG 2.2 contrast by hand: white on #767676 is 4.54, the last grey that white can be read on; on pure
 * yellow (luminance 0.2126 + 0.7152 = 0.928) white has 1.07, on pure blue (0.0722) it has 8.59.
 */
test.each([
  ['#FFFFFF', 'dark'],
  ['#000000', 'light'],
  ['#FFFF00', 'dark'],
  ['#0000FF', 'light'],
  ['#595959', 'light'],
  ['#A6A6A6', 'dark'],
] as const)('text on %s is %s', (colour, text) => {
  expect(textOn(colour)).toBe(text)
})
