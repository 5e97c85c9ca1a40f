import { describe, expect, test } from 'vitest'
import { flagRules } from '../../../src/data/flags'
import { library } from '../../../src/data/library'
import type { Blend } from '../../../src/domain/blend/blend'
import { flagsOf, leanLots } from '../../../src/domain/blend/flags'
import { blendValues } from '../../../src/domain/blend/values'

const flags = (blend: Blend) => flagsOf(blend, blendValues(library, {}, blend), flagRules, library)
const kinds = (blend: Blend) => flags(blend).map(({ kind }) => kind)

describe('a corner the measures can not speak for', () => {
  test('is one oil above 80 %, and not one at 80 %', () => {
    expect(kinds({ olive: 81, coconut: 19 })).toEqual(['trust'])
    expect(kinds({ olive: 80, coconut: 20 })).toEqual([])
  })

  test('is castor above 15 %, and not castor at 15 %', () => {
    expect(flags({ castor: 16, coconut: 30, shea: 54 })).toMatchObject([
      { kind: 'trust', oil: 'castor', sharePercent: 16, mostPercent: 15 },
    ])
    expect(kinds({ castor: 15, coconut: 30, shea: 55 })).toEqual([])
  })

  test('says why', () => {
    for (const flag of flags({ castor: 100 })) expect(flag.reason).toMatch(/\.$/)
  })
})

describe('a bar that goes off early', () => {
  test('is flagged where its fats are of the kinds that go rancid first', () => {
    // Half sunflower of the linoleic kind: some 30 % linoleic acid, twice what practice keeps to.
    expect(kinds({ sunflower: 50, coconut: 50 })).toEqual(['keeping'])
  })

  test('is not one of coconut, olive and shea', () => {
    expect(kinds({ olive: 50, coconut: 30, shea: 20 })).toEqual([])
  })
})

describe('allergens', () => {
  test('are told by the words for what the oils come from', () => {
    const words = flags({ almond: 5, butterfat: 5, coconut: 30, shea: 60 }).flatMap((flag) =>
      flag.kind === 'allergens' ? flag.words : [],
    )
    expect(words).toEqual(['tree nut', 'milk'])
  })

  test('are not told of an oil without a share', () => {
    expect(kinds({ groundnut: 0, coconut: 30, shea: 70 })).toEqual([])
  })
})

test.each([
  [-0.1, 'free lye'],
  [0, 'narrow'],
  [0.4, 'narrow'],
  [0.5, 'safe'],
] as const)('lots that leave %d %% superfat at the least are %s', (least, state) => {
  expect(leanLots(least)).toBe(state)
})
