import { library } from '../../../../src/data/library'
import { oilOf } from '../../../../src/domain/blend/library'
import type { AcidMeasure } from '../../../../src/domain/blend/measure'
import type { Oil } from '../../../../src/domain/blend/oil'
import { lotRangeOf } from '../../../../src/domain/optimise/lots/lot-range'
import type { Lot } from '../../../../src/domain/optimise/lots/lot'

/*
 * Lots made by the tests themselves, from the figures of data/oils.json alone, to hold the program's
 * worst cases and samples against.
 */

/** The measures that vary from lot to lot: all but cost. */
export const ACID_MEASURES: readonly AcidMeasure[] = library.measures.filter(
  (measure) => 'weights' in measure,
)

export const OILS: readonly Oil[] = [...library.oils.values()]

/** g per 100 g: a dozen shares of size up to 100 add with an error of about 1e-13. */
const ROUNDING = 1e-11

export function oil(id: string): Oil {
  return oilOf(library, id)
}

/** Unsaponifiables in g per kg: none stated from below but of a wax, whose molecule holds them. */
export function unsaponifiableEnds({ kind, unsaponifiableGPerKg }: Oil): [number, number] {
  return [kind === 'wax-ester' ? unsaponifiableGPerKg.typical : 0, unsaponifiableGPerKg.high]
}

/** The oil whose typical figures are a lot's: what `measureOfOil` says of it is the lot's value. */
export function oilOfLot(of: Oil, { acids, unsaponifiableGPerKg }: Lot): Oil {
  const typicalOf = (index: number) => acids[index] ?? NaN
  const profile = Object.entries(of.acids).map(([id, range], index) => {
    return [id, { ...range, typical: typicalOf(index) }] as const
  })
  return {
    ...of,
    acids: Object.fromEntries(profile),
    unsaponifiableGPerKg: { ...of.unsaponifiableGPerKg, typical: unsaponifiableGPerKg },
  }
}

/**
 * A corner of the lots of an oil: acids are filled up from their lows in a random order until 100 is
 * reached. Every worst case of a weighted sum is one of these.
 */
export function cornerLot(of: Oil, random: () => number): Lot {
  const ranges = Object.values(of.acids)
  const acids = Float64Array.from(ranges, ({ low }) => low)
  let missing = 100 - ranges.reduce((sum, { low }) => sum + low, 0)
  for (const index of shuffled(ranges.length, random)) {
    const range = ranges[index]
    if (!range) throw new RangeError(`no acid ${index}`)
    const taken = Math.min(missing, range.high - range.low)
    acids[index] = range.low + taken
    missing -= taken
  }
  const [least, most] = unsaponifiableEnds(of)
  return { acids, unsaponifiableGPerKg: random() < 0.5 ? least : most }
}

/** What is wrong with a lot of an oil; empty when it keeps every stated range. */
export function faultsOfLot(of: Oil, { acids, unsaponifiableGPerKg }: Lot): string[] {
  const [least, most] = unsaponifiableEnds(of)
  const faults = Object.entries(of.acids).flatMap(([id, { low, high }], index) => {
    const share = acids[index] ?? NaN
    return share >= low - ROUNDING && share <= high + ROUNDING ? [] : [`${id}: ${share}`]
  })
  const sum = acids.reduce((total, share) => total + share, 0)
  if (acids.length !== lotRangeOf(of).acids.length) faults.push(`${acids.length} acids`)
  if (!(Math.abs(sum - 100) < ROUNDING)) faults.push(`sum: ${sum}`)
  if (!(unsaponifiableGPerKg >= least && unsaponifiableGPerKg <= most))
    faults.push(`unsaponifiables: ${unsaponifiableGPerKg}`)
  return faults
}

function shuffled(count: number, random: () => number): number[] {
  const order = [...Array(count).keys()]
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1))
    const [a = NaN, b = NaN] = [order[last], order[other]]
    order[last] = b
    order[other] = a
  }
  return order
}
