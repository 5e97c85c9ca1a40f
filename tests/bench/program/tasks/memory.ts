import { Random } from '../../../generator/random'
import { COST } from '../../../../src/domain/blend/measure'
import { measureId, problemOf, USUAL } from '../problem'
import { spaceOf } from './ranges'

/** Memory in use, in bytes, after a full collection. */
export interface MemoryUse {
  readonly heap: number
  readonly arrayBuffers: number
}

/** Memory before and after many solves. */
export interface MemoryResult {
  readonly solves: number
  readonly pivots: number
  readonly before: MemoryUse
  readonly after: MemoryUse
  /** Growth of the heap over the solves before it was collected: all that they threw away. */
  readonly litter: number
  readonly seconds: number
}

/** Solves until everything is compiled and has its final size. */
const WARM_UP = 5000

/** Limits are moved by up to so many points. */
const SHIFT = 3

/**
 * Warm solves, each after a change of cost and of one range; `collect` is a full garbage collection.
 * Whether the answer is an optimum or infeasible makes no difference.
 */
export function memory(solves: number, collect: () => void): MemoryResult {
  const problem = problemOf(1)
  const space = spaceOf(problem)
  const random = new Random(1)
  const costs = [COST, ...Array.from({ length: USUAL.measures }, (_, i) => measureId(i))].map(
    (id) => space.perPercent(id),
  )
  const cost = new Float64Array(USUAL.oils)
  const solveOnce = () => {
    const [one, other] = [costs[random.int(0, costs.length - 1)], costs[0]]
    const [a, b] = [random.next() - 0.5, random.next()]
    for (let j = 0; j < cost.length; j++) cost[j] = a * (one?.[j] ?? NaN) + b * (other?.[j] ?? NaN)
    const number = random.int(1, USUAL.measures)
    const row = space.program.rows[number]
    const shift = SHIFT * (random.next() - 0.5)
    space.simplex.setRowBounds(number, (row?.lower ?? NaN) + shift, (row?.upper ?? NaN) + shift)
    space.simplex.setCost(cost)
    space.simplex.solve()
  }
  for (let k = 0; k < WARM_UP; k++) solveOnce()
  collect()
  const before = use()
  const [start, pivots] = [performance.now(), space.simplex.pivots]
  for (let k = 0; k < solves; k++) solveOnce()
  const seconds = (performance.now() - start) / 1000
  const litter = use().heap - before.heap
  collect()
  const after = use()
  return { solves, pivots: space.simplex.pivots - pivots, before, after, litter, seconds }
}

function use(): MemoryUse {
  const { heapUsed, arrayBuffers } = process.memoryUsage()
  return { heap: heapUsed, arrayBuffers }
}
