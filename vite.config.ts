import { svelte } from '@sveltejs/vite-plugin-svelte'
import { deepStrictEqual } from 'node:assert'
import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { build, type Plugin, type UserConfig } from 'vite'
import { configDefaults, defineConfig, type TestProjectInlineConfiguration } from 'vitest/config'
import type { InlineConfig } from 'vitest/node'

/** Absolute path of a place in the project, so that nothing depends on the caller's folder. */
const inProject = (path: string) => fileURLToPath(new URL(path, import.meta.url))

const PREVIEW_PORT = 4860
type ProjectConfig = NonNullable<TestProjectInlineConfiguration['test']>

const MINUTE = 60_000
/** Tests wait for conditions; how long at most is a last stop, so that none depends on the machine's speed. */
const PATIENT: ProjectConfig = { testTimeout: 5 * MINUTE, expect: { poll: { timeout: MINUTE } } }

/**
 * `vite build` makes the page, `vite build --mode cli` the command-line tool.
 * Vitest's mode picks the tests: `test` (the usual ones), `long`, `screenshots` and `bench`.
 */
export default defineConfig(({ mode }) => {
  const shared: UserConfig = {
    root: inProject('src'),
    publicDir: false,
    cacheDir: inProject('node_modules/.vite'),
  }
  return mode === 'cli' ? { ...shared, ...cli } : { ...shared, ...page, test: tests(mode) }
})

const page: UserConfig = {
  plugins: [svelte({ configFile: false, compilerOptions: { runes: true } })],
  base: './',
  build: { outDir: inProject('dist/app'), emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  server: { fs: { allow: [inProject('.')] } },
  preview: { port: PREVIEW_PORT, strictPort: false },
}

const LIBRARY = inProject('src/data/library.ts')

/** What finds a blend, in one file: each file more costs a call a millisecond or two. */
const OF_EVERY_ANSWER = /src\/(?:domain\/(?:blend|chemistry|optimise|simplex)\/|worker\/service)/u

/**
 * All entries and their shared chunks lie in one folder: the CLI finds its threads beside itself. What every
 * call needs of packages is built in, and only what is used of them: a call starts in a fraction of the time.
 */
const cli: UserConfig = {
  plugins: [checkedOnce()],
  ssr: {
    noExternal: ['zod', 'comlink', 'd3', /^d3-/, 'javascript-lp-solver', 'jsonc-parser', 'mathjs'],
  },
  build: {
    outDir: inProject('dist/cli'),
    emptyOutDir: true,
    target: 'node20',
    ssr: true,
    minify: true,
    rolldownOptions: {
      input: {
        barwright: inProject('src/cli/barwright.ts'),
        main: inProject('src/cli/main.ts'),
        'solver-thread': inProject('src/cli/solver-thread.ts'),
        'sweep-thread': inProject('src/sweep/sweep-thread.ts'),
      },
      output: {
        format: 'es',
        codeSplitting: { groups: [{ name: 'core', test: OF_EVERY_ANSWER }] },
        entryFileNames: '[name].js',
        chunkFileNames: '[name]-[hash].js',
        banner: (chunk) => (needsShebang(chunk) ? '#!/usr/bin/env node' : ''),
      },
    },
  },
}

/** The library of the command line is read and checked when it is built, and not at each start. */
function checkedOnce(): Plugin {
  return {
    name: 'barwright:checked-once',
    load: {
      filter: { id: LIBRARY },
      handler: async () => `export const library = ${sourceOf(await readLibrary())}`,
    },
  }
}

/** The library as its module makes it, bundled with all it needs and run. */
async function readLibrary(): Promise<object> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    ssr: { noExternal: true },
    build: { ssr: LIBRARY, write: false, minify: false },
  })
  if (!('output' in built)) throw new Error('The library was not built')
  const url = `data:text/javascript,${encodeURIComponent(built.output[0].code)}`
  const { library } = (await import(url)) as { readonly library: object }
  return library
}

/** An object of maps and plain values as source; a long text of JSON is read faster than a long literal. */
function sourceOf(object: object): string {
  const parts = Object.entries(object).map(([key, value]: [string, unknown]) => {
    const plain: unknown = value instanceof Map ? [...value] : value
    const json = JSON.stringify(plain)
    deepStrictEqual(JSON.parse(json), plain)
    const read = `JSON.parse(${JSON.stringify(json)})`
    return `${key}: ${value instanceof Map ? `new Map(${read})` : read}`
  })
  return `{ ${parts.join(', ')} }`
}

/** A shebang in the source survives the build, and a second one would be a syntax error. */
function needsShebang(chunk: { name: string; isEntry: boolean }): boolean {
  const source = readFileSync(inProject('src/cli/barwright.ts'), 'utf8')
  return chunk.isEntry && chunk.name === 'barwright' && !source.startsWith('#!')
}

/** Folders whose tests need the built page and a browser. */
const inBrowser = ['tests/browser', 'tests/e2e', 'tests/notebooks'].map(testsIn)
/** Rune classes: compiled as the page compiles them, run in Node without a DOM. */
const withRunes = [testsIn('tests/state')]
/** Tests of the built command-line tool. */
const ofCli = ['tests/cli', 'tests/sweep'].map(testsIn)
/** Minutes rather than seconds; `npm run test:long`. */
const long = [testsIn('tests/long')]

function testsIn(folder: string): string {
  return `${folder}/**/*.test.ts`
}

function tests(mode: string): InlineConfig {
  const root = inProject('.')
  if (mode === 'long')
    return {
      root,
      projects: [project('long', long, { ...usesBuiltCli, testTimeout: 30 * MINUTE })],
    }
  if (mode === 'screenshots') return { root, projects: [screenshots] }
  if (mode === 'bench') return { root, projects: [bench] }
  return { root, maxWorkers: availableParallelism(), projects: [unit, runes, builtCli, browser] }
}

function project(
  name: string,
  include: string[],
  rest: ProjectConfig,
): TestProjectInlineConfiguration {
  return { extends: true, test: { name, include, ...rest } }
}

const unit = project('unit', [testsIn('tests')], {
  exclude: [...configDefaults.exclude, ...inBrowser, ...withRunes, ...ofCli, ...long],
  ...PATIENT,
})

const runes: TestProjectInlineConfiguration = {
  ...project('runes', withRunes, {
    environment: inProject('tests/setup/client-environment.ts'),
    ...PATIENT,
  }),
  resolve: { conditions: ['browser'] },
}

const BUILD_PAGE = inProject('tests/setup/build-page.ts')
const BUILD_CLI = inProject('tests/setup/build-cli.ts')
const BROWSER = inProject('tests/setup/browser.ts')

const usesBuiltCli: ProjectConfig = {
  globalSetup: BUILD_CLI,
  // What a test finds must not depend on how busy the machine is; a call that hangs is still ended.
  testTimeout: 10 * MINUTE,
  // What is built is run as it is, not compiled once more.
  server: { deps: { external: [/\/dist\/for-tests-cli/u] } },
}
const builtCli = project('cli', ofCli, usesBuiltCli)

const usesBuiltPage: ProjectConfig = {
  globalSetup: [BUILD_PAGE, BROWSER],
  hookTimeout: 5 * MINUTE,
  ...PATIENT,
}
/** The page's answers are compared with the command line's, so both are built. */
const browser = project('browser', inBrowser, {
  ...usesBuiltPage,
  globalSetup: [BUILD_PAGE, BUILD_CLI, BROWSER],
})
const screenshots = project('screenshots', ['tests/browser/screenshots.ts'], usesBuiltPage)
/** What measures time, `npm run bench`; it writes tests/bench/results.md. */
const bench = project('bench', ['tests/bench/*.bench.ts'], {
  ...usesBuiltPage,
  fileParallelism: false,
  testTimeout: 10 * MINUTE,
})
