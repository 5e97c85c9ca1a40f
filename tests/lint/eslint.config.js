import js from '@eslint/js'
import svelte from 'eslint-plugin-svelte'
import globals from 'globals'
import { defineConfig } from 'eslint/config'
import tseslint from 'typescript-eslint'
import { folderConfigs } from './folder-rules.js'
import { roomConfig } from './may-import.js'

const TYPED = ['**/*.ts', '**/*.svelte']

/** Finds a promise nobody waits for, an unsafe `any`, a forgotten case: these need the types. */
const withTypes = {
  name: 'barwright/types',
  files: TYPED,
  extends: [tseslint.configs.recommendedTypeChecked],
  languageOptions: {
    parserOptions: {
      projectService: true,
      tsconfigRootDir: new URL('../..', import.meta.url).pathname,
      extraFileExtensions: ['.svelte'],
    },
  },
  rules: {
    '@typescript-eslint/no-explicit-any': 'error',
    '@typescript-eslint/no-floating-promises': 'error',
    '@typescript-eslint/no-non-null-assertion': 'error',
    '@typescript-eslint/no-unused-vars': [
      'error',
      { argsIgnorePattern: '^_', ignoreRestSiblings: true },
    ],
    '@typescript-eslint/switch-exhaustiveness-check': 'error',
  },
}

/**
 * Loops over rows and columns of typed arrays, bounded by the loop: a fallback value beside every
 * index would turn a wrong index into a wrong number, where `!` leaves NaN to be noticed.
 */
const inMatrixLoops = {
  name: 'barwright/matrix-loops',
  files: ['src/domain/lp/simplex/*.ts', 'src/domain/lp/search/*.ts'],
  rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
}

const inSvelte = {
  name: 'barwright/svelte',
  files: ['**/*.svelte', '**/*.svelte.ts'],
  extends: [svelte.configs.recommended],
  languageOptions: {
    parserOptions: {
      parser: tseslint.parser,
      // As in vite.config.ts; else a component without a rune counts as one of the older Svelte.
      svelteConfig: { compilerOptions: { runes: true } },
    },
  },
  rules: {
    // Comments in a component must not switch rules off.
    'svelte/comment-directive': 'off',
    // For SvelteKit's router, which this page does not have.
    'svelte/no-navigation-without-resolve': 'off',
  },
}

const habits = {
  name: 'barwright/habits',
  linterOptions: { noInlineConfig: true },
  rules: {
    eqeqeq: 'error',
    'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx', 'hack'] }],
  },
}

const inSource = {
  name: 'barwright/source',
  files: ['src/**/*.ts'],
  rules: {
    'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true, named: true } }],
  },
}

const quietSource = {
  name: 'barwright/quiet-source',
  files: ['src/**/*.{ts,svelte}'],
  ignores: ['src/cli/**'],
  rules: { 'no-console': 'error' },
}

/** The page's library has the maker's own oils in force. */
const onePageLibrary = {
  name: 'barwright/one-page-library',
  files: ['src/{state,ui}/**'],
  ignores: ['src/state/library.ts'],
  rules: {
    '@typescript-eslint/no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            group: ['**/data/library'],
            allowTypeImports: true,
            message: 'It lacks oils of one’s own: import library from src/state/library.ts.',
          },
        ],
      },
    ],
  },
}

const CHECKS_NOTHING = 'expect() without a matcher checks nothing: say what is expected.'
const LEAVES_OUT = 'This leaves tests out of the run without a word.'

const inTests = {
  name: 'barwright/tests',
  files: ['tests/**/*.ts'],
  rules: {
    // Vitest reads the names of fixtures from the pattern, even when there are none.
    'no-empty-pattern': ['error', { allowObjectPatternsAsParameters: true }],
    'no-restricted-syntax': [
      'error',
      ...[
        ":matches(ExpressionStatement, AwaitExpression) > CallExpression[callee.name='expect']",
        "ExpressionStatement > CallExpression[callee.object.name='expect'][callee.property.name=/^(soft|poll)$/]",
      ].map((selector) => ({ selector, message: CHECKS_NOTHING })),
      {
        selector:
          'MemberExpression[object.name=/^(test|it|describe|pageTest)$/]' +
          '[property.name=/^(skip|skipIf|runIf|only|todo|fails)$/]',
        message: LEAVES_OUT,
      },
    ],
  },
}

/** ESLint does not know the types of components' snippets and props; svelte-check does, and checks them. */
const svelteTypesElsewhere = {
  name: 'barwright/svelte-types-elsewhere',
  files: ['**/*.svelte'],
  rules: Object.fromEntries(
    ['argument', 'assignment', 'call', 'member-access', 'return'].map((kind) => [
      `@typescript-eslint/no-unsafe-${kind}`,
      'off',
    ]),
  ),
}

export default defineConfig(
  { ignores: ['dist/', 'coverage/', 'notebooks/*.html', 'data/'] },
  js.configs.recommended,
  { languageOptions: { globals: { ...globals.browser, ...globals.node } } },
  withTypes,
  inMatrixLoops,
  inSvelte,
  svelteTypesElsewhere,
  habits,
  inSource,
  quietSource,
  onePageLibrary,
  inTests,
  folderConfigs(),
  roomConfig,
)
