import { library } from '../../src/data/library'
import { COST } from '../../src/domain/blend/measure'
import type { Brief, Goal, Limits } from '../../src/domain/optimise/brief/brief'
import { at, type Random, shuffled } from './random'

const OILS = [...library.oils.keys()]
const POINTS = library.measures.map(({ id }) => id).filter((id) => id !== COST)

/** Decades of the cheapest and of the dearest kilogram in one brief: the eleven that a slip may span. */
const DECADES = { least: -6, most: 5 }

/** A sound brief whose prices lie anywhere between a millionth and a hundred thousand of money per kg. */
export function widelyPriced(random: Random): Brief {
  const ids = shuffled(random, OILS.length).slice(0, random.int(2, 12))
  const oils = ids.map((k) => [at(OILS, k), { pricePerKg: price(random) }] as const)
  const measures: Record<string, Limits> = {}
  if (random.chance(0.5)) measures[COST] = costLimits(random)
  for (let k = random.int(0, 2); k > 0; k--) {
    const middle = 20 + 50 * random.next()
    measures[at(POINTS, random.int(0, POINTS.length - 1))] = {
      min: Math.round(middle - 10),
      max: Math.round(middle + 10),
    }
  }
  return { oils: Object.fromEntries(oils), groups: [], measures, goal: goalOf(random, ids) }
}

function price(random: Random): number {
  const { least, most } = DECADES
  return Number((10 ** (least + (most - least) * random.next())).toPrecision(random.int(1, 5)))
}

/** Any limit of cost among such prices: a decade says more of them than a middle. */
function costLimits(random: Random): Limits {
  const one = price(random)
  const other = price(random)
  const [min, max] = [Math.min(one, other), Math.max(one, other)]
  return random.pick<Limits>([{ min }, { max }, { min, max }, { min: one, max: one }])
}

function goalOf(random: Random, ids: readonly number[]): Goal {
  if (random.chance(0.5)) return random.chance(0.7) ? { minimise: COST } : { maximise: COST }
  if (random.chance(0.3))
    return { closestTo: Object.fromEntries(ids.map((k) => [at(OILS, k), 100 / ids.length])) }
  return { maximise: at(POINTS, random.int(0, POINTS.length - 1)) }
}
