import { readFileSync } from 'node:fs'
import { barwright, example, type Run } from './run-cli'

/** What is put in the place of a number, one at a time. */
export const NUMBERS = [0, -1, 1e300, -1e300, 1e-300, -1e-300, 1e15, null] as const

/** What is put in the place of a text, one at a time. */
export const TEXTS = [
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '\u0000',
  '\u001b[31m\r\n\t',
  '\ud800',
  'x'.repeat(100_000),
  '',
] as const

/** Commands by the example file they read, with flags they need. */
export const CALLS: readonly (readonly [file: string, ...args: string[]])[] = [
  ['brief.json', 'solve', '--time-limit', '2'],
  ['brief.json', 'solve', '--why', '--time-limit', '2'],
  ['brief.json', 'range', '--time-limit', '2'],
  ['brief.json', 'frontier', '--axes', 'hardness,cost', '--time-limit', '2'],
  ['brief.json', 'terrain', '--axes', 'hardness,lather', '--grid', '4', '--time-limit', '2'],
  ['brief.json', 'at', '--point', 'hardness=36', '--time-limit', '2'],
  ['brief.json', 'alternatives', '--count', '2', '--time-limit', '2'],
  ['brief.json', 'spread', '--draws', '20', '--time-limit', '2'],
  ['brief.json', 'reprice', '--oil', 'olive'],
  ['change.json', 'reprice', '--together', '--draws', '5'],
  ['change.json', 'gone', '--oil', 'palm'],
  ['batch.json', 'batch'],
  ['batch-lots.json', 'batch'],
  ['batch-own.json', 'batch'],
  ['batch-lots.json', 'batch', '--sheet'],
  ['batch-lots.json', 'label'],
  ['batch-dual.json', 'batch'],
  ['batch-vinegar.json', 'batch'],
  ['batch-box.json', 'batch'],
  ['batch-volume.json', 'batch'],
  ['prices.json', 'prices'],
  ['prices.json', 'prices', '--csv'],
  ['prices.json', 'prices', '--need', 'olive=12kg'],
  ['buying.json', 'buy'],
  ['cost.json', 'cost'],
  ['quote.json', 'quote'],
  ['quote.json', 'quote', '--html'],
]

/** A call of the command line with a file in which one value is another. */
export interface Fuzzed {
  readonly args: readonly string[]
  readonly file: string
  /** Where, and what stands there. */
  readonly place: string
  readonly input: string
}

/** A place in a value of JSON. */
type Path = readonly (string | number)[]

function placesIn(value: unknown, is: (value: unknown) => boolean, path: Path = []): Path[] {
  if (is(value)) return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    placesIn(inner, is, [...path, Array.isArray(value) ? Number(key) : key]),
  )
}

/** The same value with something else at a place. */
function withAt(value: unknown, [step, ...rest]: Path, put: unknown): unknown {
  if (step === undefined) return put
  if (Array.isArray(value))
    return value.map((inner: unknown, at) => (at === step ? withAt(inner, rest, put) : inner))
  return Object.fromEntries(
    Object.entries(value as object).map(([key, inner]) => [
      key,
      key === step ? withAt(inner, rest, put) : (inner as unknown),
    ]),
  )
}

/** Keys of objects that are data: ids of oils and materials. */
function renamed(value: unknown, path: Path, key: string): unknown {
  const [step, ...rest] = path
  if (step === undefined) return value
  if (Array.isArray(value))
    return value.map((inner: unknown, at) => (at === step ? renamed(inner, rest, key) : inner))
  return Object.fromEntries(
    Object.entries(value as object).map(([name, inner]) => {
      if (name !== step) return [name, inner as unknown]
      return rest.length === 0 ? [key, inner as unknown] : [name, renamed(inner, rest, key)]
    }),
  )
}

/** Every call with every number, text and key changed in turn. */
export function* fuzzedCalls(): Generator<Fuzzed> {
  for (const [file, ...args] of CALLS) {
    const value: unknown = JSON.parse(readFileSync(example(file), 'utf8'))
    const asked = (path: Path, put: unknown, changed: unknown): Fuzzed => ({
      args: [...args, '-'],
      file,
      place: `${path.join('.')} = ${JSON.stringify(put).slice(0, 40)}`,
      input: JSON.stringify(changed),
    })
    for (const path of placesIn(value, (one) => typeof one === 'number')) {
      for (const put of NUMBERS) yield asked(path, put, withAt(value, path, put))
      for (const key of TEXTS) yield asked([...path, 'as'], key, renamed(value, path, key))
    }
    for (const path of placesIn(value, (one) => typeof one === 'string'))
      for (const put of TEXTS) yield asked(path, put, withAt(value, path, put))
  }
}

/** How long any such call may take, ms, on a machine that does much else. */
const LONGEST_MS = 60_000

/** What is wrong with how a call ended; undefined where it ended as every call must. */
export async function faultOf({ args, input }: Fuzzed): Promise<string | undefined> {
  const startMs = performance.now()
  const run = await barwright(args, input)
  const tookMs = performance.now() - startMs
  if (tookMs > LONGEST_MS) return `took ${tookMs} ms`
  return wrongEnd(run, args)
}

function wrongEnd({ exitCode, output, errors }: Run, args: readonly string[]): string | undefined {
  if (errors !== '') return `errors: ${errors.slice(0, 200)}`
  if (exitCode === null || ![0, 1, 2, 3].includes(exitCode)) return `exit ${String(exitCode)}`
  if (/\n\s+at .*[(:]/u.test(output)) return `trace: ${output.slice(0, 300)}`
  if (output.length > 5e6) return `${output.length} characters`
  const isText =
    exitCode === 0 && ['--html', '--csv', '--sheet'].some((flag) => args.includes(flag))
  if (isText) return undefined
  const told = JSON.parse(output) as { status: string; message?: string }
  if (told.status === 'failed') return `failed: ${told.message ?? ''}`
  return output.includes('nonoptional') ? 'nonoptional' : undefined
}
