import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { checkBrief } from '../../src/domain/optimise/brief/check-brief'
import { COMMANDS } from '../../src/cli/commands'
import { briefFile, briefOf } from '../../src/data/brief-file'
import { library } from '../../src/data/library'

/*
 * What README.md and DEVELOPERS.md say of the project, where a few lines can tell whether it is so. That
 * the tables of rooms and the picture are true is in rooms.test.ts, which faults lint finds in lint.test.ts
 * and rooms-lint.test.ts.
 */

const root = fileURLToPath(new URL('../../', import.meta.url))
const text = (file: string) => readFileSync(root + file, 'utf8')
const readme = text('README.md')
const developers = text('DEVELOPERS.md')
const both = `${readme}\n${developers}`
const setup = JSON.parse(text('package.json')) as {
  readonly scripts: Record<string, string>
  readonly dependencies: Record<string, string>
  readonly devDependencies: Record<string, string>
  readonly engines: { readonly node: string }
  readonly license: string
}

/** The files of `src` whose text has something in it, relative to `src`. */
function sourcesWith(what: string | RegExp): string[] {
  return readdirSync(`${root}src`, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(?:ts|svelte)$/.test(file))
    .filter((file) => {
      const source = text(`src/${file}`)
      return typeof what === 'string' ? source.includes(what) : what.test(source)
    })
    .sort()
}

describe('README.md and DEVELOPERS.md', () => {
  test('name only files and folders that there are', () => {
    const named = [...both.matchAll(/`((?:src|tests|data|notebooks)\/[\w./-]+)`/g)].map(
      ([, path = '']) => path,
    )
    expect(named.length).toBeGreaterThan(40)
    expect(named.filter((path) => !/[*]|NAME/.test(path) && !existsSync(root + path))).toEqual([])
  })

  test('name only scripts that there are', () => {
    const named = [...both.matchAll(/npm run ([\w:]+)/g)].map(([, script = '']) => script)
    expect(named.length).toBeGreaterThan(5)
    expect(named.filter((script) => !Object.hasOwn(setup.scripts, script))).toEqual([])
  })

  test('state the version of Node and the licence that the package states', () => {
    expect(readme).toContain(`Node ${setup.engines.node.replace('>=', '')} or later`)
    expect(readme).toContain(`${setup.license} licence`)
  })

  test('name every command of the command line', () => {
    const commands = [...COMMANDS.keys()]
    expect(commands.length).toBeGreaterThan(10)
    expect(commands.filter((name) => !new RegExp(`\`${name}[ \`]`).test(readme))).toEqual([])
  })

  test('name every project of the tests', () => {
    const projects = [...text('vite.config.ts').matchAll(/project\('(\w+)'/g)].map(
      ([, name = '']) => name,
    )
    for (const name of ['unit', 'runes', 'cli', 'browser']) expect(projects).toContain(name)
    for (const name of ['unit', 'runes', 'cli', 'browser'])
      expect(developers).toContain(`\`${name}\``)
  })
})

test('the brief in README.md is one that the program takes', () => {
  const [, shown = ''] = /```json\n([^`]*"barwright-brief\/1"[^`]*)```/.exec(readme) ?? []
  const brief = briefOf(briefFile.parse(JSON.parse(shown)))
  expect(checkBrief(brief, library)).toEqual([])
})

test('glpk.js is a rival in the benchmark only and does not ship', () => {
  expect(Object.keys(setup.dependencies)).not.toContain('glpk.js')
  expect(Object.keys(setup.devDependencies)).toContain('glpk.js')
  expect(sourcesWith(/from 'glpk\.js'/)).toEqual([])
})

test('one file of storage alone speaks to IndexedDB', () => {
  expect(sourcesWith("from 'idb'")).toEqual(['storage/database.ts'])
})

test('javascript-lp-solver is spoken to by one file, behind the solvers’ interface', () => {
  expect(sourcesWith("from 'javascript-lp-solver'")).toEqual(['domain/lp/solvers/jslp.ts'])
})

test('nobody above the domain asks whether a brief has rules', () => {
  const asking = sourcesWith(/\bstatesRules\b/)
  expect(asking.length).toBeGreaterThan(5)
  expect(asking.filter((file) => !file.startsWith('domain/optimise/'))).toEqual([])
})
