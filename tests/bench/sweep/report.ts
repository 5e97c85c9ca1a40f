import { figures, table, times } from '../table'

/** What came of one workload. */
export interface SweepFigures {
  readonly name: string
  readonly lines: number
  /** Lines a second, the median of the rounds: all of it held to one core, then not. */
  readonly oneCore: number
  readonly oneThread: number
  readonly twoThreads: number
  readonly highs: number
}

/** Two cores are to do at least so much more than one. */
export const LEAST_SCALING = 1.8

const METHOD = `One process of the built command line each time, rounds of all three in turn; the clock is
its own, from reading the input's hash and starting threads to the last answer on the disk. Beside the
threads that solve, one reads and writes, and the collector of garbage has its own. **One core**: one thread
solves and all of the process is held to one core (taskset). **One thread**: one thread solves, and the
rest has the other core, so that this is more than one core. Every answer is proved, checked against its
brief from the oils alone and written with all measures. **HiGHS per line**: one process on one core reads
each line, makes its program and solves it from nothing; its answers are neither checked nor written. The
goals of all answers agree to 1e-6.`

/** The section on sweeps. */
export function sweepSection(all: readonly SweepFigures[], circumstances: string): string {
  const rate = (perSecond: number) => `${Math.round(perSecond).toLocaleString('en')} lines/s`
  const rows = all.map(({ name, lines, oneCore, oneThread, twoThreads, highs }) => [
    name,
    lines.toLocaleString('en'),
    rate(oneCore),
    rate(oneThread),
    rate(twoThreads),
    scalingText(twoThreads / oneCore),
    times(twoThreads / oneThread),
    rate(highs),
    times(twoThreads / highs),
  ])
  const heads = [
    'each line',
    'lines',
    'one core',
    'one thread',
    'two threads, two cores',
    'two cores against one',
    'two threads against one',
    'HiGHS per line',
    'two cores against it',
  ]
  return [circumstances, table(heads, rows), `### How it was measured\n\n${METHOD}`].join('\n\n')
}

function scalingText(ratio: number): string {
  const target = `at least ${figures(LEAST_SCALING)}`
  return ratio >= LEAST_SCALING
    ? `${times(ratio)} (${target})`
    : `**${times(ratio)}, not ${target}**`
}
