import type { Problem } from '../../blend/check-blend'
import type { Library } from '../../blend/library'
import { checkOrder } from '../check/check-order'
import type { BatchFacts } from '../order/facts'
import { type LyeHeat, lyeHeat, USUAL_START_C } from '../react/heat'
import { ceilingInWords } from '../react/heat-advice'
import type { BatchOrder } from '../order/order'
import type { Reckoning } from '../weigh/reckoning'
import type { Remedy } from '../order/remedy'
import { roundedDown } from '../weigh/rounding'
import { oilGramsOf } from './size'
import { waterPath } from '../order/water-path'
import { weightsFor } from '../weigh/weights'

/** Why a lye is not to be made as ordered, and what would make it fit to be. */
export interface HeatBlock extends Problem {
  readonly code: 'lyeBoils'
  readonly ceilingC: number
  readonly boilsC: number
  readonly uncertaintyK: number
  /** Changes of the order, each of which alone keeps the ceiling under the boiling point. */
  readonly remedies: readonly Remedy[]
}

/** The part of the plain water to take as ice: common practice. */
const ICE_PART = 0.5

/** Water from a refrigerator, °C. */
const FRIDGE_C = 5

/** Weaker lyes to offer, percent, the nearest first. */
const WEAKER_PERCENT = [33, 30, 28, 25, 22, 20]

/**
 * The block on a lye whose ceiling lies above its boiling point, its own error taken off: it could throw itself
 * out of the jug. Null
 * where it stays below, and without tables. The problem stands at the water's temperature where cooler water
 * is the answer, else at the water.
 */
export function heatBlock(reckoning: Reckoning, heat: LyeHeat | null): HeatBlock | null {
  if (heat?.level !== 'boils') return null
  const ways = waysOut(reckoning, heat)
  const cooler = ways.some(({ change }) => (change.lye?.startC ?? heat.startC) < heat.startC)
  const message =
    `From ${heat.startC} °C this lye could reach ${ceilingInWords(heat)}: it would boil out of the jug. ` +
    `${adviceFrom(ways)} Nothing is printed before.`
  const path = cooler ? 'lye.startC' : waterPath(reckoning.order)
  return {
    code: 'lyeBoils',
    path,
    message,
    ceilingC: heat.ceilingC,
    boilsC: heat.boilsC,
    uncertaintyK: heat.uncertaintyK,
    remedies: ways.map(({ says, change }) => ({ says, change, answers: path })),
  }
}

/** The remedies for an order that was refused because its lye would boil; none for any other. */
export function heatRemedies(order: BatchOrder, library: Library, facts: BatchFacts): Remedy[] {
  if (checkOrder(order, library, facts).length > 0) return []
  const oilG = oilGramsOf(order, library, facts)
  if (!(oilG > 0)) return []
  const reckoning = { order, weights: weightsFor(order, oilG, library, facts), library, facts }
  return [...(heatBlock(reckoning, lyeHeat(reckoning) ?? null)?.remedies ?? [])]
}

/** Ice for half of the plain water where a lye may boil and has none yet. */
export function iceRemedies(reckoning: Reckoning, heat: LyeHeat | null): Remedy[] {
  const way = heat?.level === 'mayBoil' ? iceWay(reckoning) : undefined
  return way ? [{ answers: 'heat', says: way.says, change: way.change }] : []
}

interface Way {
  readonly says: string
  /** As it stands in a sentence: "let the water cool to 20 °C". */
  readonly words: string
  readonly change: Partial<BatchOrder>
}

/** Cooler water, ice and weaker lye, as far as each alone keeps it from boiling. */
function waysOut(reckoning: Reckoning, heat: LyeHeat): Way[] {
  const works = ({ change }: Way) => {
    const order = { ...reckoning.order, ...change }
    const { library, facts, weights } = reckoning
    const oilG = Object.values(weights.oilGrams).reduce((g, one) => g + one, 0)
    const changed = { ...reckoning, order, weights: weightsFor(order, oilG, library, facts) }
    return lyeHeat(changed)?.level !== 'boils'
  }
  const cooler = coolerWays(reckoning, heat).find(works)
  const ice = iceWay(reckoning)
  const weaker = weakerWays(reckoning, heat).find(works)
  return [cooler, ice && works(ice) ? ice : undefined, weaker].filter((way) => way !== undefined)
}

function coolerWays({ order }: Reckoning, { startC }: LyeHeat): Way[] {
  return [USUAL_START_C, FRIDGE_C]
    .filter((cooler) => cooler < startC)
    .map((cooler) => ({
      says: `Water at ${cooler} °C`,
      words:
        cooler === FRIDGE_C
          ? `chill the water to ${FRIDGE_C} °C`
          : `let the water cool to ${cooler} °C`,
      change: { lye: { ...order.lye, startC: cooler } },
    }))
}

function iceWay({ order, weights }: Reckoning): Way | undefined {
  const iceGrams = roundedDown(weights.water.plainG * ICE_PART, order.scale?.oilStepG)
  if ((order.lye?.iceGrams ?? 0) > 0 || iceGrams <= 0) return undefined
  return {
    says: 'Half the water as ice',
    words: 'take half the water as ice',
    change: { lye: { ...order.lye, iceGrams } },
  }
}

function weakerWays({ order }: Reckoning, { pureConcentrationPercent }: LyeHeat): Way[] {
  if ('onlyFromLiquids' in order.water) return []
  return WEAKER_PERCENT.filter((percent) => percent < pureConcentrationPercent).map((percent) => ({
    says: `Lye at ${percent} %`,
    words: `take more water (lye at ${percent} %)`,
    change: { water: { lyeConcentration: percent } },
  }))
}

/** "Let the water cool to 20 °C, or take more water (lye at 30 %)." */
function adviceFrom(ways: readonly Way[]): string {
  if (ways.length === 0) return 'Begin with cooler water, more water, ice, or less acid.'
  const words = ways.map((way) => way.words).join(', or ')
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
}
