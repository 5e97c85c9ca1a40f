import type { Actuals } from '../../domain/batch/actuals'
import type { WorkStep } from '../../domain/batch/steps'

/** Steps whose lines go into the jug, not the pot. */
const IN_JUG: readonly string[] = ['water', 'lye']

/** What pot and jug read once each line is in, g by key, with what was really weighed in its place. */
export function readings(steps: readonly WorkStep[], actual: Actuals): ReadonlyMap<string, number> {
  const held = { pot: 0, jug: 0 }
  const read = new Map<string, number>()
  for (const { id, lines } of steps) {
    const vessel = IN_JUG.includes(id) ? 'jug' : 'pot'
    for (const { key, grams } of lines) {
      held[vessel] += actual[key] ?? grams
      read.set(key, held[vessel])
    }
    if (id === 'combine') held.pot += held.jug
  }
  return read
}
