import { describe, expect, test } from 'vitest'
import { libraryOf, near, problemsOf, ready } from '../plans'

const olive = libraryOf({ olive: [184, 190, 196], coconut: [248, 257, 265] })
const ORDER = { blend: { olive: 100 } }

function lot(saponificationValue: number, tolerance?: number) {
  return { ...ORDER, lots: { olive: { saponificationValue, tolerance } } }
}

describe("a supplier's saponification value for the lot", () => {
  test('goes before the library', () => {
    // By hand: 1000 x 187 / 56105 x 0.95 x 39.997 = 126.645 g.
    expect(ready(lot(187), olive).alkaliGrams.naoh).toSatisfy(near(126.645, 0.01))
  })

  test('counts for its own oil only', () => {
    const order = { ...lot(187), blend: { olive: 50, coconut: 50 } }
    // By hand: (500 x 187 + 500 x 257) / 56105 x 0.95 x 39.997 = 150.349 g.
    expect(ready(order, olive).alkaliGrams.naoh).toSatisfy(near(150.349, 0.01))
  })

  test('narrows the span to its tolerance', () => {
    // By hand: 1 - 0.95 x 187 / 186 = 4.489 %, 1 - 0.95 x 187 / 188 = 5.505 %.
    const { min, max } = ready(lot(187, 1), olive).figures.superfatSpanPercent
    expect(min).toBeCloseTo(4.489, 3)
    expect(max).toBeCloseTo(5.505, 3)
  })

  test('is taken within 1 % where the certificate does not say', () => {
    // By hand: 1 - 0.95 / 0.99 = 4.040 %, 1 - 0.95 / 1.01 = 5.941 %.
    const { min, max } = ready(lot(187), olive).figures.superfatSpanPercent
    expect(min).toBeCloseTo(4.04, 2)
    expect(max).toBeCloseTo(5.941, 2)
  })

  test('is never counted narrower than half a percent', () => {
    // By hand: 1 - 0.95 / 0.995 = 4.523 %.
    expect(ready(lot(187, 0), olive).figures.superfatSpanPercent.min).toBeCloseTo(4.523, 3)
  })

  test('leaves the wide span beside the narrow one', () => {
    const { superfat } = ready(lot(190, 1), olive)
    // By hand: 1 - 0.95 x 190 / 184 = 1.902 %.
    expect(superfat.withoutCertificatesPercent?.min).toBeCloseTo(1.902, 3)
    expect(ready(ORDER, olive).superfat.withoutCertificatesPercent).toBeNull()
  })

  test('outside the range of sound lots is weighed out only on a named lot and certificate', () => {
    const bare = { olive: { saponificationValue: 199 } }
    expect(problemsOf({ ...ORDER, lots: bare }, olive).map(({ path }) => path)).toEqual([
      'lots.olive.name',
    ])
    const named = { olive: { ...bare.olive, name: 'OL-7' } }
    expect(problemsOf({ ...ORDER, lots: named }, olive).map(({ path }) => path)).toEqual([
      'lots.olive.certificate',
    ])
    const signed = { olive: { ...named.olive, certificate: 'CoA 4471' } }
    const [remark] = ready({ ...ORDER, lots: signed }, olive).remarks
    expect(remark?.code).toBe('lot.olive')
    expect(remark?.message).toMatch(
      /199 mg KOH\/g lies outside the 184 to 196 .* CoA 4471 of lot OL-7/u,
    )
    expect(ready(lot(190), olive).remarks.map(({ code }) => code)).not.toContain('lot.olive')
  })
})

/** Figures that are given in the place of mg KOH per g; 0.134 and 134 are what olive oil takes of NaOH. */
describe('a figure that is not in mg KOH per g is caught, with what it looks like', () => {
  test.for([
    [0.134, /0\.134 looks like g NaOH per g; as mg KOH\/g that is 188/u],
    [134, /134 looks like mg NaOH per g; as mg KOH\/g that is 188/u],
    [0.19, /0\.19 looks like g KOH per g; as mg KOH\/g that is 190/u],
    [19, /The value is 19 mg KOH\/g\. Sound lots .* 184 to 196 .* Look at the certificate again/u],
    [0, /The value is 0 mg KOH\/g/u],
    [-190, /The value is -190 mg KOH\/g/u],
    [NaN, /The value is NaN mg KOH\/g/u],
    [Infinity, /The value is Infinity mg KOH\/g/u],
  ] as const)('%f', ([value, message]) => {
    const [problem, ...more] = problemsOf(lot(value), olive)
    expect(more).toEqual([])
    expect(problem?.path).toBe('lots.olive.saponificationValue')
    expect(problem?.message).toMatch(message)
  })

  test('for every oil of the library, whatever its own range', async () => {
    const { library } = await import('../../../../src/data/library')
    for (const { id, saponificationValue } of library.oils.values()) {
      for (const factor of [39.997 / 56.105, 0.039997 / 56.105, 0.001]) {
        const value = saponificationValue.typical * factor
        const order = { blend: { [id]: 100 }, lots: { [id]: { saponificationValue: value } } }
        expect(
          problemsOf(order)
            .map(({ message }) => message)
            .join(),
          id,
        ).toMatch(/looks like/u)
      }
    }
  })
})

test.for([-1, 190, NaN])('a tolerance of %f mg KOH/g is refused', (tolerance) => {
  const [problem] = problemsOf(lot(190, tolerance), olive)
  expect(problem?.path).toBe('lots.olive.tolerance')
})

test('a tolerance without its value is refused', () => {
  expect(problemsOf({ ...ORDER, lots: { olive: { tolerance: 1 } } }, olive)).toHaveLength(1)
})

test('a lot of an oil that there is not is refused', () => {
  const [problem] = problemsOf({ ...ORDER, lots: { dragon: { saponificationValue: 190 } } }, olive)
  expect(problem?.path).toBe('lots.dragon')
})

test('a lot that only has a name changes no weight', () => {
  const named = ready({ ...ORDER, lots: { olive: { name: 'OL-7' } } }, olive)
  expect(named.alkaliGrams).toEqual(ready(ORDER, olive).alkaliGrams)
  expect(named.ingredients.find(({ key }) => key === 'oil:olive')?.lot).toBe('OL-7')
})
