import { describe, expect, test } from 'vitest'
import type { Brief, ShelfOil } from '../../../../src/domain/optimise/brief/brief'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import {
  type LimitReason,
  type Reasons,
  reasonsFor,
} from '../../../../src/domain/optimise/why/reasons'
import type { Library } from '../../../../src/domain/blend/library'
import { libraryOfValues } from '../../blend/stub-library'
import { withCost } from './random-briefs'

function sure(brief: Brief, library: Library): Reasons {
  const reasons = reasonsFor(brief, library)
  if (!reasons) throw new Error('The brief has no blend')
  return reasons
}

function limitIn({ limits }: Reasons, path: string): LimitReason | undefined {
  return limits.find(({ limit }) => limit === path)
}

function expectWorth(reasons: Reasons, path: string, worth: number, span: readonly number[]): void {
  const reason = limitIn(reasons, path)
  expect(reason?.worthPerUnit.relax).toBeCloseTo(worth, 9)
  expect(reason?.worthPerUnit.tighten).toBeCloseTo(worth, 9)
  reason?.span.forEach((end, k) => expect(end).toBeCloseTo(span[k] ?? NaN, 9))
}

/**
 * Wyndor Glass, the prototype example of F.S. Hillier, G.J. Lieberman, Introduction to Operations
 * Research (chapters 3 and 4.7; figures from memory). Doors and windows are oils; a third one of nothing
 * makes up 100 %. Plants are measures: 1 a door, 2 a window, 3 a door and 2 a window.
 */
describe('the published sensitivity report of Wyndor Glass', () => {
  const library = withCost(
    libraryOfValues({
      door: { plant1: 100, plant2: 0, plant3: 300, profit: 300 },
      window: { plant1: 0, plant2: 200, plant3: 200, profit: 500 },
      nothing: { plant1: 0, plant2: 0, plant3: 0, profit: 0 },
    }),
  )
  const plants = { plant1: { max: 4 }, plant2: { max: 12 }, plant3: { max: 18 } }
  const plain: Brief = {
    oils: { door: {}, window: {}, nothing: {} },
    groups: [],
    measures: plants,
    goal: { maximise: 'profit' },
  }

  test('shadow prices 3/2 and 1 for plants 2 and 3, none for plant 1', () => {
    const reasons = sure(plain, library)
    expect(reasons.limits.map(({ limit }) => limit)).toEqual([
      'measures.plant2.max',
      'measures.plant3.max',
    ])
    expectWorth(reasons, 'measures.plant2.max', 1.5, [6, 18])
    expectWorth(reasons, 'measures.plant3.max', 1, [12, 24])
  })

  test('a unit profit of a door from 0 to 7.5 and of a window from 2 up keeps the plan', () => {
    // As prices: what a whole of nothing costs, 1000, less a hundred unit profits of 3 and 5.
    const oils = {
      door: { pricePerKg: 700 },
      window: { pricePerKg: 500 },
      nothing: { pricePerKg: 1000 },
    }
    const { oilsIn, oilsOut } = sure({ ...plain, oils, goal: { minimise: 'cost' } }, library)
    expect(oilsOut).toEqual([])
    const span = (oil: string) => oilsIn.find((one) => one.oil === oil)?.priceSpan
    expect(span('door')?.[0]).toBeCloseTo(250, 6)
    expect(span('door')?.[1]).toBeCloseTo(1000, 6)
    expect(span('window')?.[0]).toBeNull()
    expect(span('window')?.[1]).toBeCloseTo(800, 6)
  })
})

const library = withCost(
  libraryOfValues({ soft: { firm: 20 }, hard: { firm: 80 }, twin: { firm: 80 }, wet: { firm: 0 } }),
)
const soft: ShelfOil = { pricePerKg: 2 }
const hard: ShelfOil = { pricePerKg: 8 }
const cheapest = { groups: [], goal: { minimise: 'cost' } } as const

test('two limits that hold the same line are worth nothing to relax alone', () => {
  // Hard oil costs 6 per kg more; each point of firmness takes 1/60 of the blend: 0.1 per kg a point.
  const brief: Brief = {
    ...cheapest,
    oils: { soft: { ...soft, max: 50 }, hard },
    measures: { firm: { min: 50 } },
  }
  const reasons = sure(brief, library)
  for (const [path, worth, span] of [
    ['measures.firm.min', 0.1, [null, 80]],
    ['oils.soft.max', 0.06, [0, 100]],
  ] as const) {
    const reason = limitIn(reasons, path)
    expect(reason?.worthPerUnit.relax).toBe(0)
    expect(reason?.worthPerUnit.tighten).toBeCloseTo(worth, 9)
    expect(reason?.span).toEqual(span)
  }
  expect(reasons.sentences).toContain(
    'firm at least 50: giving way changes nothing; each point more costs 0.10 per kg, up to 80.',
  )
})

test('limits that hold the answer only together are told from limits that cost nothing', () => {
  const oils = { soft, hard }
  const half = { oils: ['hard'], min: 50, max: 50 }
  const twice = [
    { name: 'once', ...half },
    { name: 'again', ...half },
  ]
  const held = sure({ ...cheapest, oils, measures: {}, groups: twice }, library)
  expect(held.limits).toEqual([])
  expect(held.sentences[0]).toContain('where one gives way, others hold the answer where it is')
  const free = sure({ ...cheapest, oils, measures: { firm: { min: 10 } } }, library)
  expect(free.limits).toEqual([])
  expect(free.sentences[0]).toContain('the best that any mix of the shelf can reach')
})

test('an oil with the same figures comes in as soon as it is cheaper', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard, twin: { pricePerKg: 8 } },
    measures: { firm: { min: 50 } },
  }
  const { oilsIn, oilsOut } = sure(brief, library)
  expect(oilsOut.length).toBe(1)
  expect(oilsOut[0]?.entersBelowPricePerKg).toBeCloseTo(8, 9)
  const used = oilsIn.find(({ oil }) => oil !== 'soft')
  expect(used?.priceSpan[1]).toBeCloseTo(8, 9)
  expect(used?.priceSpan[0]).toBeCloseTo(2, 9)
})

test('the span of a price ends where the wish on cost leaves no blend', () => {
  // Half soft, half hard costs 5.00; at most 5.50 allows hard 9.00.
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard },
    measures: { firm: { min: 50 }, cost: { max: 5.5 } },
  }
  const { oilsIn } = sure(brief, library)
  expect(oilsIn.find(({ oil }) => oil === 'hard')?.priceSpan[1]).toBeCloseTo(9, 9)
})

test('an oil has a price to come in at also where the answer stands at the wish on cost', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard, twin: { pricePerKg: 9 } },
    measures: { firm: { min: 50 }, cost: { max: 5 } },
  }
  const { oilsOut } = sure(brief, library)
  expect(oilsOut.map(({ oil }) => oil)).toEqual(['twin'])
  expect(oilsOut[0]?.entersBelowPricePerKg).toBeCloseTo(8, 9)
})

test('says why an oil comes in at no price', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard, twin: { pricePerKg: 9, max: 0 }, wet: { pricePerKg: 9 } },
    measures: { firm: { min: 50, max: 50 } },
  }
  const { oilsOut, sentences } = sure(
    { ...brief, oils: { ...brief.oils, hard: { ...hard, max: 50 } } },
    library,
  )
  expect(oilsOut).toEqual([
    { oil: 'twin', entersBelowPricePerKg: null, atNoPrice: 'own limit' },
    { oil: 'wet', entersBelowPricePerKg: null, atNoPrice: 'no blend' },
  ])
  expect(sentences).toContain('Olive would come in at no price: its own limit allows none.')
})

test('prices say nothing where cost stands at its own least', () => {
  const brief: Brief = { ...cheapest, oils: { soft, hard }, measures: { cost: { min: 4 } } }
  const { oilsIn, oilsOut, sentences } = sure(brief, library)
  expect([oilsIn, oilsOut]).toEqual([[], []])
  expect(sentences.at(-1)).toBe(
    'Cost stands at its own wish of at least 4.00 per kg, so no price of one oil decides the blend.',
  )
})

test('a goal of staying close to a blend is said to have no prices', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard },
    measures: { firm: { min: 50 } },
    goal: { closestTo: { soft: 100 } },
  }
  const reasons = sure(brief, library)
  expect([reasons.limits, reasons.oilsIn, reasons.oilsOut]).toEqual([[], [], []])
  expect(reasons.sentences).toEqual([expect.stringContaining('no limit has a worth')])
})

test('rules on which oils are used are said to leave no prices', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft, hard },
    measures: { firm: { min: 50 } },
    rules: { shareStep: 5 },
  }
  const reasons = sure(brief, library)
  expect([reasons.limits, reasons.oilsIn, reasons.oilsOut]).toEqual([[], [], []])
  expect(reasons.sentences).toEqual([expect.stringContaining('rules on which oils are used')])
})

test('a brief without a blend has no reasons', () => {
  const brief: Brief = { ...cheapest, oils: { soft, hard }, measures: { firm: { min: 90 } } }
  expect(reasonsFor(brief, library)).toBeUndefined()
})

test('a blend that is not the best is refused', () => {
  const brief: Brief = { ...cheapest, oils: { soft, hard }, measures: { firm: { min: 50 } } }
  expect(() => reasonsFor(brief, library, { blend: { soft: 40, hard: 60 } })).toThrow(
    /claims a goal of 5; the blend comes to 5\.6/,
  )
  expect(() => reasonsFor(brief, library, { blend: { soft: 60, hard: 40 } })).toThrow(
    /breaks the brief/,
  )
})

test('a space keeps its limits while it is asked for reasons', () => {
  const brief: Brief = {
    ...cheapest,
    oils: { soft: { ...soft, max: 90 }, hard: { ...hard, max: 60 } },
    groups: [{ name: 'all', oils: ['soft', 'hard'], max: 100 }],
    measures: { firm: { min: 50, max: 55 }, cost: { max: 6 } },
  }
  const space = new BlendSpace(brief, library)
  const before = [...space.simplex.program.lower, ...space.simplex.program.upper]
  const first = reasonsFor(brief, library, { space })
  expect([...space.simplex.program.lower, ...space.simplex.program.upper]).toEqual(before)
  expect(reasonsFor(brief, library, { space })?.sentences).toEqual(first?.sentences)
})
