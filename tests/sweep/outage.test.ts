import { readFile } from 'node:fs/promises'
import { Worker } from 'bullmq'
import { expect, onTestFinished, test } from 'vitest'
import { connected } from '../../src/sweep/queue/connection'
import { MOST_DEATHS, QUEUE } from '../../src/sweep/queue/jobs'
import { answered, startCollector, startWorker, timesIn } from './queueing'
import { startRedis } from './redis'
import { scenarios, sizeOf, slowLines, start, until } from './sweeping'

const GONE = 'is gone; it is waited for'
const BACK = 'is there again'

test('a server that goes and comes back empty costs nothing: an outage is told in one line, its end in another', async () => {
  const server = await startRedis()
  const files = await answered(slowLines(1_000))
  const worker = startWorker(server.url)
  const sweep = startCollector(server.url, files)
  for (const part of [0.2, 0.6]) {
    await until(async () => (await sizeOf(`${files.out}.part`)) > part * files.expected.length)
    await server.stop()
    await until(() => [sweep, worker].every((run) => run.errors().trimEnd().endsWith('at most.')))
    await server.startAgain()
    await until(() => [sweep, worker].every((run) => run.errors().includes(BACK)))
  }
  expect(await sweep.exit).toBe(0)
  expect(await readFile(files.out)).toEqual(files.expected)
  worker.kill('SIGTERM')
  expect(await worker.exit).toBe(0)
  for (const run of [sweep, worker])
    expect([timesIn(run.errors(), GONE), timesIn(run.errors(), BACK)]).toEqual([2, 2])
})

test('a server that stays away is given up, once, with its address and for how long', async () => {
  const server = await startRedis()
  const told: string[] = []
  const connection = await connected(server.url, (line) => told.push(line), 300)
  connection.connection.on('error', connection.heard)
  await server.stop()
  await until(() => connection.gone.aborted)
  connection.end()
  const host = server.url.replace('redis://', '')
  expect(told).toEqual([`The server at ${host} is gone; it is waited for, 0.3 s at most.`])
  expect(String(connection.gone.reason)).toContain(`${host} has not answered for 0.3 s.`)
})

test.each(['collector', 'worker'])(
  'a %s without its server ends at a signal, which no outage holds up, and what it wrote stays',
  async (which) => {
    const server = await startRedis()
    const files = await answered(slowLines(600))
    const runs = { worker: startWorker(server.url), collector: startCollector(server.url, files) }
    await until(async () => (await sizeOf(`${files.out}.part`)) > 0.2 * files.expected.length)
    await server.stop()
    const asked = which === 'worker' ? runs.worker : runs.collector
    await until(() => asked.errors().includes(GONE))
    asked.kill('SIGTERM')
    expect(await asked.exit).toBe(which === 'worker' ? 0 : 1)
    await server.startAgain()
    if (which === 'worker') {
      const another = startWorker(server.url)
      expect(await runs.collector.exit).toBe(0)
      another.kill('SIGTERM')
      expect(await another.exit).toBe(0)
    } else {
      expect(JSON.parse(asked.output())).toMatchObject({ status: 'stopped' })
      const written = await sizeOf(`${files.out}.part`)
      expect(written).toBeGreaterThan(0)
      expect(await startCollector(server.url, files).exit).toBe(0)
      runs.worker.kill('SIGTERM')
      expect(await runs.worker.exit).toBe(0)
    }
    expect(await readFile(files.out)).toEqual(files.expected)
  },
)

test('a second signal ends a worker in the midst of its lines at once, and others answer these', async () => {
  const { url } = await startRedis()
  const files = await answered(slowLines(600))
  const worker = startWorker(url)
  const sweep = startCollector(url, files)
  await until(async () => (await sizeOf(`${files.out}.part`)) > 0.1 * files.expected.length)
  worker.kill('SIGTERM')
  worker.kill('SIGINT')
  expect(await worker.exit).toBe(1)
  expect(worker.output()).toBe('')
  const another = startWorker(url)
  expect(await sweep.exit).toBe(0)
  expect(await readFile(files.out)).toEqual(files.expected)
  another.kill('SIGTERM')
  expect(await another.exit).toBe(0)
})

test('lines that every worker dies of are given up with their numbers; later they are asked for anew', async () => {
  const { url } = await startRedis()
  const files = await answered(scenarios(300))
  let taken = 0
  // It takes lines and is never heard of again, as one that dies, over and over.
  const dying = new Worker(QUEUE, () => new Promise(() => taken++), {
    connection: { url },
    concurrency: 1_000,
    skipLockRenewal: true,
    lockDuration: 50,
    stalledInterval: 50,
    maxStalledCount: MOST_DEATHS,
  })
  dying.on('error', () => undefined)
  const sweep = startCollector(url, files)
  expect(await sweep.exit).toBe(1)
  expect(taken).toBeGreaterThan(MOST_DEATHS)
  const { status, message } = JSON.parse(sweep.output()) as Record<string, string>
  expect(status).toBe('stopped')
  expect(message).toMatch(/^Workers gave up lines \d+ to \d+: .*stalled/u)
  await dying.close(true)

  const worker = startWorker(url)
  expect(await startCollector(url, files).exit).toBe(0)
  expect(await readFile(files.out)).toEqual(files.expected)
  worker.kill('SIGTERM')
  expect(await worker.exit).toBe(0)
})

test('two collectors share a queue, each with the answers to its own lines', async () => {
  const { url } = await startRedis()
  const [some, others] = [await answered(scenarios(2_000)), await answered(slowLines(300))]
  const sweeps = [some, others].map((files) => startCollector(url, files))
  const worker = startWorker(url)
  for (const sweep of sweeps) expect(await sweep.exit).toBe(0)
  for (const { out, expected } of [some, others]) expect(await readFile(out)).toEqual(expected)
  worker.kill('SIGTERM')
  expect(await worker.exit).toBe(0)
})

/** Node's flags for a process whose clock is so many days off, timers going on as ever. */
function clockOff(days: number): string[] {
  const source = `const now = Date.now
    const off = ${days} * 864e5
    globalThis.Date = class extends Date {
      constructor(...at) { at.length > 0 ? super(...at) : super(now() + off) }
      static now() { return now() + off }
    }`
  return ['--import', `data:text/javascript,${encodeURIComponent(source)}`]
}

test('clocks of workers that are weeks apart change nothing', async () => {
  const { url } = await startRedis()
  const files = await answered(slowLines(1_000))
  const workers = [-20, 20].map((days) => startWorker(url, clockOff(days)))
  const sweep = startCollector(url, files)
  await until(async () => (await sizeOf(`${files.out}.part`)) > 0.3 * files.expected.length)
  // One of them dies: how long it has been silent is told by the server's clock alone.
  workers[0]?.kill('SIGKILL')
  expect(await sweep.exit).toBe(0)
  expect(await readFile(files.out)).toEqual(files.expected)
  workers[1]?.kill('SIGTERM')
  expect(await workers[1]?.exit).toBe(0)
})

test('the clock of such a worker is really off', async () => {
  const [flag, source = ''] = clockOff(20)
  const run = start([], [flag ?? '', source, '-e', 'console.log(Date.now() - performance.now())'])
  onTestFinished(() => run.kill('SIGKILL'))
  await run.exit
  const days = (Number(run.output()) - (Date.now() - performance.now())) / 864e5
  expect(days).toBeGreaterThan(19)
})
