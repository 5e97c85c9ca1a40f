import { describe, expect, it } from 'vitest'
import { library } from '../../../src/data/library'
import { calculatedIodineValue, iodineFactor } from '../../../src/domain/chemistry/iodine'
import type { FattyAcid } from '../../../src/domain/chemistry/fatty-acid'

const { acids } = library

const acidOf = (id: string): FattyAcid => {
  const acid = acids.get(id)
  if (!acid) throw new Error(`No acid ${id}`)
  return acid
}

describe('the iodine factor', () => {
  // AOCS Cd 1c-85, factors for triglycerides, printed to three decimals (published).
  it.each([
    ['palmitoleic', 0.95],
    ['oleic', 0.86],
    ['linoleic', 1.732],
    ['alpha-linolenic', 2.616],
    ['gondoic', 0.785],
    ['erucic', 0.723],
  ])('of %s in triglycerides is %d, as AOCS Cd 1c-85 prints it', (id, printed) => {
    // Half a last figure and 0.0005 for the older atomic weights of the method.
    expect(Math.abs(iodineFactor(acidOf(id), 'triglyceride') - printed)).toBeLessThanOrEqual(0.001)
  })

  // AOCS Cd 1c-85, factors for free fatty acids (published), the last figure of each as printed.
  it.each([
    ['palmitoleic', 0.9976],
    ['oleic', 0.8986],
    ['linoleic', 1.81],
    ['alpha-linolenic', 2.735],
    ['gondoic', 0.8175],
    ['erucic', 0.7497],
  ])('of free %s acid is %d, as AOCS Cd 1c-85 prints it', (id, printed) => {
    expect(Math.abs(iodineFactor(acidOf(id), 'free-acid') - printed)).toBeLessThanOrEqual(0.0006)
  })

  it('of a saturated acid is 0', () => {
    expect(iodineFactor(acidOf('stearic'), 'triglyceride')).toBe(0)
  })
})

describe('the calculated iodine value', () => {
  // By hand with the printed factors of AOCS Cd 1c-85 for an olive oil:
  // 1.29 × 0.950 + 73.21 × 0.860 + 10.03 × 1.732 + 0.78 × 2.616 + 0.32 × 0.785 = 83.85.
  it('of olive oil agrees with the printed factors', () => {
    const saturated = { palmitic: 11.6, stearic: 2.01, arachidic: 0.43, behenic: 0.33 }
    const olive = {
      palmitoleic: 1.29,
      oleic: 73.21,
      linoleic: 10.03,
      'alpha-linolenic': 0.78,
      gondoic: 0.32,
      ...saturated,
    }
    // The shares add up to 100.00. Five factors rounded to 0.0005 on 86 g make at most 0.04.
    const value = calculatedIodineValue(olive, acids, 0, 'triglyceride')
    expect(Math.abs(value - 83.85)).toBeLessThanOrEqual(0.05)
  })

  it('falls in proportion to the unsaponifiable matter', () => {
    const pure = calculatedIodineValue({ oleic: 100 }, acids, 0, 'triglyceride')
    const diluted = calculatedIodineValue({ oleic: 100 }, acids, 0.06, 'triglyceride')
    expect(diluted / pure).toBeCloseTo(0.94, 12)
  })

  // By hand: two double bonds in 605.37 g/mol of wax, 100 × 2 × 253.808 / 605.37 = 83.85.
  it('of a wax counts the double bond of the acid and of its alcohol', () => {
    const value = calculatedIodineValue({ gondoic: 100 }, acids, 0.5, 'wax-ester')
    expect(Math.abs(value - 83.85)).toBeLessThanOrEqual(0.02)
  })

  it('of a hard wax of saturated acid counts the alcohol alone', () => {
    const hard = calculatedIodineValue({ arachidic: 100 }, acids, 0, 'wax-ester')
    const soft = calculatedIodineValue({ gondoic: 100 }, acids, 0, 'wax-ester')
    // Two hydrogens more in 605 g/mol change the mass by 0.3 %.
    expect(Math.abs(hard / soft - 0.5)).toBeLessThan(0.003)
  })
})
