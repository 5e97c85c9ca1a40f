import type { Brief, OilGroup } from '../domain/optimise/brief/brief'
import type { Draft, Formula } from './draft'

/**
 * The draft with a formula kept to be looked at beside, and its oils on the shelf. Oils that stand there
 * stay as they are, with price, limits and ban. `only` takes all others off.
 */
export function withFormula(draft: Draft, formula: Formula, only: boolean): Draft {
  const oils = Object.keys(formula.blend)
  const kept = draft.shelf.filter(({ oil }) => !only || oils.includes(oil))
  const standing = new Set(kept.map(({ oil }) => oil))
  const added = oils.filter((oil) => !standing.has(oil)).map((oil) => ({ oil, banned: false }))
  return {
    ...draft,
    formula,
    shelf: [...kept, ...added],
    groups: groupsOn(draft, only ? oils : undefined),
  }
}

/** The groups without oils that are not on the shelf. */
function groupsOn({ groups }: Draft, oils: readonly string[] | undefined): readonly OilGroup[] {
  if (!oils) return groups
  return groups
    .map((group) => ({ ...group, oils: group.oils.filter((oil) => oils.includes(oil)) }))
    .filter((group) => group.oils.length > 0)
}

/** The draft that asks what a brief from elsewhere asks. */
export function draftOfBrief(draft: Draft, brief: Brief, name: string): Draft {
  const shelf = Object.entries(brief.oils).map(([oil, row]) => ({ oil, ...row, banned: false }))
  const { groups, measures: wishes, goal, rules, robust } = brief
  return { ...draft, name, shelf, groups, wishes, goal, rules, robust }
}
