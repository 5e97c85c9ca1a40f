import { ESLint } from 'eslint'
import { fileURLToPath } from 'node:url'
import tseslint from 'typescript-eslint'
import { expect, test } from 'vitest'
import { ROOMS } from './rooms.js'

const cwd = fileURLToPath(new URL('../..', import.meta.url))
const eslint = new ESLint({
  cwd,
  overrideConfigFile: fileURLToPath(new URL('eslint.config.js', import.meta.url)),
  overrideConfig: tseslint.configs.disableTypeChecked,
})

async function findings(filePath: string, code: string): Promise<string[]> {
  const results = await eslint.lintText(code, { filePath: `${cwd}/${filePath}` })
  return results
    .flatMap(({ messages }) => messages)
    .map(({ ruleId, message }) => `${ruleId ?? 'no rule'}: ${message}`)
}

/** What a room may not import, each as an import of it from a file of the room. */
function faultsOf(room: string): string[] {
  const up = '../'.repeat(room.split('/').length)
  const barred = Object.keys(ROOMS).filter(
    (other) => other !== room && !ROOMS[room]?.includes(other),
  )
  return barred.map((other) => `export { x } from '${up}${other}/planted'`)
}

test.each(Object.keys(ROOMS))('%s is kept from every room it may not import', async (room) => {
  const faults = faultsOf(room)
  const found = await findings(`src/domain/${room}/planted.ts`, faults.join('\n'))
  expect(faults.length).toBeGreaterThan(0)
  expect(found).toHaveLength(faults.length)
  for (const finding of found) expect(finding).toMatch(/^barwright\/may-import: .* may import only/)
})

test.each(Object.entries(ROOMS))(
  '%s may import what its row says, and what lies in src/domain itself',
  async (room, allowed) => {
    const up = '../'.repeat(room.split('/').length)
    const lines = [...allowed.map((other) => `${other}/planted`), 'units'].map(
      (path, k) => `export { x${k} } from '${up}${path}'`,
    )
    expect(await findings(`src/domain/${room}/planted.ts`, lines.join('\n'))).toEqual([])
  },
)

test.each([
  ['a dynamic import', "export const load = () => import('../batch/planted')"],
  ['an imported type', "export type Batch = import('../batch/planted').Batch"],
  ['a type import', "import type { Batch } from '../batch/planted'\nexport type { Batch }"],
  ['a detour', "export { x } from '../blend/../batch/planted'"],
  ['everything', "export * from '../batch/planted'"],
])('%s of batch in chemistry is caught', async (_, code) => {
  expect(await findings('src/domain/chemistry/planted.ts', code)).toEqual([
    expect.stringMatching(
      /^barwright\/may-import: Besides itself chemistry may import only the files of src\/domain itself; not/,
    ),
  ])
})

test('a folder of the domain without a row is caught', async () => {
  expect(await findings('src/domain/optimise/planted/planted.ts', 'export const x = 1')).toEqual([
    expect.stringMatching(/^barwright\/may-import: domain\/optimise\/planted is no room/),
  ])
})
