import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { lyeCautions } from '../../src/data/cautions'
import { barwright, BRIEF, example } from './run-cli'

const CHANGE = example('change.json')

async function answered<T>(args: readonly string[]): Promise<T> {
  const { exitCode, output, errors } = await barwright(args)
  expect(errors).toBe('')
  expect(exitCode, output).toBe(0)
  return JSON.parse(output) as T
}

interface Piece {
  readonly from: number
  readonly to: number
  readonly blend: Readonly<Record<string, number>>
}

describe('reprice', () => {
  test('tells the cheapest blend at every price of an oil from a brief alone, and where it switches', async () => {
    const walk = await answered<{ pieces: Piece[]; switches: number[]; price: number }>([
      'reprice',
      BRIEF,
      '--oil',
      'olive',
    ])
    expect(walk.price).toBe(7.2)
    expect(walk.pieces[0]?.from).toBeCloseTo(3.6, 9)
    expect(walk.pieces.at(-1)?.to).toBeCloseTo(21.6, 9)
    // The best blend that solve finds at a stated price is that of the stretch the price lies in.
    const solved = await answered<{ goalValue: number; blend: Piece['blend'] }>(['solve', BRIEF])
    const now = walk.pieces.find(({ to }) => walk.price <= to)
    for (const [oil, share] of Object.entries(solved.blend))
      expect(now?.blend[oil]).toBeCloseTo(share, 5)
    expect(walk.switches).toEqual(walk.pieces.slice(1).map(({ from }) => from))
  })

  test('takes changes with a minus, joined or not, and the formula that is held', async () => {
    const hold = ['--hold', 'olive=60,coconut=40']
    const one = await answered([
      'reprice',
      BRIEF,
      '--oil',
      'olive',
      '--from',
      '-20%',
      '--to',
      '10',
      ...hold,
    ])
    const other = await answered([
      'reprice',
      BRIEF,
      '--oil',
      'olive',
      '--from=-20',
      '--to=10%',
      ...hold,
    ])
    expect(one).toEqual(other)
    // By hand: 0.6 · 5.76 + 0.4 · 3.9 and 0.6 · 7.92 + 0.4 · 3.9.
    expect(one).toMatchObject({
      held: {
        costAtFrom: expect.closeTo(5.016, 9) as number,
        costAtTo: expect.closeTo(6.312, 9) as number,
      },
    })
  })

  test('--together takes spreads from the history in the file and says which it took', async () => {
    const args = ['reprice', CHANGE, '--together', '--draws', '200']
    const { output } = await barwright(args)
    const answer = JSON.parse(output) as {
      spreads: Record<string, number>
      winners: { wins: number }[]
    }
    // By hand from the packs: two changes each over the two years (730 days) to 1 March 2026.
    const years = 730 / 365.25
    const spread = (prices: [number, number, number]) =>
      Math.sqrt(
        (Math.log(prices[1] / prices[0]) ** 2 + Math.log(prices[2] / prices[1]) ** 2) / years,
      )
    expect(answer.spreads['olive']).toBeCloseTo(spread([5200, 8100, 7200]), 9)
    expect(answer.spreads['palm']).toBeCloseTo(spread([5000, 6200, 5800]), 9)
    expect(answer.spreads['coconut']).toBe(0.3)
    expect(answer.winners.reduce((sum, { wins }) => sum + wins, 0)).toBe(200)
    expect((await barwright(args)).output).toBe(output)
  })

  test('says what it lacks', async () => {
    const cases: [string[], RegExp][] = [
      [['reprice', BRIEF], /Name the oil whose price moves/u],
      [['reprice', BRIEF, '--oil', 'palm'], /\\"palm\\" is not on the shelf/u],
      [['reprice', BRIEF, '--oil', 'olive', '--from', 'half'], /--from is \\"half\\"/u],
      [['reprice', BRIEF, '--together'], /No price moves/u],
      [['reprice', BRIEF, '--oil', 'olive', '--hold', 'olive'], /Write it as olive=60/u],
      [['gone', BRIEF], /Name the oil that is gone/u],
      [['gone', BRIEF, '--oil', 'palm'], /The formula has no \\"palm\\" in it/u],
      [['gone', CHANGE, '--oil', 'palm', '--bars-per-year', '-4'], /--bars-per-year/u],
    ]
    for (const [args, message] of cases) {
      const { exitCode, output } = await barwright(args)
      expect(output).toMatch(message)
      expect(exitCode).toBe(2)
    }
  })
})

test('gone gives replacements with lye, label and cost from the file of a change', async () => {
  const answer = await answered<{
    sharePercent: number
    cautions: unknown
    replacements: {
      oils: string[]
      blend: Record<string, number>
      costChange: { perKgOils: number; perBar: number; perYear: number }
      batch: { alkali: { beforeG: number; afterG: number }[]; label: { gone: string[] } }
    }[]
  }>(['gone', CHANGE, '--oil', 'palm', '--bars-per-year', '4000', '--oils-per-bar', '80'])
  expect(answer.sharePercent).toBe(35)
  expect(answer.cautions).toEqual(lyeCautions)
  expect(answer.replacements.length).toBeGreaterThan(2)
  for (const { blend, costChange, batch } of answer.replacements) {
    expect(blend['palm'] ?? 0).toBe(0)
    expect(costChange.perBar).toBeCloseTo(costChange.perKgOils * 0.08, 9)
    expect(costChange.perYear).toBeCloseTo(costChange.perKgOils * 320, 6)
    expect(batch.label.gone).toContain('Elaeis Guineensis Oil')
    expect(batch.alkali[0]?.beforeG).toBeGreaterThan(200)
  }
})

test('--schema of reprice and gone accepts the example file and a brief, and nothing with more in it', async () => {
  for (const command of ['reprice', 'gone']) {
    const { output } = await barwright([command, '--schema'])
    const schema = z.fromJSONSchema(JSON.parse(output) as Parameters<typeof z.fromJSONSchema>[0])
    for (const path of [CHANGE, BRIEF]) {
      const file = JSON.parse(readFileSync(path, 'utf8')) as object
      expect(schema.safeParse(file).error).toBeUndefined()
      expect(schema.safeParse({ ...file, extra: 1 }).success).toBe(false)
    }
  }
})
