import { plain, problem, type Problem, unknownOil } from '../../blend/check-blend'
import { type Library, oilOf } from '../../blend/library'
import type { NaturalRange } from '../../blend/oil'
import { ALKALI_MOLAR_MASS } from '../../chemistry/alkali'
import { MG_PER_GRAM } from '../../units'
import { isPaperNumber } from '../../blend/paper-number'
import type { BatchOrder, OilLot } from '../order/order'
import type { Remark, Remedy } from '../order/remedy'

/** mg KOH for each mg NaOH that fat takes: 56.105 / 39.997 = 1.4027. */
const KOH_PER_NAOH = ALKALI_MOLAR_MASS.koh / ALKALI_MOLAR_MASS.naoh

/** How far outside its natural range a lot's value may lie and still be that oil's, as a part of the end. */
const BELIEVABLE = 0.05

/** The figures that people give in the place of mg KOH per g, and how each is turned into it. */
const MIXED_UP: readonly { readonly what: string; readonly factor: number }[] = [
  { what: 'g NaOH per g', factor: KOH_PER_NAOH * MG_PER_GRAM },
  { what: 'g KOH per g', factor: MG_PER_GRAM },
  { what: 'mg NaOH per g', factor: KOH_PER_NAOH },
]

/** What is wrong with the suppliers' figures for the lots in hand. */
export function lotProblems({ lots = {} }: BatchOrder, library: Library): Problem[] {
  return Object.entries(lots).flatMap(([oil, lot]) => {
    const unknown = unknownOil(oil, library, `lots.${oil}`)
    return unknown.length > 0 ? unknown : valueProblems(oil, lot, library)
  })
}

function valueProblems(oil: string, lot: OilLot, library: Library): Problem[] {
  const { saponificationValue: value, tolerance } = lot
  const path = `lots.${oil}.saponificationValue`
  const { name, saponificationValue: range } = oilOf(library, oil)
  if (value === undefined)
    return tolerance === undefined
      ? []
      : [problem(`lots.${oil}.tolerance`, 'A tolerance needs the value that it belongs to.')]
  if (!believable(value, range)) return [problem(path, unbelievableMessage(value, name, range))]
  const unsigned = unsignedProblems(oil, lot, name, range)
  if (unsigned.length > 0) return unsigned
  if (tolerance === undefined || (tolerance >= 0 && tolerance < value)) return []
  return [
    problem(
      `lots.${oil}.tolerance`,
      `The tolerance is ${tolerance} mg KOH/g. Give 0 or more, and less than the value of ${value}.`,
    ),
  ]
}

/** A value outside its oil's range is weighed out only with the lot and the paper that it stands on. */
function unsignedProblems(
  oil: string,
  { saponificationValue: value = NaN, name: lot, certificate }: OilLot,
  name: string,
  { low, high }: NaturalRange,
): Problem[] {
  const outside = value < low || value > high
  const signed = lot !== undefined && lot.trim() !== '' && isPaperNumber(certificate)
  if (!outside || signed) return []
  const missing = lot === undefined || lot.trim() === '' ? 'name' : 'certificate'
  return [
    problem(
      `lots.${oil}.${missing}`,
      `${name}: the certificate's ${value} mg KOH/g lies outside the ${low} to ${high} of sound lots. Have it confirmed, then give the lot's name and the number of its certificate; without them nothing is weighed out.`,
    ),
  ]
}

/** Whether a value can be that oil's at all. */
function believable(value: number, { low, high }: NaturalRange): boolean {
  return value >= low * (1 - BELIEVABLE) && value <= high * (1 + BELIEVABLE)
}

function unbelievableMessage(value: number, name: string, range: NaturalRange): string {
  const between = `Sound lots of ${name.charAt(0).toLowerCase()}${name.slice(1)} have ${range.low} to ${range.high} mg KOH/g`
  const meant = valueMeant(value, range)
  if (!meant) return `The value is ${value} mg KOH/g. ${between}. Look at the certificate again.`
  return (
    `The value ${value} looks like ${meant.what}; as mg KOH/g that is ` +
    `${plain(meant.mgKohPerG)}. ${between}. Give it in mg KOH/g.`
  )
}

/** What a value was probably meant as, in mg KOH/g to a tenth; undefined where nothing fits. */
function valueMeant(value: number, range: NaturalRange) {
  const meant = MIXED_UP.find(({ factor }) => believable(value * factor, range))
  return meant && { what: meant.what, mgKohPerG: Math.round(value * meant.factor * 10) / 10 }
}

/** For each lot whose value was given in another unit: the value in mg KOH/g in its place. */
export function lotRemedies({ lots = {} }: BatchOrder, library: Library): Remedy[] {
  return Object.entries(lots).flatMap(([oil, lot]) => {
    const known = library.oils.get(oil)
    const value = lot.saponificationValue
    if (!known || value === undefined) return []
    const { saponificationValue: range } = known
    if (believable(value, range)) return []
    const meant = valueMeant(value, range)
    if (!meant) return []
    const saponificationValue = meant.mgKohPerG
    return [
      {
        answers: `lots.${oil}.saponificationValue`,
        says: `Take ${plain(saponificationValue)} mg KOH/g`,
        change: { lots: { ...lots, [oil]: { ...lot, saponificationValue } } },
      },
    ]
  })
}

/** A value outside its oil's range that lot and certificate stand for is weighed out and remarked upon. */
export function lotRemarks({ lots = {} }: BatchOrder, library: Library): Remark[] {
  return Object.entries(lots).flatMap(
    ([oil, { saponificationValue: value, name: lot, certificate }]) => {
      const { name, saponificationValue } = oilOf(library, oil)
      const { low, high } = saponificationValue
      if (value === undefined || (value >= low && value <= high)) return []
      return [
        {
          code: `lot.${oil}`,
          message: `${name}: ${value} mg KOH/g lies outside the ${low} to ${high} of sound lots; weighed out on certificate ${certificate ?? ''} of lot ${lot ?? ''}.`,
        },
      ]
    },
  )
}
