import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import cautionsFile from '../../data/lye-cautions.json'
import { barwright, BATCH, withInput } from './run-cli'

const file = (name: string) =>
  fileURLToPath(new URL(`../cases/files/${name}.json`, import.meta.url))
const EXAMPLES = [
  'batch',
  'batch-hot',
  'batch-dual',
  'batch-lots',
  'batch-vinegar',
  'batch-salt',
  'batch-box',
  'batch-cylinder',
  'batch-water-weight',
  'batch-volume',
]
const batch = JSON.parse(readFileSync(BATCH, 'utf8')) as Record<string, unknown>

interface Told {
  readonly status: string
  readonly blocked: object | null
  readonly oilGrams: Readonly<Record<string, number>>
  readonly cautions: readonly string[]
  readonly actual?: { readonly verdict: string; readonly fixes: readonly object[] }
}

describe.each(EXAMPLES)('the example file %s', (name) => {
  test('is planned, with the cautions', async () => {
    const { exitCode, output, errors } = await barwright(['batch', file(name)])
    expect([errors, exitCode]).toEqual(['', 0])
    const told = JSON.parse(output) as Told
    expect(told).toMatchObject({ status: 'ready', blocked: null })
    expect(told.cautions).toEqual(cautionsFile.cautions)
  })

  test('fits the JSON Schema', async () => {
    const { output } = await barwright(['batch', '--schema'])
    const schema = z.fromJSONSchema(JSON.parse(output) as Parameters<typeof z.fromJSONSchema>[0])
    const example: unknown = JSON.parse(readFileSync(file(name), 'utf8'))
    expect(schema.safeParse(example).error).toBeUndefined()
  })

  test('prints as a sheet with every caution, as text and as HTML', async () => {
    const runs = [['--sheet'], ['--sheet', 'html']].map((flags) =>
      barwright(['batch', ...flags, file(name)]),
    )
    for (const { exitCode, output } of await Promise.all(runs)) {
      expect(exitCode).toBe(0)
      for (const caution of cautionsFile.cautions) expect(output).toContain(caution)
      expect(output).not.toMatch(/NaN|Infinity|undefined/u)
    }
  })
})

describe('batch --sheet', () => {
  test('shows weights in the unit asked for', async () => {
    const { output } = await barwright(['batch', file('batch-salt'), '--sheet', '--unit', 'oz'])
    // The scale has steps of 0.1 and 0.01 oz.
    expect(output).toMatch(/Coconut oil +19\.4 oz/u)
    expect(output).toMatch(/Sodium hydroxide +3\.59 oz/u)
  })

  test('is refused with 2 while the leanest lots could leave free lye', async () => {
    const lean = JSON.stringify({ ...batch, superfat: 0 })
    const { exitCode, output } = await barwright(['batch', '--sheet', '-'], lean)
    expect(exitCode).toBe(2)
    expect(output).toMatch(/would hold free lye/u)
    expect(output).not.toMatch(/Sodium hydroxide/u)
  })

  test('is printed for a maker who says why those lots are safe, with the reason on it', async () => {
    const confirmed = { ...batch, superfat: 0, confirmedLean: 'Titrated on Monday' }
    const { exitCode, output } = await barwright(
      ['batch', '--sheet', '-'],
      JSON.stringify(confirmed),
    )
    expect(exitCode).toBe(0)
    expect(output).toContain('Titrated on Monday')
  })

  test('as HTML makes what a file says harmless', async () => {
    const wild = { ...batch, papers: { product: '<script>alert(1)</script>' } }
    const { output } = await barwright(['batch', '--sheet', 'html', '-'], JSON.stringify(wild))
    expect(output).toContain('&lt;script&gt;')
    expect(output).not.toContain('<script>')
  })

  test.for([
    [['--unit', 'stone'], '--unit', 'There is no unit "stone". Use g, kg, oz or lb.'],
    [['--sheet=pdf'], '--sheet', 'There is no sheet as "pdf". Use text or html.'],
  ] as const)('refuses %o', async ([flags, path, message]) => {
    const { exitCode, output } = await barwright(['batch', BATCH, ...flags])
    expect(exitCode).toBe(2)
    expect(JSON.parse(output)).toEqual({ status: 'invalid', problems: [{ path, message }] })
  })
})

test('weights may be given with their unit and come to the same batch', async () => {
  const forms = [1000, '1000 g', '1 kg', '35.27396195 oz', '2 lb 3.27396195 oz']
  const runs = await Promise.all(
    forms.map((oilGrams) => withInput('batch', { ...batch, oilGrams })),
  )
  for (const { output } of runs) {
    const { oilGrams } = JSON.parse(output) as Told
    expect(oilGrams.olive).toBeCloseTo(588, 4)
  }
})

test.for(['1000', 'much', '3 m'])(
  'a weight of "%s" is refused with its forms',
  async (oilGrams) => {
    const { exitCode, output } = await withInput('batch', { ...batch, oilGrams })
    expect(exitCode).toBe(2)
    expect(output).toMatch(/Give a number of g, or a text with its unit/u)
  },
)

test('weights really weighed come back with the superfat and what to do', async () => {
  const { output } = await barwright(['batch', file('batch-lots')])
  const { actual } = JSON.parse(output) as Told
  expect(actual?.verdict).toBe('freeLye')
  expect(actual?.fixes[0]).toMatchObject({ kind: 'addOil', oil: 'olive' })
})

test('a NaOH factor in the place of a saponification value is caught', async () => {
  const lots = { olive: { saponificationValue: 0.134 } }
  const { exitCode, output } = await withInput('batch', { ...batch, lots })
  expect(exitCode).toBe(2)
  expect(output).toMatch(/looks like g NaOH per g/u)
})

test.for(['batch', 'batch --sheet', 'label'])(
  '%s prints nothing of a lye that would boil',
  async (words) => {
    const [command = '', ...flags] = words.split(' ')
    const boiling = { ...batch, water: { lyeConcentration: 50 }, lye: { startC: 95 } }
    const { exitCode, output } = await barwright([command, ...flags, '-'], JSON.stringify(boiling))
    expect(exitCode).toBe(2)
    const { status, problems } = JSON.parse(output) as {
      status: string
      problems: readonly { path: string; message: string }[]
    }
    expect([status, problems.map(({ path }) => path)]).toEqual(['invalid', ['lye.startC']])
    expect(problems[0]?.message).toMatch(/boils at 14[45] °C.*Let the water cool to 20 °C/u)
  },
)
