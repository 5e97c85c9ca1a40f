import { describe, expect, test, vi } from 'vitest'
import { library } from '../../src/data/library'
import type { Brief } from '../../src/domain/optimise/brief/brief'
import type { SolveProgram } from '../../src/domain/lp/solvers/solve-program'
import { UnsoundAnswer } from '../../src/domain/lp/unsound-answer'
import { SOLVER_NAMES } from '../../src/worker/protocol'
import { createService } from '../../src/worker/service'
import { highs } from '../domain/lp/solvers/loaded-highs'

const SOUND: Brief = {
  oils: { olive: { pricePerKg: 7 }, coconut: { pricePerKg: 4, max: 30 } },
  groups: [],
  measures: {},
  goal: { minimise: 'cost' },
}
/** Olive alone can't be as hard as this, and coconut is limited. */
const IMPOSSIBLE: Brief = { ...SOUND, measures: { hardness: { min: 60 } } }

describe('the service', () => {
  test('answers with javascript-lp-solver without loading HiGHS', async () => {
    const { service, loads } = serviceWith(highs)
    const answer = await service.solve('javascript-lp-solver', SOUND)
    // By hand: 30 % of 4 and 70 % of 7 a kilogram.
    expect(answer).toMatchObject({ status: 'optimal', goalValue: expect.closeTo(6.1, 9) as number })
    expect(loads()).toBe(0)
  })

  test('asks HiGHS too before it says that there is no blend', async () => {
    const { service, loads } = serviceWith(highs)
    const answer = await service.solve('javascript-lp-solver', IMPOSSIBLE)
    expect(answer.status).toBe('infeasible')
    expect(loads()).toBe(1)
  })

  test('takes the word of HiGHS where the two differ about whether there is a blend', async () => {
    const anyBlend: SolveProgram = () => ({ status: 'optimal', point: [70, 30], objective: 6.1 })
    const { service } = serviceWith(anyBlend)
    // HiGHS, here a liar, is checked like any solver: its blend is not hard enough.
    await expect(service.solve('javascript-lp-solver', IMPOSSIBLE)).rejects.toThrow(UnsoundAnswer)
  })

  test('does not load HiGHS over a brief that is wrong in itself', async () => {
    const { service, loads } = serviceWith(highs)
    const answer = await service.solve('javascript-lp-solver', { ...SOUND, oils: {} })
    expect(answer.status).toBe('invalid')
    expect(loads()).toBe(0)
  })

  test('studies to the same answer and reach whichever solver answers', async () => {
    const { service } = serviceWith(highs)
    const studies = await Promise.all(SOLVER_NAMES.map((name) => service.study(name, SOUND)))
    for (const { answer, reach } of studies) {
      expect(answer).toMatchObject({ status: 'optimal' })
      expect(reach).toEqual(studies[0]?.reach)
    }
  })

  test('asks HiGHS about a point that javascript-lp-solver finds no blend at', async () => {
    const { service, loads } = serviceWith(highs)
    const answer = await service.solveAt('javascript-lp-solver', SOUND, { hardness: 90 })
    expect(answer.status).toBe('infeasible')
    expect(loads()).toBe(1)
  })
})

function serviceWith(solve: SolveProgram) {
  const load = vi.fn(() => Promise.resolve(solve))
  return { service: createService(library, load), loads: () => load.mock.calls.length }
}
