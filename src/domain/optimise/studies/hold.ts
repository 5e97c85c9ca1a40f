import { type Prices, normalised } from '../../blend/blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import type { MeasureValues } from '../../blend/compare'
import type { Brief, Limits } from '../brief/brief'
import { rulesAmong } from './keep-rules'
import type { HeldStudy } from './question'

/**
 * Answers rest on limits, give or take the solver's noise. So limits stand this part of a tolerance
 * inside it: what is held within a tie then is a tie, and what gains a tie can be told.
 */
export const INSIDE_PART = 1e-5

/** A brief to study in, and the oils that had to stay out of it. */
export interface HeldBrief {
  readonly brief: Brief
  /** Oils without a price, where cost is held or sought. */
  readonly leftOut: readonly string[]
}

/**
 * The maker's shelf with the measures held near a blend's own in place of the wishes, or beside them
 * where they are to be kept. Wishes hold for typical lots only. `free` is not held: it is what the study
 * is about. Where cost is held or sought, oils without a price can take no part.
 */
export function heldBrief(
  brief: Brief,
  study: HeldStudy,
  values: MeasureValues,
  library: Library,
  free?: string,
): HeldBrief {
  const asksCost = free === COST || study.tolerances[COST] !== undefined
  const leftOut = asksCost ? unpriced(brief, study.prices) : []
  const oils = Object.entries(brief.oils).filter(([oil]) => !leftOut.includes(oil))
  const measures = library.measures.map(({ id }): [string, Limits] => {
    const wish = study.keepWishes ? (brief.measures[id] ?? {}) : {}
    return [id, id === free ? wish : meet(wish, around(values[id], study.tolerances[id]))]
  })
  return {
    leftOut,
    brief: {
      oils: Object.fromEntries(oils),
      groups: brief.groups.map((group) => ({
        ...group,
        oils: group.oils.filter((oil) => !leftOut.includes(oil)),
      })),
      measures: Object.fromEntries(measures.map(([id, { min, max }]) => [id, { min, max }])),
      goal: { closestTo: normalised(study.base) },
      rules: rulesAmong(brief.rules, (oil) => oil in brief.oils && !leftOut.includes(oil), {
        steps: true,
      }),
    },
  }
}

function unpriced(brief: Brief, prices: Prices): string[] {
  return Object.keys(brief.oils).filter((oil) => !(oil in prices))
}

function around(value: number | undefined, tolerance: number | undefined): Limits {
  if (value === undefined || tolerance === undefined) return {}
  const inside = tolerance * (1 - INSIDE_PART)
  return { min: value - inside, max: value + inside }
}

/** What keeps both ranges; its ends cross where nothing does. */
function meet(a: Limits, b: Limits): Limits {
  const least = Math.max(a.min ?? -Infinity, b.min ?? -Infinity)
  const most = Math.min(a.max ?? Infinity, b.max ?? Infinity)
  return {
    min: least === -Infinity ? undefined : least,
    max: most === Infinity ? undefined : most,
  }
}
