import { type Blend, normalised } from '../../blend/blend'
import type { LinearProgram } from '../../lp/program'
import { Simplex } from '../../lp/simplex/simplex'
import { WHOLE_PERCENT } from '../../units'
import type { BlendSpace } from '../space/blend-space'
import { UnsoundAnswer } from '../../lp/unsound-answer'
import type { NearOptimal } from './near-optimal'
import { type Slack, slackAmount } from './slack'

/**
 * Near-optimal blends for the least total change from a target. The change is not a sum over shares, so
 * this has a simplex of its own, in which a share is kept + added: what it has up to the target's share
 * and what it has above it. All shares and all of the target's add to 100, so what is added anywhere is
 * taken away elsewhere, and the total change is twice what is added: one row, and one more column for
 * each oil of the target. (A blend that adds while it keeps less than it could only overstates its change.)
 */
export function nearTarget(
  space: BlendSpace,
  target: Blend,
  slack: Slack,
): NearOptimal | undefined {
  const split = splitShares(space, normalised(target))
  const simplex = new Simplex(split.program)
  simplex.setCost(split.change)
  const least = simplex.solve()
  if (least.status !== 'optimal') return undefined
  const [best, bestValue] = [split.sharesOf(least.x), least.objective]
  const limit = bestValue + slackAmount(slack, bestValue)
  simplex.addRow({ coefficients: split.change, lower: -Infinity, upper: limit })
  return {
    best,
    bestValue,
    limit,
    corner(cost) {
      simplex.setCost(split.costOf(cost))
      const found = simplex.solve()
      if (found.status !== 'optimal')
        throw new UnsoundAnswer('Blends near the best were lost while looking at them')
      return split.sharesOf(found.x)
    },
    close: () => undefined,
  }
}

interface SplitShares {
  /** The space's limits over columns of what is added, one per oil, then of what is kept. */
  readonly program: LinearProgram
  /** Total change per percent of each column, in percentage points. */
  readonly change: Float64Array
  costOf(costOfShares: Float64Array): Float64Array
  sharesOf(columns: Float64Array): Float64Array
}

function splitShares({ oils, program }: BlendSpace, target: Blend): SplitShares {
  const count = oils.length
  const aim = oils.map((oil) => target[oil] ?? 0)
  const kept = [...aim.keys()].filter((oil) => (aim[oil] ?? 0) > 0)
  const costOf = (values: ArrayLike<number>) =>
    Float64Array.from([...Array.from(values), ...kept.map((oil) => values[oil] ?? NaN)])
  const least = (oil: number) => program.lower[oil] ?? NaN
  const most = (oil: number) => program.upper[oil] ?? NaN
  return {
    program: {
      cost: new Float64Array(count + kept.length),
      lower: [
        ...aim.map((share, oil) => Math.max(0, least(oil) - share)),
        ...kept.map((oil) => Math.min(least(oil), aim[oil] ?? NaN)),
      ],
      upper: [
        ...aim.map((share, oil) => Math.max(0, most(oil) - share)),
        ...kept.map((oil) => Math.min(most(oil), aim[oil] ?? NaN)),
      ],
      rows: program.rows.map((row) => ({ ...row, coefficients: costOf(row.coefficients) })),
    },
    change: Float64Array.from({ length: count + kept.length }, (_, j) => (j < count ? 2 : 0)),
    costOf,
    sharesOf(columns) {
      const shares = columns.slice(0, count)
      kept.forEach((oil, place) => {
        shares[oil] = Math.min(
          WHOLE_PERCENT,
          (shares[oil] ?? NaN) + (columns[count + place] ?? NaN),
        )
      })
      return shares
    },
  }
}
