import { library } from './library'
import type { Blend } from '../domain/blend/blend'
import { COST } from '../domain/blend/measure'
import { type Pack, pricePerKgOfPack } from '../domain/cost/pack'
import type { Brief, Goal, Limits, OilGroup, ShelfOil } from '../domain/optimise/brief/brief'
import type { BriefRules } from '../domain/optimise/brief/brief-rules'
import type { Axes } from '../domain/optimise/map/region'
import { WHOLE_PERCENT } from '../domain/units'
import { type Stock, withinStock } from './stock'
import { without } from './without'

/** One oil on the shelf as the maker keeps it: a banned oil stays in sight but out of the brief. */
export interface ShelfRow extends Limits {
  readonly oil: string
  /** The price typed; a whole pack goes before it, see `priceOf`. */
  readonly pricePerKg?: number | undefined
  readonly pack?: Pack | undefined
  readonly banned: boolean
  /** A locked oil holds this share, in percent. */
  readonly lockedAt?: number | undefined
  readonly stock?: Stock | undefined
}

/** What a blend should be best at; nearness to the bar in hand follows that as it changes. */
export type DraftGoal = Goal | { readonly nearest: 'bar' }

/** Everything about a brief that a person can change on the page. Replaced as a whole by each edit. */
export interface Draft {
  readonly name: string
  readonly currency: string
  readonly shelf: readonly ShelfRow[]
  readonly groups: readonly OilGroup[]
  readonly wishes: Readonly<Record<string, Limits>>
  readonly goal: DraftGoal
  readonly axes: Axes
  /** Rules about which oils a blend uses at all. */
  readonly rules?: BriefRules | undefined
  /** Whether wishes hold for any lot of the oils. */
  readonly robust?: boolean | undefined
}

/** A lock holds the share as it is shown, so half the last digit shown is left free; percent. */
const LOCK_PLAY_PERCENT = 0.05

/**
 * The brief that a draft asks to have solved: banned oils left out, locks and stocks as limits.
 * `oilGrams` is the weight of the batch's oils, which stocks are a part of; `bar` is the bar in hand, which a
 * goal may ask to be near. What is asked about cost waits while an oil has no price, see `waitingFor`.
 */
export function briefOfDraft(draft: Draft, oilGrams: number, bar?: Blend): Brief {
  const waiting = waitingFor(draft)
  const brief = wholeBriefOf(draft, oilGrams, bar)
  return {
    ...brief,
    measures: waiting.wish ? without(brief.measures, COST) : brief.measures,
    goal: waiting.goal ? nearTo(bar, draft) : brief.goal,
  }
}

/** The brief with all that was asked, also what waits for prices: for a file. */
export function wholeBriefOf(draft: Draft, oilGrams: number, bar?: Blend): Brief {
  const open = draft.shelf.filter(({ banned }) => !banned)
  const oils = Object.fromEntries(open.map((row) => [row.oil, shelfOil(row, oilGrams)]))
  return {
    oils,
    groups: openGroups(draft).map(({ group }) => group),
    measures: draft.wishes,
    goal: 'nearest' in draft.goal ? nearTo(bar, draft) : draft.goal,
    ...(draft.robust ? { robust: true } : {}),
    ...openRules(draft.rules, oils),
  }
}

/** What is asked about cost while some oils have no price: it waits, and stops nothing else. */
export interface Waiting {
  /** Open oils without a price. */
  readonly oils: readonly string[]
  readonly goal: boolean
  readonly wish: boolean
}

/** What of a draft waits for prices. */
export function waitingFor({ shelf, goal, wishes }: Draft): Waiting {
  const oils = shelf
    .filter((row) => !row.banned && priceOf(row) === undefined)
    .map(({ oil }) => oil)
  const lacks = oils.length > 0
  const { min, max } = wishes[COST] ?? {}
  return {
    oils,
    goal: lacks && 'minimise' in goal && goal.minimise === COST,
    wish: lacks && (min !== undefined || max !== undefined),
  }
}

/** Whether the goal is to be near the bar in hand: asked for, or while a goal on cost waits. */
export function asksNearBar(draft: Draft): boolean {
  return 'nearest' in draft.goal || waitingFor(draft).goal
}

/** Nearness to the bar in hand; without one, to an even mix of all open oils. */
function nearTo(bar: Blend | undefined, { shelf }: Draft): Goal {
  const open = shelf.filter(({ banned }) => !banned)
  const even = () => open.map(({ oil }) => [oil, WHOLE_PERCENT / open.length] as const)
  return { closestTo: bar ?? Object.fromEntries(even()) }
}

/** The rules as far as they speak of open oils. */
function openRules(
  rules: BriefRules | undefined,
  oils: Brief['oils'],
): { readonly rules?: BriefRules } {
  if (!rules) return {}
  const requires = rules.requires?.filter((pair) => pair.oil in oils && pair.with in oils)
  const oneOf = rules.oneOf
    ?.map((group) => group.filter((oil) => oil in oils))
    .filter((group) => group.length > 1)
  return { rules: { ...rules, requires, oneOf } }
}

/** The groups as far as their oils are open, each with its place in the draft. */
export function openGroups(draft: Draft): { readonly group: OilGroup; readonly at: number }[] {
  const open = new Set(draft.shelf.filter(({ banned }) => !banned).map(({ oil }) => oil))
  return draft.groups
    .map((group, at) => ({
      group: { ...group, oils: group.oils.filter((oil) => open.has(oil)) },
      at,
    }))
    .filter(({ group }) => group.oils.length > 0)
}

function shelfOil(row: ShelfRow, oilGrams: number): ShelfOil {
  return { pricePerKg: priceOf(row), ...withinStock(ownLimits(row), row.stock, oilGrams) }
}

function ownLimits({ min, max, lockedAt }: ShelfRow): Limits {
  if (lockedAt === undefined) return { min, max }
  return {
    min: Math.max(0, lockedAt - LOCK_PLAY_PERCENT),
    max: Math.min(WHOLE_PERCENT, lockedAt + LOCK_PLAY_PERCENT),
  }
}

/** Price of a row's oil per kg, from its pack where that is whole. */
export function priceOf({ oil, pack, pricePerKg }: ShelfRow): number | undefined {
  const density = library.oils.get(oil)?.densityGPerMl ?? undefined
  return (pack && pricePerKgOfPack(pack, density)) ?? pricePerKg
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
