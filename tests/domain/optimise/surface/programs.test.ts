import { describe, expect, test } from 'vitest'
import { vectorSurface } from '../../../../src/domain/optimise/surface'
import { type LinearProgram, Simplex } from '../../../../src/domain/simplex'
import { blendInstance, KINDS } from '../../../generator/random-programs'
import { Random } from '../../../generator/random'
import { missedBy, outside, unsupported, widthsOf } from './faults'

/** Programs of each of the generator's kinds, the degenerate ones among them, by number of objectives. */
const PROGRAMS_OF_EACH_KIND = 6

/** Objectives of a blend program: its cost and the first of its measures, each turned by chance. */
function objectivesOf(program: LinearProgram, count: number, seed: number): Float64Array[] {
  const random = new Random(seed)
  const measures = program.rows.slice(1, count).map(({ coefficients }) => coefficients)
  return [program.cost, ...measures].map((values) => {
    const sign = random.chance(0.5) ? 1 : -1
    return Float64Array.from(values, (one) => sign * one)
  })
}

function faultsOf(seed: number, count: number, wholeHull: boolean): string[] | 'infeasible' {
  const { name, program } = blendInstance(seed, { oils: 8 + (seed % 15), measures: 3 + (seed % 4) })
  const objectives = objectivesOf(program, count, seed)
  const surface = vectorSurface(new Simplex(program), objectives, { wholeHull })
  if (surface.status === 'infeasible') return 'infeasible'
  expect(surface.status).toBe('optimal')
  const faults = [
    ...missedBy(surface, program, objectives, { directions: 40, whole: wholeHull, seed }),
    ...unsupported(surface, widthsOf(program, objectives)),
    ...(wholeHull ? outside(surface, program, objectives, 10, seed) : []),
  ]
  return faults.map((fault) => `${name}: ${fault}`)
}

describe.each([2, 3, 4])('surfaces of random programs under %i objectives', (count) => {
  test.each([
    ['efficient sides', false],
    ['whole hulls', true],
  ])('%s of every kind agree with HiGHS', (_, wholeHull) => {
    const seeds = Array.from({ length: PROGRAMS_OF_EACH_KIND * KINDS.length }, (_, seed) => seed)
    const all = seeds.map((seed) => faultsOf(seed, count, wholeHull))
    const found = all.filter((faults) => faults !== 'infeasible')
    expect(found.flat()).toEqual([])
    expect(found.length).toBeGreaterThan(seeds.length / 2)
  })
})
