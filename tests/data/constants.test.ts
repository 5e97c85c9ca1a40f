import { describe, expect, it } from 'vitest'
import { allOils, iodineFromProfile, oilOf, saponificationFromProfile } from './oils'

/** Figures in data/oils.json are written to one decimal: half of that, and rounding noise. */
const ONE_DECIMAL = 0.0501

describe('the saponification value calculated from the typical profile', () => {
  it.each(allOils.map((oil) => [oil.id, oil] as const))(
    'of %s lies in the stated range',
    (_, oil) => {
      const value = saponificationFromProfile(oil)
      expect(value).toBeGreaterThanOrEqual(oil.saponificationValue.low)
      expect(value).toBeLessThanOrEqual(oil.saponificationValue.high)
    },
  )

  it.each(allOils.map((oil) => [oil.id, oil] as const))('of %s is the typical value', (_, oil) => {
    const difference = saponificationFromProfile(oil) - oil.saponificationValue.typical
    expect(Math.abs(difference)).toBeLessThanOrEqual(ONE_DECIMAL)
  })
})

/** Oils whose calculated iodine value lies outside the stated range, with the reason. */
const IODINE_EXCEPTIONS: Readonly<Record<string, string>> = {
  'palm-kernel': 'the USDA mean has the least oleic acid that the standard allows: 0.8 below 14.1',
  almond: 'the USDA mean has less linoleic acid than the specification: 1 below 95',
}

describe('the iodine value calculated from the typical profile', () => {
  it('lies in the stated range, for all but the listed oils', () => {
    const outside = allOils.filter((oil) => {
      const value = iodineFromProfile(oil)
      return value < oil.iodineValue.low || value > oil.iodineValue.high
    })
    expect(outside.map(({ id }) => id).sort()).toEqual(Object.keys(IODINE_EXCEPTIONS).sort())
  })

  it.each(Object.keys(IODINE_EXCEPTIONS))('of %s misses the range by less than 1.5', (id) => {
    const oil = oilOf(id)
    // A stated range is a limit for lots, the profile a mean of few; 1.5 is the reproducibility
    // that ISO 3961 leaves two laboratories below 100 g iodine per 100 g (about 3 %, from memory).
    expect(oil.iodineValue.low - iodineFromProfile(oil)).toBeLessThan(1.5)
  })

  it.each(allOils.map((oil) => [oil.id, oil] as const))(
    'of %s, held in the range, is the typical value',
    (_, oil) => {
      const { low, typical, high } = oil.iodineValue
      const held = Math.min(Math.max(iodineFromProfile(oil), low), high)
      expect(Math.abs(held - typical)).toBeLessThanOrEqual(ONE_DECIMAL)
    },
  )
})

describe('typical iodine values', () => {
  // National Research Council 1998, Nutrient Requirements of Swine, 10th ed., Table 12-6 (read).
  // Its fats are other lots than ours: 8 units is the spread between such lots for one fat.
  it.each([
    ['tallow-beef', 44],
    ['lard', 64],
    ['rapeseed-low-erucic', 118],
    ['coconut', 10],
    ['maize', 125],
    ['cottonseed', 105],
    ['olive', 86],
    ['palm', 50],
    ['groundnut', 92],
  ])('of %s lie within 8 of %d g/100 g in the table of the NRC', (id, printed) => {
    expect(Math.abs(oilOf(id).iodineValue.typical - printed)).toBeLessThanOrEqual(8)
  })
})
