import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { barwright, example, withInput } from './run-cli'

const json = (name: string) => JSON.parse(readFileSync(example(name), 'utf8')) as object
const OILS = example('oils.json')
const { oils } = json('oils.json') as { readonly oils: readonly object[] }

async function answer(args: readonly string[]): Promise<Record<string, unknown>> {
  const { exitCode, output, errors } = await barwright(args)
  expect(errors).toBe('')
  return { exitCode, ...(JSON.parse(output) as Record<string, unknown>) }
}

describe('oils of one’s own', () => {
  test('are taken by solve, in the brief or in a file beside it, and confirmed by a second solver', async () => {
    const flagged = await answer(['solve', example('brief-own.json'), '--oils', OILS])
    expect(flagged).toMatchObject({
      exitCode: 0,
      status: 'optimal',
      blend: { 'own-laurel': expect.closeTo(10, 6) as number },
      secondSolver: { status: 'confirmed' },
    })
    const carried = await withInput('solve', { ...json('brief-own.json'), ownOils: oils })
    expect(JSON.parse(carried.output)).toMatchObject({ blend: flagged['blend'] })
  })

  test.each([
    ['range', []],
    ['frontier', ['--axes', 'hardness,cost']],
    ['solve', ['--solver', 'highs']],
  ] as const)('are known to %s %j, in its own thread too', async (command, flags) => {
    const args = [command, example('brief-own.json'), '--oils', OILS, ...flags]
    expect(await answer(args)).toMatchObject({ exitCode: 0 })
  })

  test('weigh lye from their certificate, on sheet and label too', async () => {
    const made = await answer(['batch', example('batch-own.json')])
    expect(made).toMatchObject({ exitCode: 0, status: 'ready' })
    const sheet = await barwright(['batch', example('batch-own.json'), '--sheet'])
    expect(sheet.output).toContain('Laurel oil of the valley')
    const label = await barwright(['label', example('batch-own.json')])
    expect(label.exitCode).toBe(0)
    expect(label.output).toContain('Laurus Nobilis Fruit Oil')
  })

  test('whose figures do not agree get no lye before lot and paper are named', async () => {
    const batch = json('batch-own.json') as { readonly ownOils: readonly object[] }
    const [laurel] = batch.ownOils
    const unsigned = { ...laurel, saponificationValue: 185, lot: undefined, certificate: undefined }
    const { exitCode, output } = await withInput('batch', { ...batch, ownOils: [unsigned] })
    expect(exitCode).toBe(2)
    expect(JSON.parse(output)).toMatchObject({
      problems: [
        {
          path: 'blend.own-laurel',
          message: expect.stringMatching(/name the lot and the certificate/u) as string,
        },
      ],
    })
  })
})

describe('what is wrong with oils is told by path', () => {
  const brief = json('brief-own.json')

  test.each([
    ['in the brief', { ...brief, ownOils: [{ id: 'own-a', from: 'dragon' }] }, 'ownOils[0].from'],
    ['twice in the brief', { ...brief, ownOils: [...oils, oils[0]] }, 'ownOils[2].id'],
  ])('%s', async (_, file, path) => {
    const { exitCode, output } = await withInput('solve', file)
    expect(exitCode).toBe(2)
    expect(JSON.parse(output)).toMatchObject({ problems: [{ path }] })
  })

  test.each([
    ['a file that is not there', ['--oils', example('nothing.json')], '--oils'],
    ['standard input', ['--oils', '-'], '--oils'],
    ['a file of another kind', ['--oils', example('batch.json')], '--oils: format'],
  ])('with %s', async (_, flags, path) => {
    const found = await answer(['solve', example('brief-own.json'), ...flags])
    expect(found['exitCode']).toBe(2)
    const [first] = found['problems'] as readonly { readonly path: string }[]
    expect(first?.path).toBe(path)
  })

  test('where they are not taken', async () => {
    const { exitCode, output } = await withInput('reprice', { ...brief, ownOils: oils })
    expect(exitCode).toBe(2)
    expect(output).toContain('Take them out')
  })
})
