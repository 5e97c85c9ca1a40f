import { expect, test } from 'vitest'
import { superfatSpanDrawing } from '../../src/charts/superfat-span'

const SPANS = {
  asked: 5,
  likely: { min: 2.6, max: 7.4 },
  worst: { min: -0.4, max: 10.2 },
  wide: null,
}

test('likely lies within worst, and the wall at 0 has hatching left of it', () => {
  const { x } = superfatSpanDrawing(SPANS, 440)
  const places = [-0.4, 0, 2.6, 5, 7.4, 10.2].map(x)
  expect(places).toEqual([...places].sort((a, b) => a - b))
  // By hand: the axis runs from −2 (the least shown) to 10.2 over 440 − 76 px, from 6 px on.
  expect(x(-2)).toBeLessThanOrEqual(6 + 1e-9)
  expect(x(0)).toBeGreaterThan(40)
})

test('the likely figures keep clear of the needle even where the band is narrow', () => {
  const { x, likely } = superfatSpanDrawing({ ...SPANS, likely: { min: 4.9, max: 5.1 } }, 440)
  expect(likely[0].at).toBeLessThanOrEqual(x(5) - 4)
  expect(likely[1].at).toBeGreaterThanOrEqual(x(5) + 4)
})

test('the lean end’s figure never lies over the wall', () => {
  for (const min of [0, 0.2, 0.8, 1.5, 3, -0.1, -3]) {
    const { x, worst } = superfatSpanDrawing({ ...SPANS, worst: { min, max: 10 } }, 440)
    const [{ at }] = worst
    expect(at <= x(0) || at - 32 >= x(0), String(min)).toBe(true)
  }
})

test('all that is drawn is on the axis, the wide span without certificates too', () => {
  const wide = { min: -6, max: 14 }
  const { x } = superfatSpanDrawing({ ...SPANS, wide }, 300)
  expect(x(-6)).toBeGreaterThanOrEqual(6)
  expect(x(14)).toBeLessThanOrEqual(300 - 70 + 1e-9)
})
