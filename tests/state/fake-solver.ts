import { expose } from 'comlink'
import { library } from '../../src/data/library'
import type { LandQuestion } from '../../src/domain/optimise/map/land-question'
import { solveAt } from '../../src/domain/optimise/solve/point'
import { solveWithJslp } from '../../src/domain/lp/solvers/jslp'
import { studyBrief } from '../../src/domain/optimise/solve/study'
import { createService } from '../../src/worker/service'
import type { SolverService } from '../../src/worker/protocol'
import { SolverClient, type SolverThread } from '../../src/worker/client'

type Asked = Pick<
  SolverService,
  'ready' | 'study' | 'solveAt' | 'land' | 'confirm' | 'spread' | 'robustPrice' | 'sample'
>

/** A real client whose thread is a message channel; it answers when the test lets it. */
export class FakeSolver {
  /** How many questions reached the thread. */
  asked = 0
  /** The question behind each telling of a land. */
  readonly landsTold: LandQuestion[] = []
  readonly real = createService(library, () => Promise.reject(new Error('No HiGHS here')))
  readonly client = new SolverClient(() => this.#thread())
  #held: (() => void)[] = []
  #holds = false
  #fault: string | undefined
  #ports: MessagePort[] = []

  /** From now on questions wait for `release`. */
  hold(): void {
    this.#holds = true
  }

  release(): void {
    this.#holds = false
    for (const go of this.#held.splice(0)) go()
  }

  /** From now on every question fails with this message; undefined answers again. */
  failWith(message: string | undefined): void {
    this.#fault = message
  }

  close(): void {
    this.client.close()
    for (const port of this.#ports) port.close()
  }

  #thread(): SolverThread {
    const { port1, port2 } = new MessageChannel()
    this.#ports.push(port1, port2)
    const service: Asked = {
      ready: () => Promise.resolve(true),
      study: (_, brief, onAnswer) =>
        this.#when(() => studyBrief(brief, library, solveWithJslp, onAnswer)),
      spread: (blend, draws) => this.real.spread(blend, draws),
      robustPrice: (brief, limit) => this.real.robustPrice(brief, limit),
      sample: (brief, count, goesOn) => this.real.sample(brief, count, goesOn),
      confirm: (solver, brief, found) => this.real.confirm(solver, brief, found),
      land: (question, goesOn) =>
        this.real.land(question, async (land) => {
          this.landsTold.push(question)
          return (await goesOn?.(land)) ?? true
        }),
      solveAt: (_, brief, point) => this.#when(() => solveAt(brief, point, library, solveWithJslp)),
    }
    expose(service, port1)
    return { endpoint: port2, terminate: () => port2.close(), onError: () => undefined }
  }

  async #when<T>(answer: () => T): Promise<T> {
    this.asked++
    if (this.#holds) await new Promise<void>((go) => this.#held.push(go))
    if (this.#fault !== undefined) throw new Error(this.#fault)
    return answer()
  }
}
