import { describe, expect, test } from 'vitest'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import type { Reasons } from '../../src/domain/optimise/why/reasons'
import { barwright, withInput } from './run-cli'

/** Two oils and one wish, so that every figure can be worked by hand. */
const BRIEF = {
  format: 'barwright-brief/1',
  oils: { coconut: { pricePerKg: 4, max: 30 }, olive: { pricePerKg: 7 } },
  goal: { minimise: 'cost' },
}

type Explained = Answer & { reasons?: Reasons; secondSolver?: { status: string; by: string } }

async function why(value: unknown): Promise<Explained> {
  const { output } = await explained(value)
  return JSON.parse(output) as Explained
}

function explained(value: unknown) {
  return barwright(['solve', '-', '--why'], JSON.stringify(value))
}

describe('solve --why', () => {
  test('prices the one limit that holds: a percent more coconut saves 3 cents', async () => {
    const { reasons } = await why(BRIEF)
    // By hand: 1 % of 4 for 1 % of 7 is 0.03 a kilogram, until coconut is 100 %.
    const [limit, ...more] = reasons?.limits ?? []
    expect(limit?.limit).toBe('oils.coconut.max')
    expect(more).toEqual([])
    expect(limit?.worthPerUnit.relax).toBeCloseTo(0.03, 9)
    expect(limit?.worthPerUnit.tighten).toBeCloseTo(0.03, 9)
    expect(limit?.span[0]).toBeCloseTo(0, 6)
    expect(limit?.span[1]).toBeCloseTo(100, 6)
  })

  test('says up to which price coconut stays in, in words as well', async () => {
    const { reasons } = await why(BRIEF)
    const coconut = reasons?.oilsIn.find(({ oil }) => oil === 'coconut')
    // By hand: dearer than olive's 7 it would go out.
    expect(coconut?.priceSpan[1]).toBeCloseTo(7, 9)
    expect(reasons?.sentences.join(' ')).toContain('7.00 per kg')
  })

  test('is not asked for by default', async () => {
    const { output } = await withInput('solve', BRIEF)
    expect(JSON.parse(output)).not.toHaveProperty('reasons')
  })
})

describe('an answer of our own solver', () => {
  test('is confirmed by a second one', async () => {
    const { output } = await withInput('solve', BRIEF)
    expect(JSON.parse(output)).toMatchObject({
      secondSolver: { status: 'confirmed', by: 'javascript-lp-solver' },
    })
  })
})

describe('a brief that clashes', () => {
  test('names the nearest brief that does not, with the blend it opens', async () => {
    const { exitCode, output } = await withInput('solve', {
      ...BRIEF,
      measures: { cost: { max: 6 } },
    })
    expect(exitCode).toBe(3)
    // By hand: 30 % of 4 and 70 % of 7 cost 6.10; a limit gives way to 6.10, or coconut to 33.4 %.
    const { nearest } = JSON.parse(output) as Extract<Answer, { status: 'infeasible' }>
    expect(nearest?.changes.length).toBe(1)
    const [change] = nearest?.changes ?? []
    expect([change?.limit, change?.to]).toEqual(
      change?.limit === 'measures.cost.max'
        ? ['measures.cost.max', 6.1]
        : ['oils.coconut.max', 33.4],
    )
  })
})
