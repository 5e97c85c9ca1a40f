import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { blendValues } from '../../../../src/domain/blend/values'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { reachOfMeasures } from '../../../../src/domain/optimise/ranges/attainable-linear'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { betterStudy } from '../../../../src/domain/optimise/studies/better'
import {
  type FromHere,
  nothingWorse,
  reachBrief,
} from '../../../../src/domain/optimise/studies/from-here'

const BAR = { coconut: 27, shea: 16, olive: 37, 'rice-bran': 15, castor: 5 }
const SHELF: Brief = {
  oils: { coconut: {}, olive: { min: 30 }, 'cocoa-butter': { pricePerKg: 12 }, castor: { max: 4 } },
  groups: [
    { name: 'hard', oils: ['shea', 'cocoa-butter'], max: 20 },
    { name: 'lauric', oils: ['coconut'], max: 20 },
  ],
  measures: { hardness: { min: 99 } },
  goal: { minimise: 'cost' },
  rules: { atMostOils: 3 },
}
const FROM: FromHere = { base: BAR, locked: ['rice-bran'], points: 10, usualMost: () => 100 }

describe('what lies within reach of a bar', () => {
  test('moves no oil further than stated, none that is locked, none beyond its limits', () => {
    expect(reachBrief(SHELF, FROM).oils).toEqual({
      coconut: { pricePerKg: undefined, min: 17, max: 37 },
      // Not on the shelf: there may be less of it, and no more.
      shea: { pricePerKg: undefined, min: 6, max: 16 },
      olive: { pricePerKg: undefined, min: 30, max: 47 },
      'rice-bran': { pricePerKg: undefined, min: 15, max: 15 },
      // The bar has more than the shelf allows: it keeps what it has, and gets no more.
      castor: { pricePerKg: undefined, min: 0, max: 5 },
      'cocoa-butter': { pricePerKg: 12, min: 0, max: 10 },
    })
  })

  test('keeps groups and rules that the bar itself keeps, and drops wishes', () => {
    const { groups, rules, measures } = reachBrief(SHELF, FROM)
    expect(groups.map(({ name }) => name)).toEqual(['hard'])
    expect(rules).toBeUndefined()
    expect(measures).toEqual({})
    expect(reachBrief({ ...SHELF, rules: { atMostOils: 6 } }, FROM).rules).toEqual({
      atMostOils: 6,
    })
  })

  test('gives no oil more than is usual, but takes none away that the bar has', () => {
    const { oils } = reachBrief(SHELF, {
      ...FROM,
      usualMost: (oil) => (oil === 'coconut' ? 30 : 3),
    })
    expect(oils['coconut']?.max).toBe(30)
    expect(oils['cocoa-butter']?.max).toBe(3)
    expect(oils['castor']?.max).toBe(5)
  })

  test('holds the bar itself, and grows with the points', () => {
    const values = blendValues(library, {}, BAR)
    const spans = [0, 5, 10, 100].map((points) => {
      const brief = reachBrief(SHELF, { ...FROM, points })
      return reachOfMeasures(new BlendSpace(brief, library))['hardness']
    })
    for (const [at, span] of spans.entries()) {
      expect(span?.min).toBeLessThanOrEqual((values['hardness'] ?? 0) + 1e-6)
      expect(span?.max).toBeGreaterThanOrEqual((values['hardness'] ?? 0) - 1e-6)
      expect((span?.max ?? 0) - (span?.min ?? 0)).toBeGreaterThanOrEqual(
        (spans[at - 1]?.max ?? 0) - (spans[at - 1]?.min ?? 0),
      )
    }
  })
})

test('a bar made harder from here is felt worse in nothing', () => {
  const shelf = { ...SHELF, groups: [], oils: { ...SHELF.oils, shea: {}, 'tallow-beef': {} } }
  const brief = nothingWorse(reachBrief(shelf, { ...FROM, locked: [] }), BAR, library)
  const answer = betterStudy(
    brief,
    {
      kind: 'better',
      measure: 'hardness',
      base: BAR,
      prices: {},
      tolerances: { lather: 5 },
      keepWishes: true,
    },
    library,
  )
  if (answer.status !== 'found') throw new Error('nothing harder was found')
  const [best] = answer.results
  const values = blendValues(library, {}, BAR)
  expect(best?.measures['hardness']).toBeGreaterThan((values['hardness'] ?? 0) + 5)
  for (const { id, tie, better, shown, unit } of library.measures) {
    if (!shown || unit !== 'points') continue
    const by = (best?.measures[id] ?? NaN) - (values[id] ?? NaN)
    expect(better === 'more' ? by : -by).toBeGreaterThan(-tie)
  }
})
