import { describe, expect, it } from 'vitest'
import { library } from '../../../src/data/library'
import { fattyAcidMolarMass, type FattyAcid } from '../../../src/domain/chemistry/fatty-acid'
import fattyAcids from '../../../data/fatty-acids.json'

const massOf = (id: string) => {
  const acid = library.acids.get(id)
  if (!acid) throw new Error(`No acid ${id}`)
  return fattyAcidMolarMass(acid)
}

describe('the molar mass of a fatty acid', () => {
  // Molecular weights as chemical catalogues print them to 0.1 g/mol, from memory. They round, and
  // some still use older atomic weights: 0.1 g/mol covers both.
  it.each([
    ['butyric', 88.1],
    ['caprylic', 144.2],
    ['lauric', 200.3],
    ['palmitic', 256.4],
    ['stearic', 284.5],
    ['oleic', 282.5],
    ['linoleic', 280.4],
    ['alpha-linolenic', 278.4],
    ['ricinoleic', 298.5],
    ['dihydroxystearic', 316.5],
    ['vernolic', 296.4],
    ['arachidonic', 304.5],
    ['erucic', 338.6],
    ['lignoceric', 368.6],
  ])('of %s is %d g/mol, as catalogues print it', (id, catalogue) => {
    expect(Math.abs(massOf(id) - catalogue)).toBeLessThanOrEqual(0.1)
  })

  it('equals the mass stated in data/fatty-acids.json to its last figure', () => {
    for (const acid of fattyAcids) {
      // Half of the third decimal, and the rounding noise of a sum of five products.
      expect(Math.abs(fattyAcidMolarMass(acid) - acid.molarMassGPerMol), acid.id).toBeLessThan(
        0.000501,
      )
    }
  })

  it('falls by two hydrogens (2.016 g/mol) with each double bond', () => {
    expect(massOf('stearic') - massOf('oleic')).toBeCloseTo(2.016, 9)
    expect(massOf('oleic') - massOf('linoleic')).toBeCloseTo(2.016, 9)
  })

  it('grows by an oxygen (15.999 g/mol) with a hydroxyl', () => {
    expect(massOf('ricinoleic') - massOf('oleic')).toBeCloseTo(15.999, 9)
  })

  it('grows by an oxygen less two hydrogens (13.983 g/mol) with an epoxide', () => {
    expect(massOf('vernolic') - massOf('oleic')).toBeCloseTo(13.983, 9)
  })
})

describe('the listed fatty acids', () => {
  const acids: readonly FattyAcid[] = [...library.acids.values()]

  it('name as many carbons and double bonds in their shorthand as they have', () => {
    for (const { id, shorthand, carbons, doubleBonds } of acids) {
      expect(shorthand, id).toContain(`C${carbons}:${doubleBonds}`)
    }
  })

  it('have fewer bis-allylic places than double bonds', () => {
    for (const { id, doubleBonds, bisAllylic } of acids) {
      expect(bisAllylic, id).toBeLessThanOrEqual(Math.max(0, doubleBonds - 1))
    }
  })

  it('melt higher, the longer the saturated even chain', () => {
    const even = acids
      .filter((acid) => acid.doubleBonds === 0 && acid.hydroxyls === 0 && acid.carbons % 2 === 0)
      .filter((acid) => acid.carbons >= 6)
      .sort((a, b) => a.carbons - b.carbons)
    const points = even.map(({ meltingPointC }) => meltingPointC)
    expect(even).toHaveLength(10)
    expect(points).toEqual([...points].sort((a, b) => Number(a) - Number(b)))
  })

  // Kaneko et al. 1997, J. Phys. Chem. B 101, 1803 (abstract read): 16.3 °C for the stable form.
  it('give oleic acid the melting point of its stable form', () => {
    expect(library.acids.get('oleic')?.meltingPointC).toBe(16.3)
  })
})
