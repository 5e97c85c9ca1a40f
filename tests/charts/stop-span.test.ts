import fc from 'fast-check'
import { expect, test } from 'vitest'
import { stopSpanDrawing } from '../../src/charts/stop-span'

const spans = fc
  .tuple(
    fc.double({ min: -200, max: 30, noNaN: true }),
    fc.array(fc.double({ min: 0, max: 6, noNaN: true }), { minLength: 4, maxLength: 4 }),
    fc.double({ min: 0, max: 20, noNaN: true }),
  )
  .map(([lean, [a = 0, b = 0, c = 0, d = 0], planned]) => ({
    worst: { min: lean, max: lean + a + b + c + d },
    likely: { min: lean + a, max: lean + a + b + c },
    superfat: lean + a + b,
    planned,
  }))

test('what is likely lies within what is worst, all of it on the axis, whatever was weighed', () => {
  fc.assert(
    fc.property(spans, fc.integer({ min: 240, max: 900 }), (all, width) => {
      const { x } = stopSpanDrawing(all, width)
      const places = [all.worst.min, all.likely.min, all.superfat, all.likely.max, all.worst.max]
      const drawn = places.map((value) => x(value))
      expect(drawn).toEqual(drawn.toSorted((a, b) => a - b))
      for (const at of [...drawn, x(0), x(all.planned)]) {
        expect(at).toBeGreaterThanOrEqual(8)
        expect(at).toBeLessThanOrEqual(width - 78)
      }
    }),
    { seed: 118, numRuns: 400 },
  )
})

test('no words leave the drawing, and the lean end’s figure stands left of its end', () => {
  fc.assert(
    fc.property(spans, fc.integer({ min: 240, max: 900 }), (all, width) => {
      const { likelyAt, plannedAt, worst, x } = stopSpanDrawing(all, width)
      // Half widths of the words at 13 px letters: 74 and 40 px.
      for (const [at, half] of [
        [likelyAt, 74],
        [plannedAt, 40],
      ] as const) {
        expect(at - half).toBeGreaterThanOrEqual(0)
        expect(at + half).toBeLessThanOrEqual(width)
      }
      for (const { at, anchor } of worst)
        if (anchor === 'end') expect(at).toBeLessThan(x(all.worst.min))
    }),
    { seed: 119, numRuns: 400 },
  )
})

test('a lean end under 0 has room for its figure', () => {
  const all = { superfat: 1, likely: { min: -2, max: 4 }, worst: { min: -5, max: 7 }, planned: 5 }
  const { worst, x } = stopSpanDrawing(all, 320)
  expect(worst).toHaveLength(2)
  expect(x(-5) - 34).toBeGreaterThan(0)
})
