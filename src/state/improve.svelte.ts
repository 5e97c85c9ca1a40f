import { flagRules } from '../data/flags'
import { library } from './library'
import type { Blend } from '../domain/blend/blend'
import { barMeasures, type MeasureValues } from '../domain/blend/compare'
import { type Flag, flagsOf, isBeyondTrust } from '../domain/blend/flags'
import { COST } from '../domain/blend/measure'
import type { Brief } from '../domain/optimise/brief/brief'
import type { Interval } from '../domain/interval'
import type { RuledRange } from '../domain/optimise/ranges/attainable-ruled'
import { nothingWorse, reachBrief } from '../domain/optimise/studies/from-here'
import type {
  NoResult,
  StudyAnswer,
  StudyQuestion,
  StudyResult,
} from '../domain/optimise/studies/question'
import { WHOLE_PERCENT } from '../domain/units'
import type { SolverClient } from '../worker/client'
import type { BarDesk } from './bar.svelte'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'

/** The ways in which a bar can be bettered from where it is. */
export type WayId = 'harder' | 'lasts' | 'lather' | 'keeps' | 'cheaper' | 'without'

interface Way {
  readonly id: WayId
  /** The measure to have more of, or less where less is wanted; none where an oil is to go. */
  readonly measure?: string
  /** Held within a tie both ways; all others may only get better. */
  readonly held?: readonly string[]
}

const BAR = barMeasures(library.measures)

const WAYS: readonly Way[] = [
  { id: 'harder', measure: 'hardness', held: ['lather'] },
  { id: 'lasts', measure: 'wear' },
  { id: 'lather', measure: 'lather' },
  { id: 'keeps', measure: 'keeping' },
  { id: 'without' },
  { id: 'cheaper', measure: COST, held: BAR.map(({ id }) => id) },
]

/** What one way comes to. */
export interface WayOn {
  readonly id: WayId
  /** Missing where the way leads nowhere. */
  readonly result?: StudyResult | undefined
  /** By how many ties the measure sought gets better; for cost, in its own ties. */
  readonly gainTies: number
  /** The oil that goes, where one does. */
  readonly oil?: string | undefined
  readonly flags: readonly Flag[]
  readonly reason?: NoResult | undefined
}

interface Question {
  readonly base: Blend
  readonly reach: Brief
  readonly asked: readonly {
    readonly way: Way
    readonly study: StudyQuestion
    readonly brief: Brief
  }[]
}

interface Told {
  readonly base: Blend
  readonly reach: Readonly<Record<string, Interval | RuledRange>>
  readonly ways: readonly WayOn[]
}

/** Where one bar can go from here: what lies within reach of it, and what would be better. */
export class Improving {
  #told: Told | undefined = $state.raw()
  failure: string | undefined = $state()
  /** Whether any oil of the library may come in, or only those of the shelf. */
  wholeLibrary = $state(false)
  #oil: string | undefined = $state()

  readonly #bar: BarDesk
  readonly #explorer: Explorer
  readonly #questions: Latest<Question, Told>

  constructor(bar: BarDesk, explorer: Explorer, client: SolverClient) {
    this.#bar = bar
    this.#explorer = explorer
    this.#questions = new Latest(
      async ({ base, reach, asked }): Promise<Told> => {
        const study = await client.ask((service, solver) => service.study(solver, reach))
        const answers = await Promise.all(
          asked.map(({ brief, study: question }) =>
            client.ask((service) => service.oneStep(brief, question)),
          ),
        )
        const ways = asked.map(({ way, study: question }, at) =>
          wayOn(way, question, answers[at] ?? NOTHING),
        )
        return { base, reach: study.reach, ways: ways.toSorted(byGain) }
      },
      (_, told) => {
        this.failure = undefined
        this.#told = told
      },
      (_, error) => (this.failure = error instanceof Error ? error.message : String(error)),
    )
  }

  /** The oil to do without: the one picked, else the largest. */
  readonly oil: string | undefined = $derived.by(() => {
    const { parts } = this.#bar
    const picked = parts.find(({ oil, percent }) => oil === this.#oil && percent > 0)
    if (picked) return picked.oil
    return parts.toSorted((a, b) => b.percent - a.percent)[0]?.oil
  })
  /** What each measure can be from here; that of a moment ago while it is asked anew. */
  readonly reach: Readonly<Record<string, Interval | RuledRange>> = $derived(
    this.#told?.reach ?? {},
  )
  readonly ways: readonly WayOn[] = $derived(this.#told?.ways ?? [])
  /** Whether what is told belongs to the bar in hand. */
  readonly isNew: boolean = $derived.by(() => this.#told?.base === this.#bar.blend)

  doWithout(oil: string): void {
    this.#oil = oil
  }

  /** Sends the bar in hand to be looked at. */
  ask(): void {
    const question = this.#question()
    if (question) this.#questions.put(question)
    else this.#told = undefined
  }

  #question(): Question | undefined {
    const base = this.#bar.blend
    if (!base) return undefined
    const { prices, move, parts } = this.#bar
    const locked = parts.filter((part) => part.locked).map(({ oil }) => oil)
    const from = { base, locked, points: move, usualMost }
    const shelf = this.#open()
    const own: Brief = { ...shelf, oils: {}, groups: [], rules: undefined }
    const around = nothingWorse(reachBrief(shelf, from), base, library)
    const asked = WAYS.flatMap((way) => {
      const study = this.#studyOf(way, base, Object.keys(around.oils))
      return study ? [{ way, study, brief: around }] : []
    })
    const priced = Object.keys(base).map((oil) => [oil, { pricePerKg: prices[oil] }] as const)
    return {
      base,
      reach: reachBrief({ ...own, oils: Object.fromEntries(priced) }, { ...from, usualMost: ANY }),
      asked,
    }
  }

  /** The oils that may come in, with the rules of the shelf. */
  #open(): Brief {
    const { brief, draft } = this.#explorer
    if (!this.wholeLibrary) return brief
    const banned = draft.shelf.filter((row) => row.banned).map(({ oil }) => oil)
    const others = [...library.oils.keys()].filter((oil) => !banned.includes(oil))
    const oils = Object.fromEntries(others.map((oil) => [oil, brief.oils[oil] ?? {}]))
    return { ...brief, oils }
  }

  #studyOf(way: Way, base: Blend, oils: readonly string[]): StudyQuestion | undefined {
    const { prices } = this.#bar
    if (way.id === 'without') {
      const { oil } = this
      if (oil === undefined || Object.keys(base).length < 2) return undefined
      const candidates = oils.filter((one) => one !== oil)
      return { kind: 'without', base, prices, oil, candidates, most: 1 }
    }
    if (way.measure === undefined) return undefined
    const held = BAR.filter(({ id }) => way.held?.includes(id))
    const tolerances = Object.fromEntries(held.map(({ id, tie }) => [id, tie]))
    return { kind: 'better', measure: way.measure, base, prices, tolerances, keepWishes: true }
  }
}

const ANY = () => WHOLE_PERCENT
const NOTHING: StudyAnswer = { status: 'none', base: {}, reason: { kind: 'no room' } }

/** The most of an oil that the measures can speak of, percent. */
function usualMost(oil: string): number {
  const limits = flagRules.trust.filter(({ oils }) => oils === null || oils.includes(oil))
  return Math.min(WHOLE_PERCENT, ...limits.map(({ mostPercent }) => mostPercent))
}

function wayOn(way: Way, question: StudyQuestion, answer: StudyAnswer): WayOn {
  const oil = question.kind === 'without' ? question.oil : undefined
  const none = { id: way.id, oil, gainTies: 0, flags: [] }
  if (answer.status === 'invalid') return none
  if (answer.status === 'none') return { ...none, reason: answer.reason }
  const [result] = answer.results
  if (!result) return none
  const gainTies = gainOf(way, result.measures, answer.base)
  if (isTooLittle(way, gainTies)) return { ...none, reason: { kind: 'no better', best: result } }
  const flags = flagsOf(result.blend, result.measures, flagRules, library)
  return { ...none, result, flags, gainTies }
}

/** A gain under a tie can't be told, but money can be counted. */
function isTooLittle({ measure }: Way, gainTies: number): boolean {
  return measure !== undefined && measure !== COST && gainTies < 1
}

function gainOf({ measure: id }: Way, after: MeasureValues, before: MeasureValues): number {
  const measure = library.measures.find((one) => one.id === id)
  if (!measure) return 0
  const by = (after[measure.id] ?? 0) - (before[measure.id] ?? 0)
  return (measure.better === 'more' ? by : -by) / measure.tie
}

/** Whether a way leads where the measures can't say what a bar will be. */
export function isDoubtful({ flags }: WayOn): boolean {
  return isBeyondTrust(flags)
}

/** Felt gains first, the most of them first; what leads nowhere, and what is doubtful, last. */
function byGain(a: WayOn, b: WayOn): number {
  const rank = (way: WayOn) => Number(isDoubtful(way)) * 2 + Number(way.result === undefined) * 4
  return rank(a) - rank(b) || b.gainTies - a.gainTies
}
