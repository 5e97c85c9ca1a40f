import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { posix } from 'node:path'
import { fileURLToPath } from 'node:url'

/**
 * The rooms of `src/domain`, and which others each may import besides the files of
 * `src/domain` itself, lowest first. A folder
 * without a row belongs to the room it lies in. `may-import.js` holds every import to this;
 * `rooms.test.ts` sees that no permission goes unused, that no arrow leads back, and that DEVELOPERS.md
 * says the same.
 *
 * @type {Readonly<Record<string, readonly string[]>>}
 */
export const ROOMS = {
  chemistry: [],
  chance: [],
  lp: [],
  'lp/simplex': ['lp'],
  'lp/search': ['lp', 'lp/simplex'],
  'lp/solvers': ['lp', 'lp/simplex'],
  'lp/pareto': ['lp/simplex'],
  blend: ['chemistry', 'lp'],
  'optimise/brief': ['lp', 'blend'],
  'optimise/lots': ['chemistry', 'chance', 'blend', 'optimise/brief'],
  'optimise/space': ['lp', 'lp/simplex', 'lp/search', 'blend', 'optimise/brief', 'optimise/lots'],
  'optimise/search': ['lp', 'lp/search', 'lp/solvers', 'blend', 'optimise/brief', 'optimise/space'],
  'optimise/ranges': ['optimise/brief', 'optimise/space', 'optimise/search'],
  'optimise/infeasible': [
    'lp',
    'lp/simplex',
    'lp/solvers',
    'blend',
    'optimise/brief',
    'optimise/space',
    'optimise/search',
  ],
  'optimise/sensitivity': ['lp', 'lp/simplex', 'blend', 'optimise/brief', 'optimise/space'],
  'optimise/words': ['blend', 'optimise/brief', 'optimise/space', 'optimise/sensitivity'],
  'optimise/why': [
    'blend',
    'optimise/brief',
    'optimise/space',
    'optimise/ranges',
    'optimise/sensitivity',
    'optimise/words',
  ],
  'optimise/solve': [
    'lp',
    'lp/solvers',
    'blend',
    'optimise/brief',
    'optimise/lots',
    'optimise/space',
    'optimise/search',
    'optimise/ranges',
    'optimise/infeasible',
  ],
  'optimise/pareto': [
    'lp',
    'lp/simplex',
    'lp/pareto',
    'blend',
    'optimise/brief',
    'optimise/space',
    'optimise/search',
  ],
  'optimise/map': [
    'chance',
    'blend',
    'optimise/brief',
    'optimise/space',
    'optimise/search',
    'optimise/ranges',
    'optimise/pareto',
  ],
  'optimise/alternatives': [
    'chance',
    'lp',
    'lp/simplex',
    'blend',
    'optimise/brief',
    'optimise/lots',
    'optimise/space',
    'optimise/search',
  ],
  'optimise/studies': [
    'lp',
    'lp/simplex',
    'lp/search',
    'blend',
    'optimise/brief',
    'optimise/space',
  ],
  'optimise/reprice': [
    'chance',
    'lp',
    'lp/simplex',
    'lp/solvers',
    'blend',
    'optimise/brief',
    'optimise/space',
    'optimise/search',
    'optimise/infeasible',
    'optimise/solve',
  ],
  'batch/order': ['chemistry', 'blend'],
  'batch/check': ['chemistry', 'blend', 'batch/order'],
  'batch/weigh': ['chemistry', 'blend', 'batch/order'],
  'batch/react': ['chemistry', 'blend', 'batch/order', 'batch/weigh'],
  'batch/superfat': ['chemistry', 'blend', 'batch/order', 'batch/weigh'],
  'batch/result': [
    'chemistry',
    'blend',
    'batch/order',
    'batch/check',
    'batch/weigh',
    'batch/react',
    'batch/superfat',
  ],
  'batch/actual': [
    'chemistry',
    'blend',
    'batch/order',
    'batch/weigh',
    'batch/superfat',
    'batch/result',
  ],
  'batch/sheet': [
    'chemistry',
    'batch/order',
    'batch/react',
    'batch/superfat',
    'batch/result',
    'batch/actual',
  ],
  'batch/workshop': [
    'chemistry',
    'blend',
    'batch/order',
    'batch/weigh',
    'batch/superfat',
    'batch/result',
    'batch/actual',
    'batch/sheet',
  ],
  'batch/release': [
    'chemistry',
    'blend',
    'batch/order',
    'batch/check',
    'batch/react',
    'batch/actual',
  ],
  label: [
    'chemistry',
    'blend',
    'batch/order',
    'batch/weigh',
    'batch/react',
    'batch/result',
    'batch/sheet',
    'batch/release',
  ],
  cost: ['lp', 'lp/search', 'lp/solvers', 'blend', 'batch/order', 'batch/result', 'batch/release'],
  replace: [
    'chemistry',
    'blend',
    'optimise/brief',
    'optimise/studies',
    'batch/order',
    'batch/weigh',
    'batch/result',
    'label',
  ],
}

const SOURCE = fileURLToPath(new URL('../../src/', import.meta.url))
const RELATIVE_IMPORT = /\b(?:from|import)\s*\(?\s*'(\.{1,2}\/[^']+)'/g
const ENDINGS = ['', '.ts', '.svelte', '.svelte.ts', '/index.ts']

/**
 * The room of a path in `src`: 'ground' of a file that lies in no folder of `domain`, undefined outside the
 * domain and in a folder that no row speaks of.
 *
 * @param {string} path relative to `src`, such as domain/blend/blend.ts
 * @returns {string | undefined}
 */
export function roomOf(path) {
  const [top, ...parts] = path.split('/')
  if (top !== 'domain') return undefined
  if (parts.length === 1) return Object.hasOwn(ROOMS, parts[0] ?? '') ? parts[0] : 'ground'
  for (; parts.length > 0; parts.pop())
    if (Object.hasOwn(ROOMS, parts.join('/'))) return parts.join('/')
  return undefined
}

/**
 * The files of `src` that the files below a folder of it import, by file; all relative to `src`.
 *
 * @param {string} [folder] relative to `src`; all of it if left out
 * @returns {Map<string, string[]>}
 */
export function importsBelow(folder = '') {
  const files = readdirSync(SOURCE + folder, { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(folder, name.replaceAll('\\', '/')))
    .filter((name) => /\.(?:ts|svelte)$/.test(name))
  return new Map(files.map((file) => [file, importsOf(file)]))
}

/** @param {string} file */
function importsOf(file) {
  const text = readFileSync(SOURCE + file, 'utf8')
  return [...text.matchAll(RELATIVE_IMPORT)].flatMap(([, specifier = '']) => {
    const path = posix.join(posix.dirname(file), specifier)
    const found = ENDINGS.map((ending) => path + ending).find(
      (name) => /\.\w+$/.test(name) && existsSync(SOURCE + name),
    )
    return found === undefined ? [] : [found]
  })
}

/**
 * Which groups of files import which others, for any way of grouping them.
 *
 * @param {Map<string, string[]>} imports
 * @param {(file: string) => string | undefined} groupOf undefined leaves a file out
 * @returns {Map<string, Set<string>>}
 */
export function arrowsBetween(imports, groupOf) {
  /** @type {Map<string, Set<string>>} */
  const arrows = new Map()
  for (const [file, targets] of imports) {
    const from = groupOf(file)
    if (from === undefined) continue
    const others = targets.map(groupOf).filter((to) => to !== undefined && to !== from)
    arrows.set(from, new Set([...(arrows.get(from) ?? []), ...others]))
  }
  return arrows
}

/**
 * A way along the arrows that comes back to where it began, or undefined where there is none.
 *
 * @param {ReadonlyMap<string, Iterable<string>>} arrows
 * @returns {string[] | undefined}
 */
export function cycleIn(arrows) {
  const done = new Set()
  /** @type {(node: string, way: readonly string[]) => string[] | undefined} */
  const walk = (node, way) => {
    if (way.includes(node)) return [...way.slice(way.indexOf(node)), node]
    if (done.has(node)) return undefined
    for (const next of arrows.get(node) ?? []) {
      const cycle = walk(next, [...way, node])
      if (cycle) return cycle
    }
    done.add(node)
    return undefined
  }
  for (const node of arrows.keys()) {
    const cycle = walk(node, [])
    if (cycle) return cycle
  }
  return undefined
}

/** The rooms by floors, the highest first: each room imports only from floors below its own. */
export function floors() {
  /** @type {(room: string) => number} */
  const floorOf = (room) => Math.max(0, ...(ROOMS[room] ?? []).map((below) => 1 + floorOf(below)))
  const rooms = Object.keys(ROOMS)
  const top = Math.max(...rooms.map(floorOf))
  return Array.from({ length: top + 1 }, (_, floor) =>
    rooms.filter((room) => floorOf(room) === top - floor),
  )
}

/** The files of `src/domain` itself, which every room may import. */
function ground() {
  return readdirSync(`${SOURCE}domain`).filter((name) => name.endsWith('.ts'))
}

/** The picture of the floors in DEVELOPERS.md. */
export function picture() {
  const all = floors()
  const lines = all.map((rooms, k) => `${String(all.length - k).padStart(2)}  ${rooms.join(' · ')}`)
  return [...lines, ` 0  ${ground().join(' · ')}`].join('\n')
}
