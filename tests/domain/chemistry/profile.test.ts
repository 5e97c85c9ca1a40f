import { describe, expect, it } from 'vitest'
import { library } from '../../../src/data/library'
import { meanAcidMolarMass, typicalProfile } from '../../../src/domain/chemistry/profile'

const { acids } = library

describe('the mean molar mass of a profile', () => {
  it('of one acid is the mass of that acid', () => {
    // By hand: 18 × 12.011 + 36 × 1.008 + 2 × 15.999 = 284.484 g/mol.
    expect(meanAcidMolarMass({ stearic: 100 }, acids)).toBeCloseTo(284.484, 6)
  })

  it('of equal masses of two acids is their harmonic mean', () => {
    // By hand: 100 / (50 / 200.322 + 50 / 284.484) = 235.098 g/mol.
    expect(meanAcidMolarMass({ lauric: 50, stearic: 50 }, acids)).toBeCloseTo(235.098, 3)
  })

  it('does not depend on what the shares add up to', () => {
    const whole = meanAcidMolarMass({ lauric: 40, oleic: 60 }, acids)
    expect(meanAcidMolarMass({ lauric: 2, oleic: 3 }, acids)).toBeCloseTo(whole, 9)
  })

  it('of coconut lies between caprylic and palmitic acid', () => {
    const coconut = library.oils.get('coconut')
    const mean = meanAcidMolarMass(typicalProfile(coconut?.acids ?? {}), acids)
    expect(mean).toBeGreaterThan(200)
    expect(mean).toBeLessThan(212)
  })

  it('throws for an acid that is not listed, naming it', () => {
    expect(() => meanAcidMolarMass({ unobtainic: 100 }, acids)).toThrow(/unobtainic/)
  })

  it('throws for a profile without acids instead of giving NaN', () => {
    expect(() => meanAcidMolarMass({}, acids)).toThrow(/no molar mass/)
    expect(() => meanAcidMolarMass({ oleic: 0 }, acids)).toThrow(/no molar mass/)
  })
})
