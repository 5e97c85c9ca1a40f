import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import cautionsFile from '../../data/lye-cautions.json'
import oils from '../../data/oils.json'
import { barwright, BATCH, withInput } from './run-cli'

const batch = JSON.parse(readFileSync(BATCH, 'utf8')) as Record<string, unknown>

interface Plan {
  readonly alkaliGrams: { readonly naoh: number }
  readonly waterGrams: number
  readonly totalGrams: number
  readonly cautions: readonly string[]
}

test('batch prints weights that the saponification values of the data come to, and ends with 0', async () => {
  const { exitCode, output, errors } = await barwright(['batch', BATCH])
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  const plan = JSON.parse(output) as Plan
  // The example: 588 g olive, 300 g coconut, 112 g shea, 5 % superfat, NaOH of 99 %, lye of 33 %.
  const mgKoh =
    588 * saponification('olive') + 300 * saponification('coconut') + 112 * saponification('shea')
  const naoh = ((mgKoh / 1000 / 56.105) * 0.95 * 39.997) / 0.99
  expect(plan.alkaliGrams.naoh).toBeCloseTo(naoh, 6)
  expect(plan.waterGrams).toBeCloseTo((naoh * 67) / 33, 6)
  expect(plan.totalGrams).toBeCloseTo(1000 + (naoh * 100) / 33, 6)
})

test('the usual cautions stand in the answer beside the lye', async () => {
  const { output } = await barwright(['batch', BATCH])
  const { cautions } = JSON.parse(output) as Plan
  expect(cautions).toEqual(cautionsFile.cautions)
  expect(cautions.join(' ')).toMatch(/Hydroxide into water/u)
})

test('batch ends with 2 and prints no weights where anything is wrong, with the path', async () => {
  const wrong = { ...batch, superfat: -1, water: { ratio: 0.5 }, purity: { naoh: 0 } }
  const { exitCode, output } = await withInput('batch', wrong)
  expect(exitCode).toBe(2)
  const answer = JSON.parse(output) as { problems: { path: string }[] }
  expect(Object.keys(answer)).toEqual(['status', 'problems'])
  expect(answer.problems.map(({ path }) => path)).toEqual([
    'purity.naoh',
    'superfat',
    'water.ratio',
  ])
})

test('batch says which ways there are to give water', async () => {
  const { exitCode, output } = await withInput('batch', { ...batch, water: { ml: 300 } })
  expect(exitCode).toBe(2)
  expect(JSON.parse(output)).toMatchObject({
    problems: [
      {
        path: 'water',
        message:
          '{"ml":300} stands here. Give one of { "lyeConcentration": percent }, { "ratio": g water per g hydroxide } or { "percentOfOils": percent }.',
      },
    ],
  })
})

test('batch is blocked where more than one lot in 200 would hold free lye', async () => {
  const { output } = await withInput('batch', { ...batch, superfat: 0 })
  const { blocked } = JSON.parse(output) as { blocked: { code: string; message: string } }
  expect(blocked.code).toBe('blocked.lean')
  expect(blocked.message).toMatch(/would hold free lye: .* Ask for at least/u)
})

test('batch names the worst that is not likely, and what it stands on', async () => {
  const scale = { oilStepG: 1, lyeStepG: 1 }
  const { output } = await withInput('batch', {
    ...batch,
    purity: { naoh: 98 },
    superfat: 5,
    scale,
  })
  const { blocked, remarks } = JSON.parse(output) as {
    blocked: unknown
    remarks: { code: string; message: string }[]
  }
  expect(blocked).toBeNull()
  expect(remarks.find(({ code }) => code === 'lean.worst')?.message).toMatch(
    /leanest there can be.* 1 lot in \d+.* The lean end stands on/u,
  )
})

function saponification(id: string): number {
  return oils.find((oil) => oil.id === id)?.saponificationValue.typical ?? NaN
}
