import { availableParallelism } from 'node:os'
import { fileSchema } from '../data/ledger-schemas'
import { sweepLine } from '../data/sweep-file'
import type { SweepOrder } from '../sweep/local'
import type { SweepOutcome } from '../sweep/run-sweep'
import { EXIT, type Flags, invalid, type PathCommand, type Result, solved } from './command'

/** More threads than this are a slip of the hand. */
const MOST_THREADS = 1024

export const sweep: PathCommand = {
  flags: {
    out: { type: 'string' },
    threads: { type: 'string' },
    restart: { type: 'boolean' },
    quiet: { type: 'boolean' },
    queue: { type: 'string' },
    work: { type: 'string' },
  },
  flagHelp: [
    '--out answers.ndjson   where the answers go, one line each; begun before, it is gone on with',
    '--threads 8            how many cores to use; all of them if left out',
    '--restart              throws away what is in --out',
    '--quiet                shows no progress',
    '--queue redis://host   has the lines answered by workers on any machines, through Redis or Valkey',
    '--work redis://host    is such a worker, without a file, until it is stopped',
  ],
  schema: () => fileSchema(sweepLine),
  runOn: async (paths, flags) => {
    const threads = threadsOf(flags)
    if (threads === undefined)
      return invalid(
        '--threads',
        `"${String(flags.threads)}" is no number of threads. Give 1 to ${MOST_THREADS}.`,
      )
    if (flags.work !== undefined) return work(paths, flags, threads)
    const [input, ...more] = paths
    if (input === undefined || more.length > 0 || input === '-')
      return invalid(
        '',
        'Give sweep one file; standard input could not be read again after a break.',
      )
    if (typeof flags.out !== 'string' || flags.out === '')
      return invalid('--out', 'Say where the answers go: --out answers.ndjson.')
    return sweepFile(input, flags.out, flags, threads)
  },
}

async function sweepFile(
  input: string,
  out: string,
  flags: Flags,
  threads: number,
): Promise<Result> {
  const { SILENT, startMeter } = await import('../sweep/progress')
  const meter = flags.quiet === true ? SILENT : startMeter(process.stderr, () => performance.now())
  const order: SweepOrder = { input, out, restart: flags.restart === true, meter }
  return orRefused(async () => told(await answered(order, flags.queue, threads)))
}

async function answered(
  order: SweepOrder,
  queue: Flags[string],
  threads: number,
): Promise<SweepOutcome> {
  if (typeof queue === 'string') {
    const { sweepThroughQueue } = await import('../sweep/queue/collect')
    return sweepThroughQueue(order, queue)
  }
  const { sweepHere } = await import('../sweep/local')
  return sweepHere(order, threads)
}

async function work(paths: readonly string[], flags: Flags, threads: number): Promise<Result> {
  if (paths.length > 0) return invalid('', `A worker reads no file; take ${paths.join(' ')} out.`)
  if (typeof flags.work !== 'string') return invalid('--work', 'Give the address: redis://host.')
  const url = flags.work
  return orRefused(async () => {
    const { workOnQueue } = await import('../sweep/queue/work')
    return solved({ status: 'stopped', ...(await workOnQueue(url, threads)) })
  })
}

/** What a run came to; 1 where a line made the solver fail. */
function told({ lines, before, counts, seconds }: SweepOutcome): Result {
  const output = { status: 'done', lines, answeredBefore: before, answeredNow: counts, seconds }
  return { exitCode: counts.failed > 0 ? EXIT.failed : EXIT.solved, output }
}

/** The answer, or what is wrong with files and addresses. */
async function orRefused(run: () => Promise<Result>): Promise<Result> {
  const { SweepRefused, SweepStopped } = await import('../sweep/faults')
  try {
    return await run()
  } catch (error) {
    if (error instanceof SweepRefused) return invalid('', error.message)
    if (error instanceof SweepStopped)
      return { exitCode: EXIT.failed, output: { status: 'stopped', message: error.message } }
    if (error instanceof Error && 'code' in error && 'path' in error)
      return invalid('', `The file ${String(error.path)} can't be used: ${error.message}`)
    throw error
  }
}

function threadsOf({ threads }: Flags): number | undefined {
  if (threads === undefined) return availableParallelism()
  const count = Number(threads)
  return Number.isInteger(count) && count >= 1 && count <= MOST_THREADS ? count : undefined
}
