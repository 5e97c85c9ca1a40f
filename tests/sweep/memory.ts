import { readFile } from 'node:fs/promises'
import { expect } from 'vitest'
import { start, until } from './sweeping'

/** Heap of each thread, in MB: what gathered over the lines would soon burst it. */
const HEAP_MB = 80
/** Where new things are made, in MB: small, so that its growth does not pass for something kept. */
const NEW_MB = 2
const KB_PER_MB = 1024

/** The most memory that a sweep on two threads ever takes, in MB, as the system counts it. */
export async function mostMemory(input: string, out: string): Promise<number> {
  const run = start(
    ['sweep', input, '--out', out, '--threads', '2'],
    [`--max-old-space-size=${HEAP_MB}`, `--max-semi-space-size=${NEW_MB}`],
  )
  let [most, ended] = [0, false]
  const exit = run.exit.finally(() => (ended = true))
  await until(async () => {
    most = Math.max(most, await memoryNow(run.pid))
    return ended
  })
  expect(await exit).toBe(0)
  expect(most).toBeGreaterThan(0)
  return most
}

/** The most memory a process has taken up to now; 0 where it has ended. */
async function memoryNow(pid: number): Promise<number> {
  const status = await readFile(`/proc/${pid}/status`, 'utf8').catch(() => '')
  const kb = /^VmHWM:\s+(\d+) kB$/mu.exec(status)?.[1]
  return Number(kb ?? 0) / KB_PER_MB
}
