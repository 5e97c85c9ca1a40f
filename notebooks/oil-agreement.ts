import type { Oil, SourcedRange } from '../src/domain/blend/oil'
import type { Basis } from '../src/domain/chemistry/fatty-acid'
import { calculatedIodineValue } from '../src/domain/chemistry/iodine'
import { typicalProfile } from '../src/domain/chemistry/profile'
import { calculatedSaponificationValue } from '../src/domain/chemistry/saponification'
import { fractionFromPerMille } from '../src/domain/units'
import { library } from '../src/data/library'

/** A calculated value and the stated range it is held against. */
export interface Reading {
  readonly low: number
  readonly high: number
  readonly calculated: number
  /** 0 at the low end of the range, 1 at its high end. */
  readonly position: number
  readonly inside: boolean
}

/** One oil: its stated constants against those calculated from its typical fatty acids. */
export interface Agreement {
  readonly id: string
  readonly name: string
  /** Basis of the stated ranges. */
  readonly basis: Basis
  readonly saponification: Reading
  readonly iodine: Reading
}

const oils = [...library.oils.values()]

/** Every oil of the library, from the most saturated to the least. */
export const agreements: readonly Agreement[] = oils
  .map(agreementOf)
  .sort((a, b) => a.iodine.calculated - b.iodine.calculated)

/** The oils whose ranges were read: the only ones the check says much about. */
export const published = agreements.filter(({ basis }) => basis === 'published')

/** The oils whose ranges were recalled or are habit of the trade. */
export const unread = agreements.filter(({ basis }) => basis !== 'published')

function agreementOf(oil: Oil): Agreement {
  return {
    id: oil.id,
    name: oil.shortName,
    basis: oil.saponificationValue.basis,
    saponification: readingOf(saponificationOf(oil), oil.saponificationValue),
    iodine: readingOf(iodineOf(oil), oil.iodineValue),
  }
}

function readingOf(calculated: number, { low, high }: SourcedRange): Reading {
  const position = (calculated - low) / (high - low)
  return { low, high, calculated, position, inside: position >= 0 && position <= 1 }
}

function saponificationOf(oil: Oil): number {
  return calculatedSaponificationValue(...argumentsOf(oil))
}

function iodineOf(oil: Oil): number {
  return calculatedIodineValue(...argumentsOf(oil))
}

function argumentsOf({ acids, unsaponifiableGPerKg, kind, waxRest }: Oil) {
  const unsaponifiableFraction = fractionFromPerMille(unsaponifiableGPerKg.typical)
  return [typicalProfile(acids), library.acids, unsaponifiableFraction, kind, waxRest] as const
}

/** How many figures have each basis: limits of ranges and typical shares of all fatty acids. */
export function basisCounts(): Record<'limits' | 'typical', Map<Basis, number>> {
  const figures = oils.flatMap(({ acids }) => Object.values(acids))
  return {
    limits: countOf(figures.map(({ basis }) => basis)),
    typical: countOf(figures.map(({ typicalBasis }) => typicalBasis)),
  }
}

/** Share of all typical acid, in percent by mass, whose typical share was read in a source. */
export function publishedMassPercent(): number {
  const figures = oils.flatMap(({ acids }) => Object.values(acids))
  const massOf = (some: typeof figures) => some.reduce((sum, { typical }) => sum + typical, 0)
  const read = figures.filter(({ typicalBasis }) => typicalBasis === 'published')
  return (100 * massOf(read)) / massOf(figures)
}

function countOf(bases: readonly Basis[]): Map<Basis, number> {
  const counts = new Map<Basis, number>()
  for (const basis of bases) counts.set(basis, (counts.get(basis) ?? 0) + 1)
  return counts
}

/** Whether the profile of one oil would pass for another: its values against the other's ranges. */
export interface Disguise {
  readonly profile: Agreement
  readonly range: Agreement
  readonly saponification: boolean
  readonly iodine: boolean
}

/** Every published oil's profile against every published oil's ranges, its own among them. */
export function disguises(): readonly Disguise[] {
  return published.flatMap((range) =>
    published.map((profile) => ({
      profile,
      range,
      saponification: lies(profile.saponification.calculated, range.saponification),
      iodine: lies(profile.iodine.calculated, range.iodine),
    })),
  )
}

function lies(value: number, { low, high }: Reading): boolean {
  return value >= low && value <= high
}

/** Share of wrong profiles, in percent, that pass the test given. */
export function wrongPassPercent(passes: (disguise: Disguise) => boolean): number {
  const wrong = disguises().filter(({ profile, range }) => profile !== range)
  return (100 * wrong.filter(passes).length) / wrong.length
}

/** Half-width of the stated saponification range over its middle, in percent. */
export function halfWidthPercent({ saponification: { low, high } }: Agreement): number {
  return (100 * (high - low)) / (high + low)
}
