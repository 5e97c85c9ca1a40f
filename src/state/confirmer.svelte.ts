import { library } from './library'
import type { Brief } from '../domain/optimise/brief/brief'
import type { Confirmation } from '../domain/optimise/solve/confirm'
import type { Found } from '../domain/optimise/brief/answer'
import { breaches } from '../domain/optimise/space/verify'
import type { SolverClient } from '../worker/client'
import { secondOpinion } from '../worker/second-opinion'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'

interface Asked {
  readonly brief: Brief
  readonly found: Found
}

/** What stands behind the blend that goes to Batch. */
export type Standing =
  | { readonly kind: 'confirmed'; readonly by: string }
  /**
   * The two differ; or, under rules, time did not suffice for a proof, and nothing that either found
   * contradicts the other.
   */
  | {
      readonly kind: 'differs' | 'open'
      readonly by: string
      readonly ours: number
      readonly theirs: number | null
    }
  /** Chosen by hand: whether it keeps the brief, checked from the oils. */
  | { readonly kind: 'chosen'; readonly keeps: boolean }
  | { readonly kind: 'asking' }

/** Has the blend in hand solved again by a second solver, in a thread that can be ended. */
export class Confirmer {
  #told: (Asked & { readonly confirmation: Confirmation }) | undefined = $state.raw()
  readonly #explorer: Explorer
  readonly #questions: Latest<Asked, Confirmation>

  constructor(explorer: Explorer, client: SolverClient) {
    this.#explorer = explorer
    this.#questions = new Latest(
      ({ brief, found }) => secondOpinion(client, brief, found),
      (asked, confirmation) => (this.#told = { ...asked, confirmation }),
      (asked) => (this.#told = this.#told?.found === asked.found ? this.#told : undefined),
    )
  }

  /** Undefined where there is no blend, or none that a second solver could be asked about. */
  readonly standing: Standing | undefined = $derived.by(() => {
    const { picked, found, brief, inHand, present } = this.#explorer
    // A bar of one's own claims to be the best of nothing.
    if (inHand !== present?.blend) return undefined
    if (picked)
      return { kind: 'chosen', keeps: breaches(brief, picked.blend, library).length === 0 }
    if (!found) return undefined
    if (this.#told?.found !== found) return { kind: 'asking' }
    const { confirmation } = this.#told
    if (confirmation.status === 'confirmed') return { kind: 'confirmed', by: confirmation.by }
    const { status, by, ours, theirs } = confirmation
    return { kind: status, by, ours, theirs }
  })

  /** Sends the blend found to the second solver. */
  ask(): void {
    const { picked, found, brief } = this.#explorer
    if (found && !picked) this.#questions.put({ brief, found })
  }
}
