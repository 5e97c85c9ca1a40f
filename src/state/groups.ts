import type { OilGroup } from '../domain/optimise/brief/brief'
import type { Draft } from './draft'

/** The draft with one more group of oils that are limited together. */
export function withGroup(draft: Draft, name: string, oils: readonly string[]): Draft {
  return { ...draft, groups: [...draft.groups, { name, oils }] }
}

/** The draft with one group changed. */
export function withGroupChanged(draft: Draft, at: number, change: Partial<OilGroup>): Draft {
  const groups = draft.groups.map((group, n) => (n === at ? { ...group, ...change } : group))
  return { ...draft, groups }
}

/** The draft with an oil put into a group, or taken out of it. */
export function withGroupOil(draft: Draft, at: number, oil: string, isIn: boolean): Draft {
  const others = draft.groups[at]?.oils.filter((one) => one !== oil) ?? []
  return withGroupChanged(draft, at, { oils: isIn ? [...others, oil] : others })
}

/** The draft without one group; its oils stay. */
export function withoutGroup(draft: Draft, at: number): Draft {
  return { ...draft, groups: draft.groups.filter((_, n) => n !== at) }
}
