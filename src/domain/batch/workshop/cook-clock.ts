import type { Ends } from '../../interval'
import { MS_PER_SECOND } from '../../units'

/** A cook as it is noted down; times in ms since 1970. */
export interface Cook {
  readonly startedAt: number
  readonly stirredAt: readonly number[]
}

/** A temperature read by hand, in °C, at ms since 1970, in a step. */
export interface TakenTemperature {
  readonly step: string
  readonly at: number
  readonly tempC: number
}

/** Where a cook stands; minutes. */
export interface CookClock {
  readonly minutes: number
  /** Whole seconds on the clock's face: "38:20", "1:02:05". */
  readonly face: string
  readonly stirredMin: readonly number[]
  /** When it is next to be stirred. */
  readonly nextStirMin: number
  readonly stirDue: boolean
  /** Before, within or beyond the usual time. */
  readonly state: 'early' | 'within' | 'beyond'
}

/** A pot on low heat is stirred down about so often, minutes: common practice. */
export const STIR_EVERY_MIN = 15

const SECONDS_A_MINUTE = 60
const MINUTES_AN_HOUR = 60

/** Where a cook stands at a time, in ms since 1970; a clock that was set back stands at 0. */
export function cookClock({ startedAt, stirredAt }: Cook, now: number, usual: Ends): CookClock {
  const minutesAt = (at: number) => Math.max(0, at - startedAt) / (SECONDS_A_MINUTE * MS_PER_SECOND)
  const minutes = minutesAt(now)
  const stirredMin = stirredAt.map(minutesAt)
  const last = Math.max(0, ...stirredMin)
  const nextStirMin = (Math.floor(last / STIR_EVERY_MIN + STIR_GRACE) + 1) * STIR_EVERY_MIN
  return {
    minutes,
    face: faceOf(Math.floor(minutes * SECONDS_A_MINUTE)),
    stirredMin,
    nextStirMin,
    stirDue: minutes >= nextStirMin,
    state: minutes < usual.low ? 'early' : minutes <= usual.high ? 'within' : 'beyond',
  }
}

/** A stir this part of the time before it is due counts for it. */
const STIR_GRACE = 0.34

function faceOf(seconds: number): string {
  const two = (figure: number) => String(figure).padStart(2, '0')
  const minutes = Math.floor(seconds / SECONDS_A_MINUTE)
  const rest = two(seconds % SECONDS_A_MINUTE)
  if (minutes < MINUTES_AN_HOUR) return `${minutes}:${rest}`
  return `${Math.floor(minutes / MINUTES_AN_HOUR)}:${two(minutes % MINUTES_AN_HOUR)}:${rest}`
}
