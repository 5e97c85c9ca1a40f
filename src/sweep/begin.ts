import { randomUUID } from 'node:crypto'
import { readFile, rename, rm, truncate, writeFile } from 'node:fs/promises'
import { z } from 'zod'
import { parseJson } from '../data/problems'
import { type SweepState, sweepState } from '../data/sweep-file'
import { SweepRefused } from './faults'
import type { Place } from './lines'
import { type InputScan, orMissing, type OutputScan, scanInput, scanOutput } from './scan'

/** Where a sweep begins: anew, or where one was broken off. */
export interface Beginning {
  /** What the sweep is known by in a queue. */
  readonly sweep: string
  /** Where in the input the first line without an answer begins. */
  readonly place: Place
  readonly inputBytes: number
}

const INSTEAD = 'Give another --out, or --restart to write it anew.'

/**
 * Finds where to go on: after the last whole line of the output, if what lies beside it says that it is
 * of this very input. A line torn by the end of an earlier run is cut off.
 */
export async function beginSweep(input: string, out: string, restart: boolean): Promise<Beginning> {
  const written = restart ? undefined : await scanOutput(out)
  const scan = await scanInput(input, written?.lines ?? 0)
  if (!written) return beginAnew(scan, out)
  const state = await stateBeside(out)
  if (!state) throw new SweepRefused(`There is a file ${out} that no sweep has begun. ${INSTEAD}`)
  if (state.input.sha256 !== scan.sha256)
    throw new SweepRefused(`${out} answers another input: ${input} has changed since. ${INSTEAD}`)
  if (!scan.place || !endsWith(written, written.lines))
    throw new SweepRefused(
      `The lines of ${out} are not those a sweep of ${input} writes. ${INSTEAD}`,
    )
  await truncate(out, written.bytes)
  return { sweep: state.sweep, place: scan.place, inputBytes: scan.bytes }
}

/** What lies beside the output is written first, so that no output is ever without it. */
async function beginAnew({ sha256, bytes }: InputScan, out: string): Promise<Beginning> {
  const state: SweepState = {
    format: 'barwright-sweep-state/1',
    sweep: randomUUID(),
    input: { sha256, bytes },
  }
  await rm(out, { force: true })
  await writeFile(`${pathBeside(out)}.new`, `${JSON.stringify(state, null, 2)}\n`)
  await rename(`${pathBeside(out)}.new`, pathBeside(out))
  await writeFile(out, '')
  return { sweep: state.sweep, place: { offset: 0, lines: 0 }, inputBytes: bytes }
}

async function stateBeside(out: string): Promise<SweepState | undefined> {
  const text = await orMissing(readFile(pathBeside(out), 'utf8'))
  const parsed = text === undefined ? undefined : parseJson(sweepState, text)
  return parsed?.status === 'parsed' ? parsed.value : undefined
}

function pathBeside(out: string): string {
  return `${out}.sweep.json`
}

/** Whether the last line is the answer to line `number`. */
function endsWith({ lastLine }: OutputScan, number: number): boolean {
  if (number === 0) return true
  const parsed = parseJson(z.looseObject({ line: z.literal(number) }), lastLine)
  return parsed.status === 'parsed'
}
