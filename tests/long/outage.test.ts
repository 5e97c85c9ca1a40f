import { readFile } from 'node:fs/promises'
import { expect, test } from 'vitest'
import { LONGEST_OUTAGE_MS } from '../../src/sweep/queue/connection'
import { answered, startCollector, startWorker, timesIn } from '../sweep/queueing'
import { startRedis } from '../sweep/redis'
import { sizeOf, slowLines, until } from '../sweep/sweeping'

test('a server gone for good ends collector and worker with exit 1 after a minute; the sweep goes on later', async () => {
  const server = await startRedis()
  const files = await answered(slowLines(1_000))
  const worker = startWorker(server.url)
  const sweep = startCollector(server.url, files)
  await until(async () => (await sizeOf(`${files.out}.part`)) > 0.2 * files.expected.length)
  await server.stop()
  const startMs = performance.now()
  const after = {
    sweep: 'What is written stays; the same command goes on from there.',
    worker: 'No line is lost; start the worker again when it is there.',
  }
  for (const [run, words] of [
    [sweep, after.sweep],
    [worker, after.worker],
  ] as const) {
    expect(await run.exit).toBe(1)
    expect(timesIn(run.errors(), 'is gone; it is waited for, 60 s at most.')).toBe(1)
    const { status, message } = JSON.parse(run.output()) as Record<string, string>
    const host = server.url.replace('redis://', '')
    expect(status).toBe('stopped')
    expect(message).toBe(`The server at ${host} has not answered for 60 s. ${words}`)
  }
  expect(performance.now() - startMs).toBeGreaterThan(LONGEST_OUTAGE_MS - 1_000)

  await server.startAgain()
  const another = startWorker(server.url)
  const again = startCollector(server.url, files)
  expect(await again.exit).toBe(0)
  expect(await readFile(files.out)).toEqual(files.expected)
  const { answeredBefore } = JSON.parse(again.output()) as Record<string, number>
  expect(answeredBefore).toBeGreaterThan(0)
  another.kill('SIGTERM')
  expect(await another.exit).toBe(0)
})
