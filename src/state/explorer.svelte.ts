import { library, libraryNow } from './library'
import type { Problem } from '../domain/blend/check-blend'
import type { Brief } from '../domain/optimise/brief/brief'
import { mayTakeLong } from '../domain/optimise/brief/brief-rules'
import type { Answer, Found } from '../domain/optimise/brief/answer'
import type { Study } from '../domain/optimise/solve/study'
import { proxy, type SolverClient } from '../worker/client'
import { type Blend, normalised } from '../domain/blend/blend'
import { blendOfParts } from '../domain/blend/giving-way'
import { asksNearBar, briefOfDraft, type Draft, waitingFor, withOil } from './draft'
import type { WorkHistory } from './history.svelte'
import { Latest } from './latest'
import { Lots } from './lots.svelte'
import { withBegunOil } from './own-oils'
import type { Pasting } from './pasting'
import type { ShelfOrder, Work } from './work'

interface StudyQuestion {
  readonly brief: Brief
  readonly draft: Draft
}

/** A study takes longer than this before the page says it is busy; --busy-after in the tokens. */
const BUSY_AFTER_MS = 150

/** The brief being written and what it comes to. */
export class Explorer {
  /** The newest study of a brief without faults; it stays while the next one runs. */
  study: Study | undefined = $state.raw()
  /** The draft that the study belongs to. */
  studied: Draft | undefined = $state.raw()
  /** What is wrong with the newest brief; the study of the one before stays in force meanwhile. */
  problems: readonly Problem[] = $state.raw([])
  busy = $state(false)
  /** Whether the newest brief was called off before it had an answer. */
  stopped = $state(false)
  /** What went wrong with the program itself; never the brief's fault. */
  failure: string | undefined = $state()
  #pick: { readonly found: Found; readonly brief: Brief } | undefined = $state.raw()
  /** The last good blend, kept in sight while the brief has none. */
  lastGood: Found | undefined = $state.raw()

  readonly draft: Draft = $derived.by(() => this.#work.now.brief)
  /** Weight of the batch's oils, g. */
  readonly batchGrams = $derived.by(() => this.#work.now.batch.oilGrams)
  /** The same while the stock of an oil is a part of it; else 0, so that its changes ask nothing anew. */
  readonly #stockedGrams = $derived(
    this.draft.shelf.some(({ stock }) => stock) ? this.batchGrams : 0,
  )
  /** The maker's own bar, marked F beside what is found. */
  readonly bar: { readonly name: string; readonly blend: Blend } | undefined = $derived.by(() => {
    const { bar, brief } = this.#work.now
    return bar && { name: brief.name, blend: normalised(blendOfParts(bar.parts)) }
  })
  /** The maker's own bar while the goal asks to be near it; else none, so that its changes ask nothing anew. */
  readonly #nearBar = $derived(asksNearBar(this.draft) ? this.bar?.blend : undefined)
  /** Another one too once the figures of an oil of one's own are others: all that is asked is asked anew. */
  readonly brief = $derived.by(() => {
    libraryNow()
    return briefOfDraft(this.draft, this.#stockedGrams, this.#nearBar)
  })
  /** What of the brief waits for prices. */
  readonly waiting = $derived(waitingFor(this.draft))
  readonly found: Found | undefined = $derived(
    this.study?.answer.status === 'optimal' || this.study?.answer.status === 'feasible'
      ? this.study.answer
      : undefined,
  )
  /** A blend picked on the map in place of the one found; any edit of the brief lets it go. */
  readonly picked: Found | undefined = $derived(
    this.#pick?.brief === this.brief ? this.#pick.found : undefined,
  )
  /** The blend in hand: picked, else found. */
  readonly present: Found | undefined = $derived(this.picked ?? this.found)
  /** The bar in hand, which is weighed, costed and labelled: the maker's own, else the blend found or picked. */
  readonly inHand: Blend | undefined = $derived(this.bar?.blend ?? this.present?.blend)
  /** By what the oils of the shelf are ordered. */
  readonly shelfOrder: ShelfOrder = $derived.by(() => this.#work.now.shelfOrder ?? 'share')
  /** A formula being pasted. */
  readonly pasting: Pasting | undefined = $derived.by(() => this.#work.now.pasting)
  readonly oilCount = $derived(Object.keys(this.brief.oils).length)

  /** What varies from lot to lot. */
  readonly lots: Lots
  readonly #studies: Latest<StudyQuestion, Study>
  /** The newest draft that was studied, found at fault or failed on. */
  #settled: Draft | undefined

  readonly #work: WorkHistory

  /** What can wait is asked of `patient`, so that the next brief need not wait for it. */
  constructor(work: WorkHistory, client: SolverClient, patient = client) {
    this.#work = work
    this.lots = new Lots(patient)
    this.#studies = new Latest(
      (question, signal) => this.#study(client, question, signal),
      ({ draft }, study) => this.#accept(draft, study),
      ({ draft }, error) => {
        this.#settle(draft)
        this.#fail(error)
      },
    )
  }

  /** Changes the brief; closely following changes of one `thing` are one step of undo. */
  edit(change: (draft: Draft) => Draft, thing?: string): void {
    this.#work.change((work) => ({ ...work, brief: change(work.brief) }), thing)
  }

  /** Changes what else is put in beside the brief. */
  editWork(change: (work: Work) => Work, thing?: string): void {
    this.#work.change(change, thing)
  }

  /** Begins an oil of one's own as a copy of another, on the shelf; gives its id. */
  beginOil(name: string, from: string): string {
    const begun = withBegunOil(this.#work.now, name, from)
    this.#work.change(() => ({ ...begun.work, brief: withOil(begun.work.brief, begun.id) }))
    return begun.id
  }

  get canTakeBack(): boolean {
    return this.#work.canUndo
  }

  /** Takes back the newest change of all that was put in, as undo does. */
  takeBack(): void {
    this.#work.undo()
  }

  /** Sends the present brief to be studied. */
  ask(): void {
    this.stopped = false
    this.#studies.put({ brief: this.brief, draft: this.draft })
    setTimeout(() => (this.busy = this.#settled !== this.draft), BUSY_AFTER_MS)
  }

  /** Calls the present question off; what was found before stays. */
  stop(): void {
    this.#studies.stop()
    this.#settle(this.draft)
    this.stopped = true
  }

  /** Takes a blend from the map in place of the one found. */
  pick(found: Found): void {
    this.#pick = { found, brief: this.brief }
    this.#askLots()
  }

  /** Goes back to the blend the brief found. */
  unpick(): void {
    this.#pick = undefined
    this.#askLots()
  }

  /**
   * Under rules a study may take seconds: its answer is told first, with what measures could reach before,
   * and a newer question ends it.
   */
  async #study(
    client: SolverClient,
    { brief, draft }: StudyQuestion,
    signal: AbortSignal,
  ): Promise<Study> {
    if (!mayTakeLong(brief)) return client.ask((service, solver) => service.study(solver, brief))
    let answer: Answer | undefined
    // It comes through a channel of its own, so it may come after the whole study.
    let isWhole = false
    const onAnswer = (study: Study) => {
      if (isWhole || signal.aborted) return
      answer = study.answer
      this.#accept(draft, { ...study, reach: this.study?.reach ?? {} })
    }
    const options = { signal }
    const study = await client.ask(
      (service, solver) => service.study(solver, brief, proxy(onAnswer)),
      options,
    )
    isWhole = true
    // The same blend as the one shown already, not another that looks like it.
    return answer ? { ...study, answer } : study
  }

  #accept(draft: Draft, study: Study): void {
    this.#settle(draft)
    this.failure = undefined
    this.problems = study.answer.status === 'invalid' ? study.answer.problems : []
    if (draft.shelf.every(({ banned }) => banned)) this.#forget()
    if (study.answer.status === 'invalid') return
    this.study = study
    this.studied = draft
    if (this.found) this.lastGood = this.found
    this.#askLots()
  }

  #askLots(): void {
    this.lots.ask(this.brief, this.present?.blend)
  }

  /** A shelf without oils has no blend, and none from before either. */
  #forget(): void {
    this.study = undefined
    this.studied = undefined
    this.lastGood = undefined
  }

  #settle(draft: Draft): void {
    this.#settled = draft
    this.busy = false
  }

  #fail(error: unknown): void {
    this.failure = error instanceof Error ? error.message : String(error)
  }
}

/** Measures shown on the page, in the library's order. */
export const shownMeasures = library.measures.filter(({ shown }) => shown)
