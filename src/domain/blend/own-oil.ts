import type { Basis, FattyAcid } from '../chemistry/fatty-acid'
import { calculatedIodineValue } from '../chemistry/iodine'
import { typicalProfile } from '../chemistry/profile'
import { calculatedSaponificationValue } from '../chemistry/saponification'
import { fractionFromPerMille, WHOLE_PERCENT } from '../units'
import { certificateRange } from './certificate-range'
import type { Library } from './library'
import type { NaturalRange, Oil, OilKind, SourcedRange } from './oil'
import { familyOf } from './oil-family'
import { ownAcids, type OwnFigure } from './own-acids'
import { freeColour } from './own-colours'
import { isPaperNumber } from './paper-number'

/**
 * An oil as a maker describes it: a copy of the library's nearest with other figures. What is left out is
 * copied. Figures stand on the certificate where one is named, else on the maker's word.
 */
export interface OwnOil {
  /** Begins with `own-`. */
  readonly id: string
  /** Id of the library's oil that it is copied from. */
  readonly from: string
  readonly name?: string | undefined
  readonly shortName?: string | undefined
  readonly code?: string | undefined
  /** #RRGGBB; kept for good once it is given. */
  readonly colour?: string | undefined
  readonly synonyms?: readonly string[] | undefined
  /** Names on labels; copied only where the oil keeps its name. */
  readonly inci?:
    | {
        readonly oil?: string | null | undefined
        readonly sodiumSoap?: string | null | undefined
        readonly potassiumSoap?: string | null | undefined
      }
    | undefined
  readonly kind?: OilKind | undefined
  readonly tags?: readonly string[] | undefined
  /** By acid id, g per 100 g of acids; what they leave of 100 is shared out as in the oil copied from. */
  readonly acids?: Readonly<Record<string, OwnFigure>> | undefined
  /** mg KOH per g. */
  readonly saponificationValue?: OwnFigure | undefined
  /** g iodine per 100 g. */
  readonly iodineValue?: OwnFigure | undefined
  readonly unsaponifiableGPerKg?: OwnFigure | undefined
  readonly lot?: string | undefined
  readonly certificate?: string | undefined
}

/** What an oil of one's own begins with. */
export const OWN_PREFIX = 'own-'

/** Whether an id is that of an oil of a maker's own. */
export function isOwnId(id: string): boolean {
  return id.startsWith(OWN_PREFIX)
}

/** How far two ways to the alkali may lie apart and still be believed, as a part of the stated one: assumed. */
export const MOST_APART = 0.03

/** A figure without a paper is never surer than the library's recalled ones are: 2 %. */
const LEAST_WITHOUT_PAPER = 0.02

/** How far iodine values of two laboratories lie apart, and contents of the unsaponifiable, as a part: assumed. */
const IODINE_PART = 0.03
const UNSAPONIFIABLE_PART = 0.1

/** The two ways to the alkali that an oil takes, mg KOH per g. */
export interface AlkaliAgreement {
  /** From the acids. */
  readonly calculated: number
  readonly stated: number
  /** How far the calculated lies from the stated one, as a part of it. */
  readonly apart: number
}

/** A library that knows its acids as molecules. */
export type OwnLibrary = Library & { readonly acids: ReadonlyMap<string, FattyAcid> }

/** Whether lot and paper are named, so that unusual figures are those of this lot and no slip. */
export function isSigned({ lot, certificate }: Pick<OwnOil, 'lot' | 'certificate'>): boolean {
  return lot !== undefined && lot.trim() !== '' && isPaperNumber(certificate)
}

/** What stated figures stand on. */
export function standsOn({ certificate }: Pick<OwnOil, 'certificate'>): Basis {
  return isPaperNumber(certificate) ? 'certificate' : 'own'
}

/**
 * The full oil of a maker's description. The range of a stated saponification value is the value ± its tolerance,
 * half a percent at least, two where no certificate is named; one reckoned from stated acids 3 % either
 * way, and no surer at its low end than the oil copied from. Where the acids say less alkali than a stated
 * value, the low end reaches down to that. Copied figures keep their ranges and what they stand on. Throws for
 * an acid that is not listed; `ownOilProblems` tells of it.
 */
export function oilOfOwn(own: OwnOil, base: Oil, library: OwnLibrary): Oil {
  const kind = own.kind ?? base.kind
  const source = sourceOf(own)
  const basis = standsOn(own)
  const figure = { basis, source, typicalBasis: basis, typicalSource: source }
  const acids = ownAcids(own.acids, base.acids, figure)
  const stated = own.unsaponifiableGPerKg
  const unsaponifiableGPerKg = stated
    ? { typical: stated.value, high: ends(stated, UNSAPONIFIABLE_PART).high, ...figure }
    : base.unsaponifiableGPerKg
  const shape = {
    ...base,
    kind,
    acids,
    unsaponifiableGPerKg,
    reacts: kind === base.kind ? base.reacts : undefined,
    waxRest: kind === base.kind ? base.waxRest : undefined,
  }
  const name = own.name ?? `${base.name}, ${own.lot === undefined ? 'mine' : `lot ${own.lot}`}`
  const family = familyOf(acids, library.acids)
  const saponificationValue = alkaliRange(own, shape, library, figure)
  return {
    ...shape,
    id: own.id,
    name,
    shortName: own.shortName ?? shortNameOf(name),
    code: own.code ?? codeOf(name),
    family,
    colour: own.colour ?? freeColour(family, [...library.oils.values()]),
    tags: own.tags ?? base.tags,
    synonyms: own.synonyms ?? [],
    inci: inciOf(own, base, source),
    cas: own.name === undefined ? base.cas : null,
    saponificationValue,
    iodineValue: iodineRange(own, shape, library, figure),
    own: {
      from: own.from,
      lot: own.lot,
      certificate: own.certificate,
      noLye: whyNoLye(own, base, alkaliAgreement(own, shape, library)),
    },
    note: `Described by the maker, copied from ${base.name}.`,
  }
}

/** Letters that a short name may have. */
const SHORT_NAME_LETTERS = 16

/** As many whole words of a name as go into a narrow place, else as many letters. */
function shortNameOf(name: string): string {
  if (name.length <= SHORT_NAME_LETTERS) return name
  const words = name.slice(0, SHORT_NAME_LETTERS + 1)
  const end = words.lastIndexOf(' ')
  return words.slice(0, end > 0 ? end : SHORT_NAME_LETTERS).replace(/[\s,;-]+$/u, '')
}

/** Where stated figures come from, in words. */
function sourceOf({ lot, certificate }: OwnOil): string {
  const parts = [
    isPaperNumber(certificate)
      ? `certificate ${certificate}`
      : 'stated by the maker, no paper named',
    lot === undefined ? [] : `lot ${lot}`,
  ]
  return parts.flat().join(', ')
}

/** Four letters of a name for narrow places. */
function codeOf(name: string): string {
  const letters = name.normalize('NFKD').replaceAll(/[^A-Za-z]/gu, '')
  return (letters.slice(0, CODE_LETTERS) || 'Own').padEnd(LEAST_CODE_LETTERS, 'x')
}
const CODE_LETTERS = 4
const LEAST_CODE_LETTERS = 3

type Sources = Pick<SourcedRange, 'basis' | 'source' | 'typicalBasis' | 'typicalSource'>
type Shape = Pick<Oil, 'acids' | 'unsaponifiableGPerKg' | 'kind' | 'waxRest'> & {
  readonly saponificationValue: SourcedRange
  readonly iodineValue: SourcedRange
}

/** Saponification value, mg KOH per g, that the acids of an oil come to. */
export function alkaliFromAcids(
  {
    acids,
    unsaponifiableGPerKg,
    kind,
    waxRest,
  }: Omit<Shape, 'saponificationValue' | 'iodineValue'>,
  molecules: ReadonlyMap<string, FattyAcid>,
): number {
  const unsaponifiable = fractionFromPerMille(unsaponifiableGPerKg.typical)
  return calculatedSaponificationValue(
    typicalProfile(acids),
    molecules,
    unsaponifiable,
    kind,
    waxRest,
  )
}

/** How stated and calculated alkali agree; undefined where acids or value are only copied. Throws for an acid that is not listed. */
export function alkaliAgreement(
  own: OwnOil,
  shape: Shape,
  { acids }: OwnLibrary,
): AlkaliAgreement | undefined {
  const stated = own.saponificationValue?.value
  if (stated === undefined || !own.acids) return undefined
  const calculated = alkaliFromAcids(shape, acids)
  return { calculated, stated, apart: Math.abs(calculated - stated) / stated }
}

function alkaliRange(
  own: OwnOil,
  shape: Shape,
  library: OwnLibrary,
  figure: Sources,
): SourcedRange {
  const stated = own.saponificationValue
  const calculated = alkaliFromAcids(shape, library.acids)
  if (stated) {
    const least = isPaperNumber(own.certificate) ? undefined : LEAST_WITHOUT_PAPER
    const range = certificateRange(stated.value, stated.within, least)
    return { ...range, low: own.acids ? Math.min(range.low, calculated) : range.low, ...figure }
  }
  const copied = shape.saponificationValue
  if (!own.acids && !own.unsaponifiableGPerKg && own.kind === undefined) return copied
  return {
    low: Math.min(copied.low, calculated * (1 - MOST_APART)),
    typical: calculated,
    high: Math.max(copied.high, calculated * (1 + MOST_APART)),
    basis: 'assumption',
    source: `3 % either way of the value from the acids, and the range of ${own.from}`,
    typicalBasis: 'derived',
    typicalSource: 'calculated',
  }
}

function iodineRange(own: OwnOil, shape: Shape, library: OwnLibrary, figure: Sources) {
  if (own.iodineValue) {
    return { ...ends(own.iodineValue, IODINE_PART), ...figure }
  }
  if (!own.acids && own.kind === undefined) return shape.iodineValue
  const { acids, unsaponifiableGPerKg, kind, waxRest } = shape
  const value = calculatedIodineValue(
    typicalProfile(acids),
    library.acids,
    fractionFromPerMille(unsaponifiableGPerKg.typical),
    kind,
    waxRest,
  )
  const derived = { basis: 'derived', source: 'calculated' } as const
  const typical = { typicalBasis: 'derived', typicalSource: 'calculated' } as const
  return { ...ends({ value }, IODINE_PART), ...derived, ...typical }
}

/** A figure with its tolerance, or a part of it where none is stated; never below 0. */
function ends({ value, within }: OwnFigure, part: number): NaturalRange {
  const room = within ?? value * part
  return { low: Math.max(0, value - room), typical: value, high: value + room }
}

/** Why lye is not reckoned for an oil yet: figures that do not agree, and no lot and paper that vouch for them. */
function whyNoLye(
  own: OwnOil,
  base: Oil,
  agreement: AlkaliAgreement | undefined,
): string | undefined {
  if (isSigned(own)) return undefined
  const name = own.name ?? own.id
  const ask = 'Look at both again, or name the lot and the certificate that they stand on.'
  if (agreement && agreement.apart > MOST_APART) {
    const { stated, calculated, apart } = agreement
    return `The saponification value of ${name} is ${shown(stated)} mg KOH/g, but its acids come to ${shown(calculated)}: ${shown(apart * WHOLE_PERCENT)} % apart, and up to ${MOST_APART * WHOLE_PERCENT} % is believed. ${ask}`
  }
  const stated = own.saponificationValue?.value
  const { low, high } = base.saponificationValue
  if (stated === undefined || (stated >= low && stated <= high)) return undefined
  return `The saponification value of ${name} is ${shown(stated)} mg KOH/g; ${base.name}, which it was copied from, has ${low} to ${high}. ${ask}`
}

function shown(value: number): string {
  return String(Number(value.toFixed(1)))
}

/** Names on labels: an oil of another name never bears those of the oil it was copied from. */
function inciOf({ name, inci }: OwnOil, base: Oil, source: string): Oil['inci'] {
  if (name === undefined && !inci) return base.inci
  const copied = name === undefined ? base.inci : NO_NAMES
  const { oil = copied.oil, sodiumSoap = copied.sodiumSoap } = inci ?? {}
  const { potassiumSoap = copied.potassiumSoap } = inci ?? {}
  return { oil, sodiumSoap, potassiumSoap, basis: 'own', source }
}

const NO_NAMES = { oil: null, sodiumSoap: null, potassiumSoap: null }
