import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Redis } from 'ioredis'
import { onTestFinished } from 'vitest'
import { findRedis } from './find-redis'
import { until } from './sweeping'

export interface RedisServer {
  readonly url: string
  /** A connection to look with. */
  readonly look: Redis
  /** Ends the server at once, with all it holds. */
  stop(): Promise<void>
  /** Starts it anew at the same address, empty. */
  startAgain(): Promise<void>
}

/** Starts a server of this test alone, on a free port and in a folder of its own; it ends with the test. */
export async function startRedis(): Promise<RedisServer> {
  const { path, libraries } = await findRedis()
  const dir = await mkdtemp(join(tmpdir(), 'barwright-redis-'))
  const port = await freePort()
  const settings = ['--port', String(port), '--bind', '127.0.0.1', '--dir', dir, '--save', '']
  const started = () =>
    spawn(path, settings, {
      stdio: 'ignore',
      env: { ...process.env, ...(libraries === undefined ? {} : { LD_LIBRARY_PATH: libraries }) },
    })
  let server = started()
  const look = new Redis(port, '127.0.0.1', { maxRetriesPerRequest: null })
  look.on('error', () => undefined)
  onTestFinished(async () => {
    look.disconnect()
    server.kill('SIGKILL')
    await rm(dir, { recursive: true, force: true })
  })
  const answers = () =>
    until(async () => {
      if (server.exitCode !== null) throw new Error(`${path} ended with code ${server.exitCode}`)
      return (await look.ping()) === 'PONG'
    })
  await answers()
  return {
    url: `redis://127.0.0.1:${port}`,
    look,
    stop: async () => {
      const ended = once(server, 'exit')
      server.kill('SIGKILL')
      await ended
    },
    startAgain: async () => {
      server = started()
      await answers()
    },
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() => {
        if (address !== null && typeof address === 'object') resolve(address.port)
        else reject(new Error('The system gave no port'))
      })
    })
  })
}
