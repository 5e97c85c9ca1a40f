import { library as realLibrary } from '../../../../src/data/library'
import { type Library, measureOf } from '../../../../src/domain/blend/library'
import { COST } from '../../../../src/domain/blend/measure'
import type {
  Brief,
  Goal,
  Limits,
  OilGroup,
  ShelfOil,
} from '../../../../src/domain/optimise/brief/brief'
import { Random } from '../../../generator/random'
import { sampleBriefs } from '../../../property/briefs'
import { libraryOfValues } from '../../blend/stub-library'

/*
 * Random briefs of the shapes on which prices go wrong. A blend in whole steps is planted and many limits
 * end right at it, so that more limits meet at the answer than it takes to fix it; figures are small
 * whole numbers, so that ties abound. Invented figures throughout.
 */

/** What each kind is made to provoke. */
export const KINDS = [
  'whole numbers', // limits end at the planted blend
  'duplicates', // oils with the same figures, most at the same price
  'twin limits', // one group limited twice, and a measure that is a multiple of another
  'no width', // measures held to one value
  'parallel goal', // the goal is a measure with a limit of its own
  'clash', // ranges drawn without looking at any blend
] as const
export type Kind = (typeof KINDS)[number]

/** A brief with the library that it is about. */
export interface Case {
  readonly name: string
  readonly brief: Brief
  readonly library: Library
}

const POINTS = ['m0', 'm1', 'm2', 'm3']

/** So many briefs of each kind over invented oils, and as many over the real library; same seed, same briefs. */
export function randomCases(perKind: number, seed: number): Case[] {
  const invented = KINDS.flatMap((kind, k) =>
    Array.from({ length: perKind }, (_, n) => inventedCase(kind, seed + n * KINDS.length + k)),
  )
  return [...invented, ...realCases(perKind, seed)]
}

/** So many briefs whose ranges were drawn without looking at any blend: most of them have none. */
export function clashCases(count: number, seed: number): Case[] {
  return Array.from({ length: count }, (_, n) => inventedCase('clash', seed + n))
}

/** Briefs over the real library, half of them about cost; a third hold for any lot. */
export function realCases(count: number, seed: number): Case[] {
  const random = new Random(seed)
  return sampleBriefs(count, seed).map((brief, n) => {
    const measure = random.pick(['hardness', 'lather', 'wear', 'mildness'])
    const goal: Goal = random.chance(0.5)
      ? { minimise: COST }
      : random.chance(0.5)
        ? { maximise: measure }
        : { minimise: measure }
    const robust = random.chance(1 / 3)
    return { name: `real ${seed}.${n}`, brief: { ...brief, goal, robust }, library: realLibrary }
  })
}

function inventedCase(kind: Kind, seed: number): Case {
  const random = new Random(seed)
  const oils = Array.from({ length: random.int(3, 9) }, (_, k) => `oil${k}`)
  const values = oils.map((): Record<string, number> => valuesOf(random))
  const prices = oils.map(() => random.int(2, 20) / 2)
  if (kind === 'duplicates') duplicate(random, values, prices)
  if (kind === 'twin limits') for (const one of values) one['m1'] = 2 * (one['m0'] ?? 0)
  const planted = plant(random, oils.length)
  const at = (id: string) =>
    values.reduce((sum, one, k) => sum + ((one[id] ?? 0) * (planted[k] ?? 0)) / 100, 0)
  const cost = prices.reduce((sum, price, k) => sum + (price * (planted[k] ?? 0)) / 100, 0)
  const measures = Object.fromEntries(
    POINTS.filter(() => random.chance(0.7)).map((id) => [id, range(random, kind, at(id))]),
  )
  return {
    name: `${kind} ${seed}`,
    brief: {
      oils: Object.fromEntries(
        oils.map((oil, k) => [oil, shelfOil(random, prices[k] ?? 0, planted[k] ?? 0)]),
      ),
      groups: groupsOf(random, kind, oils, planted),
      measures: random.chance(0.2) ? { ...measures, [COST]: range(random, kind, cost) } : measures,
      goal: goalOf(random, kind, Object.keys(measures)),
    },
    library: withCost(
      libraryOfValues(Object.fromEntries(oils.map((oil, k) => [oil, values[k] ?? {}]))),
    ),
  }
}

function valuesOf(random: Random): Record<string, number> {
  return Object.fromEntries(POINTS.map((id) => [id, 10 * random.int(0, 10)]))
}

function duplicate(random: Random, values: Record<string, number>[], prices: number[]): void {
  for (let k = 1; k < values.length; k += 2) {
    values[k] = { ...values[k - 1] }
    if (random.chance(0.7)) prices[k] = prices[k - 1] ?? 0
  }
}

/** Shares in steps of 5 % that add to 100. */
function plant(random: Random, count: number): number[] {
  const shares = new Array<number>(count).fill(0)
  for (let left = 100; left > 0; left -= 5) {
    const k = random.int(0, Math.min(count, 4) - 1)
    shares[k] = (shares[k] ?? 0) + 5
  }
  return shares
}

function range(random: Random, kind: Kind, value: number): Limits {
  if (kind === 'no width' && random.chance(0.5)) return { min: value, max: value }
  if (kind === 'clash') {
    const min = 5 * random.int(0, 16)
    return { min, max: min + 5 * random.int(0, 3) }
  }
  const [min, max] = [value - 5 * random.int(0, 1), value + 5 * random.int(0, 2)]
  const open = random.int(0, 2)
  return { ...(open === 0 ? {} : { min }), ...(open === 1 ? {} : { max }) }
}

function shelfOil(random: Random, pricePerKg: number, share: number): ShelfOil {
  return {
    pricePerKg,
    ...(random.chance(0.4) ? { max: Math.min(100, share + 5 * random.int(0, 4)) } : {}),
    ...(random.chance(0.3) ? { min: Math.max(0, share - 5 * random.int(0, 2)) } : {}),
  }
}

function groupsOf(
  random: Random,
  kind: Kind,
  oils: readonly string[],
  planted: readonly number[],
): OilGroup[] {
  const chosen = oils.map(() => random.chance(0.5))
  const members = oils.filter((_, k) => chosen[k])
  if (members.length === 0) return []
  const share = planted.reduce((sum, one, k) => sum + (chosen[k] ? one : 0), 0)
  const max = Math.min(100, share + (kind === 'clash' ? -5 : 5 * random.int(0, 2)))
  const group: OilGroup = { name: 'Some', oils: members, max: Math.max(0, max) }
  return kind === 'twin limits' ? [group, { ...group, name: 'Same' }] : [group]
}

function goalOf(random: Random, kind: Kind, limited: readonly string[]): Goal {
  const [first] = limited
  if (kind === 'parallel goal' && first !== undefined)
    return random.chance(0.5) ? { minimise: first } : { maximise: first }
  if (random.chance(0.6)) return { minimise: COST }
  return random.chance(0.5) ? { minimise: 'm0' } : { maximise: 'm1' }
}

/** The library with the measure of money, as it stands in the data. */
export function withCost(library: Library): Library {
  return { ...library, measures: [...library.measures, measureOf(realLibrary, COST)] }
}
