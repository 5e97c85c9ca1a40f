import { cpus, loadavg, totalmem } from 'node:os'

const BYTES_PER_GIB = 2 ** 30

/** Where and when something was measured, and how busy the machine was: to be asked at the start. */
export function circumstances(quick: boolean): string {
  const processors = cpus()
  const load = loadavg().map((one) => one.toFixed(2))
  const lines = [
    `Measured ${new Date().toISOString().slice(0, 10)} on ${processors.length} × ${processors[0]?.model ?? 'unknown processor'},`,
    `${(totalmem() / BYTES_PER_GIB).toFixed(1)} GiB, Node ${process.version}.`,
    `Load average at the start: ${load.join(', ')} (over 1, 5 and 15 minutes)${busyNote(processors.length)}.`,
  ]
  if (quick)
    lines.push('**A quick run: few repetitions, so medians are rough and p99 means little.**')
  return lines.join(' ')
}

/** Half the processors busy with other work already lengthens the slowest runs. */
function busyNote(processors: number): string {
  return (loadavg()[0] ?? 0) > processors / 2 ? ', so **not a quiet machine**' : ''
}
