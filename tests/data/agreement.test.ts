import { describe, expect, it } from 'vitest'
import {
  agreements,
  basisCounts,
  disguises,
  halfWidthPercent,
  published,
  publishedMassPercent,
  unread,
  wrongPassPercent,
} from '../../notebooks/oil-agreement'

const sum = (counts: Iterable<number>) => [...counts].reduce((total, count) => total + count, 0)

describe('the oil-data notebook', () => {
  it('counts each of the 853 figures once, for limits and for typical shares', () => {
    const { limits, typical } = basisCounts()
    expect(sum(limits.values())).toBe(853)
    expect(sum(typical.values())).toBe(853)
  })

  it('parts the oils into those with read ranges and the others', () => {
    expect(published.length + unread.length).toBe(agreements.length)
    expect(published.map(({ id }) => id)).toContain('coconut')
    expect(unread.map(({ id }) => id)).toContain('lard')
  })

  // By hand: coconut, CXS 210: (265 - 248) / (265 + 248) = 3.31 %.
  it('reckons the half-width of a range over its middle', () => {
    const coconut = agreements.find(({ id }) => id === 'coconut')
    expect(coconut && halfWidthPercent(coconut)).toBeCloseTo(3.314, 3)
  })

  it('places a value at 0 on the low end of its range and at 1 on the high end', () => {
    for (const { saponification, iodine } of agreements) {
      for (const { low, high, calculated, position } of [saponification, iodine]) {
        expect(low + position * (high - low)).toBeCloseTo(calculated, 9)
      }
    }
  })

  it('puts every profile under every name, its own too', () => {
    expect(disguises()).toHaveLength(published.length ** 2)
    const own = disguises().filter(({ profile, range }) => profile === range)
    expect(own.every(({ profile, iodine }) => iodine === profile.iodine.inside)).toBe(true)
  })

  it('lets fewer wrong profiles pass both tests than either', () => {
    const alkali = wrongPassPercent(({ saponification }) => saponification)
    const iodine = wrongPassPercent((disguise) => disguise.iodine)
    const both = wrongPassPercent(({ saponification, iodine: passes }) => saponification && passes)
    expect(both).toBeLessThanOrEqual(Math.min(alkali, iodine))
    expect(both).toBeGreaterThanOrEqual(alkali + iodine - 100)
  })

  it('gives a share of read acid between 0 and 100 percent', () => {
    expect(publishedMassPercent()).toBeGreaterThan(0)
    expect(publishedMassPercent()).toBeLessThan(100)
  })
})
