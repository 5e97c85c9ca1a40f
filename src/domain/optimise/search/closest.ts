import { type Blend, normalised } from '../../blend/blend'
import type { LinearRow } from '../../lp/program'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import { anyBlend, type RuledQuestion } from './question'
import { NOISE_PERCENT } from '../../noise'

/** A part of what a blend keeps of a target: up to `most` percent, each counting for `worth`. */
interface KeptPart {
  readonly oil: number
  readonly most: number
  readonly worth: number
}

/**
 * The question of the blend with the least total change from a target, in percentage points. Blend and
 * target both add to 100, so what is added anywhere is taken away elsewhere, and the total change is
 * 200 less twice what both have in common: Σ min(share, target). One variable for each oil of the
 * target holds what is kept of it, at most the share and at most the target's: fewer than a rise and a
 * fall for every oil, and the same optimum.
 */
export function closestQuestion(space: BlendSpace, target: Blend): RuledQuestion {
  const any = anyBlend(space)
  const { program, rules, shareCount } = any
  const parts = keptParts(space.oils, normalised(target), rules.step)
  const zeros = parts.map(() => 0)
  const count = shareCount + parts.length
  const rows = program.rows.map((row) => ({
    ...row,
    coefficients: longer(row.coefficients, zeros),
  }))
  return {
    program: {
      cost: Float64Array.from(
        { length: count },
        (_, j) => -2 * (parts[j - shareCount]?.worth ?? 0),
      ),
      lower: longer(program.lower, zeros),
      upper: longer(
        program.upper,
        parts.map(({ most }) => most),
      ),
      rows: [...rows, ...keptRows(parts, shareCount)],
    },
    rules: { ...rules, leastUse: longer(rules.leastUse, zeros) },
    shareCount,
    sign: 1,
    offset: 2 * WHOLE_PERCENT,
  }
}

/**
 * With steps every variable is a whole number of them, so a target between two steps has two parts: up
 * to the step below it, and one step more, which counts only as far as the target goes.
 */
function keptParts(oils: readonly string[], target: Blend, step: number): KeptPart[] {
  return oils.flatMap((id, oil): KeptPart[] => {
    const share = target[id] ?? 0
    const below = step > 0 ? Math.floor((share + NOISE_PERCENT) / step) * step : share
    const rest = share - below
    const whole = { oil, most: below, worth: 1 }
    const part = { oil, most: step, worth: rest / step }
    return [...(below > 0 ? [whole] : []), ...(rest > NOISE_PERCENT && step > 0 ? [part] : [])]
  })
}

/** No more of an oil is kept than there is: share − its parts ≥ 0. */
function keptRows(parts: readonly KeptPart[], shareCount: number): LinearRow[] {
  const oils = [...new Set(parts.map(({ oil }) => oil))]
  return oils.map((oil) => {
    const coefficients = new Float64Array(shareCount + parts.length)
    coefficients[oil] = 1
    parts.forEach((part, place) => {
      if (part.oil === oil) coefficients[shareCount + place] = -1
    })
    return { coefficients, lower: 0, upper: Infinity }
  })
}

function longer(values: ArrayLike<number>, more: readonly number[]): Float64Array {
  return Float64Array.from([...Array.from(values), ...more])
}
