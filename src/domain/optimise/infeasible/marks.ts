import { COST } from '../../blend/measure'
import { WHOLE_PERCENT } from '../../units'
import type { Limit } from '../brief/limits'

/** Steps to which a changed limit is rounded: a tenth of a point or percent, a cent of money per kg. */
const STEP = 0.1
const MONEY_STEP = 0.01

/** Decimals of those steps. */
const DECIMALS = 2

/** A value that stands this small a part of a step beside a mark is that mark, and solver's noise. */
const NOISE_STEPS = 1e-5

/** Marks tried in turn: the first may stand short by the noise and then be refused. */
const TRIES = 2

/**
 * Values for a limit that must give way as far as `value`, nearest first: the mark at or beyond it, away
 * from the limit's side, and the next one; none of a share outside 0 to 100 %.
 */
export function marksBeyond(value: number, limit: Limit): number[] {
  const step = limit.kind === 'measure' && limit.subject === COST ? MONEY_STEP : STEP
  const steps = value / step
  const down = limit.side === 'min'
  const first = down ? Math.floor(steps + NOISE_STEPS) : Math.ceil(steps - NOISE_STEPS)
  const marks = Array.from({ length: TRIES }, (_, k) =>
    Number(((first + (down ? -k : k)) * step).toFixed(DECIMALS)),
  )
  if (limit.kind === 'measure') return marks
  return [...new Set(marks.map((mark) => Math.min(WHOLE_PERCENT, Math.max(0, mark))))]
}
