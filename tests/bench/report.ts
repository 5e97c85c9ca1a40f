import type { BenchResult } from './program/main'
import type { TaskResult } from './program/task'
import type { MemoryResult } from './program/tasks/memory'
import { figures, table, time, times } from './table'
import { TARGETS } from './targets'
import { agreement, isOurs, type Verdict, verdictOn } from './verdict'

/** Under the tables: what was timed, and how. */
const METHOD = `The problem: 50 oils, 8 measures in ranges, 3 groups and the sum, the least price asked for; a
seeded generator makes it (invented figures), a planted blend keeps it. The last
row has 40 oils, 6 measures and 2 groups. One process, without a pause: after a
warm-up, each instance goes to every solver in turn, in an order drawn anew each time, so that nobody always
comes after the same one. The clock is around each solver's own call.

- Every solver's input is made outside the clock: models for the rivals, the space of blends (\`BlendSpace\`)
  or the linear program for us. Changing a cost or a limit in it is inside. Our solver forgets its basis
  before each task but "point and solve", which is about going on from the last one.
- **yalps** 0.6.4 and **javascript-lp-solver** 1.0.3: \`solve\` of a model object, default options. *Lean* has no
  rows for bounds that the sum implies: their tableau has a row for each bound, so somebody who knows them
  would leave these out. **glpk.js** 5.0.0: \`solve\` of a problem object, without messages; the presolver, off
  for linear programs (faster here, and with it an infeasible program is answered "undefined"), on with 0-1
  variables. **highs** 1.15.3: \`withModel\` from arrays for every solve; *model kept*: one model changed in
  place and run from its last basis.
- Rivals solve each linear program cold (but for the kept model) and are asked the very programs that our own
  algorithm asks, except the 2-axis frontier (dichotomic search) and the 8 alternatives (hop, skip and jump).
  They are spared all work between solves: no geometry, no blends by name, no checks. Ours is timed as the
  product calls it, with all of these.
- javascript-lp-solver is left out of the 3-axis frontier, where it never answers one of the programs, and of
  the rules, where it may search for minutes and cannot be stopped.
- Answers are compared to 1e-6 with those of highs; a frontier by how far it reaches in 41 directions, the
  alternatives by the least price. A solver that is slow or loops gives fewer runs. With fewer than 100 runs
  the p99 is the largest.`

/** The section on the solver: all tables, the reasons where a target is missed, and the method. */
export function solverSection(result: BenchResult, circumstances: string): string {
  const verdicts = TARGETS.map((target) => verdictOn(target, taskOf(result.tasks, target.task)))
  return [
    circumstances,
    targetsTable(verdicts, result.tasks),
    shortfalls(verdicts),
    `### Every solver\n\n${everySolver(result.tasks)}`,
    `### As the shelf grows\n\nOne cold solve, 8 measures and 3 groups, medians.\n\n${growthTable(result.growth)}`,
    `### Memory\n\n${memoryText(result.memory)}`,
    `### How it was measured\n\n${METHOD}`,
  ].join('\n\n')
}

function taskOf(tasks: readonly TaskResult[], id: string): TaskResult {
  const found = tasks.find((one) => one.id === id)
  if (found) return found
  throw new Error(`No figures of the task ${id}`)
}

function targetsTable(verdicts: readonly Verdict[], tasks: readonly TaskResult[]): string {
  const heads = ['task', 'median', 'p99', 'best rival', 'ratio to it', 'target', 'met', 'answers']
  return table(
    heads,
    verdicts.map(({ target, own, best, ratioToBest, met, missed }) => [
      target.title,
      time(own.times.median),
      time(own.times.p99),
      `${best.name}, ${time(best.times.median)}`,
      times(ratioToBest),
      [...met, ...missed.map((text) => `**${text}**`)].join('; '),
      missed.length === 0 ? 'yes' : `**${met.length} of ${met.length + missed.length}**`,
      agreement(taskOf(tasks, target.task)),
    ]),
  )
}

function shortfalls(verdicts: readonly Verdict[]): string {
  const missed = verdicts.filter((one) => one.missed.length > 0)
  if (missed.length === 0) return 'No target was missed.'
  const lines = missed.map(({ target }) => `- **${target.title}**: ${target.shortfall}`)
  return `### Where it falls short, and why\n\n${lines.join('\n')}`
}

function everySolver(tasks: readonly TaskResult[]): string {
  return table(
    ['task', 'solver', 'median', 'p99', 'runs', 'in our median'],
    tasks.flatMap(({ id, facts, standings }) => {
      const own = TARGETS.find(({ task }) => task === id)?.own
      const unit = standings.find(({ name }) => name === own)?.times.median ?? NaN
      return standings.map(({ name, times: { median, p99, runs } }, place) => [
        place === 0 ? [id, facts].filter((text) => text !== '').join(': ') : '',
        name,
        time(median),
        time(p99),
        String(runs),
        times(median / unit),
      ])
    }),
  )
}

function growthTable(growth: readonly TaskResult[]): string {
  const names = growth[0]?.standings.map(({ name }) => name) ?? []
  return table(
    ['solver', ...growth.map(({ id }) => `${id.replace(/\D/gu, '')} oils`)],
    [
      ...names.map((name) => [
        name,
        ...growth.map(({ standings }) => {
          return time(standings.find((one) => one.name === name)?.times.median ?? NaN)
        }),
      ]),
      ['best rival against ours, loaded', ...growth.map((one) => times(bestAgainstOurs(one)))],
      ['answers', ...growth.map(agreement)],
    ],
  )
}

function bestAgainstOurs({ standings }: TaskResult): number {
  const medians = (ours: boolean) =>
    standings.filter((one) => isOurs(one) === ours).map(({ times: { median } }) => median)
  return Math.min(...medians(false)) / Math.min(...medians(true))
}

const BYTES_PER_KIB = 1024

function memoryText({ solves, pivots, before, after, litter, seconds }: MemoryResult): string {
  const kib = (bytes: number) => `${figures(bytes / BYTES_PER_KIB)} KiB`
  const count = (value: number) => value.toLocaleString('en')
  return [
    `${count(solves)} warm solves, each after a change of cost and of a range: ${count(pivots)} pivots in`,
    `${figures(seconds)} s. After a full garbage collection the heap went from ${kib(before.heap)} to`,
    `${kib(after.heap)}, array buffers from ${kib(before.arrayBuffers)} to ${kib(after.arrayBuffers)}:`,
    isFlat({ before, after }) ? 'flat.' : '**not flat.**',
    `The heap had grown by ${kib(litter)} before it was collected.`,
  ].join(' ')
}

/** What compiled code and Node itself may add between two collections, in bytes: under 1 a solve. */
const NOISE_BYTES = 64 * BYTES_PER_KIB

/** Whether memory in use is the same after as before. */
export function isFlat({ before, after }: Pick<MemoryResult, 'before' | 'after'>): boolean {
  const grown = after.heap - before.heap + (after.arrayBuffers - before.arrayBuffers)
  return grown <= NOISE_BYTES
}
