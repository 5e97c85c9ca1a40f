import { ESLint } from 'eslint'
import { fileURLToPath } from 'node:url'
import tseslint from 'typescript-eslint'
import { beforeAll, expect, test } from 'vitest'

const cwd = fileURLToPath(new URL('../..', import.meta.url))
const overrideConfigFile = fileURLToPath(new URL('eslint.config.js', import.meta.url))

/** For planted files that do not exist, and so have no types. */
const untyped = new ESLint({
  cwd,
  overrideConfigFile,
  overrideConfig: tseslint.configs.disableTypeChecked,
})
/** For text planted in the place of a file that does exist. */
const typed = new ESLint({ cwd, overrideConfigFile })

// The first question to the types reads all of them, which takes as long as the machine does.
beforeAll(() => typed.lintText('', { filePath: `${cwd}/src/domain/units.ts` }), 600_000)

async function findings(eslint: ESLint, filePath: string, code: string): Promise<string[]> {
  const results = await eslint.lintText(code, { filePath: `${cwd}/${filePath}` })
  return results
    .flatMap((result) => result.messages)
    .map(({ ruleId, message }) => `${ruleId ?? 'no rule'}: ${message}`)
}

test.each([
  ['zod in domain', 'src/domain/planted.ts', "export { z } from 'zod'"],
  ['a Node built-in in domain', 'src/domain/planted.ts', "export * from 'node:fs'"],
  ['d3 in domain', 'src/domain/planted.ts', "export { scaleLinear } from 'd3'"],
  ['svelte in domain', 'src/domain/blend/planted.ts', "export { mount } from 'svelte'"],
  ['ui in domain', 'src/domain/blend/planted.ts', "export { x } from '../../ui/chart/frame'"],
  ['a type of data in domain', 'src/domain/planted.ts', "export type { X } from '../data/x'"],
  ['worker in data', 'src/data/planted.ts', "export { x } from '../worker/client'"],
  ['state in worker', 'src/worker/planted.ts', "export { x } from '../state/inputs.svelte'"],
  ['svelte in charts', 'src/charts/planted.ts', "export { mount } from 'svelte'"],
  ['data in charts', 'src/charts/planted.ts', "export { x } from '../data/x'"],
  ['ui in charts by a detour', 'src/charts/planted.ts', "export { x } from './axis/../../ui/axis'"],
  ['ui in state', 'src/state/planted.svelte.ts', "export { x } from '../ui/kit'"],
  ['ui in storage', 'src/storage/planted.ts', "export { x } from '../ui/kit'"],
  ['idb in state', 'src/state/planted.ts', "export { openDB } from 'idb'"],
  ['comlink in sweep', 'src/sweep/planted.ts', "export { wrap } from 'comlink'"],
  ['worker in sweep', 'src/sweep/queue/planted.ts', "export { x } from '../../worker/client'"],
  ['a Node built-in in ui', 'src/ui/planted.ts', "export * from 'node:path'"],
  ['svelte in cli', 'src/cli/planted.ts', "export { mount } from 'svelte'"],
  ['ui in cli', 'src/cli/planted.ts', "export { x } from '../ui/kit'"],
])('an import of %s is caught', async (_, filePath, code) => {
  expect(await findings(untyped, filePath, code)).toEqual([
    expect.stringMatching(/^no-restricted-imports: .*may import only/),
  ])
})

test.each([
  ['a dynamic import', "export const load = () => import('../ui/kit')"],
  ['an imported type', "export type Kit = import('../ui/kit').Kit"],
])('%s of ui in domain is caught', async (_, code) => {
  expect(await findings(untyped, 'src/domain/planted.ts', code)).toEqual([
    expect.stringMatching(/^no-restricted-syntax: src\/domain may import only/),
  ])
})

test.each(['domain', 'data', 'charts'])('a browser global in %s is caught', async (folder) => {
  const code = [
    'export const width = window.innerWidth',
    "export const name = document.querySelector('h1')",
    "export const kept = localStorage.getItem('blend')",
    "export const answer = globalThis.fetch('/prices')",
    'export const arch = process.arch',
  ].join('\n')
  const found = await findings(untyped, `src/${folder}/planted.ts`, code)
  expect(found).toHaveLength(5)
  for (const finding of found) expect(finding).toMatch(/^no-restricted-globals: /)
})

test.each([
  ['domain', "export * as solver from 'javascript-lp-solver'"],
  ['domain', "export { create } from 'mathjs'"],
  ['storage', "export { openDB } from 'idb'\nexport { x } from '../data/x'"],
  ['sweep', "export { argv } from 'node:process'\nexport { x } from '../domain/blend/x'"],
  ['data', "export { z } from 'zod'\nexport { x } from '../domain/x'"],
  ['data', "export { default as oils } from '../../data/oils.json'"],
  ['worker', "export { wrap } from 'comlink'\nexport { x } from '../data/x'"],
  ['charts', "export { scaleLinear } from 'd3'\nexport { x } from '../domain/x'"],
  ['state', "export { untrack } from 'svelte'\nexport { x } from '../worker/client'"],
  ['ui', "export { mount } from 'svelte'\nexport { x } from '../state/inputs.svelte'"],
  ['cli', "export { argv } from 'node:process'\nexport { x } from '../worker/solve'"],
])('%s may import what it is meant to', async (folder, code) => {
  expect(await findings(untyped, `src/${folder}/planted.ts`, code)).toEqual([])
})

test('a component that breaks the rules of its folder is caught', async () => {
  const code = `<script lang="ts">\n  import { z } from 'zod'\n</script>\n\n<p>{z.string().parse('a')}</p>\n`
  expect(await findings(untyped, 'src/ui/Planted.svelte', code)).toEqual([
    expect.stringMatching(/^no-restricted-imports: /),
  ])
})

test.each([
  ['derived state written by an effect', 'svelte/prefer-writable-derived', effectForDerived()],
  ['a list without keys', 'svelte/require-each-key', '{#each [1, 2] as n}<p>{n}</p>{/each}'],
  ['raw HTML', 'svelte/no-at-html-tags', "{@html '<b>soap</b>'}"],
  [
    'raw HTML behind a comment',
    'svelte/no-at-html-tags',
    `<!-- eslint-disable -->{@html '<b></b>'}`,
  ],
])('%s in a component is caught', async (_, rule, code) => {
  expect(await findings(untyped, 'src/ui/Planted.svelte', code)).toEqual([
    expect.stringMatching(new RegExp(`^${rule}: `)),
  ])
})

function effectForDerived(): string {
  return `<script lang="ts">
  const { grams }: { grams: number } = $props()
  let doubled = $state(0)
  $effect(() => {
    doubled = grams * 2
  })
</script>
<p>{doubled}</p>`
}

test.each([
  ['expect without a matcher', 'expect(1 + 1)', /^no-restricted-syntax: expect\(\) without/],
  ['an awaited expect without a matcher', 'await expect(1)', /^no-restricted-syntax: expect\(\)/],
  ['a soft expect without a matcher', 'expect.soft(1)', /^no-restricted-syntax: expect\(\)/],
  ['a matcher that is not called', 'expect(1).toBe', /no-unused-expressions: /],
  ['a skipped test', "test.skip('a', () => {})", /^no-restricted-syntax: This leaves tests out/],
  ['a lone test', "test.only('a', () => {})", /^no-restricted-syntax: This leaves tests out/],
])('%s is caught', async (_, line, finding) => {
  const code = `import { expect, test } from 'vitest'\ntest('b', async () => {\n  ${line}\n})\n`
  const found = await findings(untyped, 'tests/domain/planted.test.ts', code)
  expect(found.filter((message) => finding.test(message))).toHaveLength(1)
})

test.each([
  ['any', 'export const massG: any = 1', 'no-explicit-any'],
  [
    'a promise nobody waits for',
    'export function f(): void {\n  Promise.resolve(1)\n}',
    'no-floating-promises',
  ],
  [
    'a silenced undefined',
    'export const g = (a: number[]): number => a[0]!',
    'no-non-null-assertion',
  ],
  ['a silenced compiler', '// @ts-ignore\nexport const h = 1', 'ban-ts-comment'],
  [
    'a comment that switches rules off',
    '/* eslint-disable */\nexport const i: any = 1',
    'no-explicit-any',
  ],
])('%s is caught', async (_, code, rule) => {
  const found = await findings(typed, 'src/domain/units.ts', code)
  expect(found.join('\n')).toContain(`@typescript-eslint/${rule}: `)
})

test('a forgotten case of a union is caught', async () => {
  const code =
    "export function word(status: 'solved' | 'infeasible'): string {\n" +
    "  switch (status) {\n    case 'solved':\n      return 'found'\n  }\n  return ''\n}\n"
  expect(await findings(typed, 'src/domain/units.ts', code)).toEqual([
    expect.stringContaining('switch-exhaustiveness-check'),
  ])
})

test('clean code gives no finding', async () => {
  const source =
    'export function percentOf(shareFraction: number): number {\n  return shareFraction * 100\n}\n'
  expect(await findings(typed, 'src/domain/units.ts', source)).toEqual([])
  const check =
    "import { expect, test } from 'vitest'\n\ntest('a', () => {\n  expect(1 + 1).toBe(2)\n})\n"
  expect(await findings(typed, 'tests/lint/lint.test.ts', check)).toEqual([])
  const component =
    '<script lang="ts">\n  const { grams }: { grams: number } = $props()\n</script>\n\n<p>{grams} g</p>\n'
  expect(await findings(untyped, 'src/ui/Planted.svelte', component)).toEqual([])
})
