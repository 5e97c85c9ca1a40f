import { demo } from '../data/demo'
import { COST } from '../domain/blend/measure'
import type { Work } from './work'

const { name, currency, shelf, wishes, goal, axes, batch } = demo

/** How much a first batch is made of, and how much of its fat stays as it is: common practice. */
const FIRST_GRAMS = 1000
const FIRST_SUPERFAT_PERCENT = 5

/** A shelf without oils, and nothing asked. */
const EMPTY = { shelf: [], groups: [], wishes: {}, goal: { minimise: COST } } as const

/** What a first visit opens on: nothing yet. */
export const FIRST_WORK: Work = {
  brief: { name: 'New bar', currency, axes, ...EMPTY },
  batch: { ...batch, oilGrams: FIRST_GRAMS, superfatPercent: FIRST_SUPERFAT_PERCENT },
  bench: { candidates: [], reference: undefined },
}

/** The example, worked through: an invented scenario. */
export const EXAMPLE_WORK: Work = {
  ...FIRST_WORK,
  brief: { name, currency, shelf, groups: [], wishes, goal, axes },
  batch,
}

/**
 * The work with nothing in hand and an empty Bench. Currency and axes, how batches are made in this shop and
 * its Ledger stay, and so do oils of one's own.
 */
export function startedAfresh({ brief, batch, ledger, ownOils }: Work): Work {
  return {
    brief: { name: FIRST_WORK.brief.name, currency: brief.currency, axes: brief.axes, ...EMPTY },
    batch,
    bench: { candidates: [], reference: undefined },
    ...(ledger && { ledger }),
    ...(ownOils && { ownOils }),
  }
}

/** The work with the example's brief and batch in place of its own, and the bar that it finds in hand. */
export function withExample({ bar: _bar, pasting: _pasting, ...work }: Work): Work {
  return { ...work, brief: EXAMPLE_WORK.brief, batch: EXAMPLE_WORK.batch }
}
