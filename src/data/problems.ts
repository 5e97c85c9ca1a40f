import { z } from 'zod'
import type { Problem } from '../domain/blend/check-blend'
import { moreProblems, MOST_PROBLEMS } from './capped'
import { readJson } from './json-text'
import { pathText } from './path-text'

/** A parsed file, or what is wrong with its shape. */
export type Parsed<T> =
  | { readonly status: 'parsed'; readonly value: T }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** Parses the text of a JSON file against a schema. */
export function parseJson<S extends z.ZodType>(schema: S, text: string): Parsed<z.output<S>> {
  const read = readJson(text)
  return 'value' in read
    ? parseValue(schema, read.value)
    : { status: 'invalid', problems: read.problems }
}

/** Parses a value against a schema. */
export function parseValue<S extends z.ZodType>(schema: S, value: unknown): Parsed<z.output<S>> {
  const result = schema.safeParse(value, { error: explain })
  if (result.success) return { status: 'parsed', value: result.data }
  const { issues } = result.error
  const problems = issues.slice(0, MOST_PROBLEMS).map((issue) => ({
    path: pathText(issue.path),
    message: issue.message,
  }))
  const more = issues.length - problems.length
  return { status: 'invalid', problems: more > 0 ? [...problems, moreProblems(more)] : problems }
}

/** Says what stands in the file and what may stand there. */
function explain(issue: z.core.$ZodRawIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return wrongType(issue.input, issue.expected)
    case 'unrecognized_keys':
      return `Unknown ${issue.keys.length === 1 ? 'key' : 'keys'} ${listed(issue.keys)}. Take it out or correct its spelling.`
    case 'invalid_value':
      return `${found(issue.input)} Give ${issue.values.map(shown).join(' or ')}.`
    case 'invalid_union':
      return `${found(issue.input)} It has none of the forms that may stand here.`
    case 'too_small':
      return tooSmall(issue)
    case 'too_big':
      return tooBig(issue)
    case 'invalid_format':
    case 'invalid_key':
    case 'invalid_element':
    case 'not_multiple_of':
    case 'custom':
    default:
      return undefined
  }
}

function wrongType(input: unknown, expected: string): string {
  if (input === undefined) return `Missing. Give ${valueOf(expected)}.`
  if (input === Infinity || input === -Infinity)
    return 'This number is too large to read. Give a smaller one.'
  return `${found(input)} Give ${valueOf(expected)}.`
}

/** Many unknown keys are told by the first of them. */
function listed(keys: readonly string[]): string {
  const most = 12
  const names = keys.slice(0, most).map(cut)
  return keys.length > most
    ? `${names.join(', ')} and ${keys.length - most} more`
    : names.join(', ')
}

type Raw<Code extends string> = Extract<z.core.$ZodRawIssue, { code: Code }>

function tooSmall({ origin, minimum, inclusive, input }: Raw<'too_small'>): string {
  if (origin === 'array') return `Too few stand here. Give ${minimum} or more.`
  if (origin === 'string') return `${found(input)} Give ${minimum} or more letters.`
  return `${found(input)} Give ${inclusive === false ? `more than ${minimum}` : `${minimum} or more`}.`
}

function tooBig({ origin, maximum, inclusive, input }: Raw<'too_big'>): string {
  if (origin === 'array') return `Too many stand here. Give ${maximum} at most.`
  if (origin === 'string') return `${found(input)} Give ${maximum} letters at most.`
  return `${found(input)} Give ${inclusive === false ? `less than ${maximum}` : `${maximum} at most`}.`
}

/** What stands at a place in the file, as the beginning of a message. */
export function found(value: unknown): string {
  return value === undefined ? 'Missing.' : `${shown(value)} stands here.`
}

/** A type as JSON names it. */
function valueOf(expected: string): string {
  if (expected === 'nonoptional') return 'a value'
  if (expected === 'int') return 'a whole number'
  return `a value of type ${expected === 'record' ? 'object' : expected}`
}

/** A value cut to a length that fits a message. */
function shown(value: unknown): string {
  return cut(JSON.stringify(value) ?? String(value))
}

function cut(text: string): string {
  const most = 60
  return text.length > most ? `${text.slice(0, most)}…` : text
}
