import { parentPort } from 'node:worker_threads'
import { expose } from 'comlink'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import loadHighs from 'highs'
import { library } from '../data/library'
import { highsSolver } from '../domain/lp/solvers/highs'
import { createService } from '../worker/service'

if (!parentPort) throw new Error('This module runs in a worker thread')
const service = createService(library, async () => highsSolver(await loadHighs()))
expose(service, nodeEndpoint(parentPort))
