import { ALKALI_FORMULAS } from '../../chemistry/alkali'
import type { IfWrong } from '../superfat/if-wrong'
import { percentFromFraction } from '../../units'
import type { BatchOrder } from '../order/order'
import { alkalisOf } from '../order/order'
import type { ReadyPlan } from '../result/plan'
import { contentUpTo, isCertified } from '../order/purity'
import type { Interval } from '../../interval'
import type { SheetRow } from './sheet'
import { oneIn } from '../result/warnings'

/** How many of the things that may be wrong stand on paper. */
export const WRONG_ON_PAPER = 3

/** What the guard says on a sheet: both spans, one lot in n, what they stand on, the tick set by hand. */
export function guardRows({ superfat, order }: ReadyPlan): SheetRow[] {
  const { likely, reachPercent, withoutCertificatesPercent: wide, inCook } = superfat
  const least = superfat.leastSafePercent
  const rows: (SheetRow | null)[] = [
    {
      what: 'Superfat',
      value: `asked ${one(superfat.askedPercent)} %, as weighed ${one(superfat.typicalPercent)} %`,
    },
    { what: 'Nineteen lots in twenty', value: span(likely.percent) },
    {
      what: 'At worst',
      value: `${span(reachPercent)}${superfat.scaleKnown ? '' : ', scales not known'}`,
    },
    { what: 'Free lye', value: oneIn(likely) },
    wide && { what: 'At worst, without certificates', value: span(wide) },
    least === null
      ? null
      : { what: 'Free lye possible below', value: `${one(least)} % lye discount` },
    inCook && {
      what: 'Superfat in the cook',
      value: `${one(inCook.typicalPercent)} %, likely ${span(inCook.likely.percent)}, at worst ${one(inCook.reachPercent.min)} %`,
    },
    { what: 'What that stands on', value: superfat.standsOnWords },
    ...alkalisOf(order).map((kind) => ({
      what: `Purity, ${ALKALI_FORMULAS[kind]}`,
      value: purityInWords(order, kind),
    })),
    reachPercent.min < 0
      ? { what: 'Worst case read', value: order.leanSeen === true ? '[x] ticked by hand' : '[ ]' }
      : null,
  ]
  return rows.filter((row) => row !== null)
}

/** "97 %, at least: the lean end counts it as 100 %". */
export function purityInWords(order: BatchOrder, kind: 'naoh' | 'koh'): string {
  const strength = order.lyeSolution?.[kind]
  const stated = strength ?? order.purity[kind]
  if (stated === undefined) return 'taken as pure'
  const is = order.purityIs?.[kind] ?? 'atLeast'
  const upTo = Number(percentFromFraction(contentUpTo(order, kind)).toFixed(2))
  const counted = upTo > stated ? `; the lean end counts it as ${upTo} %` : ''
  const meant = isCertified(is)
    ? `by certificate ${is.certificate}`
    : is === 'exactly'
      ? 'exactly'
      : strength === undefined
        ? 'at least'
        : 'as solution'
  return `${stated} % ${meant}${counted}`
}

/** The worst of what one thing wrong would do, for paper. */
export function wrongRows({ ifWrong }: ReadyPlan): SheetRow[] {
  return ifWrong.slice(0, WRONG_ON_PAPER).map(wrongRow)
}

function wrongRow({ title, detail, superfatPercent, says }: IfWrong): SheetRow {
  return { what: title, value: `${one(superfatPercent)} %: ${says} (${detail})` }
}

function span({ min, max }: Interval): string {
  return `${one(min)} to ${one(max)} %`
}

function one(value: number): string {
  return value.toFixed(1)
}
