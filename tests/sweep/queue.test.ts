import { readFile } from 'node:fs/promises'
import { QueueEvents } from 'bullmq'
import { expect, onTestFinished, test } from 'vitest'
import { BATCHES_ON_SERVER, QUEUE } from '../../src/sweep/queue/jobs'
import { answered, startWorker } from './queueing'
import { startRedis } from './redis'
import { answersIn, scenarios, sizeOf, slowLines, start, until } from './sweeping'

test('of two workers one is killed in the midst of its lines: every line is answered exactly once', async () => {
  const { url } = await startRedis()
  const { input, out, expected } = await answered(slowLines(1_000))
  const events = new QueueEvents(QUEUE, { connection: { url } })
  onTestFinished(() => events.close())
  let takenOver = 0
  events.on('stalled', () => takenOver++)
  await events.waitUntilReady()

  const [doomed, other] = [startWorker(url), startWorker(url)]
  const sweep = start(['sweep', input, '--out', out, '--queue', url])
  await until(async () => (await sizeOf(`${out}.part`)) > 0.2 * expected.length)
  doomed.kill('SIGKILL')
  expect(await doomed.exit).toBeNull()
  expect(await sizeOf(`${out}.part`)).toBeLessThan(expected.length)

  expect(await sweep.exit).toBe(0)
  expect(takenOver).toBeGreaterThan(0)
  const lines = (await answersIn(out)).map(({ line }) => line)
  expect(lines).toEqual(Array.from({ length: 1_000 }, (_, index) => index + 1))
  expect(await readFile(out)).toEqual(expected)
  other.kill('SIGTERM')
  expect(await other.exit).toBe(0)
})

test('a collector that is killed goes on where it was, and the server is left empty', async () => {
  const { url, look } = await startRedis()
  const { input, out, expected } = await answered(scenarios(9_000))
  const worker = startWorker(url)
  const first = start(['sweep', input, '--out', out, '--queue', url])
  let mostJobs = 0
  await until(async () => {
    mostJobs = Math.max(mostJobs, await jobsOn(look))
    return (await sizeOf(`${out}.part`)) > 0.3 * expected.length
  })
  first.kill('SIGKILL')
  expect(await first.exit).toBeNull()
  expect(await sizeOf(`${out}.part`)).toBeLessThan(expected.length)
  const second = start(['sweep', input, '--out', out, '--queue', url])
  expect(await second.exit).toBe(0)
  expect(await readFile(out)).toEqual(expected)
  expect(JSON.parse(second.output())).toMatchObject({ status: 'done', lines: 9_000 })
  expect(mostJobs).toBeGreaterThan(0)
  expect(mostJobs).toBeLessThanOrEqual(BATCHES_ON_SERVER)
  // One batch may have been begun by the killed collector with another first line.
  expect(await jobsOn(look)).toBeLessThanOrEqual(1)
  worker.kill('SIGTERM')
  expect(await worker.exit).toBe(0)
})

test('a sweep waits for workers, and says so', async () => {
  const { url } = await startRedis()
  const { input, out, expected } = await answered(scenarios(200))
  const sweep = start(['sweep', input, '--out', out, '--queue', url])
  await until(() => sweep.errors().includes('No worker is there. Start one on any machine'))
  const worker = startWorker(url)
  expect(await sweep.exit).toBe(0)
  expect(await readFile(out)).toEqual(expected)
  worker.kill('SIGTERM')
  expect(await worker.exit).toBe(0)
})

/** Jobs that the server holds in any state: their keys end in lines. */
async function jobsOn(look: { keys(pattern: string): Promise<string[]> }): Promise<number> {
  const keys = await look.keys(`bull:${QUEUE}:*-*`)
  return keys.filter((key) => /-\d+-\d+$/u.test(key)).length
}
