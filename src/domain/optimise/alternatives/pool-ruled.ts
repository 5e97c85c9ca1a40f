import { seededRandom } from '../../chance/random'
import type { Allowance, GoOn } from '../search/allowance'
import { PRESENT_PERCENT } from '../brief/brief-rules'
import { type RuledQuestion, towards } from '../search/question'
import { searchFor } from '../search/search'

/** Hops, after which they hardly differ from one another. */
const HOPS = 4

/** Blends of other oils looked for, for each blend asked for. */
const SUPPORTS_PER_BLEND = 3

/** Blends in random directions, as many as choices without rules are made from. */
const DIRECTIONS = 48

/** Most programs for one blend of the pool: any blend will do, so none is worth a long search. */
const MOST_NODES = 200

/**
 * Blends that keep limits, rules and the goal's limit, to choose from; some may come twice.
 *
 * First hops: each uses as little as it can of the oils used so far (E.D. Brill, S.-Y. Chang, L.D.
 * Hopkins, Management Science 28 (1982) 221). Then the next best blends by the goal of which each lacks
 * at least one oil of every one before it: a rule that not all of those may be in. Then blends in random
 * directions, a cost of -1/2 to 1/2 for each oil.
 */
export function blendPool(
  near: RuledQuestion,
  best: Float64Array,
  count: number,
  seed: number,
  allowance: Allowance,
): Float64Array[] {
  const supports = SUPPORTS_PER_BLEND * count
  let rest = HOPS + supports + DIRECTIONS
  const blendFor = (question: RuledQuestion): Float64Array | undefined => {
    const share = allowance.share(rest--)
    const goOn: GoOn = (progress) => progress.nodes < MOST_NODES && share(progress)
    const outcome = searchFor(question, goOn)
    return 'shares' in outcome ? outcome.shares : undefined
  }
  const random = seededRandom(seed)
  const directions = Array.from({ length: DIRECTIONS }, () => best.map(() => random() - 1 / 2))
  return [
    ...hops(near, best, blendFor),
    ...otherSupports(near, best, supports, blendFor),
    ...directions.flatMap((cost) => blendFor(towards(near, cost, 'least')) ?? []),
  ]
}

type BlendFor = (question: RuledQuestion) => Float64Array | undefined

function hops(near: RuledQuestion, best: Float64Array, blendFor: BlendFor): Float64Array[] {
  const uses = new Float64Array(best.length)
  const found: Float64Array[] = []
  for (let last: Float64Array | undefined = best; last && found.length < HOPS;) {
    for (const oil of oilsIn(last)) uses[oil] = (uses[oil] ?? 0) + 1
    last = blendFor(towards(near, uses, 'least'))
    if (last) found.push(last)
  }
  return found
}

function otherSupports(
  near: RuledQuestion,
  best: Float64Array,
  count: number,
  blendFor: BlendFor,
): Float64Array[] {
  const found: Float64Array[] = []
  let question = withoutAllOf(near, best)
  while (found.length < count) {
    const next = blendFor(question)
    if (!next) break
    found.push(next)
    question = withoutAllOf(question, next)
  }
  return found
}

/** The question with the rule that not all of a blend's oils are in. */
function withoutAllOf(question: RuledQuestion, shares: Float64Array): RuledQuestion {
  const variables = oilsIn(shares)
  const notAll = { variables, least: 0, most: variables.length - 1 }
  const { rules } = question
  return { ...question, rules: { ...rules, counts: [...rules.counts, notAll] } }
}

function oilsIn(shares: Float64Array): number[] {
  return [...shares.keys()].filter((oil) => (shares[oil] ?? 0) > PRESENT_PERCENT)
}
