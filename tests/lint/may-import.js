import { posix, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { roomOf, ROOMS } from './rooms.js'

const SOURCE = fileURLToPath(new URL('../../src', import.meta.url))

/**
 * Reports what a room of the domain imports from a room that it may not, however the import is written.
 * @type {import('eslint').Rule.RuleModule}
 */
const mayImport = {
  meta: { type: 'problem', schema: [] },
  create(context) {
    const file = relative(SOURCE, context.filename).split(sep).join('/')
    const room = roomOf(file)
    const allowed = room === undefined || room === 'ground' ? [] : (ROOMS[room] ?? [])
    /** @param {import('estree').Node & { source?: unknown }} node */
    const check = (node) => {
      const specifier = /** @type {{ value?: unknown } | null | undefined} */ (node.source)?.value
      if (typeof specifier !== 'string' || !specifier.startsWith('.')) return
      const path = posix.join(posix.dirname(file), specifier)
      const other = roomOf(path)
      if (!path.startsWith('domain/') || other === room || other === 'ground') return
      if (other !== undefined && allowed.includes(other)) return
      const may = ['the files of src/domain itself', ...allowed].join(', ')
      context.report({
        node,
        message: `Besides itself ${room} may import only ${may}; not ${path}.`,
      })
    }
    if (!file.startsWith('domain/')) return {}
    return {
      Program(node) {
        if (room !== undefined) return
        const message = `${posix.dirname(file)} is no room of the domain: give it a row in tests/lint/rooms.js.`
        context.report({ node, message })
      },
      ImportDeclaration: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      ImportExpression: check,
      TSImportType: check,
    }
  },
}

/** @type {import('eslint').Linter.Config} */
export const roomConfig = {
  name: 'barwright/rooms',
  files: ['src/domain/**/*.ts'],
  plugins: { barwright: { rules: { 'may-import': mayImport } } },
  rules: { 'barwright/may-import': 'error' },
}
