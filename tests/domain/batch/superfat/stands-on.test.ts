import { describe, expect, test } from 'vitest'
import { batchFacts } from '../../../../src/data/batch-facts'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import {
  type Mark,
  markOf,
  standsOn,
  standsOnSentence,
} from '../../../../src/domain/batch/superfat/stands-on'
import { weightsFor } from '../../../../src/domain/batch/weigh/weights'
import { type Library, oilOf } from '../../../../src/domain/blend/library'
import type { NaturalRange, Oil } from '../../../../src/domain/blend/oil'
import { libraryOf, PLAIN } from '../plans'

const stub = libraryOf({ olive: [184, 190, 196], coconut: 257 })
const OLIVE = oilOf(stub, 'olive')

function withOlive(more: Partial<Oil>): Library {
  return { ...stub, oils: new Map(stub.oils).set('olive', { ...OLIVE, ...more }) }
}

function standing(order: Partial<BatchOrder>, library = stub) {
  const whole: BatchOrder = { ...PLAIN, blend: { olive: 100 }, ...order }
  const weights = weightsFor(whole, 1000, library, batchFacts)
  return standsOn({ order: whole, weights, library, facts: batchFacts })
}

test.for([
  ['published', 'read'],
  ['memory', 'recalled'],
  ['assumption', 'assumed'],
  ['derived', 'assumed'],
] as const)('a figure that is %s was %s', ([basis, mark]) => {
  expect(markOf(basis)).toBe(mark)
})

describe('an oil stands on', () => {
  const read = { ...OLIVE.saponificationValue, basis: 'published' as const, source: 'codex' }

  test('its range, as that was come by', () => {
    expect(standing({})[0]).toEqual({
      what: 'oil',
      id: 'olive',
      mark: 'assumed',
      source: 'stated by the test',
    })
    expect(standing({}, withOlive({ saponificationValue: read }))[0]).toMatchObject({
      mark: 'read',
      source: 'codex',
    })
  })

  test('an assumption where the low end that was read has been moved', () => {
    const moved = { ...read, printedLow: 187 }
    expect(standing({}, withOlive({ saponificationValue: moved }))[0]?.mark).toBe('assumed')
  })

  test('the certificate of its lot, and not on a lot that only has a name', () => {
    const lot = { name: 'OL-7', certificate: 'CoA 88' }
    const of = (one: object) => standing({ lots: { olive: { ...lot, ...one } } })[0]
    expect(of({ saponificationValue: 190 })).toMatchObject({
      mark: 'certificate',
      source: 'CoA 88, lot OL-7',
    })
    expect(of({ saponificationValue: 190, name: undefined })?.source).toBe('CoA 88')
    expect(of({})?.mark).toBe('assumed')
  })

  test('what lye reaches of it, where that is less than all', () => {
    const part: NaturalRange = { low: 0, typical: 0.5, high: 1 }
    const reacts = { cold: part, hot: part, basis: 'memory', source: 'wax' } as const
    const lots = { olive: { saponificationValue: 190 } }
    const wax = withOlive({ reacts })
    expect(standing({ lots }, wax)[0]).toMatchObject({ mark: 'recalled', source: 'wax' })
  })

  test('and is told once, fat beside the blend too', () => {
    const extraFat = {
      percent: 5,
      of: 'oils' as const,
      oils: { olive: 50, coconut: 50 },
      when: 'withOils' as const,
    }
    expect(standing({ extraFat }).map(({ id }) => id)).toEqual(['olive', 'coconut', 'naoh'])
  })
})

describe('an alkali stands on', () => {
  test.for<readonly [Partial<BatchOrder>, Mark]>([
    [{}, 'read'],
    [{ purity: { naoh: 98 } }, 'assumed'],
    [{ purity: { naoh: 98 }, purityIs: { naoh: 'atLeast' } }, 'assumed'],
    [{ purity: { naoh: 98 }, purityIs: { naoh: 'exactly' } }, 'ownTest'],
    [{ purity: { naoh: 98 }, purityIs: { naoh: { certificate: 'NA-1' } } }, 'certificate'],
    [{ lyeSolution: { naoh: 50 } }, 'assumed'],
    [{ lyeSolution: { naoh: 50 }, purityIs: { naoh: 'exactly' } }, 'ownTest'],
  ])('%o: %s', ([order, mark]) => {
    const [, alkali] = standing({ water: { ratio: 3 }, ...order })
    expect(alkali).toMatchObject({ what: 'alkali', id: 'naoh', mark })
  })

  test('a certificate by its number', () => {
    const purityIs = { naoh: { certificate: 'NA-1' } }
    expect(standing({ purity: { naoh: 98 }, purityIs })[1]?.source).toBe('NA-1')
  })
})

test('an acid stands on its certificate, else on an assumption', () => {
  const acid = { acid: 'citric', grams: 10, alkali: 'add' as const }
  const [, , plain, signed] = standing({ acids: [acid, { ...acid, certificate: 'CA-77' }] })
  expect(plain).toEqual({
    what: 'acid',
    id: 'citric',
    mark: 'assumed',
    source: batchFacts.acids.get('citric')?.source,
  })
  expect(signed).toEqual({ what: 'acid', id: 'citric', mark: 'certificate', source: 'CA-77' })
})

test.for<readonly [readonly Mark[], string]>([
  [['read'], 'The lean end stands on 1 figure read.'],
  [['read', 'read'], 'The lean end stands on 2 figures read.'],
  [
    ['assumed', 'certificate', 'read', 'read'],
    'The lean end stands on 1 certificate, 2 figures read and 1 figure assumed.',
  ],
  [['recalled', 'ownTest'], 'The lean end stands on 1 test of your own and 1 figure recalled.'],
  [[], 'The lean end stands on nothing.'],
])('%o reads "%s"', ([marks, sentence]) => {
  const standings = marks.map((mark) => ({ what: 'oil' as const, id: 'olive', mark, source: '' }))
  expect(standsOnSentence(standings)).toBe(sentence)
})
