import { demo } from '../data/demo'
import { COST } from '../domain/blend/measure'
import type { Work } from './work'

const { name, currency, shelf, wishes, goal, axes, batch } = demo

/** What a first visit opens on. */
export const FIRST_WORK: Work = {
  brief: { name, currency, shelf, groups: [], wishes, goal, axes },
  batch,
  bench: { candidates: [], reference: undefined },
}

/**
 * The work with an empty brief and an empty Bench. Currency and axes, how batches are made in this shop and
 * its Ledger stay.
 */
export function startedAfresh({ brief, batch, ledger }: Work): Work {
  const { currency: money, axes: ways } = brief
  const empty = { shelf: [], groups: [], wishes: {}, goal: { minimise: COST } }
  return {
    brief: { name: 'New brief', currency: money, axes: ways, ...empty },
    batch,
    bench: { candidates: [], reference: undefined },
    ...(ledger && { ledger }),
  }
}

/** The work with the example brief in place of its own. */
export function withExample(work: Work): Work {
  return { ...work, brief: FIRST_WORK.brief }
}
