import { expect, test } from 'vitest'
import { costSpans, walkDrawing } from '../../src/charts/reprice'
import { library } from '../../src/data/library'
import { priceWalk, type PriceWalk } from '../../src/domain/optimise/reprice/price-walk'

const FRAME = { width: 400, left: 50, right: 10, costHeight: 100, shareHeight: 60 }

function twoOils(): PriceWalk {
  const brief = {
    oils: { olive: { pricePerKg: 6 }, sunflower: { pricePerKg: 9 } },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
  }
  const walk = priceWalk(brief, library, { oil: 'olive', fromChange: -0.5, toChange: 2 })
  if (walk.status !== 'found') throw new Error('Two oils have a walk')
  return walk
}

test('the curve bends at the switch and runs from the least to the most price', () => {
  const { x, y, best, held } = walkDrawing(twoOils(), library.oils, FRAME)
  expect([x(3), x(18)]).toEqual([50, 390])
  // By hand: 3 at 3, 9 at 9 and still 9 at 18; holding goes on to 18.
  const at = (price: number, cost: number) => `${+x(price).toFixed(1)},${+y(cost).toFixed(1)}`
  expect(best).toBe(`M${at(3, 3)}L${at(9, 9)}L${at(18, 9)}`)
  expect(held).toBe(`M${at(3, 3)}L${at(9, 9)}L${at(18, 18)}`)
})

test('the blocks of every blend fill its prices and the whole height', () => {
  const { blocks, x } = walkDrawing(twoOils(), library.oils, FRAME)
  expect(blocks.map(({ oil, y, height }) => [oil.id, y, height])).toEqual([
    ['olive', 0, 60],
    ['sunflower', 0, 60],
  ])
  expect(blocks[0]?.width).toBeCloseTo(x(9) - x(3), 6)
  expect((blocks[1]?.x ?? NaN) + (blocks[1]?.width ?? NaN)).toBeCloseTo(390, 6)
})

test('a walk of one price that changes nothing is drawn too', () => {
  const brief = {
    oils: { olive: { pricePerKg: 6, max: 0 }, sunflower: { pricePerKg: 9 } },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
  }
  const walk = priceWalk(brief, library, { oil: 'olive', fromChange: 0, toChange: 1 })
  if (walk.status !== 'found') return expect.fail('No walk')
  const { best, y } = walkDrawing(walk, library.oils, FRAME)
  expect(best).not.toContain('NaN')
  expect(y(9)).toBeCloseTo(50, 6)
})

test('spans share one scale, with the middle within the half and the half within the nine in ten', () => {
  const quantiles = (shift: number) =>
    [0.05, 0.25, 0.5, 0.75, 0.95].map((part, index) => ({ part, value: index + shift }))
  const { spans, x } = costSpans([quantiles(0), quantiles(4)], 200, 20)
  expect([x.domain(), x.range()]).toEqual([
    [0, 8],
    [20, 180],
  ])
  expect(spans[0]).toEqual({ from: 20, quarter: 40, middle: 60, threeQuarters: 80, to: 100 })
  expect(spans[1]?.from).toBe(100)
})

test('in a box without room nothing has a width below 0', () => {
  const { blocks } = walkDrawing(twoOils(), library.oils, { ...FRAME, width: 0 })
  for (const { width } of blocks) expect(width).toBe(0)
  const { spans } = costSpans(
    [
      [
        { part: 0.25, value: 1 },
        { part: 0.75, value: 2 },
      ],
    ],
    0,
    20,
  )
  expect((spans[0]?.threeQuarters ?? NaN) - (spans[0]?.quarter ?? NaN)).toBe(0)
})
