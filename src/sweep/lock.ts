import { readFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { z } from 'zod'
import { parseJson } from '../data/problems'
import { SweepRefused } from './faults'
import { codeOf, type SweepFiles, wholeOf, writeAll } from './files'

/** Who writes an output: one process of one machine. */
export type Owner = z.output<typeof ownerShape>

const ownerShape = z.strictObject({
  host: z.string(),
  pid: z.int(),
  /** When the process began, in the system's own count: the same number may come again later. */
  began: z.string(),
  since: z.string(),
})

/** Who this process is. */
export function thisProcess(): Owner {
  return {
    host: hostname(),
    pid: process.pid,
    began: beganAt(process.pid) ?? '',
    since: new Date().toISOString(),
  }
}

/**
 * Takes the lock of an output, so that no two runs write it at once; the returned function lets it go. A
 * lock whose process has ended on this machine is taken over; any other is respected, and its owner told.
 */
export async function takeLock(
  files: SweepFiles,
  path: string,
  me: Owner = thisProcess(),
): Promise<() => Promise<void>> {
  if (!(await create(files, path, me))) await takeOver(files, path, me)
  return () => files.remove(path)
}

/** Only one may take over at a time: else the second would take the lock of the first. */
async function takeOver(files: SweepFiles, path: string, me: Owner): Promise<void> {
  const owner = await ownerOf(files, path)
  if (!owner || !hasEnded(owner)) throw held(path, owner)
  const door = `${path}.takeover`
  if (!(await create(files, door, me))) throw held(door, await ownerOf(files, door))
  try {
    const still = await ownerOf(files, path)
    if (still && !hasEnded(still)) throw held(path, still)
    await files.remove(path)
    if (!(await create(files, path, me))) throw held(path, await ownerOf(files, path))
  } finally {
    await files.remove(door)
  }
}

/** Writes a lock where none is; whether it did. */
async function create(files: SweepFiles, path: string, me: Owner): Promise<boolean> {
  let file
  try {
    file = await files.open(path, 'create')
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false
    throw error
  }
  try {
    await writeAll(file, new TextEncoder().encode(`${JSON.stringify(me)}\n`))
  } catch (error) {
    await files.remove(path)
    throw error
  } finally {
    await file.close()
  }
  return true
}

async function ownerOf(files: SweepFiles, path: string): Promise<Owner | undefined> {
  if (!(await files.facts(path))) return undefined
  const read = parseJson(ownerShape, (await wholeOf(files, path)).toString('utf8'))
  return read.status === 'parsed' ? read.value : undefined
}

function held(path: string, owner: Owner | undefined): SweepRefused {
  const who = owner
    ? `Process ${owner.pid} on ${owner.host} has been writing this output since ${owner.since}`
    : 'Another sweep is beginning to write this output'
  return new SweepRefused(
    `${who}. Wait for it, or give another --out; if it no longer runs, remove ${path}.`,
  )
}

/** Whether the owner is known to run no more; of another machine that can't be known. */
function hasEnded({ host, pid, began }: Owner): boolean {
  if (host !== hostname()) return false
  try {
    process.kill(pid, 0)
  } catch (error) {
    return codeOf(error) === 'ESRCH'
  }
  const now = beganAt(pid)
  return began !== '' && now !== undefined && now !== began
}

/** When a process began, in ticks since the machine started; undefined where the system does not say. */
function beganAt(pid: number): string | undefined {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
    // The name in brackets may hold anything; the twentieth field behind it is the start time (proc(5)).
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19]
  } catch (error) {
    if (codeOf(error) !== undefined) return undefined
    throw error
  }
}
