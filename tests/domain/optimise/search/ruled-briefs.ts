import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { BriefRules } from '../../../../src/domain/optimise/brief/brief-rules'
import { at, Random, shuffled } from '../../../generator/random'
import { sampleBriefs } from '../../../property/briefs'

/** Which rules to draw: steps are searched for in another way than the rest. */
export type RuleKind = 'use' | 'steps' | 'both'

/** Which random briefs to draw. */
export interface Draw {
  readonly count: number
  readonly seed: number
  /** Oils on the shelf. */
  readonly least: number
  readonly most: number
  readonly kind: RuleKind
}

const LEAST_SHARES = [2, 5, 10, 15] as const
const STEPS = [0.5, 1, 2.5, 5, 10] as const

/** Random briefs over the library, each with random rules; the same ones for the same draw. */
export function ruledBriefs({ count, seed, least, most, kind }: Draw): Brief[] {
  const random = new Random(seed)
  const found: Brief[] = []
  for (let batch = seed; found.length < count; batch++) {
    for (const brief of sampleBriefs(4 * count, batch)) {
      const oils = Object.keys(brief.oils)
      if (oils.length < least || oils.length > most || found.length === count) continue
      found.push({ ...brief, rules: randomRules(oils, random, kind) })
    }
  }
  return found
}

function randomRules(oils: readonly string[], random: Random, kind: RuleKind): BriefRules {
  const some = (count: number) =>
    shuffled(random, oils.length)
      .slice(0, count)
      .map((place) => at(oils, place))
  const pairs = oils.length < 2 ? 0 : random.int(0, 2)
  const drawn = Array.from({ length: pairs }, () => {
    const [oil = '', companion = ''] = some(2)
    return { oil, with: companion }
  })
  const requires = drawn.filter((one, at) => drawn.findIndex(({ oil }) => oil === one.oil) === at)
  const groups = oils.length < 2 ? 0 : random.int(0, 1)
  const uses: BriefRules = {
    ...(random.chance(0.6) ? { atMostOils: random.int(2, 5) } : {}),
    ...(random.chance(0.6) ? { absentOrAtLeast: random.pick(LEAST_SHARES) } : {}),
    requires,
    oneOf: Array.from({ length: groups }, () => some(random.int(2, Math.min(4, oils.length)))),
  }
  const steps = { shareStep: random.pick(STEPS) }
  return kind === 'use' ? uses : kind === 'steps' ? steps : { ...uses, ...steps }
}
