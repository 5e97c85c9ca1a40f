import { withoutMark } from './csv'
import { createScanner, type SyntaxKind } from 'jsonc-parser'
import type { Problem } from '../domain/blend/check-blend'
import { moreProblems, MOST_PROBLEMS } from './capped'
import { pathText } from './path-text'

/** A value of JSON, or why the text holds none that can be trusted. */
export type JsonRead =
  { readonly value: unknown } | { readonly problems: readonly [Problem, ...Problem[]] }

/** Some editors put it before the text; JSON does not know it. */

/** Kinds of token by the scanner's own numbers: its enum is gone once it is compiled. */
const TOKEN = {
  openBrace: 1 satisfies SyntaxKind.OpenBraceToken,
  closeBrace: 2 satisfies SyntaxKind.CloseBraceToken,
  openBracket: 3 satisfies SyntaxKind.OpenBracketToken,
  closeBracket: 4 satisfies SyntaxKind.CloseBracketToken,
  comma: 5 satisfies SyntaxKind.CommaToken,
  string: 10 satisfies SyntaxKind.StringLiteral,
  end: 17 satisfies SyntaxKind.EOF,
} as const

/** No file of ours is nested deeper than a dozen levels. */
const DEEPEST = 64

/**
 * Reads a text as JSON, and refuses what JSON lets pass and people do not mean: a key that stands twice in
 * one object (one of the two would be dropped), the key `__proto__`, and nesting without end.
 */
export function readJson(source: string): JsonRead {
  const text = withoutMark(source)
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch (error) {
    return { problems: [{ path: '', message: `Not a JSON file: ${reasonOf(error, text)}` }] }
  }
  const [first, ...more] = wrongKeys(text)
  return first ? { problems: [first, ...more] } : { value }
}

function reasonOf(error: unknown, text: string): string {
  const reason = error instanceof Error ? error.message : String(error)
  const at = /at position (\d+)$/u.exec(reason)?.[1]
  if (at === undefined) return reason
  const before = text.slice(0, Number(at)).split('\n')
  return `${reason} (line ${before.length} column ${(before.at(-1)?.length ?? 0) + 1})`
}

/** An object or list that is open where the text is read. */
interface Open {
  /** The keys met so far; undefined for a list. */
  readonly keys: Set<string> | undefined
  /** Of what is being read in it: its key, or its place from 0. */
  at: string | number
}

/** Keys that can't be meant, by path; the text is known to be JSON. */
function wrongKeys(text: string): Problem[] {
  const scanner = createScanner(text, true)
  const open: Open[] = []
  const problems: Problem[] = []
  let more = 0
  const wrong = (key: string, message: string) => {
    const path = pathText([...open.slice(0, -1).map(({ at }) => at), key])
    if (problems.length < MOST_PROBLEMS) problems.push({ path, message })
    else more++
  }
  let isKey = false
  for (let token: number = scanner.scan(); token !== TOKEN.end; token = scanner.scan()) {
    const inside = open.at(-1)
    if (token === TOKEN.openBrace || token === TOKEN.openBracket) {
      isKey = token === TOKEN.openBrace
      open.push(isKey ? { keys: new Set(), at: '' } : { keys: undefined, at: 0 })
      if (open.length > DEEPEST) return [tooDeep()]
    } else if (token === TOKEN.closeBrace || token === TOKEN.closeBracket) {
      open.pop()
    } else if (token === TOKEN.comma) {
      if (typeof inside?.at === 'number') inside.at++
      isKey = inside?.keys !== undefined
    } else if (token === TOKEN.string && isKey && inside?.keys) {
      const key = scanner.getTokenValue()
      inside.at = key
      isKey = false
      if (key === '__proto__') wrong(key, 'This key can’t be used. Take it out.')
      else if (inside.keys.has(key))
        wrong(key, `"${key}" stands here more than once. Keep the one that holds.`)
      inside.keys.add(key)
    }
  }
  return more > 0 ? [...problems, moreProblems(more)] : problems
}

function tooDeep(): Problem {
  return { path: '', message: `The file is nested deeper than ${DEEPEST} levels. Make it flatter.` }
}
