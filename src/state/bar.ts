import type { Blend } from '../domain/blend/blend'
import {
  blendOfParts,
  type GivesWay,
  type Part,
  partsOf,
  withoutPart,
} from '../domain/blend/giving-way'
import type { Move } from '../domain/optimise/studies/from-here'
import { WHOLE_PERCENT } from '../domain/units'
import type { BatchChoices } from './batch-choices'
import { type ShelfRow, withOil } from './draft'
import { isSameBlend } from './bench-sheet'
import type { Work } from './work'

/** A bar as it was kept: what later changes of it are looked at beside. */
export interface Version {
  /** From 1 on, in the order they were kept. */
  readonly number: number
  readonly blend: Blend
}

/** The maker's own bar, changed by hand. Its name is the brief's. */
export interface Bar {
  /** In the order of the page; at least one. */
  readonly parts: readonly Part[]
  /** What gives way to a share that is changed; the largest free oil where left out. */
  readonly givesWay?: GivesWay | undefined
  /** Oldest first. */
  readonly versions: readonly Version[]
  /** 10 where left out. */
  readonly move?: Move | undefined
}

/** A bar of a blend, its largest oil first. */
export function barOf(blend: Blend): Bar {
  return { parts: partsOf(blend), versions: [] }
}

/** Whether nothing was begun: no bar, and no more than oils picked, without prices, limits or wishes. */
export function isBeginning({ bar, brief }: Work): boolean {
  const { shelf, wishes, groups } = brief
  const isBare = (row: ShelfRow) =>
    !row.banned && Object.keys(row).every((key) => key === 'oil' || key === 'banned')
  return !bar && shelf.every(isBare) && Object.keys(wishes).length === 0 && groups.length === 0
}

/** The newest version kept of a bar. */
export function keptOf(bar: Bar | undefined): Version | undefined {
  return bar?.versions.at(-1)
}

/** Whether a bar differs from its newest version, or has none. */
export function isDraft(bar: Bar): boolean {
  const kept = keptOf(bar)
  return !kept || !isSameBlend(kept.blend, blendOfParts(bar.parts))
}

/** The work with a bar in hand, its oils on the shelf. */
export function withBar(work: Work, bar: Bar): Work {
  const brief = bar.parts.reduce((draft, { oil }) => withOil(draft, oil), work.brief)
  return { ...work, bar, brief }
}

/**
 * The work with a blend taken as the next draft of the bar in hand: versions stay, and an oil that keeps its
 * place keeps its row. A lock holds only where the share is the same.
 */
export function withTaken(work: Work, blend: Blend): Work {
  const bar = work.bar ?? barOf(blend)
  const kept = bar.parts
    .filter(({ oil }) => (blend[oil] ?? 0) > 0)
    .map((part): Part => {
      const percent = blend[part.oil] ?? 0
      return { ...part, percent, locked: part.locked && percent === part.percent }
    })
  const come = partsOf(blend).filter(({ oil }) => !kept.some((part) => part.oil === oil))
  return withBar(work, { ...bar, parts: [...kept, ...come] })
}

/**
 * The work with a blend taken from a paper: the next draft of the bar in hand, or version 1 where there is none.
 * `batch` is what the paper says of the batch.
 */
export function withTakenFrom(work: Work, blend: Blend, batch: BatchChoices): Work {
  const taken = withTaken(work, blend)
  const bar = work.bar ? taken.bar : taken.bar && withKept(taken.bar)
  return { ...taken, batch, ...(bar && { bar }) }
}

/** A batch whose weight of oils is said by hand, g: neither a mould nor bars say it any more. */
export function sizedByOils(oilGrams: number) {
  return { oilGrams, mould: undefined, bars: undefined } as const
}

/** A bar with an oil more, of which there is none yet; alone it is all of the bar. */
export function withOilAdded(bar: Bar | undefined, oil: string): Bar {
  if (!bar || bar.parts.length === 0)
    return { ...(bar ?? { versions: [] }), parts: [{ oil, percent: WHOLE_PERCENT, locked: false }] }
  if (bar.parts.some((part) => part.oil === oil)) return bar
  return { ...bar, parts: [...bar.parts, { oil, percent: 0, locked: false }] }
}

/** A bar without an oil; undefined where that was its last. */
export function withOilOut(bar: Bar, oil: string): Bar | undefined {
  const parts = withoutPart(bar.parts, oil)
  return parts.length === 0 ? undefined : { ...bar, parts }
}

/** A bar with its draft kept as the next version. */
export function withKept(bar: Bar): Bar {
  if (!isDraft(bar)) return bar
  const number = (keptOf(bar)?.number ?? 0) + 1
  return { ...bar, versions: [...bar.versions, { number, blend: blendOfParts(bar.parts) }] }
}

/** A bar with its newest version in hand again. */
export function withVersionBack(bar: Bar): Bar {
  const kept = keptOf(bar)
  if (!kept) return bar
  return { ...bar, parts: partsOf(kept.blend) }
}
