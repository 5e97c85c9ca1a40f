import { mkdtemp, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import { viteBuild } from '../setup/vite-build'
import { circumstances } from './machine'
import { quick } from './quick'
import { writeSection } from './results-file'
import { type SweepFigures, sweepSection } from './sweep/report'
import { highsTimed, sweepTimed, type Timed } from './sweep/run'
import { briefLines, priceLines, type Workload } from './sweep/workload'

const ROUNDS = quick ? 1 : 3
const PRICE_LINES = quick ? 2_000 : 200_000
const BRIEF_LINES = quick ? 1_000 : 50_000
/** HiGHS is slow enough for its rate to stand after so many. */
const HIGHS_LINES = quick ? 200 : 3_000
const SAME_GOAL = 1e-6

test('a sweep is timed on one core and on two, and beside HiGHS called line by line', async () => {
  const where = circumstances(quick)
  const cli = await viteBuild('cli')
  onTestFinished(cli.remove)
  // Inside dist, where Node finds the packages.
  const folder = await mkdtemp(fileURLToPath(new URL('../../dist/for-bench-', import.meta.url)))
  onTestFinished(() => rm(folder, { recursive: true, force: true }))
  const tool = join(cli.folder, 'barwright.js')
  const workloads = [await priceLines(folder, PRICE_LINES), await briefLines(folder, BRIEF_LINES)]
  const found: SweepFigures[] = []
  for (const workload of workloads) found.push(await figuresOf(workload, tool, folder))
  await writeSection('Sweeps', sweepSection(found, where))
})

async function figuresOf(workload: Workload, tool: string, folder: string): Promise<SweepFigures> {
  const { name, path, lines } = workload
  const rates: { core: number[]; one: number[]; two: number[] } = { core: [], one: [], two: [] }
  let answers: Timed['goals'] = []
  for (let round = 0; round < ROUNDS; round++) {
    const out = (file: string) => join(folder, file)
    const core = await sweepTimed(tool, path, out('core.ndjson'), { threads: 1, oneCore: true })
    const one = await sweepTimed(tool, path, out('one.ndjson'), { threads: 1 })
    const two = await sweepTimed(tool, path, out('two.ndjson'), { threads: 2 })
    expect(two.goals).toEqual(one.goals)
    expect(core.goals).toEqual(one.goals)
    answers = two.goals
    rates.core.push(lines / core.seconds)
    rates.one.push(lines / one.seconds)
    rates.two.push(lines / two.seconds)
  }
  const highs = await highsTimed(folder, path, HIGHS_LINES)
  expectSame(answers.slice(0, HIGHS_LINES), highs.goals)
  return {
    name,
    lines,
    oneCore: median(rates.core),
    oneThread: median(rates.one),
    twoThreads: median(rates.two),
    highs: HIGHS_LINES / highs.seconds,
  }
}

function expectSame(ours: Timed['goals'], theirs: Timed['goals']): void {
  expect(ours).toHaveLength(theirs.length)
  const differing = ours.filter((goal, line) => {
    const other = theirs[line] ?? null
    if (goal === null || other === null) return goal !== other
    return Math.abs(goal - other) > SAME_GOAL * Math.max(1, Math.abs(other))
  })
  expect(differing).toEqual([])
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? NaN
}
