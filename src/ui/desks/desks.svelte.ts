import { createContext } from 'svelte'
import type { BarDesk } from '../../state/bar.svelte'
import type { Bench } from '../../state/bench.svelte'
import type { BenchStudies } from '../../state/bench-study.svelte'
import type { Confirmer } from '../../state/confirmer.svelte'
import type { Explorer } from '../../state/explorer.svelte'
import type { WorkHistory } from '../../state/history.svelte'
import type { Improving } from '../../state/improve.svelte'
import type { WorkKeeper } from '../../state/keeper.svelte'
import type { MapView } from '../../state/map-view.svelte'
import type { ReasonsDesk } from '../../state/reasons.svelte'
import type { BriefDesk } from './brief-desk.svelte'
import type { PagePlace } from '../place.svelte'

/** What the page works with, made once by `main.ts`. */
export interface Desks {
  readonly work: WorkHistory
  readonly keeper: WorkKeeper
  readonly explorer: Explorer
  readonly view: MapView
  readonly reasons: ReasonsDesk
  readonly bench: Bench
  readonly studies: BenchStudies
  readonly confirmer: Confirmer
  readonly bar: BarDesk
  readonly improving: Improving
  readonly files: BriefDesk
  readonly place: PagePlace
}

/** Hands the desks down to all components below, and takes them there. */
export const [useDesks, handDown] = createContext<Desks>()

/**
 * A desk of a place that is loaded late: made when it is first asked for, and kept. Its derived values
 * belong to no component, so they outlast the one that asked.
 */
export function madeOnce<Desk>(make: (desks: Desks) => Desk): (desks: Desks) => Desk {
  const made = new WeakMap<Desks, { readonly desk: Desk }>()
  return (desks) => {
    const kept = made.get(desks)
    if (kept) return kept.desk
    const { desk } = outsideOfComponents(() => make(desks))
    made.set(desks, { desk })
    return desk
  }
}

function outsideOfComponents<T>(make: () => T): { readonly desk: T } {
  const all: { desk: T }[] = []
  $effect.root(() => void all.push({ desk: make() }))
  const [one] = all
  if (!one) throw new Error('A root effect runs at once')
  return one
}
