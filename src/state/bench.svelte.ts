import { library, libraryNow } from './library'
import { measureOf } from '../domain/blend/library'
import { type Blend, normalised, type Prices, totalChange } from '../domain/blend/blend'
import { blendValues } from '../domain/blend/values'
import { goalMeasure } from '../domain/optimise/brief/brief'
import type { Found } from '../domain/optimise/brief/answer'
import { withTaken } from './bar'
import { type Column, columnOf, type Facts, factsOf } from './bench-facts'
import {
  candidateOf,
  type Entry,
  inColumns,
  isSameBlend,
  MOST_CANDIDATES,
  referenceOf,
  withEntries,
  withMoved,
  withOrder,
  withoutCandidate,
  withWords,
} from './bench-sheet'
import { priceOf } from './draft'
import type { Explorer } from './explorer.svelte'
import type { WorkHistory } from './history.svelte'
import type { BenchSheet, Candidate, Work } from './work'

/** Weight of a bar as poured where none is given, g: a usual hand bar; common practice. */
const USUAL_BAR_GRAMS = 100

/** The blends put side by side. */
export class Bench {
  /** Whether rows in which nothing can be told apart are left out. */
  differencesOnly = $state(false)
  #chosen: string | undefined = $state()
  /** The measure the columns were ordered by last. */
  #orderedBy: string | undefined = $state()
  /** The candidate taken off last and the work right after, while nothing else has happened. */
  #removed: { readonly candidate: Candidate; readonly work: Work } | undefined = $state.raw()

  readonly #work: WorkHistory
  readonly #explorer: Explorer

  constructor(work: WorkHistory, explorer: Explorer) {
    this.#work = work
    this.#explorer = explorer
  }

  readonly sheet: BenchSheet = $derived.by(() => this.#work.now.bench)
  readonly barGrams: number = $derived(this.sheet.barGrams ?? USUAL_BAR_GRAMS)
  readonly isFull: boolean = $derived(this.sheet.candidates.length >= MOST_CANDIDATES)
  readonly #shelf = $derived.by(() => this.#explorer.draft.shelf)
  /** Prices of all oils on the shelf, banned ones too; money per kg. */
  readonly prices: Prices = $derived(
    Object.fromEntries(
      this.#shelf.flatMap((row) => {
        const price = priceOf(row)
        return price === undefined ? [] : [[row.oil, price] as const]
      }),
    ),
  )
  readonly #choices = $derived.by(() => this.#work.now.batch)
  /** Facts by blend; emptied when prices or the batch change. */
  readonly #known: { of(blend: Blend): Facts } = $derived.by(() => {
    // Of the oils there are now: facts are others once an oil of one's own is.
    libraryNow()
    const { prices } = this
    const choices = this.#choices
    return factCache((blend) => factsOf(blend, prices, choices))
  })

  /** The columns in order, the reference first. */
  readonly columns: readonly Column[] = $derived.by(() => {
    const reference = referenceOf(this.sheet)
    if (!reference) return []
    const beside = { candidate: reference, facts: this.#known.of(reference.blend) }
    return inColumns(this.sheet).map((candidate) =>
      columnOf(candidate, this.#known.of(candidate.blend), beside, this.#isPresent(candidate)),
    )
  })
  /** The column the page acts on: the one chosen last, else the first that is not the reference. */
  readonly chosen: Column | undefined = $derived(
    this.columns.find(({ candidate }) => candidate.id === this.#chosen) ??
      this.columns[1] ??
      this.columns[0],
  )
  /** The candidate handed to Batch, while it is the blend in hand. */
  readonly inHand: Candidate | undefined = $derived.by(() => {
    const { picked, bar } = this.#explorer
    const blend = bar?.blend ?? picked?.blend
    return this.sheet.candidates.find((one) => blend && isSameBlend(one.blend, blend))
  })
  /** The candidate taken off last, while taking it off is what undo would take back. */
  readonly removed: Candidate | undefined = $derived.by(() =>
    this.#removed?.work === this.#work.now ? this.#removed.candidate : undefined,
  )

  /** Whether a blend stands on the Bench already. */
  holds(blend: Blend): boolean {
    return candidateOf(this.sheet, blend) !== undefined
  }

  choose(id: string): void {
    this.#chosen = id
  }

  /**
   * Puts blends on the Bench as one step of undo and chooses the first, or whichever is named. One that
   * stands there already is not put twice. Returns the candidates they stand as; those beyond the room
   * are left out.
   */
  add(entries: readonly Entry[], choose?: string): Candidate[] {
    const fresh = entries.filter(
      ({ blend }, at) =>
        !candidateOf(this.sheet, blend) &&
        !entries.slice(0, at).some((other) => isSameBlend(other.blend, blend)),
    )
    this.#edit((sheet) => withEntries(sheet, fresh))
    const standing = entries.flatMap(({ blend }) => candidateOf(this.sheet, blend) ?? [])
    const chosen = choose ?? standing[0]?.id
    if (chosen !== undefined) this.choose(chosen)
    return standing.filter((one, at) => standing.indexOf(one) === at)
  }

  /** Puts a blend found on the map on the Bench; undefined where the Bench is full. */
  pin(found: Found, from: string): Candidate | undefined {
    return this.add([{ name: nameOf(found.blend), blend: found.blend, from }])[0]
  }

  rename(id: string, name: string): void {
    this.#edit((sheet) => withWords(sheet, id, { name }), `name of ${id}`)
  }

  note(id: string, note: string): void {
    this.#edit((sheet) => withWords(sheet, id, { note }), `note of ${id}`)
  }

  /** Moves a candidate to a column; the reference keeps the first. */
  move(id: string, column: number): void {
    this.#edit((sheet) => withMoved(sheet, id, column))
  }

  /** Moves a candidate so many columns on, to the left where below 0. */
  shift(id: string, by: number): void {
    const at = this.columns.findIndex(({ candidate }) => candidate.id === id)
    this.move(id, at + by)
  }

  /** Takes a candidate off and chooses its neighbour. */
  remove(id: string): void {
    const at = this.columns.findIndex(({ candidate }) => candidate.id === id)
    const gone = this.columns[at]?.candidate
    if (!gone) return
    const neighbour = this.columns[at + 1] ?? this.columns[at - 1]
    this.#edit((sheet) => withoutCandidate(sheet, id))
    this.#removed = { candidate: gone, work: this.#work.now }
    this.#chosen = neighbour?.candidate.id
  }

  /** Puts back the candidate taken off last. */
  restore(): void {
    const { removed } = this
    if (!removed) return
    this.#work.undo()
    this.#chosen = removed.id
  }

  /** Compares all others with this one. */
  makeReference(id: string): void {
    this.#edit((sheet) => ({ ...sheet, reference: id }))
  }

  /** Orders the columns by a measure, the wanted end first; done again, the other way round. */
  sortBy(measure: string): void {
    const wanted = measureOf(library, measure).better === 'more' ? 'most' : 'least'
    const other = wanted === 'most' ? 'least' : 'most'
    const first = this.orderOf(measure) === wanted ? other : wanted
    this.#orderedBy = measure
    this.#edit((sheet) =>
      withOrder(sheet, ({ blend }) => this.#known.of(blend).values[measure], first),
    )
  }

  /** Which end of a measure the columns start with, if they still run in its order. */
  orderOf(measure: string): 'most' | 'least' | undefined {
    if (measure !== this.#orderedBy) return undefined
    const values = this.columns.slice(1).flatMap(({ values }) => values[measure] ?? [])
    if (values.length < 2) return undefined
    const pairs = values.slice(1).map((value, index) => value - (values[index] ?? NaN))
    if (pairs.every((step) => step <= 0)) return 'most'
    return pairs.every((step) => step >= 0) ? 'least' : undefined
  }

  setBarGrams(barGrams: number): void {
    this.#edit((sheet) => ({ ...sheet, barGrams }), 'weight of a bar')
  }

  /** Makes a candidate the bar in hand, for Batch: a draft of the maker's own, where there is one. */
  take(id: string): void {
    const candidate = this.sheet.candidates.find((one) => one.id === id)
    if (!candidate) return
    if (this.#explorer.bar) this.#work.change((work) => withTaken(work, candidate.blend))
    else this.#explorer.pick(this.#foundOf(candidate.blend))
  }

  #foundOf(blend: Blend): Found {
    const measures = blendValues(library, this.prices, blend)
    const { goal } = this.#explorer.brief
    const measure = goalMeasure(goal)
    const goalValue =
      'closestTo' in goal
        ? totalChange(normalised(goal.closestTo), blend)
        : (measures[measure ?? ''] ?? NaN)
    return { blend, measures, goalValue }
  }

  #isPresent({ blend }: Candidate): boolean {
    const present = this.#explorer.inHand
    return present !== undefined && isSameBlend(present, blend)
  }

  #edit(change: (sheet: BenchSheet) => BenchSheet, thing?: string): void {
    this.#work.change((work) => {
      const bench = change(work.bench)
      return bench === work.bench ? work : { ...work, bench }
    }, thing)
  }
}

function factCache(make: (blend: Blend) => Facts) {
  const known = new WeakMap<Blend, Facts>()
  return {
    of(blend: Blend): Facts {
      const facts = known.get(blend) ?? make(blend)
      known.set(blend, facts)
      return facts
    },
  }
}

/** A blend named after its two largest oils. */
export function nameOf(blend: Blend): string {
  const [first = '', second] = Object.entries(blend)
    .sort(([, a], [, b]) => b - a)
    .map(([oil]) => library.oils.get(oil)?.shortName ?? oil)
  return second === undefined ? `All ${lowerFirst(first)}` : `${first} and ${lowerFirst(second)}`
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}
