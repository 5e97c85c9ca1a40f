import { library } from '../../src/data/library'
import { COST } from '../../src/domain/blend/measure'
import type { Brief, Goal, Limits } from '../../src/domain/optimise/brief/brief'
import { type Limit, limitsOf, withLimit } from '../../src/domain/optimise/brief/limits'
import { BlendSpace, negated } from '../../src/domain/optimise/space/blend-space'
import { at, type Random, shuffled } from './random'

/*
 * Briefs whose limits touch: one measure is held to a typed value, and another is asked for the very most
 * or least that leaves it, as far as it was typed. So they hold or clash by the last decimal alone.
 */

const OILS = [...library.oils.keys()]
const MEASURES = library.measures.map(({ id }) => id)

/** Decimals with which people type, from prices to what a program printed. */
const MOST_DECIMALS = 14

/** What limits are moved by: a part in a thousand million, beside what any program prints. */
export const NUDGE = 1e-9

/** A sound brief with prices whose limits touch. */
export function touchingBrief(random: Random): Brief {
  const open = shelfOf(random)
  const held = random.int(1, 2)
  const order = shuffled(random, MEASURES.length).map((k) => at(MEASURES, k))
  let brief = open
  for (const id of order.slice(0, held)) brief = withEnds(brief, id, random, 'within')
  brief = random.chance(0.2)
    ? withTouchingShares(brief, random)
    : withEnds(brief, order[held] ?? COST, random, 'at an end')
  return { ...brief, goal: goalOf(brief, random) }
}

/** The brief, and the brief with each of its limits a hair higher and a hair lower. */
export function nudged(brief: Brief): Brief[] {
  const moved = ({ value, ...limit }: Limit) =>
    [value - NUDGE, value + NUDGE]
      .filter((to) => limit.kind === 'measure' || (to >= 0 && to <= 100))
      .map((to) => withLimit(brief, { ...limit, value }, to))
  return limitsOf(brief).flatMap(moved)
}

function shelfOf(random: Random): Brief {
  const count = random.pick([2, 2, 3, 3, 4, 5, 6, 9])
  const ids = shuffled(random, OILS.length).slice(0, count)
  const oils = ids.map((k) => {
    return [at(OILS, k), { pricePerKg: typed(2 + 18 * random.next(), random.int(0, 3), 'near') }]
  })
  return {
    oils: Object.fromEntries(oils) as Brief['oils'],
    groups: [],
    measures: {},
    goal: { minimise: COST },
  }
}

/** One more wish, within what the others leave of a measure, or on the end of it. */
function withEnds(brief: Brief, id: string, random: Random, where: 'within' | 'at an end'): Brief {
  const space = new BlendSpace(brief, library)
  const figures = space.perPercent(id)
  const least = space.least(figures)?.objective
  const most = space.least(negated(figures))?.objective
  if (least === undefined || most === undefined) return brief
  const decimals = random.int(1, MOST_DECIMALS)
  const way = random.pick(['up', 'down', 'near'] as const)
  if (where === 'within') {
    const value = typed(least + random.next() * (-most - least), decimals, way)
    return withWish(brief, id, random.chance(0.7) ? { min: value, max: value } : { max: value })
  }
  const top = random.chance(0.5)
  const value = typed(top ? -most : least, decimals, way)
  if (random.chance(0.3)) return withWish(brief, id, { min: value, max: value })
  return withWish(brief, id, top ? { min: value } : { max: value })
}

function withWish(brief: Brief, id: string, limits: Limits): Brief {
  return { ...brief, measures: { ...brief.measures, [id]: limits } }
}

/** Most shares that come to 100 as they were typed, with a group of some of them. */
function withTouchingShares(brief: Brief, random: Random): Brief {
  const ids = Object.keys(brief.oils)
  const parts = ids.map(() => random.int(1, 9))
  const whole = parts.reduce((sum, part) => sum + part, 0)
  const decimals = random.int(0, MOST_DECIMALS)
  const side = random.pick(['min', 'max'] as const)
  const way = random.pick(['up', 'down', 'near'] as const)
  const oils = ids.map((id, k) => {
    const share = typed((100 * at(parts, k)) / whole, decimals, way)
    return [id, { ...brief.oils[id], [side]: share }]
  })
  return { ...brief, measures: {}, oils: Object.fromEntries(oils) as Brief['oils'] }
}

function goalOf(brief: Brief, random: Random): Goal {
  if (random.chance(0.4)) return { minimise: COST }
  const measure = at(MEASURES, random.int(0, MEASURES.length - 1))
  if (random.chance(0.6)) return random.chance(0.5) ? { minimise: measure } : { maximise: measure }
  const ids = Object.keys(brief.oils)
  return { closestTo: Object.fromEntries(ids.map((id) => [id, 100 / ids.length])) }
}

/** A figure with so many decimals. */
function typed(value: number, decimals: number, way: 'up' | 'down' | 'near'): number {
  const unit = 10 ** decimals
  const round = { up: Math.ceil, down: Math.floor, near: Math.round }[way]
  return Number((round(value * unit) / unit).toFixed(decimals))
}
