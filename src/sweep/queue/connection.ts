import { MS_PER_SECOND } from '../../domain/units'
import { Redis } from 'ioredis'
import { SweepRefused, SweepStopped } from '../faults'

/** How long a server may take to answer at first, in milliseconds. */
const FIRST_ANSWER_MS = 5_000

/** How long a server may be gone before it is given up, in milliseconds. */
export const LONGEST_OUTAGE_MS = 60_000

const ADDRESS = 'redis://host:6379, or rediss:// where it is encrypted'

/** A connection to a server that may go and come again. */
export interface Connection {
  readonly connection: Redis
  /** Given up: the server has been gone for too long. The reason says so. */
  readonly gone: AbortSignal
  /** Takes in an error of anything that uses the server: each outage is told once. */
  readonly heard: (error: Error) => void
  end(): void
}

/**
 * A connection that goes on trying once it has been answered: a server that is started anew is met
 * again. Refused where nothing answers at first, so that a wrong address is told and does not hang. An
 * outage is told in one line, and so is its end; one that lasts longer than `longestMs` is given up.
 */
export async function connected(
  url: string,
  tell: (line: string) => void,
  longestMs = LONGEST_OUTAGE_MS,
): Promise<Connection> {
  const host = hostOf(url)
  let everAnswered = false
  const redis = new Redis(url, {
    maxRetriesPerRequest: null,
    lazyConnect: true,
    connectTimeout: FIRST_ANSWER_MS,
    retryStrategy: (times) => (everAnswered ? Math.min(times * 100, 2_000) : null),
  })
  let reason = 'no answer'
  redis.on('error', (error: Error) => (reason = error.message))
  try {
    await redis.connect()
    await redis.ping()
  } catch {
    redis.disconnect()
    throw new SweepRefused(
      `No Redis or Valkey answers at ${host} (${reason}). Start one there, or give the address of one: ${ADDRESS}.`,
    )
  }
  everAnswered = true
  return watched(redis, host, tell, longestMs)
}

function watched(
  redis: Redis,
  host: string,
  tell: (line: string) => void,
  longestMs: number,
): Connection {
  const gone = new AbortController()
  let timer: NodeJS.Timeout | undefined
  let hasEnded = false
  const longest = `${longestMs / MS_PER_SECOND} s`
  const giveUp = () =>
    gone.abort(new SweepStopped(`The server at ${host} has not answered for ${longest}.`))
  redis.on('close', () => {
    if (timer !== undefined || hasEnded) return
    tell(`The server at ${host} is gone; it is waited for, ${longest} at most.`)
    timer = setTimeout(giveUp, longestMs)
  })
  redis.on('ready', () => {
    if (timer === undefined) return
    clearTimeout(timer)
    timer = undefined
    tell(`The server at ${host} is there again.`)
  })
  return {
    connection: redis,
    gone: gone.signal,
    heard: (error) => {
      // Without a connection every error is of that outage, which has been told.
      if (redis.status === 'ready' && !isOfConnection(error)) tell(error.message)
    },
    end: () => {
      hasEnded = true
      clearTimeout(timer)
      redis.disconnect()
    },
  }
}

function isOfConnection(error: Error): boolean {
  return 'code' in error || /connection is closed|stream isn't writeable/iu.test(error.message)
}

/** What a promise gives, or the reason of a signal where that comes first. */
export async function orStopped<T>(promise: Promise<T>, signal: AbortSignal): Promise<T> {
  signal.throwIfAborted()
  let leaveOff: () => void = () => undefined
  const stopped = new Promise<never>((_, reject) => {
    const heard = () => reject(signal.reason as Error)
    signal.addEventListener('abort', heard)
    leaveOff = () => signal.removeEventListener('abort', heard)
  })
  try {
    return await Promise.race([promise, stopped])
  } finally {
    leaveOff()
  }
}

/** Host and port of an address, without the password in it; refused where it is none. */
function hostOf(url: string): string {
  const parsed = URL.canParse(url) ? new URL(url) : undefined
  if (parsed && ['redis:', 'rediss:'].includes(parsed.protocol) && parsed.host !== '')
    return parsed.host
  throw new SweepRefused(`The address given is none of a Redis or Valkey. Write it as ${ADDRESS}.`)
}
