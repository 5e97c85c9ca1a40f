import { describe, expect, test } from 'vitest'
import type { BatchOrder } from '../../../src/domain/batch/order'
import { libraryOf, near, ready } from './plans'

/** The tables claim 6 K; the figures by hand are rounded to a degree or two. */
const TOLERANCE_K = 2

const olive = libraryOf({ olive: 190, coconut: 257, palm: 199, castor: 181 })
const E1 = {
  blend: { olive: 45, coconut: 25, palm: 25, castor: 5 },
  purity: { naoh: 99 },
  water: { lyeConcentration: 30 },
}

function heatOf(order: Partial<BatchOrder>) {
  const { heat } = ready(order, olive)
  if (!heat) throw new Error('There is no heat')
  return heat
}

/*
 * By hand from the same tables: n x heat(r) / (m x cp) above 20 °C, pure NaOH. The simple sum of 44.51 kJ/mol
 * with the heat capacity of water would give 126 °C at 40 % and 153 °C at 50 %.
 */
describe('the hottest that lye of sodium hydroxide can get from 20 °C', () => {
  test.for([
    [20, 82],
    [25, 95],
    [28, 102],
    [30, 107],
    [33.3, 113],
    [35, 115],
    [40, 118],
    [50, 114],
  ] as const)('at %f %% is %d °C', ([lyeConcentration, ceiling]) => {
    const heat = heatOf({ blend: { olive: 100 }, water: { lyeConcentration } })
    expect(heat.ceilingC).toSatisfy(near(ceiling, TOLERANCE_K))
    expect(heat.uncertaintyK).toBe(6)
  })

  test('is 106 °C for 142.67 g of 99 % in 332.9 g of water', () => {
    // 3.531 mol x 39.8 = 140.5 kJ; / (475.5 x 3.42) = 86 K.
    expect(heatOf(E1).ceilingC).toSatisfy(near(106, TOLERANCE_K))
    expect(heatOf(E1).heatKj).toSatisfy(near(140.5, 0.3))
  })

  test('is 26 K lower with 100 g of the water as ice', () => {
    // 100 g x (334 + 4.18 x 20) J/g = 41.8 kJ; / 1626 J/K.
    const drop = heatOf(E1).ceilingC - heatOf({ ...E1, lye: { iceGrams: 100 } }).ceilingC
    expect(drop).toSatisfy(near(25.7, 0.3))
  })

  test('rises with the water it begins from', () => {
    const warm = heatOf({ ...E1, lye: { startC: 35 } })
    expect(warm.ceilingC - heatOf(E1).ceilingC).toBeCloseTo(15, 6)
  })
})

describe('lye from a 50 % solution', () => {
  test('gives only the heat of thinning it', () => {
    // 3.531 mol x (39.8 - 24.5) = 54 kJ; / (470.8 x 3.42) = 33.6 K.
    const heat = heatOf({ ...E1, purity: {}, lyeSolution: { naoh: 50 } })
    expect(heat.heatKj).toSatisfy(near(54, 1))
    expect(heat.ceilingC).toSatisfy(near(53.6, TOLERANCE_K))
    expect(heat.level).toBe('calm')
  })
})

describe('a warning', () => {
  test.for([
    [20, 'calm'],
    [26, 'hot'],
    [33, 'mayBoil'],
  ] as const)('of lye at %d %% is "%s"', ([lyeConcentration, level]) => {
    expect(heatOf({ blend: { olive: 100 }, water: { lyeConcentration } }).level).toBe(level)
  })

  test('of hot lye says to keep water off the hydroxide', () => {
    expect(heatOf(E1).advice.join(' ')).toMatch(/never pour water onto it/u)
  })

  test('of milk in the lye says to freeze it and that cold lye may hold back grains', () => {
    const liquids = [{ liquid: 'goat-milk', replacesPercent: 50, when: 'lye' as const }]
    const advice = heatOf({ ...E1, water: { lyeConcentration: 33 }, liquids }).advice.join(' ')
    expect(advice).toMatch(/freeze them first/u)
    expect(advice).toMatch(/Ice-cold lye holds only about 29.5 %/u)
  })
})

test('acids heat the jug further: 0.2165 mol of vinegar give 12.1 kJ', () => {
  const plain = heatOf({ blend: { olive: 100 }, water: { lyeConcentration: 33 } })
  const acids = [{ acid: 'acetic', grams: 260, strengthPercent: 5, alkali: 'leave' as const }]
  const sour = heatOf({ blend: { olive: 100 }, water: { lyeConcentration: 33 }, acids })
  // The same hydroxide and the same water; by hand 13 / 60.052 x 55.8.
  expect(sour.heatKj - plain.heatKj).toSatisfy(near(12.08, 0.05))
})

test('potassium hydroxide is known to 15 K only', () => {
  const heat = heatOf({
    alkali: { koh: 100 },
    purity: { koh: 90 },
    water: { lyeConcentration: 30 },
  })
  expect(heat.uncertaintyK).toBe(15)
  expect(heat.ceilingC).toBeGreaterThan(85)
  expect(heat.ceilingC).toBeLessThan(125)
})

describe('vessels', () => {
  test('the jug holds twice the lye, the pot half as much again as the batter', () => {
    // By hand: 475.5 g at about 1.325 g/ml is 359 ml; twice is 718. Batter 1475 ml x 1.5 = 2213.
    const plan = ready(E1, olive)
    expect(plan.heat?.volumeMl).toSatisfy(near(359, 2))
    expect(plan.containers).toEqual({ jugMl: 1000, potMl: 3000 })
  })

  test('a hot process wants a pot at most half full', () => {
    expect(ready({ ...E1, oilGrams: 2000, process: 'hot' }, olive).containers?.potMl).toBe(10_000)
    expect(ready({ ...E1, oilGrams: 2000 }, olive).containers?.potMl).toBe(5000)
  })

  test('milk in the lye wants a jug four times its volume', () => {
    const liquids = [{ liquid: 'cow-milk', replacesPercent: 100, when: 'lye' as const }]
    expect(ready({ ...E1, liquids }, olive).containers?.jugMl).toBe(2000)
  })

  test('grow by whole hundreds of litres where no pot is sold', () => {
    expect(ready({ ...E1, oilGrams: 200_000 }, olive).containers?.potMl).toBe(500_000)
  })
})
