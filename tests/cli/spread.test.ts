import { expect, test } from 'vitest'
import { barwright, BRIEF, withInput } from './run-cli'

interface Spread {
  readonly typical: number
  readonly span: { low: number; high: number }
  readonly quantiles: { part: number; value: number }[]
}
interface Told {
  readonly status: string
  readonly goalValue: number
  readonly measures: Record<string, number>
  readonly draws: { count: number; seed: number }
  readonly spread: { measures: Record<string, Spread>; saponificationValue: Spread }
  readonly robustPrice: { typicalGoal: number; robustGoal: number; price: number }
}

const WISHED = {
  format: 'barwright-brief/1',
  oils: { coconut: { pricePerKg: 4, max: 40 }, olive: { pricePerKg: 7 }, shea: { pricePerKg: 9 } },
  measures: { hardness: { min: 30 } },
  goal: { minimise: 'cost' },
}

async function spreadOf(args: readonly string[]): Promise<Told> {
  const { exitCode, output, errors } = await barwright(['spread', ...args])
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  return JSON.parse(output) as Told
}

test('spread tells seed and draws, and every quantile lies within the exact span', async () => {
  const told = await spreadOf([BRIEF, '--draws', '2000', '--seed', '7'])
  expect(told.draws).toEqual({ count: 2000, seed: 7 })
  const { hardness } = told.spread.measures
  expect(hardness?.typical).toBeCloseTo(told.measures.hardness ?? NaN, 9)
  for (const { typical, span, quantiles } of Object.values(told.spread.measures)) {
    const values = quantiles.map(({ value }) => value)
    expect(values).toEqual(values.toSorted((a, b) => a - b))
    expect(values[0]).toBeGreaterThanOrEqual(span.low)
    expect(values.at(-1)).toBeLessThanOrEqual(span.high)
    expect(typical).toBeGreaterThanOrEqual(span.low)
  }
  // Of oils from coconut to olive: Codex Alimentarius has them between 184 and 265 mg KOH per g.
  expect(told.spread.saponificationValue.span.low).toBeGreaterThan(180)
  expect(told.spread.saponificationValue.span.high).toBeLessThan(265)
})

test('spread gives the same figures for the same seed and others for another', async () => {
  const few = ['--draws', '50']
  const [one, same, other] = await Promise.all([
    spreadOf([BRIEF, ...few]),
    spreadOf([BRIEF, ...few, '--seed', '1']),
    spreadOf([BRIEF, ...few, '--seed', '2']),
  ])
  expect(same).toEqual(one)
  expect(other.spread).not.toEqual(one.spread)
})

test('the price of holding any lot is what solve with --robust costs more', async () => {
  const input = JSON.stringify(WISHED)
  const goal = async (args: readonly string[]) => {
    const { output } = await barwright([...args, '-'], input)
    return JSON.parse(output) as Told
  }
  const [told, typical, robust] = [
    await goal(['spread']),
    await goal(['solve']),
    await goal(['solve', '--robust']),
  ]
  expect(told.robustPrice.typicalGoal).toBeCloseTo(typical.goalValue, 9)
  expect(told.robustPrice.robustGoal).toBeCloseTo(robust.goalValue, 9)
  expect(told.robustPrice.price).toBeCloseTo(robust.goalValue - typical.goalValue, 9)
  expect(told.robustPrice.price).toBeGreaterThan(0.1)
})

test('spread of the blend for any lot keeps its wish in the worst of them', async () => {
  const { output } = await barwright(['spread', '--robust', '-'], JSON.stringify(WISHED))
  const told = JSON.parse(output) as Told
  expect(told.spread.measures.hardness?.span.low).toBeGreaterThanOrEqual(30 - 1e-6)
})

test('spread of a brief without a blend ends with 3', async () => {
  const { exitCode, output } = await withInput('spread', {
    ...WISHED,
    measures: { hardness: { min: 90 } },
  })
  expect(exitCode).toBe(3)
  expect(JSON.parse(output)).toMatchObject({ status: 'infeasible' })
})

test.for([
  ['--draws', '0'],
  ['--seed', '-1'],
] as const)('spread refuses %s %s', async ([flag, value]) => {
  const { exitCode, output } = await barwright(['spread', BRIEF, `${flag}=${value}`])
  expect(exitCode).toBe(2)
  expect(output).toContain(flag)
})
