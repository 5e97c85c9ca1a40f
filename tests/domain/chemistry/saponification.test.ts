import { describe, expect, it } from 'vitest'
import { library } from '../../../src/data/library'
import { calculatedSaponificationValue } from '../../../src/domain/chemistry/saponification'

const { acids } = library
const PURE = 0

/** Coconut as the worked example of AOCS Cd 3a-94 below takes it, in g per 100 g of fatty acids. */
const COCONUT = {
  caproic: 0.64,
  caprylic: 7.95,
  capric: 6.37,
  lauric: 47.33,
  myristic: 17.83,
  palmitic: 8.7,
  stearic: 2.97,
  oleic: 6.15,
  linoleic: 1.91,
  arachidic: 0.1,
  gondoic: 0.05,
}

describe('the saponification value of a triglyceride', () => {
  // AOCS Cd 3a-94 with its printed constants (56.1, 92.09, 18), worked by hand for the profile
  // above: 100 / 206.021 mol of acids in 100 g; 3 × 56100 / (3 × 206.021 + 92.09 - 54) = 256.49.
  it('of coconut agrees with AOCS Cd 3a-94 within its rounded constants', () => {
    const value = calculatedSaponificationValue(COCONUT, acids, PURE, 'triglyceride')
    // 56.1 for 56.106 and 18 for 18.015 shift the result by 0.05; 0.1 leaves as much again.
    expect(Math.abs(value - 256.49)).toBeLessThanOrEqual(0.1)
  })

  // Pure triglycerides, from the molar masses catalogues print (trilaurin 639.0, tripalmitin 807.3,
  // triolein 885.4, tristearin 891.5 g/mol; memory): 3 × 56106 / M by hand.
  it.each([
    ['lauric', 263.4],
    ['palmitic', 208.5],
    ['oleic', 190.1],
    ['stearic', 188.8],
  ])('of pure tri-%s is %d mg KOH/g', (acid, byHand) => {
    const value = calculatedSaponificationValue({ [acid]: 100 }, acids, PURE, 'triglyceride')
    // The catalogue masses round to 0.1 g/mol, 0.04 mg KOH/g for trilaurin; half a last figure more.
    expect(Math.abs(value - byHand)).toBeLessThanOrEqual(0.1)
  })

  it('falls in proportion to the unsaponifiable matter', () => {
    const pure = calculatedSaponificationValue(COCONUT, acids, PURE, 'triglyceride')
    const diluted = calculatedSaponificationValue(COCONUT, acids, 0.1, 'triglyceride')
    expect(diluted / pure).toBeCloseTo(0.9, 12)
  })

  it('takes no more alkali for a hydroxyl: castor lies below olive', () => {
    const castor = calculatedSaponificationValue({ ricinoleic: 100 }, acids, PURE, 'triglyceride')
    const olive = calculatedSaponificationValue({ oleic: 100 }, acids, PURE, 'triglyceride')
    expect(castor).toBeLessThan(olive)
  })
})

describe('the saponification value of free acids', () => {
  // Acid values as fatty-acid makers print them (memory): stearic 197, lauric 280, oleic 199.
  it.each([
    ['stearic', 197.2],
    ['lauric', 280.1],
    ['oleic', 198.6],
  ])('of %s acid is its acid value, %d mg KOH/g', (acid, byHand) => {
    // By hand: 56106 / M, so half a last figure.
    const value = calculatedSaponificationValue({ [acid]: 100 }, acids, PURE, 'free-acid')
    expect(Math.abs(value - byHand)).toBeLessThanOrEqual(0.05)
  })

  it('is 4 to 7 percent above that of the triglyceride of the same acids', () => {
    for (const acid of ['lauric', 'palmitic', 'stearic', 'oleic']) {
      const free = calculatedSaponificationValue({ [acid]: 100 }, acids, PURE, 'free-acid')
      const bound = calculatedSaponificationValue({ [acid]: 100 }, acids, PURE, 'triglyceride')
      expect(free / bound).toBeGreaterThan(1.04)
      expect(free / bound).toBeLessThan(1.07)
    }
  })
})

describe('the saponification value of jojoba wax', () => {
  // By hand: one eicosenoate of the mean alcohol, 310.522 + 312.86 - 18.015 = 605.37 g/mol;
  // 56106 / 605.37 = 92.68.
  it('counts one ester for each acid and its alcohol', () => {
    const value = calculatedSaponificationValue({ gondoic: 100 }, acids, PURE, 'wax-ester')
    expect(Math.abs(value - 92.68)).toBeLessThanOrEqual(0.01)
  })

  it('ignores the unsaponifiables, which are its alcohols', () => {
    const given = (fraction: number) =>
      calculatedSaponificationValue({ gondoic: 100 }, acids, fraction, 'wax-ester')
    expect(given(0.51)).toBe(given(0))
  })

  it('is about half of that of an oil', () => {
    const wax = calculatedSaponificationValue({ gondoic: 100 }, acids, PURE, 'wax-ester')
    const oil = calculatedSaponificationValue({ oleic: 100 }, acids, PURE, 'triglyceride')
    expect(wax / oil).toBeGreaterThan(0.45)
    expect(wax / oil).toBeLessThan(0.55)
  })
})

describe('the saponification value of other waxes', () => {
  // Pure myricyl palmitate, C46H92O2, 677.2 g/mol (catalogue, from memory): 56105 / 677.24 = 82.8.
  // Myricyl alcohol C30H62O is 438.8 g/mol by hand: 30 × 12.011 + 62 × 1.008 + 15.999.
  it('of myricyl palmitate, the chief ester of beeswax, is 82.8 mg KOH/g', () => {
    const rest = { gPerMolOfAcid: 438.83, doubleBonds: 0 }
    const value = calculatedSaponificationValue({ palmitic: 100 }, acids, PURE, 'wax-ester', rest)
    expect(Math.abs(value - 82.84)).toBeLessThanOrEqual(0.02)
  })
})

describe('the saponification value of resin acids', () => {
  // Abietic acid C20H30O2, 302.46 g/mol: 56105 / 302.46 = 185.5, its acid value (handbooks, from memory: 185).
  it('of abietic acid is 185.5 mg KOH/g: its rings take two hydrogens each', () => {
    const value = calculatedSaponificationValue({ abietic: 100 }, acids, PURE, 'free-acid')
    expect(Math.abs(value - 185.5)).toBeLessThanOrEqual(0.05)
  })
})
