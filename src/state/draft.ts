import type { Brief, Goal, Limits, OilGroup, ShelfOil } from '../domain/optimise/brief'
import type { Axes } from '../domain/optimise/region'
import { WHOLE_PERCENT } from '../domain/units'

/** One oil on the shelf as the maker keeps it: a banned oil stays in sight but out of the brief. */
export interface ShelfRow {
  readonly oil: string
  readonly pricePerKg?: number | undefined
  readonly min?: number | undefined
  readonly max?: number | undefined
  readonly banned: boolean
  /** A locked oil holds this share, in percent. */
  readonly lockedAt?: number | undefined
}

/** Everything about a brief that a person can change on the page. Replaced as a whole by each edit. */
export interface Draft {
  readonly name: string
  readonly currency: string
  readonly shelf: readonly ShelfRow[]
  readonly groups: readonly OilGroup[]
  readonly wishes: Readonly<Record<string, Limits>>
  readonly goal: Goal
  readonly axes: Axes
}

/** A lock holds the share as it is shown, so half the last digit shown is left free; percent. */
const LOCK_PLAY_PERCENT = 0.05

/** The brief that a draft asks to have solved: banned oils left out, locks as limits. */
export function briefOfDraft(draft: Draft): Brief {
  const open = draft.shelf.filter(({ banned }) => !banned)
  const oils = Object.fromEntries(open.map((row) => [row.oil, shelfOil(row)]))
  const groups = draft.groups.map((group) => ({
    ...group,
    oils: group.oils.filter((oil) => oil in oils),
  }))
  return {
    oils,
    groups: groups.filter((group) => group.oils.length > 0),
    measures: draft.wishes,
    goal: draft.goal,
  }
}

function shelfOil({ pricePerKg, min, max, lockedAt }: ShelfRow): ShelfOil {
  if (lockedAt === undefined) return { pricePerKg, min, max }
  return {
    pricePerKg,
    min: Math.max(0, lockedAt - LOCK_PLAY_PERCENT),
    max: Math.min(WHOLE_PERCENT, lockedAt + LOCK_PLAY_PERCENT),
  }
}

/** The draft with one oil's row changed. */
export function withRow(draft: Draft, oil: string, change: Partial<ShelfRow>): Draft {
  const shelf = draft.shelf.map((row) => (row.oil === oil ? { ...row, ...change } : row))
  return { ...draft, shelf }
}

/** The draft with an oil put on the shelf, or let back in if it stood there banned. */
export function withOil(draft: Draft, oil: string): Draft {
  if (draft.shelf.some((row) => row.oil === oil)) return withRow(draft, oil, { banned: false })
  return { ...draft, shelf: [...draft.shelf, { oil, banned: false }] }
}

/** The draft with an oil taken off the shelf. */
export function withoutOil(draft: Draft, oil: string): Draft {
  return { ...draft, shelf: draft.shelf.filter((row) => row.oil !== oil) }
}

/** The draft with one end of a wish changed; undefined means any. */
export function withWish(
  draft: Draft,
  measure: string,
  side: 'min' | 'max',
  value: number | undefined,
): Draft {
  const wish = { ...draft.wishes[measure], [side]: value }
  return { ...draft, wishes: { ...draft.wishes, [measure]: wish } }
}
