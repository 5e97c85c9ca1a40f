import { library } from '../../../../src/data/library'
import { demo } from '../../../../src/data/demo'
import { COST } from '../../../../src/domain/blend/measure'
import { barMeasures } from '../../../../src/domain/blend/compare'
import type { Blend, Prices } from '../../../../src/domain/blend/blend'
import { type Brief, pricesOf } from '../../../../src/domain/optimise/brief/brief'
import type { StudyAnswer, StudyResult } from '../../../../src/domain/optimise/studies/question'

/** The demo's shelf without its wishes; palm is banned and so not on it. */
export const SHELF: Brief = {
  oils: Object.fromEntries(
    demo.shelf
      .filter(({ banned }) => !banned)
      .map(({ oil, pricePerKg, min, max }) => [oil, { pricePerKg, min, max }]),
  ),
  groups: [],
  measures: {},
  goal: { minimise: COST },
}

/** Prices of the whole demo shelf, palm's too. */
export const PRICES: Prices = {
  ...pricesOf(SHELF),
  palm: demo.shelf.find(({ oil }) => oil === 'palm')?.pricePerKg ?? NaN,
}

/** A blend of the shelf that has room to change in every direction. */
export const KITCHEN: Blend = {
  coconut: 28,
  shea: 20,
  olive: 24,
  'sunflower-high-oleic': 18,
  'rapeseed-low-erucic': 10,
}

/** A bar with palm, which the shelf has not. */
export const WITH_PALM: Blend = { coconut: 28, palm: 34, olive: 22, 'rapeseed-low-erucic': 16 }

/** A tolerance of one tie on every measure of the bar. */
export const ONE_TIE = Object.fromEntries(
  barMeasures(library.measures).map(({ id, tie }) => [id, tie]),
)

/** The results of an answer that has some; throws with the answer where it has none. */
export function resultsOf(answer: StudyAnswer): readonly StudyResult[] {
  if (answer.status !== 'found') throw new Error(JSON.stringify(answer))
  return answer.results
}

/** The first of some results. */
export function first(results: readonly StudyResult[]): StudyResult {
  const [result] = results
  if (!result) throw new Error('There is no result')
  return result
}
