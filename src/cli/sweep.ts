import { availableParallelism } from 'node:os'
import { version } from '../../package.json'
import { fileSchema } from '../data/ledger-schemas'
import { sweepLine } from '../data/sweep-file'
import type { SweepOrder } from '../sweep/local'
import type { SweepOutcome } from '../sweep/run-sweep'
import { EXIT, type Flags, invalid, type PathCommand, type Result, solved } from './command'
import type { Surroundings } from './surroundings'

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
    '--out answers.ndjson   where the answers go, one line each, when all are there; begun before, it is gone on with',
    '--threads 8            how many cores to use; all of them if left out',
    '--restart              answers all anew; --out is replaced when that is done',
    '--quiet                shows no progress',
    '--queue redis://host   has the lines answered by workers on any machines, through Redis or Valkey',
    '--work redis://host    is such a worker, without a file, until it is stopped',
    '-                      answers standard input on standard output, each line as it comes',
  ],
  schema: () => fileSchema(sweepLine),
  runOn: async (paths, flags, around) => {
    const threads = threadsOf(flags)
    if (threads === undefined)
      return invalid(
        '--threads',
        `"${String(flags.threads)}" is no number of threads. Give 1 to ${MOST_THREADS}.`,
      )
    if (flags.work !== undefined) return work(paths, flags, threads, around)
    const [input, ...more] = paths
    if (input === undefined || more.length > 0)
      return invalid('', 'Give sweep one file, or - to answer standard input line by line.')
    if (input === '-') return stream(flags, around)
    if (typeof flags.out !== 'string' || flags.out === '')
      return invalid('--out', 'Say where the answers go: --out answers.ndjson.')
    return sweepFile(input, flags.out, flags, threads, around)
  },
}

/** Answers standard input on standard output, each line when it comes, until it ends. */
async function stream(flags: Flags, around: Surroundings): Promise<Result> {
  if (flags.out !== undefined || flags.queue !== undefined)
    return invalid(
      '--out',
      'A stream is answered on standard output, as standard input could not be read again after a break. Take --out and --queue away, or give a file.',
    )
  const { answerStream } = await import('../sweep/stream')
  const { failed } = await answerStream(around.stdin, around.stdout, '.')
  return { exitCode: failed > 0 ? EXIT.failed : EXIT.solved, output: undefined }
}

async function sweepFile(
  input: string,
  out: string,
  flags: Flags,
  threads: number,
  around: Surroundings,
): Promise<Result> {
  const { SILENT, startMeter } = await import('../sweep/progress')
  const { programOf } = await import('../sweep/program')
  const { steady, systemFiles } = await import('../sweep/files')
  return orRefused(() =>
    untilStopped(around, async (stop) => {
      const order: SweepOrder = {
        input,
        out,
        restart: flags.restart === true,
        program: programOf(version),
        files: steady(systemFiles),
        meter: flags.quiet === true ? SILENT : startMeter(around.stderr, () => performance.now()),
        stop,
      }
      return told(await answered(order, flags.queue, threads))
    }),
  )
}

/** Does work that can be asked to stop. */
async function untilStopped<T>(
  around: Surroundings,
  work: (stop: AbortSignal) => Promise<T>,
): Promise<T> {
  const { SweepStopped } = await import('../sweep/faults')
  const stop = new AbortController()
  const leaveOff = around.onStop(() => stop.abort(new SweepStopped('It was asked to end.')))
  try {
    return await work(stop.signal)
  } finally {
    leaveOff()
  }
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

async function work(
  paths: readonly string[],
  flags: Flags,
  threads: number,
  around: Surroundings,
): Promise<Result> {
  if (paths.length > 0) return invalid('', `A worker reads no file; take ${paths.join(' ')} out.`)
  if (typeof flags.work !== 'string') return invalid('--work', 'Give the address: redis://host.')
  const url = flags.work
  const tell = (line: string) => {
    if (flags.quiet !== true) around.stderr.write(`${line}\n`)
  }
  return orRefused(() =>
    untilStopped(around, async (stop) => {
      const { workOnQueue } = await import('../sweep/queue/work')
      return solved({ status: 'stopped', ...(await workOnQueue({ url, threads, tell, stop })) })
    }),
  )
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
