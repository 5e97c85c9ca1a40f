import { library } from '../../data/library'
import type { Explorer } from '../../state/explorer.svelte'
import type { Entry } from '../../state/bench-sheet'
import { optionOf } from '../brief/goals'
import { upperFirst } from './words'

/** A blend that can be put on the Bench, with where it stands in the menu. */
export interface Addition extends Entry {
  readonly label: string
  readonly aside: string
}

/** What there is to put on the Bench: the blend in hand, the maker's formula, the reference bars. */
export function additionsOf(explorer: Explorer): Addition[] {
  const { present, picked, draft } = explorer
  const { formula } = draft
  return [
    ...(present
      ? [
          {
            label: 'The blend in hand',
            aside: picked ? 'picked' : 'found',
            name: picked ? 'Picked blend' : nameOfFound(explorer),
            from: picked ? 'Picked by hand' : 'Found for the brief',
            blend: present.blend,
          },
        ]
      : []),
    ...(formula
      ? [
          {
            label: formula.name,
            aside: 'your formula',
            name: formula.name,
            from: 'Your formula',
            blend: formula.blend,
          },
        ]
      : []),
    ...library.referenceBars.map(({ name, blend, why }) => ({
      label: name,
      aside: 'reference bar',
      name,
      from: `Reference bar. ${why}`,
      blend,
    })),
  ]
}

/** "Cheapest", from the goal the blend was found by. */
function nameOfFound({ draft }: Explorer): string {
  const label = optionOf(draft.goal)?.label ?? 'found blend'
  return upperFirst(label.replace(/ blend\b|^blend (?:with the )?/u, ''))
}
