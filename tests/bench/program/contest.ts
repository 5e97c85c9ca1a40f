import { at, Random, shuffled } from '../../generator/random'
import { type Figures, figuresOf } from './figures'
import type { Verdict } from './rivals/rival'

/** Reads what a run came to, after the clock has stopped. */
export type Read = () => readonly Verdict[]

/** One way of doing a task on one instance; `run` is what is timed. */
export interface Entry {
  readonly name: string
  readonly run: () => Read
  /** Runs in so many of the rounds only, because it is slow; in all if left out. */
  readonly rounds?: number | undefined
}

/** All ways of doing a task on one instance; our own is the first. */
export interface Heat {
  readonly entries: readonly Entry[]
  readonly dispose: () => void
}

/** How one solver did. */
export interface Standing {
  readonly name: string
  readonly times: Figures
  /** Answers given, and how many of them are not those of the judge. */
  readonly answers: number
  readonly none: number
  readonly differing: number
}

/** Any whole number: the same orders in every run. */
const ORDER_SEED = 1

export interface ContestOrder {
  readonly instances: number
  readonly makeHeat: (instance: number) => Heat
  /** Timed rounds over all instances, after the untimed ones to warm up. */
  readonly rounds: number
  readonly warmUps: number
  /** Whose answers count as right; our own where it does not take part. */
  readonly judge: string
}

/** Answers are the same within this part of their size, or of 1: yalps and javascript-lp-solver keep rows to 1e-8. */
const SAME = 1e-6

/**
 * Lets all solvers do a task on the same instances, in turn and in one process: in every round each
 * instance goes to one after the other, in an order drawn anew, so that nobody always comes after the
 * same one: some leave the processor's caches full of their own. Answers are compared in the first
 * timed round.
 */
export function contest(order: ContestOrder): Standing[] {
  const heats = Array.from({ length: order.instances }, (_, k) => order.makeHeat(k))
  const tallies = new Map<string, Tally>()
  const random = new Random(ORDER_SEED)
  for (let round = -order.warmUps; round < order.rounds; round++) {
    heats.forEach(({ entries }) => {
      const reads = new Map<string, Read>()
      for (const place of shuffled(random, entries.length)) {
        const entry = at(entries, place)
        if (!takesPart(entry, round)) continue
        const start = performance.now()
        const read = entry.run()
        const took = performance.now() - start
        if (round >= 0) tallyOf(tallies, entry.name).times.push(took)
        if (round === 0) reads.set(entry.name, read)
      }
      if (round === 0) compare(entries, reads, order.judge, tallies)
    })
  }
  for (const { dispose } of heats) dispose()
  return [...tallies].map(([name, { times, ...rest }]) => {
    return { name, times: figuresOf(times), ...rest }
  })
}

/** A slow entry does not warm up: earlier tasks have done so. */
function takesPart({ rounds }: Entry, round: number): boolean {
  return rounds === undefined || (round >= 0 && round < rounds)
}

interface Tally {
  readonly times: number[]
  answers: number
  none: number
  differing: number
}

function tallyOf(tallies: Map<string, Tally>, name: string): Tally {
  const tally = tallies.get(name) ?? { times: [], answers: 0, none: 0, differing: 0 }
  tallies.set(name, tally)
  return tally
}

function compare(
  entries: readonly Entry[],
  reads: ReadonlyMap<string, Read>,
  judge: string,
  tallies: Map<string, Tally>,
): void {
  const right = (reads.get(judge) ?? reads.get(entries[0]?.name ?? ''))?.() ?? []
  for (const { name } of entries) {
    const tally = tallyOf(tallies, name)
    const answers = reads.get(name)?.() ?? []
    tally.answers += answers.length
    if (answers.length !== right.length) tally.differing += Math.abs(answers.length - right.length)
    answers.forEach((answer, k) => {
      if (answer === 'no answer') tally.none++
      else if (!isSame(answer, right[k])) tally.differing++
    })
  }
}

function isSame(a: Verdict, b: Verdict | undefined): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b
  return Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a), Math.abs(b))
}
