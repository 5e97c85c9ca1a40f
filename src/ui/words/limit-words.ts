import { library } from '../../state/library'
import type { Brief } from '../../domain/optimise/brief/brief'
import type { Limit } from '../../domain/optimise/brief/limits'
import { money, withUnit } from './format'

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

/** A rule of a brief in words, by the path that a conflict names it by; undefined for any other path. */
export function ruleInWords(path: string, { rules }: Brief): string | undefined {
  const name = (id: string) => library.oils.get(id)?.shortName.toLowerCase() ?? id
  const words = new Map<string, string>([
    ['rules.atMostOils', `at most ${rules?.atMostOils} oils`],
    ['rules.absentOrAtLeast', `each oil at least ${withUnit(rules?.absentOrAtLeast ?? 0, 0, '%')}`],
    ['rules.shareStep', `steps of ${rules?.shareStep} %`],
    ...(rules?.requires ?? []).map(
      (pair, at) =>
        [`rules.requires[${at}]`, `${name(pair.oil)} only with ${name(pair.with)}`] as const,
    ),
    ...(rules?.oneOf ?? []).map(
      (oils, at) => [`rules.oneOf[${at}]`, `only one of ${oils.map(name).join(', ')}`] as const,
    ),
  ])
  return words.get(path)
}
