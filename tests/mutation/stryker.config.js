/**
 * Mutation tests: `npm run mutate -- --mutate src/domain/chemistry/superfat.ts`. Without `--mutate` all of
 * `chemistry` and `batch`. Which tests are held against the mutants: `MUTATION_TESTS`, see `vitest.config.ts`.
 *
 * @type {import('@stryker-mutator/api/core').PartialStrykerOptions}
 */
export default {
  testRunner: 'vitest',
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: true },
  plugins: ['@stryker-mutator/vitest-runner'],
  // Remarks and problems are joined by codes, and their words are tested where they matter: an emptied sentence
  // is no fault of the figures.
  mutator: { excludedMutations: ['StringLiteral'] },
  mutate: ['src/domain/chemistry/**/*.ts', 'src/domain/batch/**/*.ts'],
  ignorePatterns: ['dist', 'notebooks', 'tests/bench', 'tests/e2e', 'tests/browser'],
  coverageAnalysis: 'perTest',
  reporters: ['clear-text', 'json'],
  clearTextReporter: { logTests: false, reportTests: false, allowEmojis: false },
  jsonReporter: { fileName: 'dist/mutation/report.json' },
  tempDirName: 'dist/mutation/sandbox',
  warnings: { slow: false },
  concurrency: 2,
  timeoutMS: 20_000,
}
