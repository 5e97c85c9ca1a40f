import fc from 'fast-check'
import { library } from '../../src/data/library'
import { type Blend, normalised } from '../../src/domain/blend/blend'
import { COST } from '../../src/domain/blend/measure'
import { blendValue } from '../../src/domain/blend/values'
import type { Brief, Goal, Limits, OilGroup, ShelfOil } from '../../src/domain/optimise/brief/brief'

/*
 * Random briefs over the real library. A blend is planted first and the ranges are drawn around it,
 * so that most briefs have an answer; others are drawn without looking and often have none. Figures
 * are rounded as people type them, some ranges have no width, and some goals are about a measure
 * whose own range binds: the shapes on which solvers are known to fail.
 */

const OILS = [...library.oils.keys()]
const MEASURES = library.measures.map(({ id }) => id)
const POINTS = MEASURES.filter((id) => id !== COST)

/** A number in [0, 1) that shrinks towards 0. */
const unit = fc.integer({ min: 0, max: 9_999 }).map((k) => k / 10_000)
const often = (probability: number) => unit.map((u) => u >= 1 - probability)

const shelfOil = fc.record({
  id: fc.constantFrom(...OILS),
  cents: fc.integer({ min: 150, max: 3_000 }),
  part: fc.integer({ min: 0, max: 20 }),
  limited: often(0.3),
  needed: often(0.1),
  room: unit,
})

const wish = fc.record({
  id: fc.constantFrom(...MEASURES),
  kind: fc.constantFrom('around', 'around', 'around', 'no width', 'free'),
  open: fc.constantFrom('min', 'max', undefined, undefined),
  below: unit,
  above: unit,
})

const group = fc.record({
  members: fc.array(fc.nat(), { minLength: 1, maxLength: 4 }),
  side: fc.constantFrom('min', 'max', 'both'),
  room: unit,
})

const aim = fc.record({
  kind: fc.constantFrom('minimise', 'maximise', 'cost', 'closestTo'),
  measure: fc.constantFrom(...POINTS),
  favourite: fc.uniqueArray(fc.constantFrom(...OILS), { minLength: 1, maxLength: 4 }),
  fromShelf: often(0.6),
})

/** How many oils a shelf holds: mostly few, as degenerate programs are, at times many. */
const shelf = fc.oneof(
  { weight: 4, arbitrary: shelfOf(1, 8) },
  { weight: 2, arbitrary: shelfOf(9, 20) },
  { weight: 1, arbitrary: shelfOf(21, 63) },
)

function shelfOf(minLength: number, maxLength: number) {
  return fc.uniqueArray(shelfOil, { minLength, maxLength, selector: ({ id }) => id })
}

type Draw = {
  shelf: (typeof shelfOil extends fc.Arbitrary<infer T> ? T : never)[]
  wishes: (typeof wish extends fc.Arbitrary<infer T> ? T : never)[]
  groups: (typeof group extends fc.Arbitrary<infer T> ? T : never)[]
  aim: typeof aim extends fc.Arbitrary<infer T> ? T : never
  robust: boolean
}

/** A sound brief with prices for all its oils. */
export const anyBrief: fc.Arbitrary<Brief> = fc
  .record({
    shelf,
    wishes: fc.uniqueArray(wish, { maxLength: 5, selector: ({ id }) => id }),
    groups: fc.array(group, { maxLength: 3 }),
    aim,
    robust: often(0.15),
  })
  .map(briefFrom)

/** So many briefs of a seed; the same seed gives the same briefs. */
export function sampleBriefs(count: number, seed: number): Brief[] {
  return fc.sample(anyBrief, { numRuns: count, seed })
}

function briefFrom(draw: Draw): Brief {
  const prices = Object.fromEntries(draw.shelf.map(({ id, cents }) => [id, cents / 100]))
  const planted = plant(draw)
  const oils = Object.fromEntries(
    draw.shelf.map((oil): [string, ShelfOil] => [oil.id, oilLimits(oil, planted[oil.id] ?? 0)]),
  )
  const measures = Object.fromEntries(
    draw.wishes.map((one) => [one.id, range(one, blendValue(library, prices, one.id, planted))]),
  )
  const groups = draw.groups.map((one, number) => groupLimits(one, number, draw, planted))
  return { oils, groups, measures, goal: goalFrom(draw), robust: draw.robust }
}

function plant({ shelf }: Draw): Blend {
  const parts = Object.fromEntries(shelf.map(({ id, part }) => [id, part]))
  const first = shelf[0]
  return normalised(shelf.some(({ part }) => part > 0) || !first ? parts : { [first.id]: 1 })
}

function oilLimits({ cents, limited, needed, room }: Draw['shelf'][number], share: number) {
  return {
    pricePerKg: cents / 100,
    ...(limited ? { max: Math.min(100, Math.ceil(share + 20 * room)) } : {}),
    ...(needed ? { min: Math.floor(share * room) } : {}),
  }
}

function range({ kind, open, below, above }: Draw['wishes'][number], value: number): Limits {
  if (kind === 'no width') return { min: value, max: value }
  const middle = kind === 'free' ? 100 * below : value
  const min = Math.round(10 * (middle - 15 * below)) / 10
  const max = Math.round(10 * (middle + 15 * above + 0.1)) / 10
  return { ...(open === 'min' ? {} : { min }), ...(open === 'max' ? {} : { max }) }
}

function groupLimits(
  { members, side, room }: Draw['groups'][number],
  number: number,
  { shelf }: Draw,
  planted: Blend,
): OilGroup {
  const oils = [...new Set(members.map((k) => shelf[k % shelf.length]?.id ?? ''))]
  const share = oils.reduce((sum, oil) => sum + (planted[oil] ?? 0), 0)
  return {
    name: `group ${number}`,
    oils,
    ...(side === 'max' ? {} : { min: Math.floor(share * room) }),
    ...(side === 'min' ? {} : { max: Math.min(100, Math.ceil(share + 10 * room)) }),
  }
}

function goalFrom({ aim, shelf }: Draw): Goal {
  if (aim.kind === 'minimise') return { minimise: aim.measure }
  if (aim.kind === 'maximise') return { maximise: aim.measure }
  if (aim.kind === 'cost') return { minimise: COST }
  const oils = aim.fromShelf ? shelf.slice(0, 4).map(({ id }) => id) : aim.favourite
  return { closestTo: normalised(Object.fromEntries(oils.map((oil, k) => [oil, k + 1]))) }
}
