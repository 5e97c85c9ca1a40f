import { SolverClient } from '../worker/client'
import { startPageThread } from '../worker/page-thread'
import type { SolverName } from '../worker/protocol'
import { libraryNow } from './library'

/** A solving thread of the page; it is another once an oil of one's own is another. */
export function pageSolver(solver?: SolverName): SolverClient {
  return new SolverClient(() => startPageThread(libraryNow()), solver, undefined, libraryNow)
}
