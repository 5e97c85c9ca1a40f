import { parentPort, workerData } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import { library } from '../data/library'
import type { Oil } from '../domain/blend/oil'
import { libraryWith } from '../domain/blend/own-library'
import { highsSolver } from '../domain/lp/solvers/highs'
import { createService } from '../worker/service'

if (!parentPort) throw new Error('This module runs in a worker thread')
const ownOils = workerData as readonly Oil[]
const service = createService(libraryWith(library, ownOils), async () => {
  const { default: loadHighs } = await import('highs')
  return highsSolver(await loadHighs())
})
expose(service, nodeEndpoint(parentPort))
