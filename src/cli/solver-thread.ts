import { parentPort } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import { library } from '../data/library'
import { highsSolver } from '../domain/lp/solvers/highs'
import { createService } from '../worker/service'

if (!parentPort) throw new Error('This module runs in a worker thread')
const service = createService(library, async () => {
  const { default: loadHighs } = await import('highs')
  return highsSolver(await loadHighs())
})
expose(service, nodeEndpoint(parentPort))
