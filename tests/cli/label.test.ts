import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { barwright, BATCH } from './run-cli'

const LOTS = fileURLToPath(new URL('../cases/files/batch-lots.json', import.meta.url))

test('label prints both namings, allergens, net weight, code, cautions and duties as JSON', async () => {
  const { exitCode, output, errors } = await barwright(['label', LOTS])
  expect([errors, exitCode]).toEqual(['', 0])
  const label = JSON.parse(output) as Record<string, unknown>
  expect(label.ingredientsAsPutIn).toMatch(/^Olea Europaea Fruit Oil, Aqua, .*Linalool/u)
  expect(label.ingredientsAsMade).toMatch(/^Sodium Olivate, .*Glycerin.*Linalool/u)
  expect(label).toMatchObject({ batchCode: '261125-L3-02', readyOn: '2027-01-06' })
  expect(label.netWeight).toHaveProperty('nominalG')
  expect(label.cautions).not.toEqual([])
  expect(label.duties).toHaveLength(3)
})

test('label --text prints the same for reading', async () => {
  const { exitCode, output } = await barwright(['label', '--text', LOTS])
  expect(exitCode).toBe(0)
  for (const words of [
    'Net weight',
    'as put in',
    'as made',
    'What the law still asks, European Union',
  ])
    expect(output).toContain(words)
})

test('label reads an older batch file too', async () => {
  expect((await barwright(['label', BATCH])).exitCode).toBe(0)
})
