import { z } from 'zod'
import type { Problem } from '../domain/blend/check-blend'

/** A parsed file, or what is wrong with its shape. */
export type Parsed<T> =
  | { readonly status: 'parsed'; readonly value: T }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Some editors put it before the text; JSON does not know it. */
const BYTE_ORDER_MARK = /^\uFEFF/u

/** Parses the text of a JSON file against a schema. */
export function parseJson<S extends z.ZodType>(schema: S, text: string): Parsed<z.output<S>> {
  let json: unknown
  try {
    json = JSON.parse(text.replace(BYTE_ORDER_MARK, ''))
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    return { status: 'invalid', problems: [{ path: '', message: `Not a JSON file: ${reason}` }] }
  }
  return parseValue(schema, json)
}

/** Parses a value against a schema. */
export function parseValue<S extends z.ZodType>(schema: S, value: unknown): Parsed<z.output<S>> {
  const result = schema.safeParse(value, { error: explain })
  if (result.success) return { status: 'parsed', value: result.data }
  const problems = result.error.issues.map((issue) => ({
    path: pathText(issue.path),
    message: issue.message,
  }))
  return { status: 'invalid', problems }
}

/** A path as people write it: groups[0].oils. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`
    return text === '' ? String(key) : `${text}.${String(key)}`
  }, '')
}

/** Says what stands in the file and what may stand there. */
function explain(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code === 'invalid_type') {
    if (issue.input === undefined)
      return `Missing. Give a value of type ${typeName(issue.expected)}.`
    if (issue.input === Infinity || issue.input === -Infinity)
      return 'This number is too large to read. Give a smaller one.'
    return `${found(issue.input)} Give a value of type ${typeName(issue.expected)}.`
  }
  if (issue.code === 'unrecognized_keys')
    return `Unknown ${issue.keys.length === 1 ? 'key' : 'keys'} ${issue.keys.join(', ')}. Take it out or correct its spelling.`
  if (issue.code === 'invalid_value')
    return `${found(issue.input)} Give ${issue.values.map(shown).join(' or ')}.`
  if (issue.code === 'invalid_union')
    return `${found(issue.input)} It has none of the forms that may stand here.`
  return undefined
}

/** What stands at a place in the file, as the beginning of a message. */
export function found(value: unknown): string {
  return value === undefined ? 'Missing.' : `${shown(value)} stands here.`
}

/** A type as JSON names it. */
function typeName(expected: string): string {
  return expected === 'record' ? 'object' : expected
}

/** A value cut to a length that fits a message. */
function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value)
  const most = 60
  return text.length > most ? `${text.slice(0, most)}…` : text
}
