import { describe, expect, test } from 'vitest'
import file from '../../data/flags.json'
import { flagsSchema } from '../../src/data/flags'

test('the file as it is passes', () => {
  expect(flagsSchema.safeParse(file).success).toBe(true)
})

describe('the schema refuses', () => {
  test.each([
    [
      'an oil that the library has not',
      { trust: [{ ...file.trust[1], oils: ['beaver'] }] },
      /oil/u,
    ],
    ['a share above 100 %', { trust: [{ ...file.trust[0], mostPercent: 101 }] }, /100/u],
    ['a limit without a reason', { trust: [{ ...file.trust[0], reason: '' }] }, /too small/iu],
    [
      'a measure that there is not',
      { keeping: { ...file.keeping, measure: 'rancidity' } },
      /measure/u,
    ],
    ['a tag that no oil carries', { allergens: [{ tag: 'fish', word: 'fish' }] }, /tag/u],
    ['a key that nothing reads', { legal: true }, /legal/u],
  ])('%s', (_, change, message) => {
    const parsed = flagsSchema.safeParse({ ...file, ...change })
    expect(parsed.error?.issues.map((issue) => issue.message).join()).toMatch(message)
  })
})

test('the limit of keeping is what the note derives: 15 % linoleic and 45 % oleic acid', () => {
  // data/flags.md, with the weights of data/measures.json: 100 - (15 × 0.496 + 45 × 0.049) = 90.4.
  expect(Math.floor(100 - (15 * 0.496 + 45 * 0.049))).toBe(file.keeping.least)
})
