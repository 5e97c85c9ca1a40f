import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { batchAsFile } from '../../src/data/batch-as-file'
import { batchFacts } from '../../src/data/batch-facts'
import { batchFile, orderOf } from '../../src/data/batch-file'
import { library } from '../../src/data/library'
import { withOwnOils } from '../../src/data/own-oil-file'
import { planBatch } from '../../src/domain/batch/result/plan'

const FOLDER = fileURLToPath(new URL('../cases/files/', import.meta.url))
const EXAMPLES = readdirSync(FOLDER).filter((name) => /^batch.*\.json$/u.test(name))

const read = (name: string): unknown => JSON.parse(readFileSync(FOLDER + name, 'utf8'))

interface Node {
  readonly properties?: Readonly<Record<string, Node>>
  readonly additionalProperties?: Node | boolean
  readonly items?: Node
  readonly anyOf?: readonly Node[]
}

/** Paths of all fields a schema names: `mould.boxMm.length`, `acids[].acid`; ids stand as `*`. */
function fieldsOf(node: Node, path: string): string[] {
  const { properties = {}, additionalProperties, items, anyOf = [] } = node
  return [
    ...Object.entries(properties).flatMap(([name, child]) => {
      const at = path === '' ? name : `${path}.${name}`
      return [at, ...fieldsOf(child, at)]
    }),
    ...(typeof additionalProperties === 'object'
      ? fieldsOf(additionalProperties, `${path}.*`)
      : []),
    ...(items ? fieldsOf(items, `${path}[]`) : []),
    ...anyOf.flatMap((one) => fieldsOf(one, path)),
  ]
}

/** Objects that are keyed by ids rather than by names of fields. */
const KEYED = [
  'blend',
  'lots',
  'pricesPerKg',
  'actual',
  'extraFat.oils',
  'fragrance.blend',
  'fragrance.certificates',
  'ownOils[].acids',
]

/** Paths of the fields that an example gives, as `fieldsOf` writes them. */
function givenIn(value: unknown, path: string): string[] {
  if (Array.isArray(value)) return value.flatMap((one) => givenIn(one, `${path}[]`))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([name, child]) => {
    if (KEYED.includes(path)) return givenIn(child, `${path}.*`)
    const at = path === '' ? name : `${path}.${name}`
    return [at, ...givenIn(child, at)]
  })
}

test('every field of a batch file stands in an example that the command line runs', () => {
  const schema = z.toJSONSchema(batchFile, { io: 'input' }) as Node
  const given = new Set(EXAMPLES.flatMap((name) => givenIn(read(name), '')))
  const missing = [...new Set(fieldsOf(schema, ''))].filter((field) => !given.has(field))
  expect(missing).toEqual([])
})

test.for(EXAMPLES)('%s comes back from the file that the page writes of it', (name) => {
  const { actual = {}, ...rest } = batchFile.parse(read(name))
  const order = orderOf({ ...rest, actual: undefined })
  const written = batchFile.parse(JSON.parse(batchAsFile(order, actual)))
  expect([orderOf(written), written.actual ?? {}]).toEqual([order, actual])
})

test.for(EXAMPLES)('%s can be weighed out and printed', (name) => {
  const file = batchFile.parse(read(name))
  const own = withOwnOils(library, file.ownOils ?? [])
  if (own.status === 'invalid') throw new Error(JSON.stringify(own.problems))
  const plan = planBatch(orderOf(file), own.value, batchFacts)
  expect(plan).toMatchObject({ status: 'ready', blocked: null })
})
