import type { Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { COST } from '../../blend/measure'
import type { Brief } from '../brief/brief'
import { checkBrief } from '../brief/check-brief'
import { withoutWishesOn } from '../brief/ranges'

/** A brief that can be asked what prices do to it, or what is wrong with it. */
export type Prepared =
  | {
      readonly status: 'ready'
      /** The brief with its wish on cost set aside, as prices would move that. */
      readonly brief: Brief
      /** The most that cost was wished to be, money per kg; undefined where nothing was. */
      readonly costMost: number | undefined
    }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/**
 * A brief ready for other prices: sound, and after the least cost. A most for cost is set aside, since the
 * best blend keeps it just as long as the least cost does. A least for cost has no such answer and is
 * refused.
 */
export function prepared(brief: Brief, library: Library): Prepared {
  const { min, max } = brief.measures[COST] ?? {}
  const problems = [...checkBrief(brief, library), ...goalProblems(brief)]
  if (min !== undefined)
    problems.push({
      path: `measures.${COST}.min`,
      message: `Cost is asked to be at least ${min}, and prices alone would then decide the blend. Take it out.`,
    })
  if (problems.length > 0) return { status: 'invalid', problems }
  return { status: 'ready', brief: withoutWishesOn(brief, [COST]), costMost: max }
}

function goalProblems({ goal }: Brief): Problem[] {
  if ('minimise' in goal && goal.minimise === COST) return []
  const message =
    'Only a brief after the least cost switches formulas as prices move. Ask for { "minimise": "cost" }.'
  return [{ path: 'goal', message }]
}
