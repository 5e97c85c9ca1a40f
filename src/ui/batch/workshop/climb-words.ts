import type { Vessel } from '../../../domain/batch/actual/vessels'
import type { Climb } from '../../../domain/batch/workshop/temperatures'
import { number, withUnit } from '../../words/format'

/** What to do first while it climbs, and why after: common practice. */
export const CLIMB_SAYS: Readonly<Record<Vessel, string>> = {
  jug: 'Add nothing more. Stand the jug in cold water, keep your face out of the steam, stir slowly, and read again until it falls; never cold water into the lye. Hydroxide may still be dissolving.',
  pot: 'Off the heat, lid off, gloves and goggles on. Stir it down with a long spoon; have a second, larger pot ready, and never pour water in. It goes on warming by itself for a while, and may rise up the pot.',
}

/** "It is climbing: 62 to 71 °C in 4 minutes." */
export function climbHead({ fromC, toC, minutes }: Climb): string {
  const within = minutes < 1 ? '' : ` in ${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`
  return `It is climbing: ${number(fromC, 0)} to ${withUnit(toC, 0, '°C')}${within}.`
}
