import { writeFile } from 'node:fs/promises'
import { cpus, loadavg } from 'node:os'
import { test } from 'vitest'
import type { TaskResult } from './program/task'
import { runProgram } from './run-program'

const RESULTS = new URL('results.md', import.meta.url)

/** Measures our solver beside the rivals and writes the table; BENCH_QUICK=1 does little of each. */
test('our solver beside its rivals', async () => {
  const quick = process.env.BENCH_QUICK === '1'
  const load = loadavg().map((one) => one.toFixed(1))
  const { tasks, growth, memory } = await runProgram(quick)
  const head = [
    '# Our solver beside its rivals',
    '',
    'Written by `npm run bench`. Times in milliseconds; all solvers on the same instances, interleaved in',
    'one process after a warm-up, each called as its documentation advises, its input built before.',
    '',
    `${cpus().length} × ${cpus()[0]?.model ?? 'unknown processor'}, Node ${process.version}, load ${load.join(' ')} at the start, ${quick ? 'a quick run' : 'a full run'}, ${new Date().toISOString().slice(0, 10)}.`,
    '',
  ]
  const text = [
    ...head,
    ...tasks.flatMap(section),
    '## Growth',
    '',
    ...growth.flatMap(section),
    '## Memory over many solves',
    '',
    '```json',
    JSON.stringify(memory, null, 2),
    '```',
    '',
  ]
  await writeFile(RESULTS, text.join('\n'))
})

function section({ id, facts, standings }: TaskResult): string[] {
  const ours = standings[0]?.times.median ?? NaN
  const rows = standings.map(({ name, times, answers, none, differing }) => {
    const ratio = (times.median / ours).toFixed(1)
    return `| ${name} | ${times.median.toFixed(3)} | ${times.p99.toFixed(3)} | ${ratio} | ${answers} | ${none} | ${differing} |`
  })
  return [
    `### ${id}`,
    '',
    facts,
    '',
    '| solver | median | p99 | median beside ours | answers | no answer | differing |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...rows,
    '',
  ]
}
