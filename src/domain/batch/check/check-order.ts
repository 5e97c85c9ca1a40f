import { totalShare } from '../../blend/blend'
import { checkBlend, plain, problem, type Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { percentFromFraction, WHOLE_PERCENT } from '../../units'
import { additionProblems } from './check-additions'
import { alkaliProblems } from './check-alkali'
import { fragranceProblems } from './check-fragrance'
import { lotProblems } from './check-lots'
import { fractionSlip, notNegative } from './check-numbers'
import { paperProblems } from './check-papers'
import { sizeProblems } from './check-size'
import { waterProblems } from './check-water'
import { type BatchFacts, NO_FACTS } from '../order/facts'
import type { BatchOrder } from '../order/order'

export { dissolving, MOST_LYE_CONCENTRATION_PERCENT } from '../order/dissolving'

/** Step of the finest balance that stands outside a laboratory, in g: common practice. */
const FINEST_STEP_G = 0.001

/** No scale tells a superfat this small from none, percent: it is a fraction, 0.05 for 5 %. */
const MOST_FRACTION_PERCENT = 0.25

/** All that is wrong with a batch order; empty when it can be weighed out. */
export function checkOrder(
  order: BatchOrder,
  library: Library,
  facts: BatchFacts = NO_FACTS,
): Problem[] {
  return [
    ...checkBlend(order.blend, library, 'blend'),
    ...sizeProblems(order),
    ...alkaliProblems(order),
    ...superfatProblems(order.superfat),
    ...waxProblems(order, library),
    ...ownOilProblems(order, library),
    ...waterProblems(order),
    ...lotProblems(order, library),
    ...additionProblems(order, library, facts),
    ...fragranceProblems(order, facts),
    ...paperProblems(order),
    ...scaleProblems(order),
  ]
}

function superfatProblems(superfat: number): Problem[] {
  const slip = fractionSlip('superfat', superfat, 'superfat', MOST_FRACTION_PERCENT)
  if (slip.length > 0) return slip
  if (superfat >= 0 && superfat < WHOLE_PERCENT) return []
  const reason =
    superfat < 0
      ? 'Below 0 the bar keeps free lye and burns skin.'
      : 'At 100 % no lye is left to make soap.'
  return [problem('superfat', `The superfat is ${superfat} %. Give 0 to under 100 %. ${reason}`)]
}

/** Oils of a maker's own whose figures do not hold together are for looking at, not for lye. */
function ownOilProblems({ blend, extraFat }: BatchOrder, library: Library): Problem[] {
  return [
    ...Object.keys(blend).map((id) => ({ id, path: `blend.${id}` })),
    ...Object.keys(extraFat?.oils ?? {}).map((id) => ({ id, path: `extraFat.oils.${id}` })),
  ].flatMap(({ id, path }) => {
    const reason = library.oils.get(id)?.own?.noLye
    return reason === undefined ? [] : [problem(path, reason)]
  })
}

/** Beyond this much wax a batch has too little fat to make soap of, percent of the blend: an assumption. */
const MOST_WAX_PERCENT = 50

/** Nobody knows how much of a wax lye reaches, so that no lye can be reckoned for a batch mostly of it. */
function waxProblems({ blend }: BatchOrder, library: Library): Problem[] {
  const total = totalShare(blend)
  const waxes = Object.entries(blend).filter(
    ([id]) => library.oils.get(id)?.kind === 'wax-ester' || library.oils.get(id)?.reacts,
  )
  const percent = percentFromFraction(totalShare(Object.fromEntries(waxes)) / total)
  if (!(percent > MOST_WAX_PERCENT)) return []
  const names = waxes.map(([id]) => library.oils.get(id)?.name ?? id).join(' and ')
  return [
    problem(
      'blend',
      `${names} is a wax and makes up ${plain(percent)} % of the blend. Lye hardly reaches a wax, and nobody can say how much of this one would turn to soap. Give at most ${MOST_WAX_PERCENT} %.`,
    ),
  ]
}

function scaleProblems({ scale }: BatchOrder): Problem[] {
  if (!scale) return []
  return [
    ...stepProblems('scale.oilStepG', scale.oilStepG),
    ...stepProblems('scale.lyeStepG', scale.lyeStepG),
    ...notNegative('scale.oilErrorG', scale.oilErrorG, 'g'),
    ...notNegative('scale.lyeErrorG', scale.lyeErrorG, 'g'),
  ]
}

function stepProblems(path: string, stepG: number): Problem[] {
  if (Number.isFinite(stepG) && stepG >= FINEST_STEP_G) return []
  const message = `The scale shows steps of ${stepG} g. Give its step, ${FINEST_STEP_G} g or more.`
  return [problem(path, message)]
}
