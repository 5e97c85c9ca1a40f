/**
 * Who may import whom. `domain` knows nobody, `ui` knows all, nothing but `main.ts` imports `ui`.
 * A folder's rule becomes ESLint's own `no-restricted-imports`, `no-restricted-globals` and
 * `no-restricted-syntax` (for imports the first of these does not see).
 *
 * @typedef {object} FolderRule
 * @property {string} files glob of the files the rule holds for
 * @property {readonly string[]} folders folders of `src` it may import, besides itself
 * @property {readonly string[]} packages packages it may import
 * @property {boolean} pure whether browser and Node globals are barred
 */

const FOLDERS = ['domain', 'data', 'worker', 'storage', 'charts', 'state', 'ui', 'sweep', 'cli']

/** @type {Readonly<Record<string, FolderRule>>} */
export const FOLDER_RULES = {
  domain: rule('domain', [], ['javascript-lp-solver', 'highs', 'mathjs', 'd3-array', 'd3-random'], {
    pure: true,
  }),
  data: rule('data', ['domain'], ['zod', 'jsonc-parser', 'mathjs', 'd3'], { pure: true }),
  worker: rule('worker', ['domain', 'data'], ['comlink', 'highs']),
  storage: rule('storage', ['domain', 'data'], ['zod', 'idb']),
  charts: rule('charts', ['domain'], ['d3'], { pure: true }),
  state: rule('state', ['domain', 'worker', 'data', 'charts', 'storage'], ['svelte']),
  ui: rule(
    'ui',
    ['domain', 'worker', 'data', 'charts', 'storage', 'state'],
    ['svelte', 'd3', 'bits-ui', '@fontsource-variable'],
  ),
  sweep: rule('sweep', ['domain', 'data'], ['node:', 'zod', 'piscina', 'bullmq', 'ioredis']),
  cli: rule('cli', ['domain', 'data', 'worker', 'sweep'], ['node:', 'comlink', 'highs']),
}

const PURE_MESSAGE =
  'This folder runs in a page, a worker, Node and a notebook: it uses no browser or Node globals. ' +
  'Take what is needed as a parameter.'

const BROWSER_AND_NODE_GLOBALS = [
  'window',
  'document',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'caches',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'EventSource',
  'Worker',
  'postMessage',
  'self',
  'process',
  'Buffer',
  'require',
  '__dirname',
  '__filename',
]

/** @returns {import('eslint').Linter.Config[]} one part for each folder */
export function folderConfigs() {
  return Object.entries(FOLDER_RULES).map(([folder, { files, folders, packages, pure }]) => {
    const barred = barredImports(folder, folders, packages)
    return {
      name: `barwright/${folder}`,
      files: [files],
      rules: {
        'no-restricted-imports': ['error', { patterns: barred }],
        'no-restricted-syntax': ['error', ...barred.flatMap(unusualImports)],
        ...(pure && { 'no-restricted-globals': ['error', pureGlobals()] }),
      },
    }
  })
}

/**
 * @param {string} folder
 * @param {readonly string[]} folders
 * @param {readonly string[]} packages
 * @param {{ pure?: boolean }} [options]
 * @returns {FolderRule}
 */
function rule(folder, folders, packages, { pure = false } = {}) {
  return { files: `src/${folder}/**/*.{ts,svelte}`, folders, packages, pure }
}

/**
 * @param {string} folder
 * @param {readonly string[]} folders
 * @param {readonly string[]} packages
 */
function barredImports(folder, folders, packages) {
  const barredFolders = FOLDERS.filter((other) => other !== folder && !folders.includes(other))
  const paths = packages.map((name) => (name.endsWith(':') ? name : `${name}(?:/|$)`))
  return [
    {
      regex: `(?:^|/)\\.\\./(?:src/)?(?:${barredFolders.join('|')})(?:/|$)`,
      message: `src/${folder} may import only from itself${folders.map((f) => `, src/${f}`).join('')}.`,
    },
    {
      regex: `^(?!\\.{1,2}(?:/|$)${paths.map((path) => `|${path}`).join('')})`,
      message: `Of the packages, src/${folder} may import only: ${packages.join(', ')}.`,
    },
  ]
}

/**
 * `import('…')`, as an expression and as a type.
 * @param {{ regex: string, message: string }} barred
 */
function unusualImports({ regex, message }) {
  const pattern = `/${regex.replaceAll('/', '\\u002F')}/`
  return ['ImportExpression', 'TSImportType'].map((node) => ({
    selector: `${node}[source.value=${pattern}]`,
    message,
  }))
}

function pureGlobals() {
  return {
    checkGlobalObject: true,
    globals: BROWSER_AND_NODE_GLOBALS.map((name) => ({ name, message: PURE_MESSAGE })),
  }
}
