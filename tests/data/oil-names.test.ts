import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { wordsOf } from '../../src/data/name-words'
import { OilNames } from '../../src/data/oil-names'
import { oilNamesSchema, otherNames } from '../../src/data/oil-names-file'

const oils = [...library.oils.values()]
const names = new OilNames(oils)

/** Every name of every oil, with the languages it stands in. */
const elsewhere = Object.entries(otherNames.names).flatMap(([id, byLanguage]) =>
  Object.entries(byLanguage).flatMap(([language, called]) =>
    called.map((name) => ({ id, language, name })),
  ),
)
const own = oils.flatMap(({ id, name, shortName, synonyms }) =>
  [name, shortName, ...synonyms].map((one) => ({ id, language: 'en', name: one })),
)
const all = [...own, ...elsewhere]
const shared = new Map(
  otherNames.shared.map(({ name, oils: ids }) => [wordsOf(name).join(' '), ids]),
)

/** The id that a name leads to, or what it leads to instead. */
function oilOf(name: string): string {
  const found = names.find(name)
  return found.status === 'oil' ? found.oil.id : found.status
}

/** The ids that a name can mean. */
function oilsOf(name: string): string[] {
  const found = names.find(name)
  if (found.status === 'oil') return [found.oil.id]
  return found.status === 'several' ? found.oils.map(({ id }) => id) : []
}

const dotless = (name: string) => name.normalize('NFKD').replace(/\p{M}/gu, '')
const withE = (name: string) =>
  name
    .replace(/ä/gu, 'ae')
    .replace(/ö/gu, 'oe')
    .replace(/ü/gu, 'ue')
    .replace(/Ö/gu, 'Oe')
    .replace(/ß/gu, 'ss')

describe('names in other languages', () => {
  test('all oils have names in all four, and no other oil has any', () => {
    expect(Object.keys(otherNames.names).sort()).toEqual(oils.map(({ id }) => id).sort())
  })

  test.each(elsewhere)('$language “$name” is $id', ({ id, name }) => {
    expect(names.find(name)).toEqual({ status: 'oil', oil: library.oils.get(id) })
  })

  test.each(elsewhere)(
    '$language “$name” is $id without dots and accents, and in capitals',
    (one) => {
      expect(oilOf(dotless(one.name))).toBe(one.id)
      expect(oilOf(withE(one.name))).toBe(one.id)
      expect(oilOf(one.name.toUpperCase())).toBe(one.id)
    },
  )

  test.each(elsewhere.filter(({ name }) => name.length >= 8))(
    '$language “$name” with any letter left out is $id, or asked about, and never another oil',
    ({ id, name }) => {
      // A slip in “refined” leaves the name of the same fat crude, whose lye is the same within its lots.
      const meant = [id, id.replace(/-refined$/u, '')]
      const slips = [...name].map((_, at) => oilsOf(name.slice(0, at) + name.slice(at + 1)))
      const right = (ids: readonly string[]) => ids.some((one) => meant.includes(one))
      expect(slips.filter((ids) => ids.length > 0 && !right(ids))).toEqual([])
      expect(slips.filter(right).length).toBeGreaterThan(name.length / 2)
    },
  )

  test('no name means two oils unless it is listed as shared', () => {
    const byKey = new Map<string, Set<string>>()
    for (const { id, name } of all) {
      const key = wordsOf(name).join('')
      byKey.set(key, new Set([...(byKey.get(key) ?? []), id]))
    }
    const twofold = [...byKey].filter(([key, ids]) => ids.size > 1 && !shared.has(key))
    expect(twofold).toEqual([])
  })

  test.each(otherNames.shared)('“$name” is asked about', ({ name, oils: ids }) => {
    const found = names.find(name)
    expect(found.status === 'several' && found.oils.map((oil) => oil.id).sort()).toEqual(
      [...ids].sort(),
    )
  })

  test('a shared name says which oils, and they are in the library', () => {
    for (const { oils: ids } of otherNames.shared)
      for (const id of ids) expect(library.oils.has(id)).toBe(true)
    const once = { basis: 'memory', names: {}, shared: [{ name: 'Talg', oils: ['tallow-beef'] }] }
    expect(oilNamesSchema.safeParse(once).success).toBe(false)
  })

  test.each([
    ['Olivenöl nativ extra', 'olive'],
    ['natives Olivenöl', 'olive'],
    ['huile d’olive vierge', 'olive'],
    ["huile d'amande douce", 'almond'],
    ['aceite de oliva virgen extra', 'olive'],
    ['olio extra vergine di oliva', 'olive'],
    ['Kokos', 'coconut'],
    ['Raps', 'rapeseed-low-erucic'],
    ['karite', 'shea'],
    ['Weizenkeim', 'wheatgerm'],
    ['coco', 'coconut'],
    ['ricin', 'castor'],
  ])('“%s” is %s, as people shorten or lengthen it', (name, id) => {
    expect(oilOf(name)).toBe(id)
  })

  test.each(['gehärtetes Palmöl', 'fraktioniertes Palmkernöl', 'huile de palmiste fractionnée'])(
    '“%s” is another fat and is not taken for the plain one',
    (name) => {
      expect(oilOf(name)).toBe('unknown')
    },
  )
})

describe('the search that typing asks', () => {
  const found = (text: string) => names.search(text).map(({ oil }) => oil.id)

  test('nothing typed shows all oils', () => {
    expect(found('')).toEqual(oils.map(({ id }) => id))
  })

  test.each(all)('“$name” finds $id', ({ id, name }) => {
    expect(found(name)).toContain(id)
  })

  test.each([
    ['olive', 'olive'],
    ['coc', 'coconut'],
    ['cocnut', 'coconut'],
    ['cocnu', 'coconut'],
    ['avacado', 'avocado'],
    ['Koko', 'coconut'],
    ['rapsoel', 'rapeseed-low-erucic'],
    ['Sussmandel', 'almond'],
    ['saindoux', 'lard'],
    ['girasol', 'sunflower'],
    ['pko', 'palm-kernel'],
    ['canola', 'rapeseed-low-erucic'],
  ])('“%s” puts %s first', (text, id) => {
    expect(found(text)[0]).toBe(id)
  })

  test('it says by which other name it found an oil', () => {
    expect(names.search('Kokosö')[0]).toEqual({ oil: library.oils.get('coconut'), by: 'Kokosöl' })
    expect(names.search('Coconut')[0]?.by).toBeUndefined()
  })

  test('tags find their oils, after names', () => {
    expect(found('vegan').length).toBeGreaterThan(20)
    expect(found('tree-nut')).toContain('walnut')
  })

  test('what is no oil finds none', () => {
    expect(found('xyzzy')).toEqual([])
  })
})

describe('what an unknown name may mean', () => {
  const candidates = (name: string) => names.suggest(name, 4).map(({ id }) => id)

  test.each([
    ['fractionated palm kernel oil', 'palm-kernel'],
    ['hydrogenated palm', 'palm'],
    ['avokadoo', 'avocado'],
    ['Ölsäurereiche Sonnenblume', 'sunflower-high-oleic'],
  ])('“%s” may be %s', (name, id) => {
    expect(candidates(name)).toContain(id)
  })

  test.each(['', 'oil', 'of the', 'xyzzy'])('“%s” suggests nothing', (name) => {
    expect(candidates(name)).toEqual([])
  })
})
