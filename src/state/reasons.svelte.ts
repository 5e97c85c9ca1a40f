import type { Brief } from '../domain/optimise/brief/brief'
import type { Found } from '../domain/optimise/brief/answer'
import type { Why } from '../domain/optimise/why/why'
import type { SolverClient } from '../worker/client'
import type { Explorer } from './explorer.svelte'
import { Latest } from './latest'

interface WhyQuestion {
  readonly brief: Brief
  readonly found: Found
}

/** Why the blend that the brief found is what it is. */
export class ReasonsDesk {
  /** Belongs to the newest brief that had a blend; undefined where its goal has no prices. */
  why: Why | undefined = $state.raw()

  readonly #explorer: Explorer
  readonly #questions: Latest<WhyQuestion, Why | undefined>

  constructor(explorer: Explorer, client: SolverClient) {
    this.#explorer = explorer
    this.#questions = new Latest(
      ({ brief, found }) => client.ask((service) => service.why(brief, found)),
      (_, why) => (this.why = why),
      () => (this.why = undefined),
    )
  }

  /** Sends for the reasons of the blend found. */
  ask(): void {
    const { found, brief, study } = this.#explorer
    if (found && study) this.#questions.put({ brief, found })
  }
}
