import { describe, expect, test } from 'vitest'
import {
  barOf,
  isDraft,
  keptOf,
  withBar,
  withKept,
  withOilAdded,
  withOilOut,
  withTaken,
  withVersionBack,
} from '../../src/state/bar'
import {
  asksNearBar,
  briefOfDraft,
  type Draft,
  waitingFor,
  wholeBriefOf,
  withRow,
} from '../../src/state/draft'
import { EXAMPLE_WORK, FIRST_WORK, startedAfresh, withExample } from '../../src/state/first-work'
import { keptWork } from '../../src/storage/work-schema'

const BLEND = { olive: 50, coconut: 30, castor: 20 }
const BAR = barOf(BLEND)
const oilsOf = (draft: Draft) => draft.shelf.map(({ oil }) => oil)

describe('a bar in hand', () => {
  test('has its oils on the shelf, without prices, and leaves those that stand there as they are', () => {
    expect(oilsOf(withBar(FIRST_WORK, BAR).brief)).toEqual(['olive', 'coconut', 'castor'])
    const before = EXAMPLE_WORK.brief.shelf.find(({ oil }) => oil === 'coconut')
    const { brief } = withBar(EXAMPLE_WORK, BAR)
    expect(brief.shelf.find(({ oil }) => oil === 'coconut')).toEqual(before)
  })

  test('taken from elsewhere is the next draft: versions stay, locks only where the share does', () => {
    const locked = BAR.parts.map((part) => ({ ...part, locked: part.oil !== 'castor' }))
    const work = withBar(FIRST_WORK, withKept({ ...BAR, parts: locked }))
    const { bar } = withTaken(work, { olive: 50, coconut: 20, shea: 30 })
    expect(bar?.parts).toEqual([
      { oil: 'olive', percent: 50, locked: true },
      { oil: 'coconut', percent: 20, locked: false },
      { oil: 'shea', percent: 30, locked: false },
    ])
    expect(keptOf(bar)).toEqual({ number: 1, blend: BLEND })
    expect(bar && isDraft(bar)).toBe(true)
  })

  test('is kept version by version, and a version comes back', () => {
    const first = withKept(BAR)
    expect(isDraft(BAR)).toBe(true)
    expect(isDraft(first)).toBe(false)
    expect(withKept(first)).toBe(first)
    const changed = { ...first, parts: barOf({ olive: 60, coconut: 40 }).parts }
    expect(withKept(changed).versions.map(({ number }) => number)).toEqual([1, 2])
    expect(withVersionBack(changed).parts).toEqual(BAR.parts)
    expect(withVersionBack(BAR)).toBe(BAR)
  })

  test('takes an oil more at 0 %, and the first of all at 100 %', () => {
    expect(withOilAdded(undefined, 'olive').parts).toEqual([
      { oil: 'olive', percent: 100, locked: false },
    ])
    expect(withOilAdded(BAR, 'shea').parts.at(-1)).toEqual({
      oil: 'shea',
      percent: 0,
      locked: false,
    })
    expect(withOilAdded(BAR, 'olive')).toBe(BAR)
    expect(withOilOut(barOf({ olive: 100 }), 'olive')).toBeUndefined()
  })

  test('goes when all is begun afresh or the example is opened', () => {
    const work = withBar(EXAMPLE_WORK, BAR)
    expect(startedAfresh(work).bar).toBeUndefined()
    expect(withExample(work)).toEqual(EXAMPLE_WORK)
  })
})

describe('what is asked about cost', () => {
  const priced = withRow(EXAMPLE_WORK.brief, 'nothing', {})
  const oil = priced.shelf.find(({ banned }) => !banned)?.oil ?? ''
  const lacking = withRow(priced, oil, { pricePerKg: undefined })

  test('is asked while every open oil has a price', () => {
    expect(waitingFor(priced)).toEqual({ oils: [], goal: false, wish: false })
    expect(briefOfDraft(priced, 1000).goal).toEqual({ minimise: 'cost' })
  })

  test('waits while one has none: the nearest to the bar is asked, and all other wishes stay', () => {
    const draft: Draft = { ...lacking, wishes: { ...lacking.wishes, cost: { max: 5 } } }
    expect(waitingFor(draft)).toEqual({ oils: [oil], goal: true, wish: true })
    const { goal, measures } = briefOfDraft(draft, 1000, BLEND)
    const { cost: _cost, ...others } = draft.wishes
    expect(goal).toEqual({ closestTo: BLEND })
    expect(measures).toEqual(others)
  })

  test('is near an even mix where there is no bar', () => {
    const { goal, oils } = briefOfDraft(lacking, 1000)
    const shares = 'closestTo' in goal ? Object.values(goal.closestTo) : []
    expect(shares).toEqual(Object.keys(oils).map(() => 100 / Object.keys(oils).length))
  })

  test('goes into a file as it was asked', () => {
    expect(wholeBriefOf(lacking, 1000, BLEND).goal).toEqual({ minimise: 'cost' })
  })

  test('other goals wait for nothing', () => {
    const goal = { maximise: 'lather' } as const
    expect(briefOfDraft({ ...lacking, goal }, 1000).goal).toEqual(goal)
    expect(asksNearBar({ ...lacking, goal })).toBe(false)
    expect(asksNearBar({ ...priced, goal: { nearest: 'bar' } })).toBe(true)
    expect(briefOfDraft({ ...priced, goal: { nearest: 'bar' } }, 1000, BLEND).goal).toEqual({
      closestTo: BLEND,
    })
  })
})

test('the formula of an older record is the bar in hand, kept', () => {
  const brief = { ...EXAMPLE_WORK.brief, formula: { name: 'Mine', blend: BLEND } }
  const { bar, brief: read } = keptWork.parse({ ...EXAMPLE_WORK, brief })
  expect(bar).toEqual(withKept(BAR))
  expect(read).toEqual(EXAMPLE_WORK.brief)
})
