import { createHash, randomUUID } from 'node:crypto'
import { dirname, resolve } from 'node:path'
import { parseJson } from '../data/problems'
import { type SweepState, sweepState } from '../data/sweep-file'
import { SweepRefused } from './faults'
import { codeOf, type FileFacts, type SweepFiles, wholeOf, writeWhole } from './files'
import type { FilePlace } from './lines'
import { takeLock } from './lock'
import { scanAnswers, scanInput } from './scan'

/** What a sweep reads and writes, and what would answer it. */
export interface SweepAsked {
  readonly input: string
  readonly out: string
  readonly restart: boolean
  /** Version and data of the program: answers of another would not fit those that are there. */
  readonly program: string
  readonly files: SweepFiles
}

/** Where a sweep begins: anew, or where one was broken off. */
export interface Beginning {
  /** What the sweep is known by in a queue. */
  readonly sweep: string
  /** Where in the input the first line without an answer begins. */
  readonly place: FilePlace
  readonly inputBytes: number
  /** Where answers are written to, and where they stand when all are there. */
  readonly part: string
  readonly out: string
  /** Whether the output is there already as a whole. */
  readonly isDone: boolean
  /** Rejects with SweepRefused where what is read is no longer what it was at the beginning. */
  checkInputs(): Promise<void>
}

const INSTEAD = 'Give another --out, or --restart to write it anew.'

/** Begins a sweep, hands it over, and holds its output's lock for as long. */
export async function withSweep<T>(
  asked: SweepAsked,
  use: (beginning: Beginning) => Promise<T>,
): Promise<T> {
  const { names, facts } = await placesOf(asked)
  const letGo = await takeLock(asked.files, names.lock)
  try {
    return await use(await begun(asked, facts, names))
  } finally {
    await letGo()
  }
}

/**
 * Finds where to go on: after the last whole answer of an earlier run, if what lies beside the output says
 * that it was of this very input, these briefs, this data and this version. An answer torn by the end of
 * that run is cut off. Refuses before anything is written that is not a sweep's own.
 */
async function begun(asked: SweepAsked, facts: FileFacts, names: Names): Promise<Beginning> {
  const { files, input } = asked
  const found = {
    state: await stateIn(files, names.state),
    part: await regular(files, names.part),
    out: await regular(files, names.out),
  }
  const part = found.part && (await scanAnswers(files, names.part))
  const scan = await scanInput(files, input, part?.lines ?? 0)
  const briefs = await readBriefs(asked, scan.briefs)
  await refuseSameFile(asked, facts, writtenTo(names), briefs.paths)
  const state: SweepState = {
    format: 'barwright-sweep-state/2',
    sweep: randomUUID(),
    input: { sha256: scan.sha256, bytes: scan.bytes },
    briefs: briefs.sha256,
    program: asked.program,
  }
  const common = {
    inputBytes: scan.bytes,
    part: names.part,
    out: names.out,
    isDone: false,
    checkInputs: () => checkUnchanged(files, new Map([[input, facts], ...briefs.facts])),
  }
  // An empty part without anything beside it was begun in the very moment that all ended.
  const isThere = (found.part !== undefined && found.part.size > 0) || found.out !== undefined
  if (isThere && !found.state)
    throw new SweepRefused(`There is a file ${asked.out} that no sweep has begun. ${INSTEAD_OTHER}`)
  if (asked.restart && found.out) await refuseForeign(files, asked.out, names.out)
  if (asked.restart || !isThere || !found.state) {
    await beginAnew(files, names, state)
    return { ...common, sweep: state.sweep, place: { offset: 0, lines: 0 } }
  }
  const { sweep } = found.state
  const changed = whatChanged(found.state, state)
  if (changed !== undefined)
    throw new SweepRefused(`${asked.out} answers another input: ${changed(input)}. ${INSTEAD}`)
  if (!part) {
    const whole = await scanAnswers(files, names.out)
    if (whole.lines !== scan.lines || whole.size !== whole.bytes) throw notOurs(asked)
    return { ...common, sweep, isDone: true, place: { offset: scan.bytes, lines: scan.lines } }
  }
  if (scan.offset === undefined) throw notOurs(asked)
  await cutOff(files, names.part, part.bytes)
  return { ...common, sweep, place: { offset: scan.offset, lines: part.lines } }
}

/** Where all lies that a sweep writes; refused where that is what it reads. */
async function placesOf(asked: SweepAsked): Promise<{ names: Names; facts: FileFacts }> {
  const facts = await inputFacts(asked)
  const out = await outPath(asked)
  const names = {
    out,
    part: `${out}.part`,
    state: `${out}.sweep.json`,
    lock: `${out}.sweep.lock`,
  }
  await refuseSameFile(asked, facts, writtenTo(names))
  return { names, facts }
}

function writtenTo({ out, part, state, lock }: Names): string[] {
  return [out, part, state, `${state}.new`, lock, `${lock}.takeover`]
}

interface Names {
  readonly out: string
  readonly part: string
  readonly state: string
  readonly lock: string
}

const INSTEAD_OTHER = 'Give another --out.'

function notOurs({ out, input }: SweepAsked): SweepRefused {
  return new SweepRefused(
    `The lines of ${out} are not those a sweep of ${input} writes. ${INSTEAD}`,
  )
}

async function inputFacts({ files, input }: SweepAsked): Promise<FileFacts> {
  const facts = await files.facts(input)
  if (!facts) throw new SweepRefused(`The file ${input} can't be used: ENOENT, there is none.`)
  if (!facts.isRegular)
    throw new SweepRefused(
      `${input} is no regular file, and a sweep reads it more than once. Give a file, or - for a stream.`,
    )
  return facts
}

/** Where the output really lies: a link is followed, so that what it leads to is replaced and not the link. */
async function outPath({ files, out }: SweepAsked): Promise<string> {
  const facts = await files.facts(out)
  if (facts && !facts.isRegular)
    throw new SweepRefused(
      `${out} is no regular file but a folder or a device. Give --out the path of a file.`,
    )
  try {
    return await files.realPath(resolve(out))
  } catch (error) {
    if (codeOf(error) === undefined) throw error
    throw new SweepRefused(
      `${out} can't be written: ${codeOf(error)}. Give --out a path in a folder that is there.`,
    )
  }
}

async function regular(files: SweepFiles, path: string): Promise<FileFacts | undefined> {
  const facts = await files.facts(path)
  if (facts && !facts.isRegular)
    throw new SweepRefused(`${path} is no regular file. Take it away, or give another --out.`)
  return facts
}

/** Refuses where anything that is written is the input or a brief, by whatever path. */
async function refuseSameFile(
  { files, input }: SweepAsked,
  inputFacts: FileFacts,
  written: readonly string[],
  briefs: readonly string[] = [],
): Promise<void> {
  const read = new Map([[inputFacts.identity, input]])
  const paths = new Set<string>()
  for (const brief of briefs) {
    const facts = await files.facts(brief)
    if (facts) read.set(facts.identity, brief)
    paths.add(brief)
  }
  for (const path of written) {
    const facts = await files.facts(path)
    const same = (facts && read.get(facts.identity)) ?? (paths.has(path) ? path : undefined)
    if (same !== undefined)
      throw new SweepRefused(
        `${path} would be written and is what the sweep reads: ${same}. Give another --out.`,
      )
  }
}

/** An output that was begun anew before is thrown away only where it is really a sweep's. */
async function refuseForeign(files: SweepFiles, told: string, path: string): Promise<void> {
  const { lines, bytes, size } = await scanAnswers(files, path)
  if (bytes !== size || (lines === 0 && size > 0))
    throw new SweepRefused(
      `${told} holds lines that no sweep wrote; --restart writes over a sweep's own output only. Give another --out.`,
    )
}

/** The briefs that an input names: their hash, their paths, and what is known of each. */
async function readBriefs({ files, input }: SweepAsked, names: ReadonlySet<string>) {
  const folder = dirname(resolve(input))
  const hash = createHash('sha256')
  const facts = new Map<string, FileFacts | undefined>()
  for (const name of [...names].sort()) {
    const path = resolve(folder, name)
    hash.update(`${JSON.stringify(name)}\n`)
    facts.set(path, await factsOrNone(files, path))
    hash.update(facts.get(path)?.isRegular ? await hashOf(files, path) : 'none')
  }
  return { sha256: hash.digest('hex'), paths: [...facts.keys()], facts }
}

/** A path that no file can have is answered line by line, and stops nothing. */
async function factsOrNone(files: SweepFiles, path: string): Promise<FileFacts | undefined> {
  try {
    return await files.facts(path)
  } catch (error) {
    if (NO_PATH.includes(codeOf(error) ?? '')) return undefined
    throw error
  }
}

const NO_PATH = ['ENOTDIR', 'ENAMETOOLONG', 'ELOOP', 'ERR_INVALID_ARG_VALUE', 'EACCES']

async function hashOf(files: SweepFiles, path: string): Promise<string> {
  try {
    return createHash('sha256')
      .update(await wholeOf(files, path))
      .digest('hex')
  } catch (error) {
    if (codeOf(error) === 'EACCES') return 'none'
    throw error
  }
}

async function checkUnchanged(
  files: SweepFiles,
  before: ReadonlyMap<string, FileFacts | undefined>,
): Promise<void> {
  for (const [path, facts] of before) {
    const now = await factsOrNone(files, path)
    if (JSON.stringify(now) !== JSON.stringify(facts))
      throw new SweepRefused(
        `${path} has changed while the sweep read it. --restart answers it as it is now.`,
      )
  }
}

/** What makes an earlier run's answers those of something else; told of the input. */
function whatChanged(before: SweepState, now: SweepState): ((input: string) => string) | undefined {
  if (before.input.sha256 !== now.input.sha256) return (input) => `${input} has changed since`
  if (before.briefs !== now.briefs)
    return (input) => `a brief that ${input} names has changed since`
  if (before.program !== now.program) return () => 'it was begun by another version or other data'
  return undefined
}

/**
 * The empty part comes first and then what lies beside it: where that is of this sweep and there is no part,
 * the part has become the output.
 */
async function beginAnew(files: SweepFiles, names: Names, state: SweepState): Promise<void> {
  await files.remove(names.part)
  const part = await files.open(names.part, 'create')
  await part.close()
  await writeWhole(files, names.state, `${JSON.stringify(state, null, 2)}\n`)
}

async function cutOff(files: SweepFiles, path: string, bytes: number): Promise<void> {
  const part = await files.open(path, 'append')
  try {
    await part.truncate(bytes)
    await part.sync()
  } finally {
    await part.close()
  }
}

async function stateIn(files: SweepFiles, path: string): Promise<SweepState | undefined> {
  if (!(await regular(files, path))) return undefined
  const parsed = parseJson(sweepState, (await wholeOf(files, path)).toString('utf8'))
  return parsed.status === 'parsed' ? parsed.value : undefined
}
