import { describe, expect, test } from 'vitest'
import { library } from '../../../src/data/library'
import { oilOf } from '../../../src/domain/blend/library'
import { familyOf } from '../../../src/domain/blend/oil-family'
import { libraryWith, ownOilProblems, ownOilsOf } from '../../../src/domain/blend/own-library'
import type { OwnOil } from '../../../src/domain/blend/own-oil'
import { effectOfShare } from '../../../src/domain/blend/share-effect'
import { planBatch } from '../../../src/domain/batch/result/plan'
import { PLAIN, problemsOf, ready } from '../batch/plans'

/** A laurel oil as a certificate may give it; its acids add to 97.5 %. */
const LAUREL: OwnOil = {
  id: 'own-laurel',
  from: 'olive',
  name: 'Laurel oil of the valley',
  acids: {
    lauric: { value: 19.4 },
    myristic: { value: 1.1 },
    palmitic: { value: 14.2 },
    palmitoleic: { value: 0.6 },
    stearic: { value: 2.1 },
    oleic: { value: 41.5 },
    linoleic: { value: 18.6 },
  },
  saponificationValue: { value: 199, within: 2 },
  lot: 'LB-0311',
  certificate: 'CA-2231',
}

function made(own: OwnOil) {
  const { oils, problems } = ownOilsOf([own], library)
  expect(problems).toEqual([])
  const [oil] = oils
  if (!oil) throw new Error('No oil was made')
  return oil
}

const problemsAt = (own: Partial<OwnOil>) =>
  ownOilProblems({ ...LAUREL, ...own }, library, 'ownOils[0]')

describe('the family of an oil', () => {
  test.each([...library.oils.values()].map((oil) => [oil.id, oil] as const))(
    'of %s is the one the library states',
    (_, { acids, family }) => {
      expect(familyOf(acids, library.acids)).toBe(family)
    },
  )
})

describe('an oil of one’s own', () => {
  test('takes a certificate’s value with its tolerance', () => {
    expect(made(LAUREL).saponificationValue).toMatchObject({
      low: 197,
      typical: 199,
      high: 201,
      basis: 'certificate',
      source: 'certificate CA-2231, lot LB-0311',
    })
  })

  // By hand: 199 × 0.005 = 0.995 and 199 × 0.02 = 3.98; 1 % where nothing is said.
  test.each([
    ['half a percent at least', { saponificationValue: { value: 199, within: 0.1 } }, 198.005],
    ['one percent where it is not said', { saponificationValue: { value: 199 } }, 197.01],
    [
      'two percent at least without a paper',
      {
        saponificationValue: { value: 195, within: 0.1 },
        certificate: undefined,
        acids: undefined,
      },
      191.1,
    ],
  ])('counts a tolerance as %s', (_, change, low) => {
    expect(made({ ...LAUREL, ...change }).saponificationValue.low).toBeCloseTo(low, 9)
  })

  test('fills what its acids leave of 100 with the others of the oil it was copied from', () => {
    const { acids } = made(LAUREL)
    const sum = Object.values(acids).reduce((total, { typical }) => total + typical, 0)
    expect(sum).toBeCloseTo(100, 9)
    expect(acids['lauric']).toMatchObject({ typical: 19.4, typicalBasis: 'certificate' })
    expect(acids['alpha-linolenic']?.typicalBasis).toBe('assumption')
    for (const { low, typical, high } of Object.values(acids)) {
      expect(low).toBeLessThanOrEqual(typical)
      expect(typical).toBeLessThanOrEqual(high)
    }
  })

  test('copies what is not stated, with its ranges and what they stand on', () => {
    const olive = oilOf(library, 'olive')
    const lot = made({ id: 'own-olive-lot', from: 'olive', lot: 'OL-0830' })
    expect(lot).toMatchObject({ acids: olive.acids, iodineValue: olive.iodineValue })
    expect(lot.saponificationValue).toEqual(olive.saponificationValue)
    expect([lot.name, lot.inci]).toEqual(['Olive oil, lot OL-0830', olive.inci])
  })

  test('never bears the label name of the oil it was copied from', () => {
    const { inci, cas } = made(LAUREL)
    expect([inci.oil, inci.sodiumSoap, inci.potassiumSoap, cas]).toEqual([null, null, null, null])
    expect(made({ ...LAUREL, inci: { oil: 'Laurus Nobilis Fruit Oil' } }).inci).toMatchObject({
      oil: 'Laurus Nobilis Fruit Oil',
      basis: 'own',
    })
  })

  test('is drawn by its largest acids in a colour that no other oil has', () => {
    const { oils } = ownOilsOf([LAUREL, { ...LAUREL, id: 'own-b', name: 'Another' }], library)
    expect(oils.map(({ family }) => family)).toEqual(['oleic', 'oleic'])
    const colours = [...library.oils.values(), ...oils].map(({ colour }) => colour)
    expect(new Set(colours).size).toBe(colours.length)
  })

  test('reckons 3 % either way where only acids are stated, and no leaner than what it was copied from', () => {
    const { saponificationValue } = made({ ...LAUREL, saponificationValue: undefined })
    const { low, typical, high } = saponificationValue
    expect(low).toBeLessThanOrEqual(184)
    expect(high).toBeCloseTo(typical * 1.03, 6)
  })

  test('reaches down to what its acids come to where that is less than the paper says', () => {
    const acids = { oleic: { value: 100 } }
    const { saponificationValue } = made({ ...LAUREL, acids, saponificationValue: { value: 193 } })
    // By hand: pure triolein 190.1, less the 0.9 % of olive that takes none: 188.4; 1 % under 193 is 191.07.
    expect(saponificationValue.low).toBeCloseTo(188.4, 0)
  })
})

describe('figures that do not agree keep an oil from lye', () => {
  const unsigned = { ...LAUREL, lot: undefined, certificate: undefined }
  const blend = { 'own-laurel': 20, olive: 80 }

  test.each([
    [
      'more than 3 % beside the acids',
      { ...unsigned, saponificationValue: { value: 190 } },
      /% apart/u,
    ],
    [
      'outside the range of the oil it was copied from',
      { ...unsigned, acids: undefined, saponificationValue: { value: 200 } },
      /has 184 to 196/u,
    ],
  ])('%s, until lot and certificate are named', (_, own, message) => {
    const used = libraryWith(library, [made(own)])
    const problems = problemsOf({ blend }, used)
    expect(problems.map(({ path }) => path)).toEqual(['blend.own-laurel'])
    expect(problems[0]?.message).toMatch(message)
    const signed = made({ ...own, lot: 'LB-0311', certificate: 'CA-2231' })
    expect(problemsOf({ blend }, libraryWith(library, [signed]))).toEqual([])
  })

  test('also as extra fat', () => {
    const used = libraryWith(library, [made({ ...unsigned, saponificationValue: { value: 190 } })])
    const extraFat = {
      percent: 3,
      of: 'oils',
      oils: { 'own-laurel': 100 },
      when: 'withOils',
    } as const
    expect(problemsOf({ extraFat }, used)[0]?.path).toBe('extraFat.oils.own-laurel')
  })
})

describe('a batch with an oil of one’s own', () => {
  const used = libraryWith(library, [made(LAUREL)])

  // By hand: 1000 g × (0.2 × 199 + 0.8 × olive) × 0.95 × 39.997 / 56105.
  test('weighs its lye from the certificate, and counts its low end', () => {
    const plan = ready({ blend: { 'own-laurel': 20, olive: 80 } }, used)
    const olive = oilOf(library, 'olive').saponificationValue
    const naoh = ((0.2 * 199 + 0.8 * olive.typical) * 0.95 * 39.997) / 56.105
    expect(plan.alkaliGrams.naoh).toBeCloseTo(naoh, 6)
    const leanest = 0.2 * 197 + 0.8 * olive.low
    const lye = (naoh / 39.997) * 56.105
    expect(plan.superfat.reachPercent.min).toBeCloseTo(100 * (1 - lye / leanest), 6)
  })

  test('is refused without its oil, by name', () => {
    const plan = planBatch({ ...PLAIN, blend: { 'own-laurel': 100 } }, library)
    expect(plan.status === 'invalid' && plan.problems[0]?.path).toBe('blend.own-laurel')
  })
})

describe('what is wrong with a description is told by path:', () => {
  test.each<readonly [what: string, change: Partial<OwnOil>, path: string, message: RegExp]>([
    ['an id without its beginning', { id: 'laurel' }, 'id', /Begin it with own-/u],
    ['an oil to copy that there is not', { from: 'dragon' }, 'from', /no oil "dragon"/u],
    ['the name of another oil', { name: 'olive OIL' }, 'name', /is a name of Olive oil/u],
    ['a tag with a slip', { tags: ['plant', 'treenut'] }, 'tags[1]', /There is no tag "treenut"/u],
    ['an acid that is not listed', { acids: { oleid: { value: 1 } } }, 'acids.oleid', /no acid/u],
    ['a share above 100', { acids: { oleic: { value: 101 } } }, 'acids.oleic', /Give 0 to 100/u],
    [
      'acids that add to more than 100',
      { acids: { oleic: { value: 70 }, linoleic: { value: 32 } } },
      'acids',
      /add to 102 %/u,
    ],
    [
      'a value of nothing',
      { saponificationValue: { value: 0 } },
      'saponificationValue.value',
      /Give 1 or more/u,
    ],
    [
      'mg NaOH per g',
      { saponificationValue: { value: 142 } },
      'saponificationValue.value',
      /not NaOH/u,
    ],
    [
      'a tolerance as large as the value',
      { saponificationValue: { value: 199, within: 199 } },
      'saponificationValue.within',
      /less than the value/u,
    ],
    [
      'nothing but unsaponifiables',
      { unsaponifiableGPerKg: { value: 1000 } },
      'unsaponifiableGPerKg.value',
      /less than 1000/u,
    ],
  ])('%s', (_, change, path, message) => {
    const [first] = problemsAt(change)
    expect(first?.path).toBe(`ownOils[0].${path}`)
    expect(first?.message).toMatch(message)
  })

  test('an id that stands twice', () => {
    const { oils, problems } = ownOilsOf([LAUREL, { ...LAUREL, name: 'Other' }], library)
    expect(oils).toHaveLength(1)
    expect(problems).toEqual([
      { path: 'ownOils[1].id', message: 'The id "own-laurel" stands twice. Give another.' },
    ])
  })

  test('and a library never takes an id twice', () => {
    expect(() => libraryWith(library, [oilOf(library, 'olive')])).toThrow(/olive already/u)
  })
})

describe('what 10 % of an oil does to a bar', () => {
  const used = libraryWith(library, [made(LAUREL)])

  test('is the difference of the measures, taken from the largest oil', () => {
    const effect = effectOfShare(used, { olive: 70, coconut: 30 }, 'own-laurel', 10)
    expect(effect?.blend).toEqual({ 'own-laurel': 10, olive: 60, coconut: 30 })
    expect(effect?.gave).toEqual(['olive'])
    // Measures are weight averages: a tenth of the difference of the two oils.
    const lather = effect?.differences.find(({ measure }) => measure === 'lather')
    const all = effectOfShare(used, { olive: 100 }, 'own-laurel', 100)
    const whole = all?.differences.find(({ measure }) => measure === 'lather')
    expect(lather?.by).toBeCloseTo((whole?.by ?? NaN) / 10, 9)
    expect(lather?.standing).toBe('tie')
  })

  test('is nothing where no oil can give way', () => {
    expect(effectOfShare(used, { 'own-laurel': 100 }, 'own-laurel', 10)?.gave ?? []).toEqual([])
  })
})

test.for([
  ['Laurel oil of the valley', 'Laurel oil of'],
  ['Hilltop', 'Hilltop'],
  ['Meadow hip seed oil', 'Meadow hip seed'],
  ['Hügelkernölkaltgepresst', 'Hügelkernölkaltg'],
] as const)('the short name of %s is %s', ([name, short]) => {
  expect(made({ ...LAUREL, name }).shortName).toBe(short)
})
