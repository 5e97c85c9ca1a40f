import { describe, expect, test } from 'vitest'
import type { Brief } from '../../../src/domain/optimise/brief/brief'
import type {
  BetterStudy,
  StudyResult,
  WithoutStudy,
} from '../../../src/domain/optimise/studies/question'
import type { Candidate } from '../../../src/state/work'
import {
  givesInWords,
  nameResult,
  noResultInWords,
  tradeInWords,
} from '../../../src/ui/bench/study-words'

const BASE: Candidate = {
  id: 'candidate-B',
  letter: 'B',
  name: 'Last year’s bar',
  note: '',
  from: 'Your formula',
  blend: { palm: 34, coconut: 28, olive: 38 },
}
const WITHOUT: WithoutStudy = {
  kind: 'without',
  base: BASE.blend,
  prices: {},
  oil: 'palm',
  candidates: ['shea', 'rice-bran'],
  most: 3,
}
const HARDER: BetterStudy = {
  kind: 'better',
  measure: 'hardness',
  base: BASE.blend,
  prices: {},
  tolerances: { lather: 5 },
  keepWishes: false,
}
const RESULT: StudyResult = {
  role: { kind: 'replaces', oils: ['shea', 'rice-bran'] },
  blend: { shea: 30, 'rice-bran': 4, coconut: 28, olive: 38 },
  measures: { hardness: 40, lather: 36 },
  movedTies: 1.4,
  changePoints: 68,
  gives: [],
  unpriced: ['rice-bran'],
}
const named = (result: StudyResult, question: WithoutStudy | BetterStudy) =>
  nameResult(result, {
    question,
    base: BASE,
    answer: { status: 'found', base: {}, results: [], leftOut: [] },
  })

describe('a result on the Bench', () => {
  test('is named after what stands in for what', () => {
    expect(named(RESULT, WITHOUT)).toEqual({
      name: 'Shea and rice bran for palm',
      from: 'Without palm, from B',
    })
  })

  test.each([
    [{ kind: 'most' }, 'Harder'],
    [{ kind: 'least change' }, 'Harder, fewest changes'],
    [{ kind: 'cheapest' }, 'Harder, least cost'],
    [{ kind: 'shift', oil: 'shea', points: -10 }, 'B with less shea'],
  ] as const)('%j', (role, name) => {
    expect(named({ ...RESULT, role }, HARDER).name).toBe(name)
  })

  test('says what was held where that is one measure', () => {
    expect(named({ ...RESULT, role: { kind: 'most' } }, HARDER).from).toBe(
      'Harder, same lather, from B',
    )
  })

  test('says what is wanted the way that is wanted: less wear lasts longer', () => {
    const question = { ...HARDER, measure: 'wear' }
    expect(named({ ...RESULT, role: { kind: 'most' } }, question).name).toBe('Lasts longer')
  })
})

test('a trade tells oils, missing prices and bar', () => {
  const trade = tradeInWords(RESULT, { hardness: 48, lather: 35 }, WITHOUT, 'EUR')
  expect(trade).toBe(
    'Palm 34 out. Shea 30, rice bran 4 in. No price for rice bran. Softer by 8.0; lather ties.',
  )
})

test('limits of the brief that a result does not keep are named', () => {
  const brief: Brief = {
    oils: { olive: { pricePerKg: 7, max: 30 } },
    groups: [],
    measures: { hardness: { min: 42 } },
    goal: { minimise: 'cost' },
  }
  const result = { ...RESULT, gives: ['oils.shea', 'oils.olive.max', 'measures.hardness.min'] }
  expect(givesInWords(result, brief, 'EUR')).toBe(
    'Doesn’t keep: shea is not on the shelf, olive at most 30\u2009%, hardness at least 42.',
  )
  expect(givesInWords(RESULT, brief, 'EUR')).toBe('')
})

test('rules of the brief that a result does not keep are named', () => {
  const brief: Brief = {
    oils: { olive: {} },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
    rules: {
      atMostOils: 4,
      absentOrAtLeast: 2.5,
      shareStep: 1,
      requires: [{ oil: 'castor', with: 'coconut' }],
      oneOf: [['palm', 'shea']],
    },
  }
  const gives = [
    'rules.atMostOils',
    'rules.absentOrAtLeast',
    'rules.shareStep',
    'rules.requires[0]',
    'rules.oneOf[0]',
  ]
  expect(givesInWords({ ...RESULT, gives }, brief, 'EUR').replaceAll('\u2009', ' ')).toBe(
    'Doesn’t keep: at most four oils, each oil at least 2.5 %, shares in steps of 1 %, castor only with coconut, only one of palm, shea.',
  )
})

test('a study without a result says what is nearest, or what to do', () => {
  const best = { ...RESULT, role: { kind: 'most' as const } }
  const base = { hardness: 48, lather: 35 }
  expect(noResultInWords({ kind: 'no better', best }, base, HARDER, 'EUR')).toMatch(
    /^Nothing on this shelf is harder with the rest held\. The nearest to it: Palm 34 out\./u,
  )
  expect(noResultInWords({ kind: 'no price', oils: ['palm'] }, base, HARDER, 'EUR')).toMatch(
    /no price for palm\. Give it on the Shelf\.$/u,
  )
  expect(noResultInWords({ kind: 'no room' }, base, WITHOUT, 'EUR')).toMatch(/no oil .* has room/iu)
})
