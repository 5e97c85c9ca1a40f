import type { Brief } from '../domain/optimise/brief/brief'
import type { Confirmation } from '../domain/optimise/solve/confirm'
import type { Found } from '../domain/optimise/brief/answer'
import type { SolverClient } from './client'

/**
 * What a second solver says of an answer: javascript-lp-solver, or HiGHS where that one loops, fails or,
 * under rules, does not settle it in time. `client` is one that asks javascript-lp-solver.
 */
export async function secondOpinion(
  client: Pick<SolverClient, 'ask'>,
  brief: Brief,
  found: Found,
): Promise<Confirmation> {
  const first = await client.ask((service, solver) => service.confirm(solver, brief, found))
  if (first.status !== 'open' || first.by === 'highs') return first
  return client.ask((service) => service.confirm('highs', brief, found), {
    limitMs: HIGHS_LIMIT_MS,
  })
}

/** Time for HiGHS to be loaded and to search. */
const HIGHS_LIMIT_MS = 20_000
