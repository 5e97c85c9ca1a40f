import { askBuying, type BuyingAnswer, GAP_MINOR, NOTHING_TO_BUY } from '../domain/cost/buying'
import type { BuyingQuestion } from '../domain/cost/buying'
import type { MixedOutcome, MixedProgram } from '../domain/cost/mixed'
import { Latest } from './latest'
import type { LedgerDesk } from './ledger.svelte'

/** Solves a program somewhere that doesn't hold up the page. */
export type SolveElsewhere = (
  program: MixedProgram,
  gap: number,
  seconds: number,
  signal: AbortSignal,
) => Promise<MixedOutcome>

/** Longest search for a list, s. */
const SEARCH_S = 20

/** The buying list of the Ledger, kept up to date while it is looked at. */
export class BuyingDesk {
  answer: BuyingAnswer | undefined = $state.raw()
  failure: string | undefined = $state.raw()
  busy = $state(false)
  readonly #ledger: LedgerDesk
  readonly #latest: Latest<BuyingQuestion, BuyingAnswer>

  constructor(ledger: LedgerDesk, solve: SolveElsewhere) {
    this.#ledger = ledger
    this.#latest = new Latest(
      async ({ program, read }, signal) =>
        read(program ? await solve(program, GAP_MINOR, SEARCH_S, signal) : NOTHING_TO_BUY),
      (_, answer) => this.#settle({ answer }),
      (_, error) =>
        this.#settle({ failure: error instanceof Error ? error.message : String(error) }),
    )
  }

  /** Has the list of now found; call it again when anything it rests on has changed. */
  ask(): void {
    const { problems, needs, pricing, ledger } = this.#ledger
    if (problems.length > 0) return
    this.busy = true
    this.#latest.put(askBuying(needs, pricing, ledger.work.wastePercent))
  }

  #settle({ answer, failure }: { answer?: BuyingAnswer; failure?: string }): void {
    this.busy = false
    this.answer = answer ?? this.answer
    this.failure = failure
  }
}
