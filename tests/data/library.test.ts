import { describe, expect, it } from 'vitest'
import fattyAcids from '../../data/fatty-acids.json'
import { library } from '../../src/data/library'
import { meanAcidMolarMass, typicalProfile } from '../../src/domain/chemistry/profile'
import { acidMeasureOf } from './measures'
import { allOils, oilOf } from './oils'

describe('the library', () => {
  it('holds 84 oils, 33 acids, 8 measures and 4 reference bars', () => {
    expect(library.oils.size).toBe(84)
    expect(library.acids.size).toBe(33)
    expect(library.measures).toHaveLength(8)
    expect(library.referenceBars).toHaveLength(4)
  })

  it('lists no source that no figure cites', () => {
    const figures = [...library.oils.values(), ...library.referenceBars, ...fattyAcids]
    const cited = new Set(JSON.stringify(figures).split('"'))
    expect([...library.sources.keys()].filter((id) => !cited.has(id))).toEqual([])
  })

  it.each([
    ['canola', 'rapeseed-low-erucic'],
    ['pko', 'palm-kernel'],
    ['beef fat', 'tallow-beef'],
    ['mango butter', 'mango-kernel'],
    ['corn oil', 'maize'],
    ['peanut oil', 'groundnut'],
    ['rbo', 'rice-bran'],
    ['flaxseed oil', 'linseed'],
    ['ghee', 'butterfat'],
    ['evoo', 'olive'],
    ['mct oil', 'coconut-fractionated'],
    ['schmaltz', 'chicken-fat'],
    ['colophony', 'rosin'],
    ['wool fat', 'lanolin'],
  ])('finds %s as a trade name of %s alone', (typed, id) => {
    const found = allOils.filter((oil) =>
      [oil.name, oil.shortName, ...oil.synonyms].some((name) => name.toLowerCase() === typed),
    )
    expect(found.map((oil) => oil.id)).toEqual([id])
  })
})

describe('the kind of a fat', () => {
  it('is a wax ester for three waxes, a free acid for acids and rosin, else a triglyceride', () => {
    const ofKind = (kind: string) => allOils.filter((oil) => oil.kind === kind).map(({ id }) => id)
    expect(ofKind('wax-ester')).toEqual(['jojoba', 'beeswax', 'lanolin'])
    expect(ofKind('free-acid')).toEqual([
      'stearic-acid-triple-pressed',
      'stearic-acid-65',
      'lauric-acid',
      'myristic-acid',
      'oleic-acid',
      'rosin',
    ])
    expect(ofKind('triglyceride')).toHaveLength(75)
  })

  it('says of every wax, and of nothing else, how much lye reaches, none of it at the lean end', () => {
    for (const { id, kind, reacts } of allOils) {
      expect(reacts !== undefined, id).toBe(kind === 'wax-ester')
      expect([reacts?.cold.low ?? 0, reacts?.hot.low ?? 0], id).toEqual([0, 0])
    }
  })

  // Beeswax and lanolin by hand: 56105 / (282.65 + 324 - 18.015) = 95.3 with the mean acid of the profile.
  it('gives every wax but jojoba what goes free beside its acids, by the balance of its mass', () => {
    for (const { id, kind, waxRest, acids, unsaponifiableGPerKg } of allOils) {
      expect(waxRest !== undefined, id).toBe(kind === 'wax-ester' && id !== 'jojoba')
      if (!waxRest) continue
      const part = unsaponifiableGPerKg.typical / 1000
      const acidMass = meanAcidMolarMass(typicalProfile(acids), library.acids)
      expect(waxRest.gPerMolOfAcid, id).toBeCloseTo((part * (acidMass - 18.015)) / (1 - part), -0.5)
    }
  })
})

describe('the tags of an oil', () => {
  it('mark every oil but the fatty acids as of plants or of animals, never as both', () => {
    for (const { id, tags, kind } of allOils) {
      const origins = ['plant', 'animal', 'origin-varies'].filter((tag) => tags.includes(tag))
      expect(origins, id).toHaveLength(1)
      expect(tags.includes('origin-varies'), id).toBe(kind === 'free-acid' && id !== 'rosin')
    }
  })

  it('mark as vegan what is of plants, and nothing else', () => {
    for (const { id, tags } of allOils) {
      expect(tags.includes('vegan'), id).toBe(tags.includes('plant'))
    }
  })

  // The four oils of the oil palm Elaeis guineensis, CXS 210-1999 section 2.1; shortening holds two of them.
  it('mark the four palm oils and shortening as palm-derived', () => {
    const palm = allOils.filter(({ tags }) => tags.includes('palm-derived')).map(({ id }) => id)
    expect(palm).toEqual([
      'palm',
      'palm-kernel',
      'palm-olein',
      'palm-stearin',
      'shortening-soya-palm',
    ])
  })

  // EU Regulation 1169/2011, Annex II, from memory: peanuts, soybeans, sesame, milk, nuts, gluten, mustard.
  it.each([
    ['groundnut', 'peanut'],
    ['soya', 'soy'],
    ['soya-hydrogenated', 'soy'],
    ['soya-high-oleic', 'soy'],
    ['shortening-soya-palm', 'soy'],
    ['mustard', 'mustard'],
    ['sesame', 'sesame'],
    ['butterfat', 'dairy'],
    ['almond', 'tree-nut'],
    ['hazelnut', 'tree-nut'],
    ['walnut', 'tree-nut'],
    ['macadamia', 'tree-nut'],
    ['wheatgerm', 'gluten-source'],
  ])('mark %s with the allergen %s', (id, tag) => {
    expect(oilOf(id).tags).toContain(tag)
  })
})

describe('conditioning', () => {
  it('counts unsaponifiables at 2 points a gram per 100 g, up to 12', () => {
    expect(acidMeasureOf('conditioning').unsaponifiable).toMatchObject({
      pointsPerGPer100G: 2,
      cap: 12,
    })
  })
})
