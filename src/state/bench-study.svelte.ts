import { flagRules } from '../data/flags'
import { library } from './library'
import type { Blend } from '../domain/blend/blend'
import { barMeasures } from '../domain/blend/compare'
import { COST } from '../domain/blend/measure'
import type { StudyAnswer, StudyQuestion, StudyResult } from '../domain/optimise/studies/question'
import type { SolverClient } from '../worker/client'
import type { Bench } from './bench.svelte'
import type { Entry } from './bench-sheet'
import type { Explorer } from './explorer.svelte'
import type { Candidate } from './work'

/** The studies on offer. Cheaper is a better one with a goal of its own. */
export type StudyKind = 'like' | 'better' | 'cheaper' | 'without'

/** A study that was answered. */
export interface DoneStudy {
  readonly question: StudyQuestion
  /** What it started from. */
  readonly base: Candidate
  readonly answer: StudyAnswer
}

/** Says how a result is named on the Bench and where it came from. */
export type Naming = (result: StudyResult, done: DoneStudy) => Omit<Entry, 'blend'>

/** A study takes longer than this before the page says it is busy; --busy-after in the tokens. */
const BUSY_AFTER_MS = 150

/** Singles and pairs that a study of replacements ranks, each. */
const RANKED = 6
/** Blends that "more like this" gives. */
const ALIKE = 4

/** One tie on every measure of the bar; cost is free to move. */
const ONE_TIE: Readonly<Record<string, number>> = Object.fromEntries(
  barMeasures(library.measures).map(({ id, tie }) => [id, tie]),
)

/** Tags for which people do without an oil. */
const CONCERNS = ['palm-derived', 'animal', ...flagRules.allergens.map(({ tag }) => tag)]

/** The one-step studies of the chosen candidate: what is asked, and what came of it. */
export class BenchStudies {
  kind: StudyKind = $state('like')
  /** The measure to have more of. */
  measure = $state('hardness')
  /** How far each measure may move, in its unit; one left out is free. */
  tolerances: Readonly<Record<string, number>> = $state.raw(ONE_TIE)
  keepWishes = $state(false)
  /** By how much at least one oil must differ in "more like this", percentage points. */
  stepPoints = $state(10)
  /** Whether the whole library may stand in for an oil, or only the shelf. */
  wholeLibrary = $state(false)
  /** How many replacements go on the Bench. */
  putMost = $state(3)
  busy = $state(false)
  /** Whether it has been busy long enough to say so. */
  slow = $state(false)
  failure: string | undefined = $state()
  done: DoneStudy | undefined = $state.raw()
  #calledOff: AbortController | undefined
  #oil: string | undefined = $state()
  /** Concerns that the maker lets go. */
  #allowed: readonly string[] = $state.raw([])

  constructor(
    private readonly bench: Bench,
    private readonly explorer: Explorer,
    private readonly client: SolverClient,
    private readonly naming: Naming,
  ) {}

  readonly base: Candidate | undefined = $derived.by(() => this.bench.chosen?.candidate)
  /** The oil to do without: the one picked, else the largest of the base. */
  readonly oil: string | undefined = $derived.by(() => {
    const shares = this.base?.blend ?? {}
    if (this.#oil !== undefined && (shares[this.#oil] ?? 0) > 0) return this.#oil
    return Object.entries(shares).sort(([, a], [, b]) => b - a)[0]?.[0]
  })
  /** Tags that the oil has, or that the rest of the base does without: not to come in again. */
  readonly concerns: readonly string[] = $derived.by(() => concernsOf(this.base?.blend, this.oil))
  readonly avoided: readonly string[] = $derived.by(() =>
    this.concerns.filter((tag) => !this.#allowed.includes(tag)),
  )
  /** The measure that the study seeks more of, if it does. */
  readonly sought: string | undefined = $derived.by(() =>
    this.kind === 'better' ? this.measure : this.kind === 'cheaper' ? COST : undefined,
  )

  chooseOil(oil: string): void {
    this.#oil = oil
    this.#allowed = []
  }

  /** Lets oils with a tag stand in, or keeps them out. */
  allow(tag: string, allowed: boolean): void {
    this.#allowed = allowed
      ? [...this.#allowed, tag]
      : this.#allowed.filter((other) => other !== tag)
  }

  tolerate(measure: string, tolerance: number | undefined): void {
    const rest = without(this.tolerances, measure)
    this.tolerances = tolerance === undefined ? rest : { ...rest, [measure]: tolerance }
  }

  /** Studies the chosen candidate and puts the best results on the Bench. */
  async run(): Promise<void> {
    const { base } = this
    if (!base || this.busy) return
    const question = this.#questionOf(base.blend)
    if (!question) return
    const { brief } = this.explorer
    this.busy = true
    this.failure = undefined
    const timer = setTimeout(() => (this.slow = true), BUSY_AFTER_MS)
    this.#calledOff = new AbortController()
    const { signal } = this.#calledOff
    try {
      const answer = await this.client.ask((service) => service.oneStep(brief, question), {
        signal,
      })
      if (signal.aborted) return
      this.done = { question, base, answer }
      this.put(question.kind === 'without' ? this.putMost : Infinity)
    } catch (error) {
      if (!signal.aborted) this.failure = error instanceof Error ? error.message : String(error)
    } finally {
      clearTimeout(timer)
      this.busy = false
      this.slow = false
    }
  }

  /** Calls off the study under way; what an earlier one found stays. */
  stop(): void {
    this.#calledOff?.abort()
  }

  /** Puts the first results of the last study on the Bench. */
  put(most: number): void {
    if (this.done?.answer.status !== 'found') return
    this.#add(this.done, this.done.answer.results.slice(0, most))
  }

  /** Puts one result of the last study on the Bench. */
  putOne(result: StudyResult): void {
    if (this.done) this.#add(this.done, [result])
  }

  #add(done: DoneStudy, results: readonly StudyResult[]): void {
    this.bench.add(
      results.map((result) => ({ ...this.naming(result, done), blend: result.blend })),
      done.base.id,
    )
  }

  #questionOf(base: Blend): StudyQuestion | undefined {
    const { oil, sought, keepWishes, stepPoints } = this
    const { prices } = this.bench
    if (this.kind === 'without') {
      if (oil === undefined) return undefined
      return { kind: 'without', base, prices, oil, candidates: this.#candidates(), most: RANKED }
    }
    const tolerances = sought === undefined ? this.tolerances : without(this.tolerances, sought)
    const held = { base, prices, tolerances, keepWishes }
    if (sought !== undefined) return { kind: 'better', measure: sought, ...held }
    return { kind: 'like', stepPoints, most: ALIKE, ...held }
  }

  /** Oils that may stand in: never one that the maker has banned. */
  #candidates(): string[] {
    const { shelf } = this.explorer.draft
    const banned = shelf.filter((row) => row.banned).map((row) => row.oil)
    const open = this.wholeLibrary
      ? [...library.oils.keys()].filter((oil) => !banned.includes(oil))
      : Object.keys(this.explorer.brief.oils)
    return open.filter(
      (oil) => oil !== this.oil && !tagsOf(oil).some((tag) => this.avoided.includes(tag)),
    )
  }
}

function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([other]) => other !== key))
}

function tagsOf(oil: string): readonly string[] {
  return library.oils.get(oil)?.tags ?? []
}

function concernsOf(base: Blend = {}, oil: string | undefined): string[] {
  if (oil === undefined) return []
  const others = Object.keys(base).filter((other) => other !== oil)
  const among = others.flatMap((other) => [...tagsOf(other)])
  return CONCERNS.filter(
    (tag) => !among.includes(tag) && (tagsOf(oil).includes(tag) || tag === 'animal'),
  )
}
