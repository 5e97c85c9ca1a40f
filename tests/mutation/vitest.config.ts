import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const inProject = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url))

/**
 * Files or folders of tests, as vitest globs with commas between. Property tests and those of whole random
 * batches are left out: at a minute a run they cost more than the mutants that they alone would kill.
 */
const tests =
  process.env['MUTATION_TESTS'] ??
  'tests/domain/chemistry/**/*.test.ts,tests/domain/batch/**/!(fuzz|guard).test.ts'

/** The unit tests that bear on what is mutated, in Node alone: each mutant is run against them. */
export default defineConfig({
  root: inProject('.'),
  cacheDir: inProject('node_modules/.vite'),
  test: { include: tests.split(','), testTimeout: 60_000 },
})
