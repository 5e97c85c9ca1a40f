import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import { Bench, nameOf } from '../../src/state/bench.svelte'
import { costPerBar } from '../../src/state/bench-facts'
import { letterOf, MOST_CANDIDATES } from '../../src/state/bench-sheet'
import { withRow } from '../../src/state/draft'
import { Explorer } from '../../src/state/explorer.svelte'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { WorkHistory } from '../../src/state/history.svelte'
import { keptWork } from '../../src/storage/work-schema'
import { benchSolver } from './bench-solver'

let solver: ReturnType<typeof benchSolver>
let work: WorkHistory
let explorer: Explorer
let bench: Bench
beforeEach(() => {
  solver = benchSolver()
  work = new WorkHistory(EXAMPLE_WORK)
  explorer = new Explorer(work, solver.client)
  bench = new Bench(work, explorer)
})
afterEach(() => solver.close())

/** A blend of coconut and olive with so much coconut, in percent. */
const coconut = (percent: number) => ({ coconut: percent, olive: 100 - percent })
const put = (...percents: number[]) =>
  bench.add(
    percents.map((percent) => ({
      name: `Coconut ${percent}`,
      blend: coconut(percent),
      from: 'made up',
    })),
  )
const letters = () => bench.columns.map(({ candidate }) => candidate.letter).join('')
const idOf = (letter: string) =>
  bench.columns.find(({ candidate }) => candidate.letter === letter)?.candidate.id ?? ''

describe('letters', () => {
  test.each([
    [0, 'A'],
    [25, 'Z'],
    [26, 'AA'],
    [27, 'AB'],
    [51, 'AZ'],
    [52, 'BA'],
  ])('candidate %d is %s', (number, letter) => {
    expect(letterOf(number)).toBe(letter)
  })

  test('one taken off is not given again while others stand', () => {
    put(10, 20, 30)
    bench.remove(idOf('C'))
    put(40)
    expect(letters()).toBe('ABD')
  })

  test('begin with A again on an emptied Bench', () => {
    put(10, 20)
    bench.remove(idOf('A'))
    bench.remove(idOf('B'))
    put(30)
    expect(letters()).toBe('A')
  })
})

describe('putting blends on the Bench', () => {
  test('makes the first the reference and chooses what was put', () => {
    put(10)
    put(20)
    expect(bench.columns[0]).toMatchObject({ isReference: true, candidate: { letter: 'A' } })
    expect(bench.chosen?.candidate.letter).toBe('B')
  })

  test('does not put a blend twice, be it there or in the same breath', () => {
    put(10, 20)
    expect(put(10, 30, 30.02).map(({ letter }) => letter)).toEqual(['A', 'C'])
    expect(letters()).toBe('ABC')
  })

  test('is one step of undo, however many are put', () => {
    put(10)
    put(20, 30, 40)
    work.undo()
    expect(letters()).toBe('A')
    work.redo()
    expect(letters()).toBe('ABCD')
  })

  test('ends at fifty', () => {
    put(...Array.from({ length: MOST_CANDIDATES + 4 }, (_, n) => n + 1))
    expect(bench.columns).toHaveLength(MOST_CANDIDATES)
    expect(bench.isFull).toBe(true)
    expect(put(99)).toEqual([])
    expect(bench.pin({ blend: coconut(99), measures: {}, goalValue: 0 }, 'map')).toBeUndefined()
  })

  test('holds nothing that can not be kept between visits, whatever else an entry carries', () => {
    const entry = { name: 'A', blend: coconut(10), from: 'menu', label: 'x', aside: 'y' }
    bench.add([entry])
    bench.setBarGrams(120)
    expect(() => keptWork.parse(work.now)).not.toThrow()
  })

  test('a pinned blend is named after its two largest oils', () => {
    const pinned = bench.pin({ blend: coconut(30), measures: {}, goalValue: 0 }, 'pinned at 40')
    expect(pinned).toMatchObject({ name: 'Olive and coconut', from: 'pinned at 40', letter: 'A' })
    expect(nameOf({ olive: 100 })).toBe('All olive')
  })
})

describe('the order of columns', () => {
  beforeEach(() => put(10, 20, 30, 40))

  test('starts with the reference, whichever it is, and else stays', () => {
    bench.makeReference(idOf('C'))
    expect(letters()).toBe('CABD')
    bench.makeReference(idOf('A'))
    expect(letters()).toBe('ABCD')
  })

  test('is changed by moving one, and the reference keeps its column', () => {
    bench.move(idOf('D'), 1)
    expect(letters()).toBe('ADBC')
    bench.move(idOf('D'), 0)
    expect(letters()).toBe('ADBC')
    bench.shift(idOf('D'), 1)
    expect(letters()).toBe('ABDC')
    bench.shift(idOf('A'), 2)
    expect(letters()).toBe('ABDC')
    bench.move(idOf('B'), 99)
    expect(letters()).toBe('ADCB')
    work.undo()
    expect(letters()).toBe('ABDC')
  })

  test('follows a measure, the wanted end first and then the other', () => {
    bench.sortBy('lather')
    expect([letters(), bench.orderOf('lather')]).toEqual(['ADCB', 'most'])
    bench.sortBy('lather')
    expect([letters(), bench.orderOf('lather')]).toEqual(['ABCD', 'least'])
    // Coconut washes away sooner and costs less than olive: less wear and least cost come first.
    bench.sortBy('wear')
    expect([letters(), bench.orderOf('wear')]).toEqual(['ABCD', 'least'])
    bench.sortBy('cost')
    expect([letters(), bench.orderOf('cost')]).toEqual(['ADCB', 'least'])
    bench.move(idOf('B'), 1)
    expect(bench.orderOf('cost')).toBeUndefined()
  })

  test('puts a blend without a price last when it goes by cost', () => {
    bench.add([{ name: 'Tallow', blend: { 'tallow-beef': 100 }, from: 'made up' }])
    bench.sortBy('cost')
    expect(letters()).toBe('ADCBE')
    bench.sortBy('cost')
    expect(letters()).toBe('ABCDE')
  })
})

describe('taking one off', () => {
  beforeEach(() => put(10, 20, 30))

  test('can be taken back at once, letter, place and choice with it', () => {
    bench.choose(idOf('B'))
    bench.remove(idOf('B'))
    expect([letters(), bench.removed?.letter, bench.chosen?.candidate.letter]).toEqual([
      'AC',
      'B',
      'C',
    ])
    bench.restore()
    expect([letters(), bench.chosen?.candidate.letter]).toEqual(['ABC', 'B'])
    expect(bench.removed).toBeUndefined()
  })

  test('is not offered back once something else was changed, and undo still goes back', () => {
    bench.remove(idOf('B'))
    bench.rename(idOf('C'), 'Kept')
    expect(bench.removed).toBeUndefined()
    bench.restore()
    expect(letters()).toBe('AC')
    work.undo()
    work.undo()
    expect(letters()).toBe('ABC')
  })

  test('hands the reference on when it was the reference', () => {
    bench.makeReference(idOf('B'))
    bench.remove(idOf('B'))
    expect(bench.columns[0]).toMatchObject({ isReference: true, candidate: { letter: 'A' } })
  })
})

describe('what a column says', () => {
  test('is reckoned beside the reference and follows it', () => {
    put(10, 60)
    const [reference, other] = bench.columns
    expect(reference?.differences.size).toBe(0)
    const by = (other?.values['hardness'] ?? NaN) - (reference?.values['hardness'] ?? NaN)
    expect(other?.differences.get('hardness')?.by).toBeCloseTo(by, 12)
    expect(other?.changes.map(({ oil, by }) => [oil, by])).toEqual([
      ['coconut', 50],
      ['olive', -50],
    ])
    bench.makeReference(idOf('B'))
    expect(bench.columns[1]?.differences.get('hardness')?.by).toBeCloseTo(-by, 12)
  })

  test('follows prices, those of banned oils too', () => {
    bench.add([{ name: 'Palm', blend: { palm: 100 }, from: 'made up' }])
    expect(bench.columns[0]?.values['cost']).toBe(2.15)
    explorer.edit((draft) => withRow(draft, 'palm', { pricePerKg: 3 }))
    expect(bench.columns[0]?.values['cost']).toBe(3)
    explorer.edit((draft) => withRow(draft, 'palm', { pricePerKg: undefined }))
    expect(bench.columns[0]).toMatchObject({ unpriced: ['palm'] })
    expect(bench.columns[0]?.values).not.toHaveProperty('cost')
  })

  test('the cost of a bar is that of the oils in its weight as poured', () => {
    put(30)
    const [column] = bench.columns
    if (column?.plan.status !== 'ready') throw new Error('no batch')
    const { totalGrams } = column.plan
    // By hand: 5000 g of oils in the batter, so a bar of 100 g holds 100 × 5000 / total of them.
    const oilKg = (100 * 5000) / totalGrams / 1000
    const perKg = 0.3 * 3.1 + 0.7 * 7.4
    expect(costPerBar(column, 100)).toBeCloseTo(oilKg * perKg, 9)
    expect(costPerBar(column, 50)).toBeCloseTo((oilKg * perKg) / 2, 9)
  })

  test('a corner the measures can not speak for carries its flag', () => {
    bench.add([{ name: 'Castor', blend: { castor: 20, olive: 80 }, from: 'made up' }])
    expect(bench.columns[0]?.flags.map(({ kind }) => kind)).toEqual(['trust'])
  })
})

describe('handing one to Batch', () => {
  test('makes it the blend in hand and says so until the brief changes', () => {
    put(30, 40)
    bench.take(idOf('B'))
    expect(explorer.present?.blend).toEqual(coconut(40))
    expect(bench.inHand?.letter).toBe('B')
    expect(bench.columns.map(({ isPresent }) => isPresent)).toEqual([false, true])
    explorer.edit((draft) => withRow(draft, 'olive', { min: 20 }))
    expect(bench.inHand).toBeUndefined()
  })

  test('gives the goal its value: the cost of a blend where the cheapest is sought', () => {
    put(30)
    bench.take(idOf('A'))
    expect(explorer.present?.goalValue).toBeCloseTo(0.3 * 3.1 + 0.7 * 7.4, 9)
  })
})

test('the reference bars of the library can all stand side by side', () => {
  bench.add(library.referenceBars.map(({ name, blend, why }) => ({ name, blend, from: why })))
  expect(bench.columns).toHaveLength(library.referenceBars.length)
})
