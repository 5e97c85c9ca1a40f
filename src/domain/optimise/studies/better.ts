import { type Library, measureOf } from '../../blend/library'
import { COST, type Measure } from '../../blend/measure'
import { blendValues } from '../../blend/values'
import { BlendSpace, negated } from '../space/blend-space'
import type { Brief, Limits } from '../brief/brief'
import { CHECK_TOLERANCE } from '../space/verify'
import { heldBrief, INSIDE_PART } from './hold'
import { cheapestIn, withoutSteps } from './keep-rules'
import { NearSpace, type Weights } from './near-space'
import type { BetterStudy, StudyAnswer, StudyResult } from './question'
import { distinct, resultOf, type StudyFrame } from './result'

/** Results that differ by less total change than this are one result; percentage points. */
const SAME_POINTS = 2

/**
 * As much of one measure as the shelf can give with the others held near the base's own, and two ways
 * to go at least half as far: with the least change of oils, and at the least cost. Each is an
 * optimum under the brief's rules; of its step of shares only the first and the cheapest know. Never a blend that is worse than the base in what was asked for.
 */
export function betterStudy(brief: Brief, question: BetterStudy, library: Library): StudyAnswer {
  const measure = measureOf(library, question.measure)
  const base = blendValues(library, question.prices, question.base)
  const start = base[measure.id]
  if (start === undefined) {
    const oils = Object.keys(question.base).filter((oil) => !(oil in question.prices))
    return { status: 'none', base, reason: { kind: 'no price', oils } }
  }
  const held = heldBrief(brief, question, base, library, measure.id)
  const search = new Search(measure, start, held.brief, { brief, library, question })
  const best = search.most()
  if (best.status === 'none') {
    const nearest = search.nearest()
    return { status: 'none', base, reason: { kind: 'nothing holds', nearest } }
  }
  if (best.status !== 'found') return { status: 'none', base, reason: { kind: 'undecided' } }
  const { result: most, proved } = best
  const gain = search.gainOf(most)
  if (gain <= CHECK_TOLERANCE) {
    const reason = proved
      ? ({ kind: 'no better', best: most } as const)
      : ({ kind: 'undecided' } as const)
    return { status: 'none', base, reason }
  }
  const ways =
    gain > measure.tie * (1 + INSIDE_PART)
      ? search.waysTo(Math.max(measure.tie * (1 + INSIDE_PART), gain / 2))
      : []
  const results = distinct([most, ...ways], SAME_POINTS)
  results.sort((a, b) => search.gainOf(b) - search.gainOf(a))
  return { status: 'found', base, results, leftOut: held.leftOut }
}

/** One search for more of a measure. */
class Search {
  readonly #space: BlendSpace

  constructor(
    private readonly measure: Measure,
    private readonly start: number,
    private readonly held: Brief,
    private readonly frame: StudyFrame,
  ) {
    this.#space = new BlendSpace(held, frame.library)
  }

  /** How much better than the base a result is, in the measure's unit. */
  gainOf({ measures }: StudyResult): number {
    const by = (measures[this.measure.id] ?? NaN) - this.start
    return this.measure.better === 'more' ? by : -by
  }

  most():
    | { readonly status: 'found'; readonly result: StudyResult; readonly proved: boolean }
    | { readonly status: 'none' }
    | { readonly status: 'undecided' } {
    const worth = this.#space.perPercent(this.measure.id)
    const found = cheapestIn(this.#space, this.measure.better === 'more' ? negated(worth) : worth)
    if (found.status !== 'found') return found
    const blend = this.#space.blendOf(found.x)
    const result = resultOf(this.frame, blend, { kind: 'most' }, this.held)
    return { status: 'found', result, proved: found.proved }
  }

  /** The blend of the shelf that moves the bar least, whatever it breaks of what was to be held. */
  nearest(): StudyResult | undefined {
    const open = { ...withoutSteps(this.held), measures: {} }
    return this.#near(open, { perTie: 1, perPoint: 0 })
  }

  /** Blends that gain at least so much: by the least change of oils, and at the least cost. */
  waysTo(gain: number): StudyResult[] {
    const reach = this.measure.better === 'more' ? gain : -gain
    const target = this.start + reach
    const wish = this.held.measures[this.measure.id] ?? {}
    const limits: Limits =
      this.measure.better === 'more' ? { ...wish, min: target } : { ...wish, max: target }
    const under = {
      ...this.held,
      measures: { ...this.held.measures, [this.measure.id]: limits },
    }
    return [this.#leastChange(under), this.#cheapest(under)].filter((way) => way !== undefined)
  }

  #leastChange(under: Brief): StudyResult | undefined {
    return this.#near(withoutSteps(under), { perTie: 0, perPoint: 1 })
  }

  #cheapest(under: Brief): StudyResult | undefined {
    if (this.measure.id === COST || !this.#space.measures.includes(COST)) return undefined
    const space = new BlendSpace(under, this.frame.library)
    const found = cheapestIn(space, space.perPercent(COST))
    if (found.status !== 'found') return undefined
    return resultOf(this.frame, space.blendOf(found.x), { kind: 'cheapest' }, under)
  }

  #near(under: Brief, weights: Weights): StudyResult | undefined {
    const { library, question } = this.frame
    const { base, prices } = question
    const changes = weights.perPoint > 0
    const space = new NearSpace({ brief: under, base, prices, library, changes })
    const found = space.nearest(weights)
    if (found.status !== 'found') return undefined
    return resultOf(this.frame, found.blend, { kind: 'least change' }, under)
  }
}
