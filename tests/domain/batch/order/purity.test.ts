import { describe, expect, test } from 'vitest'
import { contentUpTo, type PurityKnown } from '../../../../src/domain/batch/order/purity'
import { PLAIN, problemsOf, ready } from '../plans'

const koh = { alkali: { koh: 100 } }

describe('a purity', () => {
  test.for([
    [0.99, /0\.99 %: did you mean 99 %\?/u],
    [1, /1 %: did you mean 100 %\?/u],
    [5, /Give 50 to 100 %/u],
    [30, /Give 50 to 100 %/u],
    [49.9, /Give 50 to 100 %/u],
    [70, /sold with 95 to 100 %.*purityIs\.naoh/u],
    [94.9, /sold with 95 to 100 %/u],
    [101, /Give 50 to 100 %/u],
    [NaN, /Give 50 to 100 %/u],
  ] as const)('of %d %% NaOH is refused', ([naoh, message]) => {
    const problems = problemsOf({ purity: { naoh } })
    expect(problems.map(({ path }) => path)).toEqual(['purity.naoh'])
    expect(problems[0]?.message).toMatch(message)
  })

  test.for([79.9, 95.1, 99])('of %d %% KOH is refused', (purity) => {
    expect(problemsOf({ ...koh, purity: { koh: purity } })[0]?.message).toMatch(
      /potassium hydroxide is sold with 80 to 95 %/u,
    )
  })

  test.for([95, 98.5, 100])('of %d %% NaOH is taken', (naoh) => {
    expect(problemsOf({ purity: { naoh } })).toEqual([])
  })

  test('outside what is sold needs the certificate of the lot, and under 50 % none helps', () => {
    const certified = { naoh: { certificate: 'NA-2207' } }
    expect(problemsOf({ purity: { naoh: 70 }, purityIs: certified })).toEqual([])
    expect(problemsOf({ purity: { naoh: 49 }, purityIs: certified })).toHaveLength(1)
    const unnumbered = problemsOf({
      purity: { naoh: 70 },
      purityIs: { naoh: { certificate: 'x' } },
    })
    expect(unnumbered.map(({ path }) => path)).toEqual(['purityIs.naoh.certificate'])
  })

  test('on a certificate wants the figure and a tolerance of 0 to 5 points', () => {
    const is = (within: number) => ({ naoh: { certificate: 'NA-2207', within } })
    expect(problemsOf({ purityIs: is(0.5) }).map(({ path }) => path)).toEqual(['purityIs.naoh'])
    for (const within of [-1, 6, NaN])
      expect(
        problemsOf({ purity: { naoh: 99 }, purityIs: is(within) }).map(({ path }) => path),
      ).toEqual(['purityIs.naoh.within'])
  })
})

describe('what a bag may hold at the most', () => {
  test.for<readonly ['naoh' | 'koh', number | undefined, PurityKnown[keyof PurityKnown], number]>([
    ['naoh', undefined, undefined, 100],
    ['naoh', 97, undefined, 100],
    ['naoh', 97, 'atLeast', 100],
    ['naoh', 97, 'exactly', 97],
    ['naoh', 99.2, { certificate: 'NA-2207', within: 0.3 }, 99.5],
    ['naoh', 99.2, { certificate: 'NA-2207' }, 99.7],
    ['naoh', 99.9, { certificate: 'NA-2207' }, 100],
    ['koh', 85, undefined, 92],
    ['koh', 90, 'atLeast', 92],
    ['koh', 92, 'atLeast', 95],
    ['koh', 94, undefined, 95],
    ['koh', 100, undefined, 100],
    ['koh', 90, 'exactly', 90],
  ])('%s of %s %%, %o, is %d %%', ([kind, stated, is, most]) => {
    const order = { ...PLAIN, purity: { [kind]: stated }, purityIs: { [kind]: is } }
    expect(contentUpTo(order, kind) * 100).toBeCloseTo(most, 9)
  })

  test('is widened by purityUpTo and never narrowed', () => {
    const order = { ...PLAIN, purity: { koh: 90 } }
    expect(contentUpTo({ ...order, purityUpTo: { koh: 94 } }, 'koh')).toBeCloseTo(0.94, 9)
    expect(contentUpTo({ ...order, purityUpTo: { koh: 91 } }, 'koh')).toBeCloseTo(0.92, 9)
  })

  test('of a solution is 2 % of it more, or its certificate’s tolerance', () => {
    const order = { ...PLAIN, lyeSolution: { naoh: 50 } }
    expect(contentUpTo(order, 'naoh')).toBeCloseTo(0.51, 9)
    const certified = { ...order, purityIs: { naoh: { certificate: 'S-118', within: 0.2 } } }
    expect(contentUpTo(certified, 'naoh')).toBeCloseTo(0.502, 9)
  })
})

describe('a solution', () => {
  const of = (naoh: number) =>
    problemsOf({ purity: {}, lyeSolution: { naoh }, water: { ratio: 3 } })

  test.for([
    [0.5, /did you mean 50 %\?/u],
    [5, /sold with 20 to 50 %/u],
    [19.9, /sold with 20 to 50 %/u],
    [51, /at most 50 %/u],
  ] as const)('of %d %% is refused', ([naoh, message]) => {
    expect(of(naoh)[0]?.message).toMatch(message)
  })

  test('as it is sold is taken', () => {
    expect(of(45)).toEqual([])
  })
})

describe('fractions in the place of percent are named as such', () => {
  test.for([
    [{ superfat: 0.05 }, 'superfat', /0\.05 %: did you mean 5 %\?/u],
    [{ superfat: 0.25 }, 'superfat', /did you mean 25 %\?/u],
    [{ water: { lyeConcentration: 0.33 } }, 'water.lyeConcentration', /did you mean 33 %\?/u],
    [{ water: { percentOfOils: 0.33 } }, 'water.percentOfOils', /did you mean 33 %\?/u],
    [
      { acids: [{ acid: 'acetic', grams: 9, strengthPercent: 0.05, alkali: 'add' as const }] },
      'acids[0].strengthPercent',
      /did you mean 5 %\?/u,
    ],
    [{ purityUpTo: { naoh: 0.99 } }, 'purityUpTo.naoh', /did you mean 99 %\?/u],
  ] as const)('%o', ([order, path, message]) => {
    const [problem] = problemsOf(order)
    expect(problem?.path).toBe(path)
    expect(problem?.message).toMatch(message)
  })

  test('a superfat of 0 or of 0.3 % is none', () => {
    expect([problemsOf({ superfat: 0 }), problemsOf({ superfat: 0.3 })]).toEqual([[], []])
  })
})

test('a reason is words, and not the same letters over and over', () => {
  const of = (confirmedLean: string) => problemsOf({ superfat: 5, confirmedLean })
  for (const word of ['x', '', 'titrated', 'aaaa aaaa aaaa', '1234 5678 9012'])
    expect(
      of(word).map(({ path }) => path),
      word,
    ).toEqual(['confirmedLean'])
  expect(of('Titrated olive lot 7: 190 mg KOH/g')).toEqual([])
})

describe('an acid', () => {
  const acid = (percentOfOils: number) => ({
    acids: [{ acid: 'citric', percentOfOils, formSure: true, alkali: 'add' as const }],
    superfat: 8,
    water: { ratio: 3 },
  })
  const codes = (order: Parameters<typeof ready>[0]) => ready(order).remarks.map(({ code }) => code)

  test('over the usual share of the oils is remarked upon, over a plausible one refused', () => {
    expect(codes(acid(1.5))).not.toContain('acid.dose.0')
    expect(codes(acid(3))).toContain('acid.dose.0')
    const [problem] = problemsOf(acid(9))
    expect(problem?.path).toBe('acids[0]')
    expect(problem?.message).toMatch(/9 % of the oils.*Give at most 60 g/u)
  })

  test('of two forms is asked for, and each answer is one press', () => {
    const order = { superfat: 8, acids: [{ acid: 'citric', grams: 15, alkali: 'add' as const }] }
    const [, hydrate] = ready(order).remedies.filter(({ answers }) => answers === 'acid.form.0')
    expect(hydrate?.says).toBe('It is citric acid, monohydrate')
    const changed = ready({ ...order, ...hydrate?.change })
    expect(changed.remarks.map(({ code }) => code)).not.toContain('acid.form.0')
    // By hand: 15 x 3 / 210.139 in place of 192.124 mol takes 0.85731 of the hydroxide's 0.91427.
    const [sure, unsure] = [
      ready({
        ...order,
        acids: [{ ...order.acids[0], acid: 'citric', formSure: true, alkali: 'add' as const }],
      }),
      ready(order),
    ]
    expect(unsure.superfat.reachPercent.min).toBeLessThan(sure.superfat.reachPercent.min)
  })
})

test('a batch mostly of wax is refused with the reason', () => {
  const [problem] = problemsOf({ blend: { jojoba: 60, olive: 40 } })
  expect(problem?.path).toBe('blend')
  expect(problem?.message).toMatch(/Jojoba.* is a wax and makes up 60 %/u)
  expect(problemsOf({ blend: { jojoba: 10, olive: 90 } })).toEqual([])
})
