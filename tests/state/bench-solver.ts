import { expose } from 'comlink'
import { library } from '../../src/data/library'
import type { SolveProgram } from '../../src/domain/lp/solvers/solve-program'
import { SolverClient, type SolverThread } from '../../src/worker/client'
import { createService } from '../../src/worker/service'

/** HiGHS is never needed by the questions of these tests. */
const noHighs = (): Promise<SolveProgram> => Promise.reject(new Error('HiGHS was asked'))

/** A client whose thread is a message channel with the real service behind it. */
export function benchSolver(): { readonly client: SolverClient; readonly close: () => void } {
  const ports: MessagePort[] = []
  const thread = (): SolverThread => {
    const { port1, port2 } = new MessageChannel()
    ports.push(port1, port2)
    expose(createService(library, noHighs), port1)
    return { endpoint: port2, terminate: () => port2.close(), onError: () => undefined }
  }
  const client = new SolverClient(thread)
  return {
    client,
    close: () => {
      client.close()
      for (const port of ports) port.close()
    },
  }
}
