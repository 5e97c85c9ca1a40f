import { describe, expect, test } from 'vitest'
import { libraryOf, ready } from '../plans'

const oils = libraryOf({ olive: [184, 190, 196], coconut: [248, 257, 265] })
const ORDER = { blend: { olive: 100 }, superfat: 5, water: { ratio: 2.6 } }

function byCode(order: Parameters<typeof ready>[0]) {
  return new Map(ready(order, oils).ifWrong.map((one) => [one.code, one]))
}

describe('if one thing is wrong', () => {
  test('acid that is forgotten leaves its hydroxide, and oil mends it, never dry acid', () => {
    const acids = [{ acid: 'citric', grams: 20, formSure: true, alkali: 'add' as const }]
    const one = byCode({ ...ORDER, acids }).get('acidForgotten.0')
    // By hand: 20 x 3 / 192.12 = 0.31230 mol more on 3.386507: 5 - 9.2219 = -4.222 %.
    expect(one?.superfatPercent).toBeCloseTo(-4.222, 2)
    // 0.31230 - 0.05 x 3.386507 = 0.142975 mol at 184 mg KOH/g: 43.6 g, up to 44.
    expect(one?.says).toBe('free lye. While liquid add oil, 44 g; never dry acid')
    expect(one?.detail).toBe('20 g in the plan, none in the pot')
  })

  test('an acid that turns out the hydrate holds a twelfth less', () => {
    const acids = [{ acid: 'citric', grams: 20, alkali: 'add' as const }]
    const one = byCode({ ...ORDER, acids }).get('acidWeaker.0')
    // By hand: 0.31230 x (1 - 192.124/210.139) = 0.026773 mol: 5 - 0.7906 = 4.209 %.
    expect(one?.superfatPercent).toBeCloseTo(4.209, 2)
  })

  test('a bag purer than it says', () => {
    const one = byCode({ ...ORDER, purity: { naoh: 97 } }).get('purer.naoh')
    // By hand: 1 - 0.95 x 100/97 = 2.062 %.
    expect(one?.superfatPercent).toBeCloseTo(2.062, 3)
    expect(one?.detail).toBe('100 %, not 97')
    const exact = { ...ORDER, purity: { naoh: 97 }, purityIs: { naoh: 'exactly' as const } }
    expect(byCode(exact).has('purer.naoh')).toBe(false)
  })

  test('the largest oil at its leanest', () => {
    // By hand: 1 - 0.95 x 190/184 = 1.902 %.
    expect(byCode(ORDER).get('largestLeanest')?.superfatPercent).toBeCloseTo(1.902, 3)
  })

  test('two tins exchanged', () => {
    const order = { ...ORDER, blend: { olive: 70, coconut: 30 } }
    // By hand: lye for 700 x 190 + 300 x 257 = 210100, fat 300 x 190 + 700 x 257 = 236900:
    // 1 - 0.95 x 210100 / 236900 = 15.747 %.
    expect(byCode(order).get('exchanged')?.superfatPercent).toBeCloseTo(15.747, 2)
    const other = { ...ORDER, blend: { olive: 30, coconut: 70 } }
    // The other way: 1 - 0.95 x 236900 / 210100 = -7.118 %.
    expect(byCode(other).get('exchanged')?.superfatPercent).toBeCloseTo(-7.118, 2)
  })

  test('each scale one error off', () => {
    const cases = byCode({ ...ORDER, oilGrams: 500, scale: { oilStepG: 2, lyeStepG: 1 } })
    // By hand: 500 x 190 / 56105 = 1.693254 mol, x 0.95 x 39.997 = 64.339, down to 64 g.
    // A gram more: 1 - 65 / 39.997 / 1.693254 = 4.024 %; 2 g of oil less: 1 - 64 / 39.997 / 1.686481 = 5.121 %.
    expect(cases.get('lyeScale')?.superfatPercent).toBeCloseTo(4.024, 2)
    expect(cases.get('oilScale')?.superfatPercent).toBeCloseTo(5.121, 2)
  })

  test('a certificate that belongs to another lot', () => {
    const lots = { olive: { saponificationValue: 195 } }
    // By hand: 1 - 0.95 x 195/184 = -0.679 %.
    expect(byCode({ ...ORDER, lots }).get('otherLot.olive')?.superfatPercent).toBeCloseTo(-0.679, 2)
  })

  test('stands worst first', () => {
    const acids = [{ acid: 'citric', grams: 20, alkali: 'add' as const }]
    const all = ready({ ...ORDER, acids, purity: { naoh: 97 } }, oils).ifWrong
    const sorted = [...all].sort((a, b) => a.superfatPercent - b.superfatPercent)
    expect(all).toEqual(sorted)
    expect(all[0]?.code).toBe('acidForgotten.0')
  })
})
