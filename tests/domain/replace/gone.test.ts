import { expect, test } from 'vitest'
import { batchFacts } from '../../../src/data/batch-facts'
import { flagRules } from '../../../src/data/flags'
import { library } from '../../../src/data/library'
import type { BatchOrder } from '../../../src/domain/batch/order/order'
import { planBatch } from '../../../src/domain/batch/result/plan'
import { type Blend, totalChange } from '../../../src/domain/blend/blend'
import { barDistance, barMeasures } from '../../../src/domain/blend/compare'
import { isBeyondTrust } from '../../../src/domain/blend/flags'
import { COST } from '../../../src/domain/blend/measure'
import { blendValues } from '../../../src/domain/blend/values'
import type { Brief } from '../../../src/domain/optimise/brief/brief'
import { distance } from '../../../src/domain/optimise/studies/like'
import { type GoneOrder, oilGone } from '../../../src/domain/replace/gone'

const PRICES = { palm: 3, olive: 7, coconut: 4, lard: 3.5, shea: 9, 'palm-stearin': 3.2 }
const BASE: Blend = { palm: 40, olive: 35, coconut: 25 }
const BRIEF: Brief = {
  oils: Object.fromEntries(
    Object.entries(PRICES).map(([oil, pricePerKg]) => [oil, { pricePerKg }]),
  ),
  groups: [],
  measures: {},
  goal: { minimise: COST },
}
const BATCH: BatchOrder = {
  blend: BASE,
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: { naoh: 100 },
  superfat: 5,
  water: { lyeConcentration: 33 },
  scale: { oilStepG: 0.1, lyeStepG: 0.01 },
}
const TIES = Object.fromEntries(barMeasures(library.measures).map(({ id, tie }) => [id, tie]))
const ORDER: GoneOrder = {
  oil: 'palm',
  base: BASE,
  prices: PRICES,
  candidates: ['lard', 'shea', 'palm-stearin'],
  tolerances: TIES,
  batch: BATCH,
  oilGramsPerBar: 70,
  barsPerYear: 4000,
  most: 6,
}

function gone(order: GoneOrder, brief = BRIEF) {
  const answer = oilGone(brief, order, library, batchFacts, flagRules)
  if (answer.status !== 'found') throw new Error(`No answer but ${JSON.stringify(answer)}`)
  return answer
}

/** How far the nearest mix on a fine grid is, as the study counts it, when these oils alone take the place. */
function nearestOnGrid(oils: readonly string[]): number {
  const reference = blendValues(library, PRICES, BASE)
  const [rest, step] = [BASE.palm ?? NaN, 2]
  let least = Infinity
  const look = (shares: Blend) => {
    const values = blendValues(library, PRICES, shares)
    const movedTies = barDistance(library.measures, values, reference)
    least = Math.min(least, distance({ movedTies, changePoints: totalChange(BASE, shares) }))
  }
  // Olive and coconut may fall, as in the study; what falls goes to the replacements.
  for (let olive = 0; olive <= 35; olive += step)
    for (let coconut = 0; coconut <= 25; coconut += step) {
      const room = rest + olive + coconut
      const others = { olive: 35 - olive, coconut: 25 - coconut }
      const [first, second] = oils
      if (first === undefined) continue
      for (let part = 0; part <= room; part += second === undefined ? room : step)
        look({
          ...others,
          ...(second === undefined ? { [first]: room } : { [first]: part, [second]: room - part }),
        })
    }
  return least
}

test('single replacements rank as a search over a fine grid of all mixes ranks them', () => {
  const singles = gone({ ...ORDER, tolerances: {} }).replacements.filter(
    ({ oils }) => oils.length === 1,
  )
  const byGrid = [...ORDER.candidates].sort((a, b) => nearestOnGrid([a]) - nearestOnGrid([b]))
  expect(singles.map(({ oils }) => oils[0])).toEqual(byGrid)
})

test('no mix on a fine grid is nearer than the replacement found, of one oil or of two', () => {
  const { replacements } = gone(ORDER)
  expect(replacements.some(({ oils }) => oils.length === 2)).toBe(true)
  for (const replacement of replacements) {
    const { oils, blend } = replacement
    expect(blend['palm'] ?? 0).toBe(0)
    expect(Object.values(blend).reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 6)
    expect(distance(replacement)).toBeLessThanOrEqual(nearestOnGrid(oils) + 1e-6)
  }
})

test('those within tolerance come first, and of the others each measure that misses is named', () => {
  const { replacements, base } = gone(ORDER)
  const within = replacements.map(({ misses }) => misses.length === 0)
  expect(within).toEqual(within.toSorted((a, b) => Number(b) - Number(a)))
  for (const { misses, measures } of replacements)
    for (const { id, tie } of barMeasures(library.measures)) {
      const by = (measures[id] ?? NaN) - (base[id] ?? NaN)
      expect(misses.some(({ measure }) => measure === id)).toBe(Math.abs(by) > tie * (1 + 1e-9))
    }
  const free = gone({ ...ORDER, tolerances: {} })
  expect(free.replacements.every(({ misses }) => misses.length === 0)).toBe(true)
})

test('the cost of a change is the difference of the oils, per bar and per year (by hand)', () => {
  const { replacements } = gone(ORDER)
  const baseCost = 0.4 * 3 + 0.35 * 7 + 0.25 * 4
  for (const { blend, costChange } of replacements) {
    const cost = Object.entries(blend).reduce(
      (sum, [oil, share]) => sum + (share / 100) * (PRICES[oil as keyof typeof PRICES] ?? NaN),
      0,
    )
    expect(costChange?.perKgOils).toBeCloseTo(cost - baseCost, 9)
    // 70 g of oils in a bar, 4,000 bars a year.
    expect(costChange?.perBar).toBeCloseTo((cost - baseCost) * 0.07, 9)
    expect(costChange?.perYear).toBeCloseTo((cost - baseCost) * 280, 6)
  }
})

test('where the batch says how many bars it makes, a bar has its part of the oils', () => {
  const batch: BatchOrder = {
    ...BATCH,
    oilGrams: undefined,
    bars: { count: 10, grams: 100, weight: 'cured' },
  }
  const plan = planBatch(batch, library, batchFacts)
  if (plan.status !== 'ready') return expect.fail(JSON.stringify(plan))
  const oils = Object.values(plan.oilGrams).reduce((sum, grams) => sum + grams, 0)
  expect(gone({ ...ORDER, batch }).oilGramsPerBar).toBeCloseTo(oils / 10, 9)
})

test('the hydroxide is that of the batch page for the new blend, at the same weight of oils', () => {
  for (const { blend, batch } of gone(ORDER).replacements) {
    if (batch.status !== 'ready') return expect.fail('No batch')
    const plan = planBatch({ ...BATCH, blend }, library, batchFacts)
    const was = planBatch(BATCH, library, batchFacts)
    if (plan.status !== 'ready' || was.status !== 'ready') return expect.fail('No plan')
    expect(batch.alkali).toEqual([
      { kind: 'naoh', beforeG: was.alkaliGrams.naoh, afterG: plan.alkaliGrams.naoh },
    ])
  }
})

test('the label loses the oil and gains its replacement, by INCI name', () => {
  const lard = gone(ORDER).replacements.find(({ oils }) => oils.join() === 'lard')
  if (lard?.batch.status !== 'ready') return expect.fail('No lard')
  const { label } = lard.batch
  expect(label.gone).toEqual([library.oils.get('palm')?.inci.oil])
  expect(label.added).toEqual([library.oils.get('lard')?.inci.oil])
  expect(label.before).toContain('Aqua')
  expect(label.after).toContain('Sodium Hydroxide')
})

test('an oil that is not in the formula, or a year of no sense, is refused', () => {
  const refused = oilGone(
    BRIEF,
    { ...ORDER, oil: 'shea', barsPerYear: -1, oilGramsPerBar: 0 },
    library,
    batchFacts,
    flagRules,
  )
  expect(refused).toMatchObject({
    status: 'invalid',
    problems: [{ path: 'oil' }, { path: 'barsPerYear' }, { path: 'oilGramsPerBar' }],
  })
})

test('a replacement of which the measures can not say what a bar will be comes last, with its flag', () => {
  const oils = { ...BRIEF.oils, castor: { pricePerKg: 4 } }
  const order = {
    ...ORDER,
    oil: 'coconut',
    candidates: ['castor', 'lard', 'shea'],
    prices: { ...PRICES, castor: 4 },
  }
  const { replacements } = gone(order, { ...BRIEF, oils })
  const doubtful = replacements.map(({ flags }) => isBeyondTrust(flags))
  expect(doubtful.some((one) => one)).toBe(true)
  expect(doubtful).toEqual([...doubtful].sort())
  const castor = replacements.find(({ oils: instead }) => instead.join() === 'castor')
  expect(castor?.flags).toContainEqual(expect.objectContaining({ kind: 'trust', oil: 'castor' }))
})
