import type { Problem } from '../domain/blend/check-blend'
import type { BatchChoices } from './work'

/** First parts of the paths that belong to each group of fields whose figures are held until they are right. */
const PATHS = {
  superfat: ['superfat'],
  alkali: ['purity', 'purityIs', 'purityUpTo', 'lyeSolution'],
  water: ['water'],
  lots: ['lots'],
  acids: ['acids'],
  reason: ['confirmedLean'],
} as const satisfies Readonly<Record<string, readonly string[]>>

export type HeldGroup = keyof typeof PATHS

export const HELD_GROUPS = Object.keys(PATHS) as HeldGroup[]

/** What was typed in each group and can't be in force yet. */
export type Held = Readonly<Partial<Record<HeldGroup, Partial<BatchChoices>>>>

/** The problems that are mended by the fields of a group. */
export function problemsAt(group: HeldGroup, problems: readonly Problem[]): readonly Problem[] {
  const paths: readonly string[] = PATHS[group]
  return problems.filter(({ path }) => paths.includes(path.split(/[.[]/u)[0] ?? ''))
}
