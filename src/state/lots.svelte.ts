import type { Blend } from '../domain/blend/blend'
import type { Brief } from '../domain/optimise/brief/brief'
import type { BlendSpread, Spread } from '../domain/optimise/lots/spread'
import type { RobustPrice } from '../domain/optimise/solve/robust-price'
import type { SolverClient } from '../worker/client'
import { Latest } from './latest'

interface LotsQuestion {
  readonly brief: Brief
  readonly blend: Blend
}

interface LotsTold {
  readonly blend: Blend
  readonly spread: BlendSpread
  readonly price: RobustPrice | undefined
}

/** How long the price of any lot may take under rules, each way. */
const PRICE_MS = 2000

/** What varies from lot to lot of the blend in hand; only asked where the brief is to hold for any lot. */
export class Lots {
  #told: LotsTold | undefined = $state.raw()
  readonly #questions: Latest<LotsQuestion, LotsTold>

  constructor(client: SolverClient) {
    this.#questions = new Latest(
      ({ brief, blend }, signal) =>
        client.ask(
          async (service) => {
            const spread = await service.spread(blend)
            const price = await service.robustPrice(brief, { timeMs: PRICE_MS })
            return { blend, spread, price }
          },
          { signal },
        ),
      (_, told) => (this.#told = told),
      () => (this.#told = undefined),
    )
  }

  /** Sends for what varies of a blend, or forgets it where only typical lots are asked about. */
  ask(brief: Brief, blend: Blend | undefined): void {
    if (brief.robust === true && blend) this.#questions.put({ brief, blend })
    else {
      this.#questions.stop()
      this.#told = undefined
    }
  }

  /** What any lot costs more than typical lots, in the goal's unit; that of before until the next is known. */
  get price(): number | undefined {
    return this.#told?.price?.price
  }

  /** How a measure of a blend moves; undefined for another blend than the one asked about. */
  of(blend: Blend | undefined, measure: string): Spread | undefined {
    return blend !== undefined && this.#told?.blend === blend
      ? this.#told.spread.measures[measure]
      : undefined
  }
}
