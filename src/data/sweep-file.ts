import { z } from 'zod'
import { figure } from './bounds'
import { briefOfLibrary } from './brief-file'
import { parseJson, type Parsed, parseValue } from './problems'

const key = z
  .union([z.string(), z.number()])
  .optional()
  .describe('What the answer is to be known by; it stands in the answer as it stands here')

const prices = z
  .record(z.string(), figure)
  .default({})
  .describe(
    'Prices per kg that go before those of the brief; oils not on its shelf are passed over',
  )

const format = z.literal('barwright-sweep/1').default('barwright-sweep/1')

const scenarioOfFile = z.strictObject({
  format,
  key,
  brief: z.string().describe('Path of a brief, from the folder of the sweep’s file'),
  prices,
})

const scenarioInline = z.strictObject({ format, key, brief: briefOfLibrary, prices })

/** One line of a sweep's file, version 1: a brief by itself, or a brief and other prices. */
export const sweepLine = z.union([scenarioOfFile, scenarioInline, briefOfLibrary])

/** A brief by path or in place, with the prices to solve it under. */
export type SweepScenario = z.output<typeof scenarioOfFile> | z.output<typeof scenarioInline>

/** What one line asks. */
export type SweepLine =
  | { readonly kind: 'brief'; readonly brief: z.output<typeof briefOfLibrary> }
  | { readonly kind: 'scenario'; readonly scenario: SweepScenario }

/** Reads one line; what is wrong with it is told of the form it most looks like. */
export function readSweepLine(text: string): Parsed<SweepLine> {
  const json = parseJson(z.unknown(), text)
  if (json.status === 'invalid') return json
  const { value } = json
  if (!isObject(value) || !('brief' in value)) {
    const brief = parseValue(briefOfLibrary, value)
    if (brief.status === 'invalid') return brief
    return { status: 'parsed', value: { kind: 'brief', brief: brief.value } }
  }
  const shape = isObject(value['brief']) ? scenarioInline : scenarioOfFile
  const scenario = parseValue<typeof scenarioInline | typeof scenarioOfFile>(shape, value)
  if (scenario.status === 'invalid') return scenario
  return { status: 'parsed', value: { kind: 'scenario', scenario: scenario.value } }
}

/** The path of the brief that a line names; undefined where it names none. */
export function briefPathOf(text: string): string | undefined {
  const json = parseJson(z.looseObject({ brief: z.string() }), text)
  return json.status === 'parsed' ? json.value.brief : undefined
}

/** What lies beside the output of a sweep, so that it can be gone on with. */
export const sweepState = z.strictObject({
  format: z.literal('barwright-sweep-state/2'),
  sweep: z.string().describe('What the sweep is known by in a queue'),
  input: z.strictObject({ sha256: z.string(), bytes: z.number().int() }),
  briefs: z.string().describe('Hash of the briefs that lines name by their paths'),
  program: z.string().describe('Version and data of the program that answers'),
})

export type SweepState = z.output<typeof sweepState>

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
