import { type Blend, weightAverage } from '../../blend/blend'
import { type Library, oilOf } from '../../blend/library'
import { blendValue } from '../../blend/values'
import { drawFigures, type Draws, type Figure } from './draws'
import { lotValue } from './lot'
import { lotSpan } from './lot-span'
import { type Quantile, quantilesOf } from '../../chance/quantiles'
import { type Acids, lotSaponificationValue, saponificationSpan } from './saponification'
import type { Ends } from '../../interval'

/** How a figure of a blend moves from lot to lot, in the figure's unit. */
export interface Spread {
  /** With every oil at its typical figures. */
  readonly typical: number
  /** The exact ends over all lots; draws seldom come near them. */
  readonly span: Ends
  /** Values that 5, 25, 50, 75 and 95 in 100 draws stay below. */
  readonly quantiles: readonly Quantile[]
}

/** What many draws of lots make of a blend. */
export interface BlendSpread {
  /** Every measure made of fatty acids, by id, in points. Cost does not vary with lots. */
  readonly measures: Readonly<Record<string, Spread>>
  /**
   * mg KOH per g of oils. With alkali reckoned at the typical value for a superfat s (fraction), lots
   * of value v end with a superfat of 1 - (1 - s) × typical / v.
   */
  readonly saponificationValue: Spread
}

/**
 * Draws by which the 5 and 95 % values stand still within about a fiftieth of a standard deviation:
 * the standard error of the 5 % quantile of a normal figure is 2.1 standard deviations / √count.
 */
export const DEFAULT_DRAWS: Draws = { count: 10_000, seed: 1 }

/**
 * How the measures and the saponification value of a blend spread when each of its oils comes from a
 * random lot. Deterministic for a seed.
 */
export function spreadOf(
  blend: Blend,
  library: Library,
  acids: Acids,
  draws: Draws = DEFAULT_DRAWS,
): BlendSpread {
  const measures = library.measures.filter((measure) => 'weights' in measure)
  const ofMeasures = measures.map(
    (measure): Figure =>
      (oil) =>
        lotValue(measure, oil),
  )
  const ofLye: Figure = (oil) => (lot) => lotSaponificationValue(oil, lot, acids)
  const [lye, ...points] = drawFigures(blend, library, [ofLye, ...ofMeasures], draws)
  const told = (typical: number, span: Ends, drawn: Float64Array | undefined): Spread => {
    return { typical, span, quantiles: quantilesOf(drawn ?? new Float64Array()) }
  }
  const spreads = measures.map(({ id }, place): [string, Spread] => {
    const typical = blendValue(library, {}, id, blend)
    return [id, told(typical, lotSpan(library, {}, id, blend), points[place])]
  })
  const typicalLye = weightAverage(blend, (id) => oilOf(library, id).saponificationValue.typical)
  return {
    measures: Object.fromEntries(spreads),
    saponificationValue: told(typicalLye, saponificationSpan(library, acids, blend), lye),
  }
}
