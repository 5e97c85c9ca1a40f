import { demo } from '../data/demo'
import type { Work } from './work'

const { name, currency, shelf, wishes, goal, axes, batch } = demo

/** What a first visit opens on. */
export const FIRST_WORK: Work = {
  brief: { name, currency, shelf, groups: [], wishes, goal, axes },
  batch,
  bench: { candidates: [], reference: undefined },
}
