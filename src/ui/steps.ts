import type { Steps } from '../charts/gauge'
import type { Measure } from '../domain/blend/measure'

const POINT_STEPS: Steps = {
  tick: 5,
  key: 1,
  fine: 0.1,
  page: 5,
  drag: 0.5,
  decimals: 1,
  endDecimals: 0,
}
const MONEY_STEPS: Steps = {
  tick: 0.5,
  key: 0.05,
  fine: 0.01,
  page: 0.5,
  drag: 0.05,
  decimals: 2,
  endDecimals: 2,
}

/** How a measure's gauge and map move: in points, or in money per kg. */
export function stepsOf(measure: Measure): Steps {
  return measure.unit === 'points' ? { ...POINT_STEPS, tick: measure.tie } : MONEY_STEPS
}
