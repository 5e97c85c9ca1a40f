import { library } from '../../../../src/data/library'
import type { Blend } from '../../../../src/domain/blend/blend'
import type { Brief, Goal, Limits, ShelfOil } from '../../../../src/domain/optimise/brief/brief'
import { lotSpan } from '../../../../src/domain/optimise/lots/lot-span'

/** Invented prices per kg. */
const PRICES: Readonly<Record<string, number>> = {
  olive: 7.2,
  coconut: 3.9,
  palm: 2.8,
  'palm-kernel': 3.6,
  castor: 6.5,
  shea: 9.5,
  'cocoa-butter': 14,
  'tallow-beef': 4.1,
  lard: 3.2,
  'sunflower-high-oleic': 4.4,
  'rapeseed-low-erucic': 3.1,
  avocado: 12,
  babassu: 8.8,
  'rice-bran': 5.9,
}

const SHELF: Readonly<Record<string, ShelfOil>> = Object.fromEntries(
  Object.entries(PRICES).map(([oil, pricePerKg]) => [oil, { pricePerKg, max: 60 }]),
)

/** Blends of the reference bars' kind, whose spans the briefs below ask for. */
const BARS: Readonly<Record<string, Blend>> = {
  'olive and butters': { olive: 45, coconut: 25, shea: 15, 'cocoa-butter': 10, castor: 5 },
  'tallow and lard': { 'tallow-beef': 40, lard: 25, coconut: 20, olive: 15 },
  'palm and kernel': { palm: 35, 'palm-kernel': 20, 'rapeseed-low-erucic': 35, castor: 10 },
  'soft oils': { 'rice-bran': 30, avocado: 20, babassu: 30, 'sunflower-high-oleic': 20 },
}

const GOALS: readonly Goal[] = [
  { minimise: 'cost' },
  { maximise: 'lather' },
  { minimise: 'hardness' },
  { closestTo: { olive: 60, palm: 40 } },
]

/** A robust brief that some blend keeps, with a name for the test. */
export interface RobustCase {
  readonly name: string
  readonly brief: Brief
}

/**
 * Robust briefs that ask for just what a bar spans on four measures, so that the bar is one answer;
 * the goals pull away from it until some wish stands at its limit in the worst lots.
 */
export const ROBUST: readonly RobustCase[] = Object.entries(BARS).map(([name, bar], k) => ({
  name,
  brief: {
    oils: SHELF,
    groups: [],
    measures: Object.fromEntries(
      ['hardness', 'lather', 'conditioning', 'keeping'].map((id) => [id, spanOf(bar, id)]),
    ),
    goal: GOALS[k % GOALS.length] ?? { minimise: 'cost' },
    robust: true,
  },
}))

function spanOf(bar: Blend, measure: string): Limits {
  const { low, high } = lotSpan(library, {}, measure, bar)
  return { min: low, max: high }
}
