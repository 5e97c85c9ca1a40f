import { describe, expect, test } from 'vitest'
import { COST } from '../../../../src/domain/blend/measure'
import { reasonsFor } from '../../../../src/domain/optimise/why/reasons'
import { type Case, randomCases } from './random-briefs'
import { bestBlendOf, bestCost, feasibleOnes, priced } from './reference'

/** Briefs of each kind; those without a blend or about another goal are left out. */
const PER_KIND = 90
const SEED = 5000

/** Difference of two costs that is rounding; costs are 1 to 30 per kg. */
const ROUNDING = 1e-8
/** Part of a price by which it is moved to one side of a threshold. */
const ASIDE = 0.02
/** Part of a price that is left out beside a threshold, where rounding decides. */
const BESIDE = 1e-6
/** A price that stands for any price, however high. */
const VERY_HIGH = 1e4

const told = feasibleOnes(randomCases(PER_KIND, SEED))
  .filter(({ brief }) => 'minimise' in brief.goal && brief.goal.minimise === COST)
  .map((one, n) => toldOf(one, n))
  .filter(({ reasons }) => reasons.oilsIn.length > 0)

/** Half of the blends come from another solver, so that among equals the reasons are about its choice. */
function toldOf(one: Case, n: number) {
  const best = bestBlendOf(one)
  const reasons = reasonsFor(one.brief, one.library, n % 2 === 0 ? { blend: best } : {})
  if (!reasons) throw new Error(`No reasons for ${one.name}`)
  return { one, reasons, best: n % 2 === 0 ? best : undefined, cost: bestCost(one) ?? NaN }
}

function priceOf({ brief }: Case, oil: string): number {
  return brief.oils[oil]?.pricePerKg ?? NaN
}

const outs = told.flatMap((one) => one.reasons.oilsOut.map((out) => ({ ...one, out })))
const ins = told.flatMap((one) => one.reasons.oilsIn.map((into) => ({ ...one, into })))
const entering = outs.flatMap(({ one, cost, out }) =>
  out.entersBelowPricePerKg === null
    ? []
    : [{ one, cost, oil: out.oil, below: out.entersBelowPricePerKg }],
)

test('there are hundreds of prices of each sort', () => {
  expect(told.length).toBeGreaterThan(150)
  expect(entering.length).toBeGreaterThan(200)
  expect(ins.length).toBeGreaterThan(300)
  const causes = ['own limit', 'no blend', 'no saving'] as const
  for (const cause of causes)
    expect(outs.filter(({ out }) => out.atNoPrice === cause).length, cause).toBeGreaterThan(10)
})

test('every oil of the shelf is either in or out, by the blend that is talked about', () => {
  for (const { one, reasons, best } of told) {
    const named = [...reasons.oilsIn, ...reasons.oilsOut].map(({ oil }) => oil)
    expect(named.sort()).toEqual(Object.keys(one.brief.oils).sort())
    for (const { oil } of best ? reasons.oilsIn : []) expect(best?.[oil]).toBeGreaterThan(1e-4)
    for (const { oil } of best ? reasons.oilsOut : []) expect(best?.[oil]).toBeLessThan(1e-3)
  }
})

describe('the price below which an oil comes in', () => {
  test('is at most its price now', () => {
    for (const { one, oil, below } of entering) {
      expect(below).toBeGreaterThan(0)
      expect(below, `${one.name} ${oil}`).toBeLessThanOrEqual(priceOf(one, oil) + ROUNDING)
    }
  })

  test('changes nothing while the price is above it', () => {
    for (const { one, cost, oil, below } of entering) {
      const after = bestCost(priced(one, oil, below * (1 + BESIDE))) ?? NaN
      expect(Math.abs(after - cost), `${one.name} ${oil}`).toBeLessThan(ROUNDING)
    }
  })

  test('makes a cheaper blend as soon as the price is under it', () => {
    for (const { one, cost, oil, below } of entering) {
      const after = bestCost(priced(one, oil, below * (1 - ASIDE))) ?? NaN
      expect(cost - after, `${one.name} ${oil}`).toBeGreaterThan(ROUNDING)
    }
  })

  test('is missing only where even a free oil makes no cheaper blend', () => {
    for (const { one, cost, out } of outs) {
      if (out.entersBelowPricePerKg !== null) continue
      const after = bestCost(priced(one, out.oil, 0)) ?? NaN
      expect(Math.abs(after - cost), `${one.name} ${out.oil}`).toBeLessThan(ROUNDING)
    }
  })

  test('says that no blend has the oil only where none can', () => {
    for (const { one, out } of outs) {
      if (out.atNoPrice !== 'own limit' && out.atNoPrice !== 'no blend') continue
      const { min, max, pricePerKg } = one.brief.oils[out.oil] ?? {}
      const some = { pricePerKg, max, min: Math.max(min ?? 0, 0.001) }
      const brief = { ...one.brief, oils: { ...one.brief.oils, [out.oil]: some } }
      expect(bestCost({ ...one, brief }), `${one.name} ${out.oil}`).toBeUndefined()
      expect((max ?? 100) === 0).toBe(out.atNoPrice === 'own limit')
    }
  })
})

describe('the price span in which the blend stays', () => {
  /** What the blend that stays costs at another price, if the reasons are about this one. */
  const spans = ins.flatMap(({ one, best, cost, into }) => {
    const share = best?.[into.oil]
    if (share === undefined) return []
    const now = priceOf(one, into.oil)
    const at = (price: number) => cost + ((price - now) * share) / 100
    return [{ one, oil: into.oil, now, at, span: into.priceSpan }]
  })
  const after = ({ one, oil }: (typeof spans)[number], price: number) =>
    bestCost(priced(one, oil, price))

  test('holds the price now', () => {
    expect(spans.length).toBeGreaterThan(150)
    for (const { now, span } of spans) {
      expect(span[0] ?? 0).toBeLessThanOrEqual(now)
      expect(span[1] ?? Infinity).toBeGreaterThanOrEqual(now)
    }
  })

  test('keeps it a best blend from end to end', () => {
    for (const one of spans) {
      const { at, now, span, oil } = one
      const ends = [span[0] ?? 0, span[1] ?? VERY_HIGH]
      for (const price of [...ends, ...ends.map((end) => (end + now) / 2)]) {
        // A wish on cost may be met exactly at the end: look a little short of it.
        const inside = price + (now - price) * BESIDE
        const gap = at(inside) - (after(one, inside) ?? NaN)
        const label = `${one.one.name} ${oil} at ${inside}`
        expect(Math.abs(gap), label).toBeLessThan(ROUNDING * Math.max(1, inside / now))
      }
    }
  })

  test('ends where another blend is cheaper, or where a wish on cost leaves none', () => {
    for (const one of spans) {
      const { at, span, oil, now } = one
      const beyond = [
        ...(span[0] === null ? [] : [Math.max(0, span[0] - ASIDE * now)]),
        ...(span[1] === null ? [] : [span[1] + ASIDE * now]),
      ]
      for (const price of beyond) {
        const best = after(one, price)
        const gap = best === undefined ? Infinity : at(price) - best
        const wishedCost = one.one.brief.measures[COST]?.min ?? -Infinity
        if (at(price) < wishedCost) continue
        expect(gap, `${one.one.name} ${oil} at ${price}`).toBeGreaterThan(ROUNDING)
      }
    }
  })
})
