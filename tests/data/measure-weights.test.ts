import { describe, expect, it } from 'vitest'
import { library } from '../../src/data/library'
import { fattyAcidMolarMass } from '../../src/domain/chemistry/fatty-acid'
import { acidMeasureOf, acidMeasures } from './measures'

/** Weights are written to two decimals (oxidation to three): half of the last one, and noise. */
const TWO_DECIMALS = 0.00501
const THREE_DECIMALS = 0.000501

const acidOf = (id: string) => {
  const acid = library.acids.get(id)
  if (!acid) throw new Error(`No acid ${id}`)
  return acid
}

const weightsOf = (measure: string) =>
  Object.entries(acidMeasureOf(measure).weights).filter(
    ([, { source }]) => !source.includes('borrowed from'),
  )

/** The number behind a label in the text that says where a weight comes from. */
function stated(source: string, label: string): number {
  const found = new RegExp(`${label} (-?[\\d.]+)`).exec(source)?.[1]
  if (found === undefined) throw new Error(`"${source}" states no ${label}`)
  return Number(found)
}

const clamp = (value: number) => Math.min(1, Math.max(0, value))
/** Share of a soap that dissolves in wash water, for its Krafft temperature (data/measures.md). */
const solubleFraction = (krafftC: number) => 1 / (1 + Math.exp((krafftC - 50) / 7))

describe('hardness weights', () => {
  const rule = (meltingC: number) => clamp((meltingC - 10) / 60)

  it.each(weightsOf('hardness'))('of %s follow the melting point they state', (_, weight) => {
    const difference = weight.weight - rule(stated(weight.source, 'melting point'))
    expect(Math.abs(difference)).toBeLessThanOrEqual(TWO_DECIMALS)
  })

  it.each(weightsOf('hardness'))('of %s agree with data/fatty-acids.json', (id, weight) => {
    const { meltingPointC } = acidOf(id)
    // Handbooks differ by up to 1 °C for a pure acid: 1/60, and the rounding of the weight.
    const difference = weight.weight - rule(Number(meltingPointC))
    expect(Math.abs(difference)).toBeLessThanOrEqual(1 / 60 + TWO_DECIMALS)
  })
})

describe('lather weights', () => {
  const soapOf = (source: string) =>
    (solubleFraction(stated(source, 'T_K')) * 100 * stated(source, 'speed')) /
    (100 + stated(source, 'CMC'))
  const lauric = soapOf(acidMeasureOf('lather').weights['lauric']?.source ?? '')

  it.each(weightsOf('lather'))('of %s follow the inputs they state', (_, { weight, source }) => {
    expect(Math.abs(weight - soapOf(source) / lauric)).toBeLessThanOrEqual(TWO_DECIMALS)
  })
})

describe('wear weights', () => {
  it.each(weightsOf('wear'))('of %s follow the inputs they state', (_, { weight, source }) => {
    const rule = solubleFraction(stated(source, 'T_K')) * stated(source, 'speed')
    expect(Math.abs(weight - rule)).toBeLessThanOrEqual(TWO_DECIMALS)
  })
})

describe('keeping weights', () => {
  // Cosgrove, Church & Pryor 1987, Lipids 22, 299 (abstract): oxidisability per mole rises with the
  // number of bis-allylic places; Fatemi & Hammond 1980, Lipids 15, 379 (memory): oleate about a
  // tenth of linoleate. Per gram, with linolenic acid as 1.
  const linolenic = acidOf('alpha-linolenic')
  const placesOf = (id: string) => {
    const { bisAllylic, doubleBonds } = acidOf(id)
    return bisAllylic > 0 ? bisAllylic : doubleBonds > 0 ? 0.1 : 0
  }
  const rule = (id: string) =>
    ((placesOf(id) / linolenic.bisAllylic) * fattyAcidMolarMass(linolenic)) /
    fattyAcidMolarMass(acidOf(id))

  it.each(weightsOf('keeping'))('of %s are minus its oxidisability per gram', (id, { weight }) => {
    expect(Math.abs(weight + rule(id))).toBeLessThanOrEqual(THREE_DECIMALS)
  })
})

describe('borrowed weights', () => {
  const borrowed = acidMeasures.flatMap((measure) =>
    Object.entries(measure.weights).flatMap(([acid, { weight, source, basis }]) => {
      const lender = /borrowed from ([a-z-]+)/.exec(source)?.[1]
      return lender ? [{ measure, acid, weight, basis, lender }] : []
    }),
  )

  it('are twelve in each of the seven acid measures', () => {
    expect(borrowed).toHaveLength(12 * 7)
  })

  it('equal the weight of the neighbour they name, and say they are assumed', () => {
    for (const { measure, acid, weight, basis, lender } of borrowed) {
      expect(weight, `${measure.id} ${acid}`).toBe(measure.weights[lender]?.weight)
      expect(basis).toBe('assumption')
    }
  })
})

describe('the set of measures', () => {
  it('stands in the order of every page and paper and hides only foam life', () => {
    expect(library.measures.filter(({ shown }) => shown).map(({ id }) => id)).toEqual([
      'hardness',
      'wear',
      'lather',
      'mildness',
      'conditioning',
      'keeping',
      'cost',
    ])
    expect(library.measures.filter(({ shown }) => !shown).map(({ id }) => id)).toEqual([
      'foam-life',
    ])
  })

  it('gives every pure acid 0 to 100 points', () => {
    for (const { id, offset, weights } of acidMeasures) {
      for (const { weight } of Object.values(weights)) {
        expect(offset + 100 * weight, id).toBeGreaterThanOrEqual(0)
        expect(offset + 100 * weight, id).toBeLessThanOrEqual(100)
      }
    }
  })

  it('says for each measure what it cannot say', () => {
    for (const { id, limits } of library.measures) expect(limits.length, id).toBeGreaterThan(0)
  })
})
