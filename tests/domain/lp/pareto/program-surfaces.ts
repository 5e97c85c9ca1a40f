import { vectorSurface } from '../../../../src/domain/lp/pareto/vector-surface'
import type { LinearProgram } from '../../../../src/domain/lp/program'
import { Simplex } from '../../../../src/domain/lp/simplex/simplex'
import { blendInstance } from '../../../generator/random-programs'
import { Random } from '../../../generator/random'
import { missedBy, outside, unsupported, widthsOf } from './faults'

/** Objectives of a blend program: its cost and the first of its measures, each turned by chance. */
function objectivesOf(program: LinearProgram, count: number, seed: number): Float64Array[] {
  const random = new Random(seed)
  const measures = program.rows.slice(1, count).map(({ coefficients }) => coefficients)
  return [program.cost, ...measures].map((values) => {
    const sign = random.chance(0.5) ? 1 : -1
    return Float64Array.from(values, (one) => sign * one)
  })
}

/** What is wrong with the surface of a seed's program under so many objectives, by HiGHS. */
export function programFaults(
  seed: number,
  count: number,
  wholeHull: boolean,
): string[] | 'infeasible' {
  const { name, program } = blendInstance(seed, { oils: 8 + (seed % 15), measures: 3 + (seed % 4) })
  const objectives = objectivesOf(program, count, seed)
  const surface = vectorSurface(new Simplex(program), objectives, { wholeHull })
  if (surface.status === 'infeasible') return 'infeasible'
  if (surface.status === 'unbounded') return [`${name}: limited shares were called unbounded`]
  const faults = [
    ...missedBy(surface, program, objectives, { directions: 40, whole: wholeHull, seed }),
    ...unsupported(surface, widthsOf(program, objectives)),
    ...(wholeHull ? outside(surface, program, objectives, 10, seed) : []),
  ]
  return faults.map((fault) => `${name}: ${fault}`)
}
