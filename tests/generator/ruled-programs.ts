import type { BlendRules } from '../../src/domain/lp/search/rules'
import type { LinearProgram } from '../../src/domain/lp/program'
import { Random, shuffled } from './random'
import { blendInstance } from './random-programs'

/** A blend program with rules on which oils it uses. */
export interface RuledInstance {
  readonly name: string
  readonly program: LinearProgram
  readonly rules: BlendRules
}

/**
 * A blend of so many oils, three to six measures and two groups, under a random choice of rules:
 * least uses of 2 to 12, at most 3 to 6 oils, one or two groups to choose from, needs, and with
 * `step` whole multiples of 5.
 */
export function ruledInstance(seed: number, oils: number, step: 0 | 5 = 0): RuledInstance {
  const random = new Random(seed)
  const { program } = blendInstance(seed, {
    kind: 'plain',
    oils,
    measures: random.int(3, 6),
    groups: step === 0 ? 2 : 0,
  })
  const anyOil = (): number => random.int(0, oils - 1)
  const least = random.pick([2, 5, 12])
  const counts = []
  if (random.chance(0.7)) {
    const variables = Array.from({ length: oils }, (_, j) => j)
    counts.push({ variables, least: 0, most: random.int(3, 6) })
  }
  for (let k = random.int(0, 2); k > 0; k--) {
    const variables = shuffled(random, oils).slice(0, random.int(2, 5))
    counts.push({ variables, least: random.int(0, 1), most: random.int(1, 2) })
  }
  const requires = Array.from({ length: random.int(0, 3) }, () => [anyOil(), anyOil()] as const)
  return {
    name: `ruled-${oils}-${seed}`,
    program: { ...program, lower: Array<number>(oils).fill(0) },
    rules: { leastUse: Array<number>(oils).fill(least), counts, requires, step },
  }
}
