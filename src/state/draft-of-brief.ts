import type { Brief } from '../domain/optimise/brief/brief'
import type { Draft } from './draft'

/** The draft that asks what a brief from elsewhere asks. */
export function draftOfBrief(draft: Draft, brief: Brief, name: string): Draft {
  const shelf = Object.entries(brief.oils).map(([oil, row]) => ({ oil, ...row, banned: false }))
  const { groups, measures: wishes, goal, rules, robust } = brief
  return { ...draft, name, shelf, groups, wishes, goal, rules, robust }
}
