import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { barwright, BRIEF, withInput } from './run-cli'

interface BriefJson {
  readonly oils: Readonly<Record<string, object>>
  readonly measures: object
}
const brief = JSON.parse(readFileSync(BRIEF, 'utf8')) as BriefJson

test('solve prints the best blend as JSON and ends with 0', async () => {
  const { exitCode, output, errors } = await barwright(['solve', BRIEF])
  expect(errors).toBe('')
  expect(exitCode).toBe(0)
  const answer = JSON.parse(output) as { blend: Record<string, number> }
  expect(answer).toMatchObject({
    status: 'optimal',
    goalValue: expect.closeTo(6.47, 1) as number,
    measures: { cost: expect.closeTo(6.47, 1) as number },
  })
  expect(answer.blend.coconut).toBeCloseTo(30, 6)
})

test('solve answers the same with HiGHS', async () => {
  const runs = [barwright(['solve', BRIEF]), barwright(['solve', BRIEF, '--solver', 'highs'])]
  const [one, other] = (await Promise.all(runs)).map(({ output }) => {
    return JSON.parse(output) as { goalValue: number }
  })
  expect(other?.goalValue).toBeCloseTo(one?.goalValue ?? NaN, 6)
})

test('solve reads standard input for -', async () => {
  const { exitCode, output } = await withInput('solve', brief)
  expect(exitCode).toBe(0)
  expect(JSON.parse(output)).toMatchObject({ status: 'optimal' })
})

test('solve reads a file that begins with a byte order mark', async () => {
  const { exitCode } = await barwright(['solve', '-'], `\uFEFF${JSON.stringify(brief)}`)
  expect(exitCode).toBe(0)
})

test('solve ends with 3 where there is no such blend, and names the limits that clash', async () => {
  const hard = { ...brief, measures: { hardness: { min: 60 } } }
  const { exitCode, output, errors } = await withInput('solve', hard)
  expect(errors).toBe('')
  expect(exitCode).toBe(3)
  const answer = JSON.parse(output) as object
  expect(Object.keys(answer).sort()).toEqual(['conflict', 'nearest', 'status'])
  expect(answer).toMatchObject({
    status: 'infeasible',
    conflict: expect.arrayContaining(['measures.hardness.min']) as string[],
  })
})

test('solve ends with 2 where the brief makes no sense, and names the path', async () => {
  const oils = { ...brief.oils, dragon: { min: 120 } }
  const { exitCode, output } = await withInput('solve', { ...brief, oils })
  expect(exitCode).toBe(2)
  expect(JSON.parse(output)).toEqual({
    status: 'invalid',
    problems: [
      {
        path: 'oils.dragon',
        message: 'There is no oil "dragon" in the library. The command oils lists their ids.',
      },
      {
        path: 'oils.dragon.min',
        message: 'The share is 120 %; shares run from 0 to 100 %. Give one in that range.',
      },
      {
        path: 'oils.dragon.pricePerKg',
        message:
          '"dragon" has no price, but the brief asks about cost. Give its price per kg or take it off the shelf.',
      },
    ],
  })
})

test('solve ends with 2 where the file has another shape, and names every place', async () => {
  const wrong = {
    format: 'barwright-brief/9',
    oils: { olive: { price: 7, min: '20' } },
    groups: [{ name: 'g', oils: 'olive' }],
    goal: { minimise: 'cost', maximise: 'lather' },
  }
  const { exitCode, output } = await withInput('solve', wrong)
  expect(exitCode).toBe(2)
  const { problems } = JSON.parse(output) as { problems: unknown }
  expect(problems).toEqual([
    { path: 'format', message: '"barwright-brief/9" stands here. Give "barwright-brief/1".' },
    { path: 'oils.olive.min', message: '"20" stands here. Give a value of type number.' },
    {
      path: 'oils.olive',
      message: 'Unknown key price. Take it out or correct its spelling.',
    },
    { path: 'groups[0].oils', message: '"olive" stands here. Give a value of type array.' },
    {
      path: 'goal',
      message:
        '{"minimise":"cost","maximise":"lather"} stands here. Give one of { "minimise": measure }, { "maximise": measure } or { "closestTo": { oil: percent } }.',
    },
  ])
})

test('solve says what is missing from an empty object', async () => {
  const { exitCode, output } = await withInput('solve', {})
  expect(exitCode).toBe(2)
  const { problems } = JSON.parse(output) as { problems: { path: string; message: string }[] }
  expect(problems.map(({ path }) => path)).toEqual(['format', 'oils', 'goal'])
  for (const { message } of problems) expect(message).toMatch(/^Missing\. Give /u)
})

test('solve refuses a number too large to read', async () => {
  const { exitCode, output } = await barwright(
    ['solve', '-'],
    '{"format":"barwright-brief/1","oils":{"olive":{"min":1e999}},"goal":{"minimise":"wear"}}',
  )
  expect(exitCode).toBe(2)
  expect(output).toContain('"oils.olive.min"')
  expect(output).toContain('This number is too large to read. Give a smaller one.')
})

test('solve refuses a solver that there is not', async () => {
  const { exitCode, output } = await barwright(['solve', BRIEF, '--solver', 'abacus'])
  expect(exitCode).toBe(2)
  expect(JSON.parse(output)).toMatchObject({
    problems: [
      {
        path: '--solver',
        message: expect.stringMatching(
          /no solver "abacus".*javascript-lp-solver or highs/u,
        ) as string,
      },
    ],
  })
})

test('every answer says where its figures are not to be trusted, and such blends come last', async () => {
  const castor = {
    format: 'barwright-brief/1',
    oils: {
      castor: { pricePerKg: 4, max: 52 },
      olive: { pricePerKg: 7 },
      coconut: { pricePerKg: 6 },
    },
    measures: {},
    goal: { minimise: 'cost' },
  }
  const flag = expect.objectContaining({ kind: 'trust', oil: 'castor', mostPercent: 15 }) as object
  const best = JSON.parse((await withInput('solve', castor)).output) as { flags: unknown[] }
  expect(best.flags).toContainEqual(flag)
  const others = JSON.parse(
    (await barwright(['alternatives', '-', '--slack', '60%'], JSON.stringify(castor))).output,
  ) as {
    alternatives: { flags: { kind: string }[] }[]
  }
  const doubtful = others.alternatives.map(({ flags }) =>
    flags.some(({ kind }) => kind === 'trust'),
  )
  expect(doubtful).toEqual([...doubtful].sort())
  expect(new Set(doubtful).size).toBe(2)
})
