import { library } from '../../data/library'
import type { Brief } from '../../domain/optimise/brief'
import type { Limit } from '../../domain/optimise/limits'
import { money, withUnit } from '../format'

/** What a limit limits, as the page names it. */
export function limitSubject({ kind, subject: id }: Limit, brief: Brief): string {
  if (kind === 'measure') return library.measures.find((one) => one.id === id)?.name ?? id
  if (kind === 'oil') return library.oils.get(id)?.shortName ?? id
  return brief.groups[Number(id)]?.name ?? id
}

/** A limit's value as typed, with its unit. */
export function limitValue(limit: Limit, value: number, currency: string): string {
  if (limit.kind !== 'measure') return withUnit(value, Number.isInteger(value) ? 0 : 1, '%')
  const measure = library.measures.find(({ id }) => id === limit.subject)
  return measure?.unit === 'money per kg' ? money(value, currency) : String(value)
}

/** A limit in words: "Hardness at least 38". */
export function limitInWords(limit: Limit, value: number, brief: Brief, currency: string): string {
  const side = limit.side === 'min' ? 'least' : 'most'
  return `${limitSubject(limit, brief)} at ${side} ${limitValue(limit, value, currency)}`
}
