import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { Bench } from '../../src/state/bench.svelte'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { RepriceDesk } from '../../src/state/reprice.svelte'
import { costOn } from '../../src/domain/optimise/reprice/price-walk'
import { library } from '../../src/data/library'
import { normalised } from '../../src/domain/blend/blend'
import { barMeasures, differences } from '../../src/domain/blend/compare'
import { blendValues } from '../../src/domain/blend/values'
import { benchSolver } from './bench-solver'

const tieOf = (id: string) => library.measures.find((one) => one.id === id)?.tie ?? NaN

const FORMULA = { coconut: 28, shea: 34, olive: 22, 'rapeseed-low-erucic': 16 }

let solver: ReturnType<typeof benchSolver>
let work: WorkHistory
let bench: Bench
let desk: RepriceDesk
beforeEach(() => {
  solver = benchSolver()
  work = new WorkHistory(EXAMPLE_WORK)
  const explorer = new Explorer(work, solver.client)
  bench = new Bench(work, explorer)
  desk = new RepriceDesk(work, explorer, bench, solver.client)
})
afterEach(() => solver.close())

/** Waits for an answer to the newest question. */
async function answered<T>(read: () => T | undefined): Promise<T> {
  desk.ask()
  return vi.waitUntil(() => {
    if (desk.failure) throw new Error(desk.failure)
    return read()
  })
}

function holdCandidate(): void {
  const [candidate] = bench.add([{ name: 'Last year’s bar', blend: FORMULA, from: 'Your formula' }])
  desk.hold(`candidate ${candidate?.id ?? ''}`)
}

test('one price is walked with a candidate of the Bench held', async () => {
  holdCandidate()
  desk.chooseOil('shea')
  const { answer, order } = await answered(() => desk.walk)
  expect(order).toMatchObject({ oil: 'shea', fromChange: -0.5, toChange: 2, hold: FORMULA })
  if (answer.status !== 'found') return expect.fail(answer.status)
  expect(answer.held.sharePercent).toBeCloseTo(34, 9)
  // By hand: a third of the price's rise, as the formula has 34 % of it.
  const rise = costOn(answer.held, answer.price + 1) - costOn(answer.held, answer.price)
  expect(rise).toBeCloseTo(0.34, 9)
})

test('without a blend in hand today’s cheapest is held, and a candidate taken off is let go', () => {
  expect(desk.holding).toBe('best')
  holdCandidate()
  expect(desk.held).toEqual(FORMULA)
  work.undo()
  expect(desk.holding).toBe('best')
  expect(desk.held).toBeUndefined()
})

test('prices move by the spread typed, else that of the price book, else an assumed one', async () => {
  const offer = (on: string, priceMinor: number) => ({
    id: on,
    material: 'olive',
    supplier: 'North',
    size: 10,
    unit: 'kg' as const,
    steps: [{ fromPacks: 1, priceMinor }],
    on,
  })
  const { emptyLedger } = await import('../../src/state/ledger')
  const ledger = emptyLedger('EUR')
  const offers = [offer('2024-01-01', 5000), offer('2025-01-01', 6000), offer('2026-01-01', 5400)]
  work.change((now) => ({ ...now, ledger: { ...ledger, book: { ...ledger.book, offers } } }))
  desk.spread('shea', 40)
  const spreadOf = (oil: string) => desk.spreads.find((one) => one.oil === oil)
  expect(spreadOf('shea')).toEqual({ oil: 'shea', percent: 40, source: 'typed' })
  expect(spreadOf('coconut')).toEqual({ oil: 'coconut', percent: 25, source: 'assumed' })
  expect(spreadOf('olive')?.source).toBe('history')
  const byHand = Math.sqrt((Math.log(1.2) ** 2 + Math.log(0.9) ** 2) / (731 / 365.25))
  expect(spreadOf('olive')?.percent).toBeCloseTo(100 * byHand, 6)

  desk.kind = 'together'
  const { answer, order } = await answered(() => desk.together)
  expect(order.spreads['shea']).toBeCloseTo(0.4, 12)
  expect(answer).toMatchObject({ status: 'found', draws: 1000 })
})

test('an oil that is gone has replacements with lye, label and cost, which go on the Bench', async () => {
  holdCandidate()
  desk.kind = 'gone'
  desk.chooseOil('shea')
  desk.barsPerYear = 4000
  const { answer } = await answered(() => desk.gone)
  if (answer.status !== 'found') return expect.fail(JSON.stringify(answer))
  const [first] = answer.replacements
  if (!first) return expect.fail('No replacement')
  expect(first.blend['shea'] ?? 0).toBe(0)
  expect(first.costChange?.perYear).toBeCloseTo((first.costChange?.perBar ?? NaN) * 4000, 6)
  // Bars of 100 g as poured hold less than that of oils.
  expect(answer.oilGramsPerBar).toBeGreaterThan(50)
  expect(answer.oilGramsPerBar).toBeLessThan(100)
  expect(desk.holds(first.blend)).toBe(false)
  desk.put(first.blend, 'Without shea', 'From the Ledger')
  expect(desk.holds(first.blend)).toBe(true)
})

test('the brief is asked after its least cost, whatever its own goal', () => {
  expect(desk.hasOtherGoal).toBe(false)
  work.change((now) => ({ ...now, brief: { ...now.brief, goal: { maximise: 'mildness' } } }))
  expect(desk.hasOtherGoal).toBe(true)
  expect(desk.brief.goal).toEqual({ minimise: 'cost' })
})

test('a formula without wishes is held within a tie, unless told otherwise', async () => {
  work.change((now) => ({ ...now, brief: { ...now.brief, wishes: {} } }))
  holdCandidate()
  desk.chooseOil('shea')
  expect(desk.keepsBar).toBe(true)
  const values = blendValues(library, {}, normalised(FORMULA))
  const tied = await answered(() => desk.walk)
  if (tied.answer.status !== 'found') return expect.fail(tied.answer.status)
  for (const { blend } of tied.answer.pieces) {
    const told = differences(barMeasures(library.measures), blendValues(library, {}, blend), values)
    expect(told.filter(({ by, measure }) => Math.abs(by) > tieOf(measure) * (1 + 1e-6))).toEqual([])
  }
  desk.keepBar(false)
  expect(desk.keepingBrief).toBe(desk.brief)
})

test('where wishes say what a bar must be, they alone count', () => {
  holdCandidate()
  expect([desk.keepsBar, desk.keepingBrief.measures]).toEqual([false, desk.brief.measures])
  desk.keepBar(true)
  expect(desk.keepingBrief.measures).toMatchObject(desk.brief.measures)
  expect(Object.keys(desk.keepingBrief.measures)).toContain('mildness')
})
