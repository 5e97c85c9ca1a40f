import type { Brief, Limits } from './brief'

/** Which end of a range a limit is. */
export type Side = 'min' | 'max'

/** One limit of a brief, named by its path: measures.hardness.min, oils.palm.max, groups[0].max. */
export interface Limit {
  readonly path: string
  readonly kind: 'oil' | 'group' | 'measure'
  /** The oil's or measure's id, or the group's number. */
  readonly subject: string
  readonly side: Side
  /** In percent of oil weight, points, or money per kg. */
  readonly value: number
}

/** Both ends of a range. */
export const SIDES: readonly Side[] = ['min', 'max']

/** All limits a brief states: those of oils first, then of groups, then of measures. */
export function limitsOf(brief: Brief): Limit[] {
  return [
    ...Object.entries(brief.oils).flatMap(([oil, limits]) => stated('oil', oil, limits)),
    ...brief.groups.flatMap((group, number) => stated('group', String(number), group)),
    ...Object.entries(brief.measures).flatMap(([id, limits]) => stated('measure', id, limits)),
  ]
}

/** The path by which a limit is named. */
export function limitPath(kind: Limit['kind'], subject: string, side: Side): string {
  if (kind === 'oil') return `oils.${subject}.${side}`
  if (kind === 'group') return `groups[${subject}].${side}`
  return `measures.${subject}.${side}`
}

/** The brief with one limit at another value, or without it where the value is undefined. */
export function withLimit(brief: Brief, limit: Limit, value: number | undefined): Brief {
  const { kind, subject, side } = limit
  const change = <T extends Limits>(limits: T): T => ({ ...limits, [side]: value })
  if (kind === 'group') {
    const groups = brief.groups.map((group, n) => (String(n) === subject ? change(group) : group))
    return { ...brief, groups }
  }
  const part = kind === 'oil' ? 'oils' : 'measures'
  return { ...brief, [part]: { ...brief[part], [subject]: change(brief[part][subject] ?? {}) } }
}

function stated(kind: Limit['kind'], subject: string, limits: Limits): Limit[] {
  return SIDES.flatMap((side) => {
    const value = limits[side]
    if (value === undefined) return []
    return [{ path: limitPath(kind, subject, side), kind, subject, side, value }]
  })
}
