import { describe, expect, test } from 'vitest'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import { checkBrief } from '../../src/domain/optimise/brief/check-brief'
import { briefProgram } from '../../src/domain/optimise/space/brief-program'
import { createService } from '../../src/worker/service'
import { highs } from '../domain/lp/solvers/loaded-highs'
import { Random } from '../generator/random'
import { nudged, touchingBrief } from '../generator/touching-briefs'
import { widelyPriced } from '../generator/wide-prices'
import { faults } from './recheck'

const service = createService(library, () => Promise.resolve(highs))

/** Seeds of the briefs; `tests/long/random-briefs.test.ts` draws others. */
const SEED = 41_000

/** What an answer is wrong in, checked from the data files and by HiGHS; empty where nothing is. */
async function wrongWith(brief: Brief): Promise<string[]> {
  const answer = await service.solve('barwright', brief)
  if (answer.status === 'infeasible') {
    const named = answer.conflict.length > 0 && answer.nearest !== undefined
    const clashes = highs(briefProgram(brief, library)).status === 'infeasible'
    return [...(named ? [] : ['no clash is named']), ...(clashes ? [] : ['HiGHS finds a blend'])]
  }
  if (answer.status !== 'optimal') return [answer.status]
  const { status } = await service.confirm('highs', brief, answer)
  return [...faults(brief, answer.blend), ...(status === 'confirmed' ? [] : [`HiGHS ${status}`])]
}

async function wrongAmong(briefs: readonly Brief[]): Promise<unknown[]> {
  const wrong: unknown[] = []
  for (const brief of briefs) {
    const found = await wrongWith(brief).catch((error: unknown) => [String(error)])
    if (found.length > 0) wrong.push([found, JSON.stringify(brief)])
  }
  return wrong
}

describe('limits that touch, as they were typed', () => {
  const briefs = Array.from({ length: 800 }, (_, k) => touchingBrief(new Random(SEED + k)))

  test('are sound briefs, of which many are kept and many clash', async () => {
    expect(briefs.flatMap((brief) => checkBrief(brief, library))).toEqual([])
    const answers = await Promise.all(briefs.map((brief) => service.solve('barwright', brief)))
    const kept = answers.filter(({ status }) => status === 'optimal').length
    expect(kept).toBeGreaterThan(400)
    expect(kept).toBeLessThan(750)
  })

  test('have a blend that HiGHS confirms, or a clash that it confirms: never neither', async () => {
    expect(await wrongAmong(briefs)).toEqual([])
  })

  test('and so they have with each of their limits moved by 1e-9 either way', async () => {
    expect(await wrongAmong(briefs.slice(0, 150).flatMap(nudged))).toEqual([])
  })

  test.each([
    ['kept, though typed 3e-9 beyond what there is', 22.99566667, 'optimal'],
    ['a clash from 1e-6 on', 22.995668, 'infeasible'],
  ])('as hardness beside a lather of one value: %s', async (_, min, status) => {
    const brief: Brief = {
      oils: { 'pomegranate-seed': { pricePerKg: 11.18 }, coconut: { pricePerKg: 10.09 } },
      groups: [],
      measures: { hardness: { min }, lather: { min: 43.0936, max: 43.0936 } },
      goal: { minimise: 'cost' },
    }
    expect(await service.solve('barwright', brief)).toMatchObject({ status })
    expect(await service.solve('highs', brief)).toMatchObject({ status })
  })
})

describe('prices from a millionth to a hundred thousand in one brief', () => {
  test('are solved, as HiGHS confirms', async () => {
    const briefs = Array.from({ length: 600 }, (_, k) => widelyPriced(new Random(SEED + k)))
    expect(briefs.flatMap((brief) => checkBrief(brief, library))).toEqual([])
    expect(await wrongAmong(briefs)).toEqual([])
  })

  test('leave an oil in by a trace where a least cost hangs on it', async () => {
    const oils = { 'stearic-acid-triple-pressed': { pricePerKg: 5e4 }, argan: { pricePerKg: 3e-6 } }
    const measures = { cost: { min: 1.32e-5 } }
    const brief: Brief = { oils, groups: [], measures, goal: { minimise: 'cost' } }
    const answer = await service.solve('barwright', brief)
    expect(answer.status === 'optimal' && answer.measures['cost']).toBeCloseTo(1.32e-5, 9)
  })
})

describe('a share of 100.00000000000001 is 100', () => {
  const MORE = 100.00000000000001
  const brief: Brief = {
    oils: { coconut: { pricePerKg: 4 }, olive: { pricePerKg: 7 } },
    groups: [],
    measures: {},
    goal: { minimise: 'cost' },
  }
  const shelf = (...limits: readonly object[]) => ({
    ...brief,
    oils: Object.fromEntries(
      Object.entries(brief.oils).map(([id, oil], k) => [id, { ...oil, ...limits[k] }]),
    ),
  })

  test.each<[string, Brief]>([
    ['as the most of an oil', shelf({ max: MORE })],
    ['as the least of an oil', shelf({}, { min: MORE })],
    ['as what the least of all oils come to', shelf({ min: 33.3 }, { min: 66.70000000000002 })],
    ['as the most of a group', { ...brief, groups: [{ name: 'all', oils: ['olive'], max: MORE }] }],
    ['as a target', { ...brief, goal: { closestTo: { olive: MORE } } }],
  ])('%s', async (_, stated) => {
    expect(await service.solve('barwright', stated)).toMatchObject({ status: 'optimal' })
  })
})
