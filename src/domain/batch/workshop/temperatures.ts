import type { WorkStep } from '../sheet/steps'
import type { TakenTemperature } from './cook-clock'

/** A temperature that rose from one reading to the next where it is to fall or to hold; °C and minutes. */
export interface Climb {
  readonly fromC: number
  readonly toC: number
  readonly minutes: number
}

/** A rise below this may be the thermometer, K: an assumption. */
const RISE_K = 2

const MS_A_MINUTE = 60_000

/** What was read in a step, in the order of time. */
export function readIn(
  taken: readonly TakenTemperature[],
  { id }: Pick<WorkStep, 'id'>,
): TakenTemperature[] {
  return taken.filter(({ step }) => step === id).toSorted((a, b) => a.at - b.at)
}

/**
 * Whether it climbs between the last two readings of a step: lye in the jug at all, once it is made; a pot with
 * lye in it only above what it is to hold, as it is warmed up to there. Null where it does not.
 */
export function climbOf(
  taken: readonly TakenTemperature[],
  step: Pick<WorkStep, 'id' | 'tempC'>,
): Climb | null {
  const [before, last] = readIn(taken, step).slice(-2)
  if (!before || !last || last.tempC - before.tempC < RISE_K) return null
  if (!LYE_IN.has(step.id)) return null
  if (step.id !== 'lye' && !(step.tempC && last.tempC > step.tempC.high)) return null
  return {
    fromC: before.tempC,
    toC: last.tempC,
    minutes: Math.round((last.at - before.at) / MS_A_MINUTE),
  }
}

/** Steps in which there is lye. */
const LYE_IN: ReadonlySet<string> = new Set(['lye', 'combine', 'trace', 'cook'])

/** "11:20", "11.20", "1120" or "9:05". */
const CLOCK = /^(\d{1,2})[:.]?(\d{2})$/u
const HOURS = 24
const MINUTES = 60

/**
 * The last time that a clock showed this, in ms since 1970, where the day is not said: not after `now`, but for
 * the minute it is; so at 00:10 "23:55" was yesterday. Undefined for what no clock shows.
 */
export function lastTime(text: string, now: number): number | undefined {
  const [, hours, minutes] = CLOCK.exec(text.trim()) ?? []
  if (hours === undefined || minutes === undefined) return undefined
  if (Number(hours) >= HOURS || Number(minutes) >= MINUTES) return undefined
  const at = new Date(now)
  at.setHours(Number(hours), Number(minutes), 0, 0)
  if (at.getTime() > now) at.setDate(at.getDate() - 1)
  return at.getTime()
}
