import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { planBatch } from '../../../../src/domain/batch/result/plan'

const SOUND: BatchOrder = {
  blend: { olive: 58.8, coconut: 30, shea: 11.2 },
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: { naoh: 99 },
  superfat: 5,
  water: { lyeConcentration: 33 },
}
const WITHOUT_SIZE: BatchOrder = { ...SOUND, oilGrams: undefined }
const FINE_SCALE = { oilStepG: 1, lyeStepG: 0.1 }

/** What a maker reads of an order that is wrong in one place: the place and the whole message. */
const WRONG: readonly (readonly [
  what: string,
  order: BatchOrder,
  path: string,
  message: string,
])[] = [
  [
    'an unknown oil',
    { ...SOUND, blend: { dragon: 100 } },
    'blend.dragon',
    'There is no oil "dragon" in the library. The command oils lists their ids.',
  ],
  [
    'shares that are all 0',
    { ...SOUND, blend: { olive: 0, coconut: 0 } },
    'blend',
    'The shares add to 0 %; a blend adds to 100 %. Change the shares until they do.',
  ],
  [
    'no shares at all',
    { ...SOUND, blend: {} },
    'blend',
    'The shares add to 0 %; a blend adds to 100 %. Change the shares until they do.',
  ],
  [
    'shares that add to 99.4 %',
    { ...SOUND, blend: { olive: 70.1, coconut: 29.3 } },
    'blend',
    'The shares add to 99.4 %; a blend adds to 100 %. Change the shares until they do.',
  ],
  [
    'a negative share',
    { ...SOUND, blend: { olive: 110, coconut: -10 } },
    'blend.coconut',
    'The share is -10 %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'a share that is no number',
    { ...SOUND, blend: { olive: NaN, coconut: 100 } },
    'blend.olive',
    'The share is NaN %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'neither a weight nor a mould',
    WITHOUT_SIZE,
    'oilGrams',
    'Give one size: the weight of all oils, a mould, or bars; and not more than one.',
  ],
  [
    'both a weight and a mould',
    { ...SOUND, mould: { volumeMl: 1000 } },
    'oilGrams',
    'Give one size: the weight of all oils, a mould, or bars; and not more than one.',
  ],
  [
    'a weight of 0 g',
    { ...SOUND, oilGrams: 0 },
    'oilGrams',
    'The value is 0 g of oils. Give a number above 0.',
  ],
  [
    'a negative weight',
    { ...SOUND, oilGrams: -500 },
    'oilGrams',
    'The value is -500 g of oils. Give a number above 0.',
  ],
  [
    'a weight that is no number',
    { ...SOUND, oilGrams: NaN },
    'oilGrams',
    'The value is NaN g of oils. Give a number above 0.',
  ],
  [
    'a weight beyond floating point',
    { ...SOUND, oilGrams: 1e308 },
    'oilGrams',
    'No weights come of this. Give a size that a scale can weigh.',
  ],
  [
    'a weight too small for floating point',
    { ...SOUND, oilGrams: 5e-324 },
    'oilGrams',
    'No weights come of this. Give a size that a scale can weigh.',
  ],
  [
    'a mould without volume',
    { ...WITHOUT_SIZE, mould: { volumeMl: 0 } },
    'mould.volumeMl',
    'The value is 0 ml. Give a number above 0.',
  ],
  [
    'a mould filled to 0 %',
    { ...WITHOUT_SIZE, mould: { volumeMl: 900, fillPercent: 0 } },
    'mould.fillPercent',
    'The fill is 0 %. Give more than 0 and at most 100 %.',
  ],
  [
    'a mould filled to 120 %',
    { ...WITHOUT_SIZE, mould: { volumeMl: 900, fillPercent: 120 } },
    'mould.fillPercent',
    'The fill is 120 %. Give more than 0 and at most 100 %.',
  ],
  [
    'a mould of a batter without density',
    { ...WITHOUT_SIZE, mould: { volumeMl: 900, densityGPerMl: -1 } },
    'mould.densityGPerMl',
    'The value is -1 g/ml. Give a number above 0.',
  ],
  [
    'no alkali',
    { ...SOUND, alkali: {} },
    'alkali',
    'The alkalis turn 0 % of the fat to soap; their shares add to 100 %. Change them until they do.',
  ],
  [
    'alkalis that add to 90.3 %',
    { ...SOUND, alkali: { naoh: 60.1, koh: 30.2 } },
    'alkali',
    'The alkalis turn 90.3 % of the fat to soap; their shares add to 100 %. Change them until they do.',
  ],
  [
    'an alkali of a negative share',
    { ...SOUND, alkali: { naoh: 110, koh: -10 } },
    'alkali.koh',
    'The share is -10 %; shares run from 0 to 100 %. Give one in that range.',
  ],
  [
    'an alkali of purity 0 %',
    { ...SOUND, purity: { naoh: 0 } },
    'purity.naoh',
    'The purity is 0 %. Give 50 to 100 %; the bag or its certificate states it. Less than 50 % is no dry alkali: a solution goes under lyeSolution.',
  ],
  [
    'an alkali purer than pure',
    { ...SOUND, alkali: { koh: 100 }, purity: { koh: 101 } },
    'purity.koh',
    'The purity is 101 %. Give 50 to 100 %; the bag or its certificate states it. Less than 50 % is no dry alkali: a solution goes under lyeSolution.',
  ],
  [
    'a negative superfat',
    { ...SOUND, superfat: -1 },
    'superfat',
    'The superfat is -1 %. Give 0 to under 100 %. Below 0 the bar keeps free lye and burns skin.',
  ],
  [
    'a superfat of 100 %',
    { ...SOUND, superfat: 100 },
    'superfat',
    'The superfat is 100 %. Give 0 to under 100 %. At 100 % no lye is left to make soap.',
  ],
  [
    'a superfat over 100 %',
    { ...SOUND, superfat: 105 },
    'superfat',
    'The superfat is 105 %. Give 0 to under 100 %. At 100 % no lye is left to make soap.',
  ],
  [
    'a lye of 60 %, which does not dissolve',
    { ...SOUND, water: { lyeConcentration: 60 } },
    'water.lyeConcentration',
    'The lye would hold 60.0 % hydroxide, and more than 50 % does not stay dissolved. Give more water.',
  ],
  [
    'a lye of 100 %',
    { ...SOUND, water: { lyeConcentration: 100 } },
    'water.lyeConcentration',
    'The lye concentration is 100 %. Give more than 0 and at most 50 %.',
  ],
  [
    'a lye of 0 %',
    { ...SOUND, water: { lyeConcentration: 0 } },
    'water.lyeConcentration',
    'The lye concentration is 0 %. Give more than 0 and at most 50 %.',
  ],
  [
    'less water than hydroxide, which does not dissolve',
    { ...SOUND, water: { ratio: 0.8 } },
    'water.ratio',
    'The lye would hold 55.6 % hydroxide, and more than 50 % does not stay dissolved. Give more water.',
  ],
  [
    'no water for the hydroxide',
    { ...SOUND, water: { ratio: 0 } },
    'water.ratio',
    'The value is 0 g of water per g of hydroxide. Give a number above 0.',
  ],
  [
    'a negative water ratio',
    { ...SOUND, water: { ratio: -2 } },
    'water.ratio',
    'The value is -2 g of water per g of hydroxide. Give a number above 0.',
  ],
  [
    'water by the oils that is no number',
    { ...SOUND, water: { percentOfOils: NaN } },
    'water.percentOfOils',
    'The value is NaN % of the oils. Give a number above 0.',
  ],
  [
    'a scale that shows steps of 0 g',
    { ...SOUND, scale: { ...FINE_SCALE, lyeStepG: 0 } },
    'scale.lyeStepG',
    'The scale shows steps of 0 g. Give its step, 0.001 g or more.',
  ],
  [
    'a scale that shows negative steps',
    { ...SOUND, scale: { ...FINE_SCALE, oilStepG: -1 } },
    'scale.oilStepG',
    'The scale shows steps of -1 g. Give its step, 0.001 g or more.',
  ],
  [
    'a scale finer than any',
    { ...SOUND, scale: { ...FINE_SCALE, lyeStepG: 1e-120 } },
    'scale.lyeStepG',
    'The scale shows steps of 1e-120 g. Give its step, 0.001 g or more.',
  ],
  [
    'a scale that shows no number',
    { ...SOUND, scale: { ...FINE_SCALE, oilStepG: NaN } },
    'scale.oilStepG',
    'The scale shows steps of NaN g. Give its step, 0.001 g or more.',
  ],
  [
    'an oil that a coarse scale shows as 0 g',
    { ...SOUND, blend: { olive: 99.7, castor: 0.3 }, oilGrams: 100, scale: FINE_SCALE },
    'blend.castor',
    'This rounds to 0 g on the scale in use. Make a larger batch, use a finer scale or leave it out.',
  ],
  [
    'lye that a coarse scale shows as 0 g',
    { ...SOUND, oilGrams: 20, scale: { oilStepG: 1, lyeStepG: 5 } },
    'alkali.naoh',
    'This rounds to 0 g on the scale in use. Make a larger batch, use a finer scale or leave it out.',
  ],
]

describe('an order is refused, with the place and what to do, for', () => {
  for (const [what, order, path, message] of WRONG) {
    test(what, () => {
      expect(problemsOf(order)).toContainEqual({ path, message })
    })
  }

  test('too little water by the oils, which does not dissolve the lye', () => {
    const [problem, ...more] = problemsOf({ ...SOUND, water: { percentOfOils: 10 } })
    expect(more).toEqual([])
    expect(problem?.path).toBe('water.percentOfOils')
    // About 143 g of hydroxide in 100 g of water: 143 / 243 is 59 %.
    expect(problem?.message).toMatch(
      /^The lye would hold 5[89]\.\d % hydroxide, .* Give more water\.$/u,
    )
  })
})

describe('an order is accepted', () => {
  test('as it is usually written', () => {
    expect(problemsOf(SOUND)).toEqual([])
  })

  test('with shares that add to 99.6 %, which are scaled', () => {
    const plan = planBatch({ ...SOUND, blend: { olive: 69.72, coconut: 29.88 } }, library)
    expect(plan).toMatchObject({
      oilGrams: {
        olive: expect.closeTo(700, 9) as number,
        coconut: expect.closeTo(300, 9) as number,
      },
    })
  })

  test('with an oil of 0 %, which is not weighed', () => {
    const plan = planBatch({ ...SOUND, blend: { olive: 100, castor: 0 } }, library)
    expect(plan).toMatchObject({ status: 'ready', oilGrams: { olive: 1000 } })
    expect(plan).not.toHaveProperty('oilGrams.castor')
  })

  test.for<BatchOrder['water']>([{ lyeConcentration: 50 }, { ratio: 1 }])(
    'with lye at the very edge of what dissolves: %o',
    (water) => {
      expect(problemsOf({ ...SOUND, water })).toEqual([])
      const both = { alkali: { naoh: 40, koh: 60 }, purity: { naoh: 99, koh: 90 } }
      expect(problemsOf({ ...SOUND, ...both, water, scale: FINE_SCALE })).toEqual([])
    },
  )

  test('without a discount', () => {
    expect(problemsOf({ ...SOUND, superfat: 0 })).toEqual([])
  })
})

test('an order with faults in several places is told all of them at once', () => {
  const order: BatchOrder = {
    blend: { dragon: 30 },
    alkali: { naoh: 50 },
    purity: {},
    superfat: 120,
    water: { ratio: 0.5 },
    scale: { oilStepG: 0, lyeStepG: 0 },
  }
  expect(problemsOf(order).map(({ path }) => path)).toEqual([
    'blend.dragon',
    'blend',
    'oilGrams',
    'alkali',
    'superfat',
    'water.ratio',
    'scale.oilStepG',
    'scale.lyeStepG',
  ])
})

function problemsOf(order: BatchOrder) {
  const plan = planBatch(order, library)
  return plan.status === 'invalid' ? plan.problems : []
}
