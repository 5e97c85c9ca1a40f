import { describe, expect, it } from 'vitest'
import fattyAcids from '../../data/fatty-acids.json'
import { library } from '../../src/data/library'
import { acidMeasureOf } from './measures'
import { allOils, oilOf } from './oils'

describe('the library', () => {
  it('holds 63 oils, 32 fatty acids, 8 measures and 4 reference bars', () => {
    expect(library.oils.size).toBe(63)
    expect(library.acids.size).toBe(32)
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
  ])('finds %s as a trade name of %s alone', (typed, id) => {
    const found = allOils.filter((oil) =>
      [oil.name, oil.shortName, ...oil.synonyms].some((name) => name.toLowerCase() === typed),
    )
    expect(found.map((oil) => oil.id)).toEqual([id])
  })
})

describe('the kind of a fat', () => {
  it('is a wax ester for jojoba, a free acid for both stearic acids, else a triglyceride', () => {
    const ofKind = (kind: string) => allOils.filter((oil) => oil.kind === kind).map(({ id }) => id)
    expect(ofKind('wax-ester')).toEqual(['jojoba'])
    expect(ofKind('free-acid')).toEqual(['stearic-acid-triple-pressed', 'stearic-acid-65'])
    expect(ofKind('triglyceride')).toHaveLength(60)
  })
})

describe('the tags of an oil', () => {
  it('mark every oil but the stearic acids as of plants or of animals, never as both', () => {
    for (const { id, tags, kind } of allOils) {
      const origins = ['plant', 'animal', 'origin-varies'].filter((tag) => tags.includes(tag))
      expect(origins, id).toHaveLength(1)
      expect(tags.includes('origin-varies'), id).toBe(kind === 'free-acid')
    }
  })

  it('mark as vegan what is of plants, and nothing else', () => {
    for (const { id, tags } of allOils) {
      expect(tags.includes('vegan'), id).toBe(tags.includes('plant'))
    }
  })

  // The four oils of the oil palm Elaeis guineensis, CXS 210-1999 section 2.1.
  it('mark the four palm oils as palm-derived', () => {
    const palm = allOils.filter(({ tags }) => tags.includes('palm-derived')).map(({ id }) => id)
    expect(palm).toEqual(['palm', 'palm-kernel', 'palm-olein', 'palm-stearin'])
  })

  // EU Regulation 1169/2011, Annex II, from memory: peanuts, soybeans, sesame, milk, nuts, gluten.
  it.each([
    ['groundnut', 'peanut'],
    ['soya', 'soy'],
    ['soya-hydrogenated', 'soy'],
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
