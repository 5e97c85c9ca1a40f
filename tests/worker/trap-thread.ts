import { parentPort, workerData } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import loadHighs from 'highs'
import { highsSolver } from '../../src/domain/lp/solvers/highs'
import { createService } from '../../src/worker/service'
import type { Trap } from '../domain/lp/solvers/lp-cases'
import { trapBrief } from '../domain/lp/solvers/trap-briefs'

/** The real service with the library of one trap, which comes as the thread's data. */
if (!parentPort) throw new Error('This module runs in a worker thread')
const { library } = trapBrief(workerData as Trap)
const service = createService({ ...library, acids: new Map() }, async () =>
  highsSolver(await loadHighs()),
)
expose(service, nodeEndpoint(parentPort))
