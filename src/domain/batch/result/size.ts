import type { Library } from '../../blend/library'
import { fractionFromPercent } from '../../units'
import { outcomeOf } from '../react/balance'
import { curePlan } from '../react/cure'
import { type BatterDensity, densityOfComposition } from '../react/density'
import type { BatchFacts } from '../order/facts'
import { type Bars, type Mould, pouredMl } from '../order/mould'
import { BATTER_DENSITY_G_PER_ML, type BatchOrder } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'
import { weightsFor } from '../weigh/weights'

/** Rounds of finding a size at most; four or five are usual, as what is poured grows by straight lines. */
const MOST_ROUNDS = 60

/** A size is found when a round moves it by no more than this part of it. */
const FOUND = 1e-12

/** A round takes no more of the size away than leaves this part, so that it never falls to nothing. */
const LEAST_LEFT = 1 / 16

/**
 * Bars ordered by the weight to declare get this much more, as a part: rounding to the scale must not leave
 * their mean under the label. An assumption; cutting by eye wants more.
 */
const DECLARED_MARGIN = 0.005

/** Oils to begin with, g. */
const FIRST_GUESS_G = 1000

/**
 * Oils in g: as ordered, or as many as make the batter that fills the mould or gives the bars. What is
 * poured grows with the oils by straight lines that bend where liquids bring all the water, and the wanted
 * weight hangs a little on the composition; so the size is found by Newton's rounds, W + (wanted − poured) /
 * slope. 0 where what is ordered in grams is by itself more than the size asked for.
 */
export function oilGramsOf(order: BatchOrder, library: Library, facts: BatchFacts): number {
  if (order.oilGrams !== undefined) return order.oilGrams
  const exact = { ...order, scale: undefined }
  const reckoned = (oilG: number): Reckoning => ({
    order: exact,
    weights: weightsFor(exact, oilG, library, facts),
    library,
    facts,
  })
  let oilG = FIRST_GUESS_G
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const [now, twice] = [reckoned(oilG), reckoned(2 * oilG)]
    const slope = (pouredG(twice) - pouredG(now)) / oilG
    const next = Math.max(oilG + (wantedG(now) - pouredG(now)) / slope, oilG * LEAST_LEFT)
    const moved = Math.abs(next - oilG)
    oilG = next
    if (!(moved > FOUND * oilG)) break
  }
  return pouredG(reckoned(0)) < wantedG(reckoned(oilG)) ? oilG : 0
}

/** What goes into the mould: all weighed, less what the cook boils off, g. */
function pouredG({ weights }: Reckoning): number {
  return weights.totalGrams - weights.water.cookG
}

/** What is to be poured, g, for a batch of about this composition. */
function wantedG(reckoning: Reckoning): number {
  const { mould, bars } = reckoning.order
  if (mould) return pouredMl(mould) * batterDensity(mould, reckoning).gPerMl
  if (!bars) throw new Error('A checked order has a weight of oils, a mould or bars')
  const trim = 1 + fractionFromPercent(bars.trimPercent ?? 0)
  return bars.count * bars.grams * trim * wetPerWanted(bars, reckoning)
}

/** How many g of wet bar give one g of what is meant: wet, cured, or as declared (the driest). */
function wetPerWanted({ weight }: Bars, reckoning: Reckoning): number {
  if (weight === 'wet') return 1
  const { freshG, curedG, driestG } = curePlan(reckoning, outcomeOf(reckoning))
  return weight === 'cured' ? freshG / curedG : (freshG / driestG) * (1 + DECLARED_MARGIN)
}

/**
 * The density a mould is filled by: as stated; the usual 1.03 for a stated volume (what batch files have
 * always meant by it) and where no table of lye is at hand; else from the composition.
 */
export function batterDensity(mould: Mould, reckoning: Reckoning): BatterDensity {
  const composed = densityOfComposition(reckoning)
  const stated = mould.densityGPerMl
  if (stated !== undefined)
    return { gPerMl: stated, lowGPerMl: stated, highGPerMl: stated, from: 'stated' }
  if (composed && !('volumeMl' in mould)) return composed
  return {
    gPerMl: BATTER_DENSITY_G_PER_ML,
    lowGPerMl: USUAL_DENSITY.low,
    highGPerMl: USUAL_DENSITY.high,
    from: 'usual',
  }
}

/** Batter lies between these, g/ml: common practice. */
const USUAL_DENSITY = { low: 1, high: 1.05 }
