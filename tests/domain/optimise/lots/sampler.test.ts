import { describe, expect, test } from 'vitest'
import type { Oil } from '../../../../src/domain/blend/oil'
import { LotSampler } from '../../../../src/domain/optimise/lots/sampler'
import { seededRandom } from '../../../../src/domain/chance/random'
import { faultsOfLot, oil, OILS } from './lots'

const DRAWS = 40_000
/**
 * Five standard errors of a part of `DRAWS`, at its widest 0.5 / √DRAWS: a right sampler of the fixed
 * seed is inside, a density wrong by a fiftieth is not.
 */
const PART_TOLERANCE = (5 * 0.5) / Math.sqrt(DRAWS)

const BASIS = {
  basis: 'assumption',
  source: 'stated by the test',
  typicalBasis: 'assumption',
  typicalSource: 'stated by the test',
} as const

describe('a random lot', () => {
  test('keeps every stated range of its oil and adds to 100, for 500 lots of each oil', () => {
    for (const one of OILS) {
      const sampler = new LotSampler(one, seededRandom(7))
      for (let k = 0; k < 500; k++) expect(faultsOfLot(one, sampler.draw()), one.id).toEqual([])
    }
  })

  test('is the same for the same seed and another for another', () => {
    const first = (seed: number) => [
      ...new LotSampler(oil('palm'), seededRandom(seed)).draw().acids,
    ]
    expect(first(3)).toEqual(first(3))
    expect(first(3)).not.toEqual(first(4))
  })

  test('has unsaponifiables as often below the typical content as above it', () => {
    const { typical } = oil('shea').unsaponifiableGPerKg
    const below = partOf(oil('shea'), ({ unsaponifiableGPerKg }) => unsaponifiableGPerKg < typical)
    expect(Math.abs(below - 0.5)).toBeLessThan(PART_TOLERANCE)
  })
})

describe('many lots follow the density, by hand', () => {
  test('of two acids that are each other’s rest: the product of both densities', () => {
    // a: half of it over 20 to 30, half over 30 to 90: densities 5 and 0.833 in 100. b = 100 - a: half
    // over 30 to 70, half over 70 to 80: 1.25 for a over 30, 5 for a under. Products 25 for a from 20
    // to 30 and 1.0417 from 30 to 70, where b ends: masses 250 and 41.67.
    const stub = oilOfRanges({ a: [20, 30, 90], b: [30, 70, 80] })
    const under30 = partOf(stub, ({ acids: [a = NaN] }) => a < 30)
    const under50 = partOf(stub, ({ acids: [a = NaN] }) => a < 50)
    expect(Math.abs(under30 - 6 / 7)).toBeLessThan(PART_TOLERANCE)
    expect(Math.abs(under50 - 13 / 14)).toBeLessThan(PART_TOLERANCE)
  })

  test('of three acids that can all take up the rest', () => {
    // Each is 30 + u, the u adding to 10, with the typical share at u = 10/3. In units of that third, u
    // is 2 times as dense below 1 as above. The triangle of all u has three parts with one u over 1
    // (area 1, density 1 × 2 × 2) and three with two over 1 (area 1/2, density 1 × 1 × 2): masses 4 and
    // 1, in all 15. One acid is over 1 in one of the first and two of the second: 6 of 15.
    const range = [30, 100 / 3, 40] as const
    const stub = oilOfRanges({ a: range, b: range, c: range })
    const above = partOf(stub, ({ acids: [a = NaN] }) => a > 100 / 3)
    expect(Math.abs(above - 6 / 15)).toBeLessThan(PART_TOLERANCE)
  })

  test('of an acid whose typical share is its low: evenly between its ends', () => {
    const stub = oilOfRanges({ a: [10, 10, 20], b: [75, 90, 90] })
    const under15 = partOf(stub, ({ acids: [a = NaN] }) => a < 15)
    expect(Math.abs(under15 - 0.5)).toBeLessThan(PART_TOLERANCE)
  })
})

describe('an oil that does not vary', () => {
  test('has one lot, to the last bit', () => {
    const stub = oilOfRanges({ a: [12.3, 12.3, 12.3], b: [87.7, 87.7, 87.7] })
    expect([...new LotSampler(stub, seededRandom(1)).draw().acids]).toEqual([12.3, 87.7])
  })
})

test('an oil of which hardly any draw adds to 100 is called so', () => {
  // c has next to nothing, so a and b, anywhere between 0 and 50, must both be at their tops.
  const stub = oilOfRanges({ a: [0, 50, 50], b: [0, 50, 50], c: [0, 0, 1e-7] })
  expect(() => new LotSampler(stub, seededRandom(1)).draw()).toThrow(/No lot of stub/u)
})

/** The part of many lots of which something is true. */
function partOf(one: Oil, isSo: (lot: ReturnType<LotSampler['draw']>) => boolean): number {
  const sampler = new LotSampler(one, seededRandom(20_261))
  let count = 0
  for (let k = 0; k < DRAWS; k++) if (isSo(sampler.draw())) count++
  return count / DRAWS
}

function oilOfRanges(
  ranges: Readonly<Record<string, readonly [low: number, typical: number, high: number]>>,
): Oil {
  const acids = Object.entries(ranges).map(([id, [low, typical, high]]) => {
    return [id, { low, typical, high, ...BASIS }] as const
  })
  return {
    ...oil('olive'),
    id: 'stub',
    acids: Object.fromEntries(acids),
    unsaponifiableGPerKg: { typical: 0, high: 0, ...BASIS },
  }
}
