import loadHighs from 'highs'
import { describe, expect, test } from 'vitest'
import { demoLedger } from '../../src/data/demo-ledger'
import { batchFacts } from '../../src/data/batch-facts'
import { library } from '../../src/data/library'
import { planBatch } from '../../src/domain/batch/result/plan'
import { mixedHighs } from '../../src/domain/cost/mixed'
import { runCost } from '../../src/domain/cost/run-cost'
import { BatchDesk } from '../../src/state/batch.svelte'
import { EXAMPLE_WORK, startedAfresh } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import {
  emptyLedger,
  type Ledger,
  withBook,
  withImported,
  withOffer,
  withTerms,
} from '../../src/state/ledger'
import { BuyingDesk } from '../../src/state/ledger-buying.svelte'
import { freshRunId, withRun, withRunTimes, withStock } from '../../src/state/ledger-runs'
import { LedgerDesk } from '../../src/state/ledger.svelte'
import { keptWork } from '../../src/storage/work-schema'
import { offer } from '../domain/cost/books'

const TODAY = '2026-11-25'
const BLEND = { olive: 60, coconut: 40 }

function setUp(blend: Readonly<Record<string, number>> | undefined = BLEND) {
  const work = new WorkHistory(EXAMPLE_WORK)
  const batch = new BatchDesk(work, () => blend)
  return { work, desk: new LedgerDesk(work, () => batch.order, TODAY) }
}

function withDemo() {
  const all = setUp()
  all.desk.change((ledger) => ({ ...ledger, ...demoLedger }))
  return all
}

test('a Ledger that nothing was put into is empty, in the brief’s currency, and not kept', () => {
  const { work, desk } = setUp()
  expect(desk.ledger).toEqual(emptyLedger('EUR'))
  expect(work.now.ledger).toBeUndefined()
  expect(desk.cost?.status === 'ready' && desk.cost.cost.missing).toHaveLength(3)
})

test('the cost on the page is the library’s own for the batch in hand', () => {
  const { desk } = withDemo()
  const { ready, ledger, pricing } = desk
  if (!ready) throw new Error('The batch can be planned')
  expect(desk.cost).toEqual(runCost(ready, ledger.work, pricing, 1))
  const order = { ...ready.order, cut: { barGrams: 125 } }
  expect(planBatch(order, library, batchFacts)).toMatchObject({
    bars: { count: ready.bars?.count },
  })
  const total = desk.waterfall?.total ?? 0
  expect(total).toBeCloseTo(desk.cost?.status === 'ready' ? desk.cost.cost.perBar : NaN, 6)
})

test('a batch that says how it is cut is costed as it is cut', () => {
  const { work, desk } = withDemo()
  expect(desk.cutByBatch).toBe(false)
  work.change((now) => ({ ...now, batch: { ...now.batch, cut: { barGrams: 200 } } }))
  expect(desk.cutByBatch).toBe(true)
  expect(desk.ready?.bars?.wetG).toBe(200)
})

test('what is put in can be undone, also the example', () => {
  const { work, desk } = withDemo()
  desk.change((ledger) => withBook(ledger, { taxBack: false }), 'tax back')
  expect(desk.book.taxBack).toBe(false)
  work.undo()
  expect(desk.book.taxBack).toBe(true)
  work.undo()
  expect(work.now.ledger).toBeUndefined()
})

test('all that a Ledger holds is kept and read again as it was', () => {
  const { work, desk } = withDemo()
  desk.change((ledger) => ({
    ...withStock(
      withRun(ledger, { id: 'run-1', name: 'Old', times: 2, needs: { olive: 9 } }),
      'olive',
      5,
    ),
    papers: { ...ledger.papers, maker: 'The maker', terms: ['On delivery'] },
    pasting: { text: 'a;b', columns: ['material', null], decimal: 'comma' },
  }))
  expect(keptWork.parse(JSON.parse(JSON.stringify(work.now)))).toEqual(
    JSON.parse(JSON.stringify(work.now)),
  )
})

test('a new brief leaves the Ledger as it is', () => {
  const { work } = withDemo()
  expect(startedAfresh(work.now).ledger).toEqual(work.now.ledger)
})

describe('the brief reckons with the book', () => {
  test('at the price of one more kilogram for what the batch needs', () => {
    const { work, desk } = setUp()
    const offers = [
      offer('olive', 5, 'kg', 3550),
      offer('olive', 1, 'kg', 790),
      offer('coconut', 200, 'kg', 50_000),
      offer('coconut', 1, 'kg', 420),
    ]
    desk.change((ledger) => withBook(ledger, { offers }))
    desk.useInBrief()
    const price = (oil: string) => work.now.brief.shelf.find((row) => row.oil === oil)?.pricePerKg
    // By hand: 3 kg of olive are bought as three of 1 kg, 23.70, for a pack of 5 kg is 35.50; 7.90 a kg.
    expect(price('olive')).toBe(7.9)
    // 2 kg of coconut: two of 1 kg.
    expect(price('coconut')).toBe(4.2)
    // Nothing in the book: as it was.
    expect(price('shea')).toBe(
      EXAMPLE_WORK.brief.shelf.find(({ oil }) => oil === 'shea')?.pricePerKg,
    )
    work.undo()
    expect(work.now.brief).toBe(EXAMPLE_WORK.brief)
  })

  test('and packs typed on the shelf give way', () => {
    const { work, desk } = setUp()
    const pack = { size: 1, unit: 'kg', price: 99 } as const
    work.change((now) => ({
      ...now,
      brief: { ...now.brief, shelf: now.brief.shelf.map((row) => ({ ...row, pack })) },
    }))
    desk.change((ledger) => withBook(ledger, { offers: [offer('olive', 1, 'kg', 790)] }))
    desk.useInBrief()
    const packs = work.now.brief.shelf.map((row) => [row.oil, row.pack])
    expect(Object.fromEntries(packs)).toMatchObject({ olive: undefined, shea: pack })
  })
})

describe('what batches need', () => {
  const needOf = (desk: LedgerDesk, id: string) =>
    desk.needs.find(({ material }) => material === id)

  test('is the batch in hand so often, and every batch kept on the list', () => {
    const { desk } = withDemo()
    desk.change((ledger) => ({ ...ledger, buying: { ...ledger.buying, times: 3 } }))
    // By hand: 3 × 60 % of 5 kg.
    expect(needOf(desk, 'olive')?.need).toBeCloseTo(9000, 6)
    desk.change((ledger) =>
      withRun(ledger, {
        id: freshRunId(ledger),
        name: 'Old',
        times: 2,
        needs: { olive: 500, tallow: 80 },
      }),
    )
    expect(needOf(desk, 'olive')?.need).toBeCloseTo(10_000, 6)
    expect(needOf(desk, 'tallow')?.need).toBe(160)
    desk.change((ledger) => withRunTimes(ledger, 'run-1', undefined))
    expect(needOf(desk, 'tallow')).toBeUndefined()
  })

  test('has cartons for the bars of the batch in hand, and stock beside it', () => {
    const { desk } = withDemo()
    desk.change((ledger) => withStock(ledger, 'carton', 12))
    expect(needOf(desk, 'carton')).toEqual({
      material: 'carton',
      need: desk.ready?.bars?.count,
      stock: 12,
    })
    desk.change((ledger) => withStock(ledger, 'carton', undefined))
    expect(needOf(desk, 'carton')?.stock).toBe(0)
  })
})

test('the buying list is found elsewhere and follows the newest question', async () => {
  const { desk } = withDemo()
  const solve = mixedHighs(await loadHighs())
  const asked: number[] = []
  const buying = new BuyingDesk(desk, (program, gap, seconds) => {
    asked.push(program.cost.length)
    return Promise.resolve(solve(program, gap, seconds))
  })
  buying.ask()
  desk.change((ledger) => ({ ...ledger, buying: { ...ledger.buying, times: 6 } }))
  buying.ask()
  await expect.poll(() => buying.busy).toBe(false)
  expect(asked).toHaveLength(2)
  const list = buying.answer?.status === 'ready' ? buying.answer : undefined
  expect(list?.proved).toBe(true)
  // By hand: 6 × 3 kg / 0.99 of waste.
  expect(list?.lines.find(({ material }) => material === 'olive')?.need).toBeCloseTo(
    18_000 / 0.99,
    6,
  )
})

test('a list that can’t be found says why, and the last one stays', async () => {
  const { desk } = withDemo()
  const buying = new BuyingDesk(desk, () => Promise.reject(new Error('no thread')))
  buying.ask()
  await expect.poll(() => buying.failure).toBe('no thread')
  expect(buying.busy).toBe(false)
})

test('nothing is reckoned from a book with something wrong in it', () => {
  const { desk } = withDemo()
  desk.change((ledger) => withOffer(ledger, offer('gold', 1, 'kg', 5)))
  expect(desk.problems.map(({ message }) => message)).toEqual([
    'There is no material "gold". Name one of the library, or add it to materials.',
  ])
  expect([desk.cost, desk.quote]).toEqual([undefined, undefined])
})

test('terms that say nothing are dropped, others replace what was said', () => {
  const empty = emptyLedger('EUR')
  const once = withTerms(empty, { supplier: 'North', freightMinor: 900 })
  const twice = withTerms(once, { supplier: 'North', freightMinor: 700 })
  expect(twice.book.suppliers).toEqual([{ supplier: 'North', freightMinor: 700 }])
  expect(withTerms(twice, { supplier: 'North', freightMinor: undefined }).book.suppliers).toEqual(
    [],
  )
})

test('imported prices keep ids apart and put the list away', () => {
  const one = offer('olive', 5, 'kg', 900)
  const pasting: Ledger = { ...emptyLedger('EUR'), pasting: { text: 'x' } }
  const ledger = withImported(withImported(pasting, [one], []), [one], [{ id: 'tin', name: 'Tin' }])
  expect(new Set(ledger.book.offers.map(({ id }) => id)).size).toBe(2)
  expect(ledger).toMatchObject({ pasting: undefined, book: { materials: [{ id: 'tin' }] } })
})
