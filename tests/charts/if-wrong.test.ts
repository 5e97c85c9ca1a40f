import { expect, test } from 'vitest'
import { HALF_BOX_PX, wrongScale, wrongWay } from '../../src/charts/if-wrong'

test('every box, the wall and the needle are within the width of the axis', () => {
  const x = wrongScale([-15.6, 0.4, 9.9], 6.5, 300)
  for (const percent of [-15.6, 0, 0.4, 6.5, 9.9]) {
    expect(x(percent) - HALF_BOX_PX).toBeGreaterThanOrEqual(0)
    expect(x(percent) + HALF_BOX_PX).toBeLessThanOrEqual(300)
  }
})

test('the way runs from the needle to the near side of the box', () => {
  expect(wrongWay(200, 100)).toEqual([200, 105])
  expect(wrongWay(200, 260)).toEqual([200, 255])
  expect([wrongWay(200, 203), wrongWay(200, 200)]).toEqual([null, null])
})
