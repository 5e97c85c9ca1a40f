import { library } from '../../state/library'
import type { Explorer } from '../../state/explorer.svelte'
import type { Entry } from '../../state/bench-sheet'
import { optionOf } from '../brief/goals'
import { upperFirst } from './words'

/** A blend that can be put on the Bench, with where it stands in the menu. */
export interface Addition extends Entry {
  readonly label: string
  readonly aside: string
}

/** What there is to put on the Bench: the blend in hand, the maker's own bar, the reference bars. */
export function additionsOf(explorer: Explorer): Addition[] {
  const { present, picked, bar } = explorer
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
    ...(bar
      ? [
          {
            label: bar.name,
            aside: 'your bar',
            name: bar.name,
            from: 'Your bar',
            blend: bar.blend,
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
function nameOfFound({ brief }: Explorer): string {
  const label = optionOf(brief.goal)?.label ?? 'found blend'
  return upperFirst(label.replace(/ blend\b|^blend (?:with the )?/u, ''))
}
