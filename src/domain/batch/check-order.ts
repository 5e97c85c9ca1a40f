import { checkBlend, problem, type Problem } from '../blend/check-blend'
import type { Library } from '../blend/library'
import { WHOLE_PERCENT } from '../units'
import { additionProblems } from './check-additions'
import { alkaliProblems } from './check-alkali'
import { fragranceProblems } from './check-fragrance'
import { lotProblems } from './check-lots'
import { notNegative } from './check-numbers'
import { paperProblems } from './check-papers'
import { sizeProblems } from './check-size'
import { waterProblems } from './check-water'
import { type BatchFacts, NO_FACTS } from './facts'
import type { BatchOrder } from './order'

export { dissolving, MOST_LYE_CONCENTRATION_PERCENT } from './dissolving'

/** Step of the finest balance that stands outside a laboratory, in g: common practice. */
const FINEST_STEP_G = 0.001

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
    ...waterProblems(order),
    ...lotProblems(order, library),
    ...additionProblems(order, library, facts),
    ...fragranceProblems(order, facts),
    ...paperProblems(order),
    ...scaleProblems(order),
  ]
}

function superfatProblems(superfat: number): Problem[] {
  if (superfat >= 0 && superfat < WHOLE_PERCENT) return []
  const reason =
    superfat < 0
      ? 'Below 0 the bar keeps free lye and burns skin.'
      : 'At 100 % no lye is left to make soap.'
  return [problem('superfat', `The superfat is ${superfat} %. Give 0 to under 100 %. ${reason}`)]
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
