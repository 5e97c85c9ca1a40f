import { describe, expect, expectTypeOf, test } from 'vitest'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import type { Work } from '../../src/state/work'
import { keptWork, type KeptWork } from '../../src/storage/work-schema'

/** A type with every key required and writable, so that a key missing on one side shows. */
type Filled<T> = T extends readonly (infer Item)[]
  ? Filled<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]-?: Filled<Exclude<T[Key], undefined>> }
    : T

function issuesOf(work: unknown): string[] {
  const parsed = keptWork.safeParse(work)
  return parsed.success
    ? []
    : parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`)
}

test('all that the work holds is kept: no part of it is missing from the schema', () => {
  expectTypeOf<Filled<KeptWork>>().toEqualTypeOf<Filled<Work>>()
  expect(keptWork.parse(EXAMPLE_WORK)).toEqual(EXAMPLE_WORK)
})

test('work that was text in between is the same work', () => {
  const text = JSON.stringify(EXAMPLE_WORK)
  expect(keptWork.parse(JSON.parse(text))).toEqual(EXAMPLE_WORK)
})

describe('work that can not be used is refused with its place', () => {
  const { brief } = EXAMPLE_WORK

  test('an oil that the library does not hold', () => {
    const shelf = [{ oil: 'dragon', banned: false }]
    expect(issuesOf({ ...EXAMPLE_WORK, brief: { ...brief, shelf } })).toEqual([
      'brief.shelf.0.oil: There is no oil "dragon" in the library.',
    ])
  })

  test('a measure that the library does not hold', () => {
    const axes = ['hardness', 'sparkle']
    expect(issuesOf({ ...EXAMPLE_WORK, brief: { ...brief, axes } })).toEqual([
      'brief.axes.1: There is no measure "sparkle".',
    ])
  })

  test('a part that this program does not know, rather than dropped', () => {
    expect(issuesOf({ ...EXAMPLE_WORK, orchard: [] })).toEqual([
      expect.stringContaining('Unrecognized key: "orchard"'),
    ])
  })

  test.each([NaN, Infinity, '5000', null])('a batch of %s g', (oilGrams) => {
    const work = { ...EXAMPLE_WORK, batch: { ...EXAMPLE_WORK.batch, oilGrams } }
    expect(issuesOf(work)).toEqual([expect.stringMatching(/^batch\.oilGrams: /u)])
  })

  test.each([undefined, null, 'work', [], 7])('%j in place of the whole', (work) => {
    expect(issuesOf(work)).toHaveLength(1)
  })
})
