import { describe, expect, it } from 'vitest'
import fattyAcids from '../../data/fatty-acids.json'
import measures from '../../data/measures.json'
import oils from '../../data/oils.json'
import referenceBars from '../../data/reference-bars.json'
import sources from '../../data/sources.json'
import { parseLibrary } from '../../src/data/library'

const files = { acids: fattyAcids, oils, measures, referenceBars, sources }

/** A copy of the data files with the value at a path such as `oils.0.colour` replaced. */
function withValue(path: string, value: unknown): typeof files {
  const copy = structuredClone(files)
  const keys = path.split('.')
  const last = keys.pop()
  const holder = keys.reduce<unknown>((place, key) => Reflect.get(Object(place), key), copy)
  if (last === undefined || typeof holder !== 'object' || holder === null) {
    throw new Error(`There is no place ${path} in the data files`)
  }
  if (value === undefined) Reflect.deleteProperty(holder, last)
  else Reflect.set(holder, last, value)
  return copy
}

const [coconut] = oils
const numberOfOils = oils.length

it('the data files as they are pass', () => {
  expect(() => parseLibrary(files)).not.toThrow()
})

describe('the schema refuses', () => {
  it.each<[what: string, path: string, value: unknown, message: RegExp]>([
    ['a typical share above its high', 'oils.0.acids.lauric.high', 47, /does not rise/],
    ['a low iodine value above the typical', 'oils.0.iodineValue.low', 9, /does not rise/],
    ['a negative share', 'oils.0.acids.lauric.low', -1, /lauric/],
    ['a share that is text', 'oils.0.acids.lauric.low', '45', /lauric/],
    ['a share that is not a number', 'oils.0.acids.lauric.low', Number.NaN, /lauric/],
    ['a range without a source', 'oils.0.acids.lauric.source', undefined, /source/],
    ['a profile that adds up to 102', 'oils.0.acids.oleic.typical', 8.2, /add up to 100/],
    ['a profile without acids', 'oils.0.acids', {}, /add up to 100/],
    ['unsaponifiables above their limit', 'oils.0.unsaponifiableGPerKg.high', 1, /above the limit/],
    ['a colour by name', 'oils.0.colour', 'blue', /six capital hex digits/],
    ['a short name of 17 letters', 'oils.0.shortName', 'Seventeen letters', /shortName/],
    ['a code with a figure in it', 'oils.0.code', 'C0c', /three or four letters/],
    ['a key that nothing reads', 'oils.0.price', 3, /price/],
    ['an unknown kind of fat', 'oils.0.kind', 'mineral', /kind/],
    ['a CAS number with a slip', 'oils.0.cas', '8001-31-08', /CAS number/],
    ['an oil listed twice', `oils.${numberOfOils}`, coconut, /oil id "coconut" is used 2 times/],
    ['a synonym of two oils', 'oils.0.synonyms.0', 'Canola', /name of an oil "canola"/],
    ['a code of two oils', 'oils.1.code', 'coco', /oil code "coco" is used 2 times/],
    ['a colour of two oils', 'oils.1.colour', '#1872B4', /oil colour "#1872B4"/],
    [
      'an acid that is not listed',
      'oils.0.acids.lauroleic',
      coconut?.acids.gondoic,
      /Oil coconut names the acid lauroleic/,
    ],
    ['a source that is not listed', 'oils.0.inci.source', 'hearsay', /cites source hearsay/],
    [
      'a recalled figure marked as published',
      'oils.0.inci.basis',
      'published',
      /marked published, but its source inci-memory is marked memory/,
    ],
    [
      'a measure without a weight for an acid',
      'measures.0.weights.punicic',
      undefined,
      /Measure hardness has no weight for the acid punicic/,
    ],
    ['a weight above 1', 'measures.0.weights.oleic.weight', 10, /oleic/],
    ['a tie of 0', 'measures.0.tie', 0, /tie/],
    ['measures without cost', 'measures', measures.slice(0, 3), /no cost measure/],
    ['an acid measure called cost', 'measures.0.id', 'cost', /made of prices/],
    ['a bar of an unlisted oil', 'referenceBars.0.blend', { snake: 100 }, /names the oil snake/],
    ['a bar that adds up to 99', 'referenceBars.0.blend', { olive: 99 }, /add up to 100 percent/],
    ['a letter of two bars', 'referenceBars.1.letter', 'O', /bar letter "O" is used 2 times/],
    ['a missing file', 'sources', undefined, /sources/],
  ])('%s', (_, path, value, message) => {
    expect(() => parseLibrary(withValue(path, value))).toThrow(message)
  })
})
