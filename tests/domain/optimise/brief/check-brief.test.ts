import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { checkBrief } from '../../../../src/domain/optimise/brief/check-brief'

const SOUND: Brief = {
  oils: { olive: { pricePerKg: 7, min: 20 }, coconut: { pricePerKg: 4, max: 30 } },
  groups: [{ name: 'all', oils: ['olive', 'coconut'], max: 100 }],
  measures: { hardness: { min: 20, max: 40 }, cost: { max: 8 } },
  goal: { minimise: 'cost' },
}

const IDS = library.measures.map(({ id }) => id).join(', ')

/** What a maker reads of a brief that is wrong in one place: the place and the whole message. */
const WRONG: readonly (readonly [what: string, brief: Brief, path: string, message: string])[] = [
  [
    'an empty shelf',
    { ...SOUND, oils: {}, groups: [] },
    'oils',
    'The shelf is empty. Add at least one oil.',
  ],
  [
    'an unknown oil',
    withOils({ dragon: { pricePerKg: 1 } }),
    'oils.dragon',
    'There is no oil "dragon" in the library. The command oils lists their ids.',
  ],
  [
    'a negative price',
    withOils({ castor: { pricePerKg: -3 } }),
    'oils.castor.pricePerKg',
    'The price is -3. Give 0 to 1000000000 per kg.',
  ],
  [
    'a price that is no number',
    withOils({ castor: { pricePerKg: NaN } }),
    'oils.castor.pricePerKg',
    'The price is NaN. Give 0 to 1000000000 per kg.',
  ],
  [
    'a price that a solver takes for infinite',
    withOils({ castor: { pricePerKg: 1e22 } }),
    'oils.castor.pricePerKg',
    'The price is 1e+22. Give 0 to 1000000000 per kg.',
  ],
  [
    'a missing price where cost is asked about',
    withOils({ castor: {} }),
    'oils.castor.pricePerKg',
    '"castor" has no price, but the brief asks about cost. Give its price per kg or take it off the shelf.',
  ],
  [
    'a negative share',
    withOils({ castor: { pricePerKg: 8, min: -5 } }),
    'oils.castor.min',
    'The share is -5 %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'a share over 100 %',
    withOils({ castor: { pricePerKg: 8, max: 120 } }),
    'oils.castor.max',
    'The share is 120 %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'a share that is no number',
    withOils({ castor: { pricePerKg: 8, max: NaN } }),
    'oils.castor.max',
    'The share is NaN %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'more of an oil needed than allowed',
    withOils({ castor: { pricePerKg: 8, min: 12, max: 10 } }),
    'oils.castor',
    'At least 12 is over at most 10. Lower the first or raise the second.',
  ],
  [
    'a group with more needed than allowed',
    withGroup({ oils: ['olive'], min: 60, max: 50 }),
    'groups[0]',
    'At least 60 is over at most 50. Lower the first or raise the second.',
  ],
  [
    'a group with a share over 100 %',
    withGroup({ oils: ['olive'], max: 101 }),
    'groups[0].max',
    'The share is 101 %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'a group without oils',
    withGroup({ oils: [], max: 50 }),
    'groups[0].oils',
    'The group names no oil. Add one.',
  ],
  [
    'a group with an oil that is not on the shelf',
    withGroup({ oils: ['olive', 'castor'], max: 50 }),
    'groups[0].oils',
    '"castor" is not on the shelf. Add it to oils or take it out here.',
  ],
  [
    'a group with a name that every object has',
    withGroup({ oils: ['constructor'], max: 50 }),
    'groups[0].oils',
    '"constructor" is not on the shelf. Add it to oils or take it out here.',
  ],
  [
    'a group that names an oil twice',
    withGroup({ oils: ['olive', 'olive', 'olive'], max: 50 }),
    'groups[0].oils',
    '"olive" stands here more than once. Name it once.',
  ],
  [
    'a range on an unknown measure',
    { ...SOUND, measures: { shine: { min: 3 } } },
    'measures.shine',
    `There is no measure "shine". Use one of ${IDS}.`,
  ],
  [
    'a range that runs backwards',
    { ...SOUND, measures: { hardness: { min: 40, max: 30.5 } } },
    'measures.hardness',
    'At least 40 is over at most 30.5. Lower the first or raise the second.',
  ],
  [
    'a limit that is no number',
    { ...SOUND, measures: { hardness: { min: NaN } } },
    'measures.hardness.min',
    'The limit is NaN. Give a number that the measure can have, or leave it out.',
  ],
  [
    'a limit that a solver takes for infinite',
    { ...SOUND, measures: { hardness: { max: -1e21 } } },
    'measures.hardness.max',
    'The limit is -1e+21. Give a number that the measure can have, or leave it out.',
  ],
  [
    'an unknown measure to minimise',
    { ...SOUND, goal: { minimise: 'price' } },
    'goal.minimise',
    `There is no measure "price". Use one of ${IDS}.`,
  ],
  [
    'an unknown measure to maximise',
    { ...SOUND, goal: { maximise: 'toString' } },
    'goal.maximise',
    `There is no measure "toString". Use one of ${IDS}.`,
  ],
  [
    'a blend to stay near that is all 0',
    closestTo({ olive: 0, coconut: 0 }),
    'goal.closestTo',
    'The shares add to 0 %; a blend adds to 100 %. Change the shares until they do.',
  ],
  [
    'a blend to stay near that adds to 90.3 %',
    closestTo({ olive: 60.1, coconut: 30.2 }),
    'goal.closestTo',
    'The shares add to 90.3 %; a blend adds to 100 %. Change the shares until they do.',
  ],
  [
    'a blend to stay near with an unknown oil',
    closestTo({ dragon: 100 }),
    'goal.closestTo.dragon',
    'There is no oil "dragon" in the library. The command oils lists their ids.',
  ],
  [
    'a blend to stay near with a negative share',
    closestTo({ olive: 110, coconut: 50, castor: -60 }),
    'goal.closestTo.castor',
    'The share is -60 %; shares run from 0 to 100 %. Give one in that range.',
  ],
]

describe('a brief is refused, with the place and what to do, for', () => {
  for (const [what, brief, path, message] of WRONG) {
    test(what, () => {
      expect(checkBrief(brief, library)).toContainEqual({ path, message })
    })
  }
})

describe('a brief is accepted', () => {
  test('as it is usually written', () => {
    expect(checkBrief(SOUND, library)).toEqual([])
  })

  test('with nothing but a shelf and a goal', () => {
    const brief: Brief = {
      oils: { olive: {} },
      groups: [],
      measures: {},
      goal: { maximise: 'wear' },
    }
    expect(checkBrief(brief, library)).toEqual([])
  })

  test('without prices where nothing is asked about cost', () => {
    const oils = { olive: {}, coconut: {} }
    const brief: Brief = { ...SOUND, oils, measures: { cost: {} }, goal: { minimise: 'wear' } }
    expect(checkBrief(brief, library)).toEqual([])
  })

  test('with oils that cost nothing', () => {
    expect(checkBrief(withOils({ 'tallow-beef': { pricePerKg: 0 } }), library)).toEqual([])
  })

  test('with shares fixed to one value', () => {
    expect(checkBrief(withOils({ castor: { pricePerKg: 8, min: 5, max: 5 } }), library)).toEqual([])
  })

  test('with a blend to stay near that adds to 99.9 %', () => {
    expect(checkBrief(closestTo({ olive: 66.6, coconut: 33.3 }), library)).toEqual([])
  })
})

test('a brief with faults in several places is told all of them at once', () => {
  const brief: Brief = {
    oils: { dragon: { min: 120 }, olive: { pricePerKg: -1 } },
    groups: [{ name: 'g', oils: [], min: 9, max: 8 }],
    measures: { cost: { min: 9, max: 8 } },
    goal: { minimise: 'shine' },
  }
  expect(checkBrief(brief, library).map(({ path }) => path)).toEqual([
    'oils.dragon',
    'oils.dragon.min',
    'oils.olive.pricePerKg',
    'groups[0].oils',
    'groups[0]',
    'measures.cost',
    'goal.minimise',
    'oils.dragon.pricePerKg',
  ])
})

test('every oil without a price is named where cost is asked about', () => {
  const brief: Brief = { ...SOUND, oils: { olive: {}, coconut: { pricePerKg: 4 }, castor: {} } }
  expect(checkBrief(brief, library).map(({ path }) => path)).toEqual([
    'oils.olive.pricePerKg',
    'oils.castor.pricePerKg',
  ])
})

function withOils(oils: Brief['oils']): Brief {
  return { ...SOUND, oils: { ...SOUND.oils, ...oils } }
}

function withGroup(group: Omit<Brief['groups'][number], 'name'>): Brief {
  return { ...SOUND, groups: [{ name: 'g', ...group }] }
}

function closestTo(blend: Readonly<Record<string, number>>): Brief {
  return { ...SOUND, goal: { closestTo: blend } }
}
