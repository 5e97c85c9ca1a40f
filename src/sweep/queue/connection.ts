import { Redis } from 'ioredis'
import { SweepRefused } from '../faults'

/** How long a server may take to answer at first, in milliseconds. */
const FIRST_ANSWER_MS = 5_000

const ADDRESS = 'redis://host:6379, or rediss:// where it is encrypted'

/**
 * A connection that goes on trying once it has been answered: a server that is started anew is met
 * again. Refused where nothing answers at first, so that a wrong address is told and does not hang.
 */
export async function connected(url: string): Promise<Redis> {
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
  return redis
}

/** Host and port of an address, without the password in it; refused where it is none. */
function hostOf(url: string): string {
  const parsed = URL.canParse(url) ? new URL(url) : undefined
  if (parsed && ['redis:', 'rediss:'].includes(parsed.protocol) && parsed.host !== '')
    return parsed.host
  throw new SweepRefused(`The address given is none of a Redis or Valkey. Write it as ${ADDRESS}.`)
}
