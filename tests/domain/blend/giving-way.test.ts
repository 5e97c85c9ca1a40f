import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  mostOf,
  type Part,
  usualGiver,
  withJointMoved,
  withoutPart,
  withShare,
  withWeights,
} from '../../../src/domain/blend/giving-way'

const part = (oil: string, percent: number, locked = false): Part => ({ oil, percent, locked })
const BAR = [part('coconut', 27, true), part('shea', 16), part('olive', 42), part('castor', 15)]

const shares = (parts: readonly Part[]) =>
  Object.fromEntries(parts.map(({ oil, percent }) => [oil, Number(percent.toFixed(6))]))

function changed(result: ReturnType<typeof withShare>) {
  if (result.status !== 'changed') throw new Error(result.status)
  return { shares: shares(result.parts), gave: result.gave }
}

describe('a share changed by hand', () => {
  test('is taken from the largest free oil where none is named', () => {
    expect(usualGiver(BAR, 'shea')).toBe('olive')
    expect(changed(withShare(BAR, 'shea', 22))).toEqual({
      shares: { coconut: 27, shea: 22, olive: 36, castor: 15 },
      gave: ['olive'],
    })
  })

  test('is taken from the oil named', () => {
    expect(changed(withShare(BAR, 'shea', 10, { oil: 'castor' }))).toEqual({
      shares: { coconut: 27, shea: 10, olive: 42, castor: 21 },
      gave: ['castor'],
    })
  })

  test('is taken from all free ones in proportion: 42 to 15 for 19 points', () => {
    expect(changed(withShare(BAR, 'shea', 35, 'all')).shares).toEqual({
      coconut: 27,
      shea: 35,
      olive: 28,
      castor: 10,
    })
  })

  test('goes on to the others where the one named has too little', () => {
    expect(changed(withShare(BAR, 'shea', 41, { oil: 'castor' }))).toEqual({
      shares: { coconut: 27, shea: 41, olive: 32, castor: 0 },
      gave: ['castor', 'olive'],
    })
  })

  test('goes no further than the locked oils leave', () => {
    expect(mostOf(BAR, 'shea')).toBe(73)
    expect(changed(withShare(BAR, 'shea', 200)).shares).toEqual({
      coconut: 27,
      shea: 73,
      olive: 0,
      castor: 0,
    })
  })

  test('cannot be where nothing is free to give way', () => {
    const locked = BAR.map((one) => ({ ...one, locked: one.oil !== 'shea' }))
    expect(withShare(locked, 'shea', 20)).toEqual({ status: 'changed', parts: locked, gave: [] })
    const alone = [part('olive', 100)]
    expect(withShare(alone, 'olive', 60)).toEqual({ status: 'nothing free' })
    const nearly = [part('olive', 60), part('shea', 40, true)]
    expect(withShare(nearly, 'olive', 50)).toEqual({ status: 'nothing free' })
  })

  test('always leaves 100, nothing under 0 and the locked shares as they were', () => {
    const bar = fc
      .array(fc.tuple(fc.double({ min: 0.01, max: 100, noNaN: true }), fc.boolean()), {
        minLength: 2,
        maxLength: 8,
      })
      .map((drawn) => {
        const sum = drawn.reduce((all, [share]) => all + share, 0)
        return drawn.map(([share, locked], at) => part(`oil ${at}`, (share * 100) / sum, locked))
      })
    const giver = fc.constantFrom('all' as const, { oil: 'oil 1' }, undefined)
    fc.assert(
      fc.property(bar, fc.double({ min: -50, max: 150, noNaN: true }), giver, (parts, to, by) => {
        const result = withShare(parts, 'oil 0', to, by)
        const after = result.status === 'changed' ? result.parts : parts
        expect(after.reduce((sum, { percent }) => sum + percent, 0)).toBeCloseTo(100, 6)
        for (const [at, { percent }] of after.entries()) {
          const before = parts[at]
          expect(percent).toBeGreaterThanOrEqual(0)
          expect(before?.locked && at > 0 ? percent : 'free').toEqual(
            before?.locked && at > 0 ? before.percent : 'free',
          )
        }
      }),
    )
  })
})

describe('a joint moved', () => {
  test('moves share between the two neighbours only', () => {
    expect(changed(withJointMoved(BAR, 'shea', 'olive', 4)).shares).toMatchObject({
      shea: 20,
      olive: 38,
    })
    expect(changed(withJointMoved(BAR, 'shea', 'olive', -100)).shares).toMatchObject({
      shea: 0,
      olive: 58,
    })
  })

  test('moves nothing beside a locked one', () => {
    expect(withJointMoved(BAR, 'coconut', 'shea', 4)).toEqual({ status: 'nothing free' })
  })
})

test('a weight typed makes the batch grow and moves no other weight', () => {
  const grown = withWeights(BAR, ({ oil, percent }) => (oil === 'shea' ? 410 : percent * 10))
  expect(grown?.grams).toBeCloseTo(1250, 9)
  expect(shares(grown?.parts ?? [])).toEqual({ coconut: 21.6, shea: 32.8, olive: 33.6, castor: 12 })
  expect(withWeights(BAR, () => 0)).toBeUndefined()
})

describe('an oil taken out', () => {
  test('leaves its share to the free ones in proportion', () => {
    expect(shares(withoutPart(BAR, 'castor'))).toEqual({
      coconut: 27,
      shea: Number(((16 * 73) / 58).toFixed(6)),
      olive: Number(((42 * 73) / 58).toFixed(6)),
    })
  })

  test('leaves it to locked ones where no other is left', () => {
    expect(shares(withoutPart([part('olive', 60), part('shea', 40, true)], 'olive'))).toEqual({
      shea: 100,
    })
    expect(withoutPart([part('olive', 100)], 'olive')).toEqual([])
  })
})
