import { WHOLE_PERCENT } from '../../units'
import type { Library } from '../../blend/library'
import { blendValues } from '../../blend/values'
import type { Brief, OilGroup, ShelfOil } from '../brief/brief'
import { rulesAmong } from './keep-rules'
import { distance, TIES_PER_POINT } from './like'
import { NearSpace } from './near-space'
import type { StudyAnswer, StudyResult, WithoutStudy } from './question'
import { distinct, resultOf, type StudyFrame } from './result'

/** An oil that takes less of the place than this is no replacement, in percentage points. */
const LEAST_PART_POINTS = 3

/**
 * What can take the place of an oil, single oils and pairs, ranked by how far the bar moves: the
 * distance in ties plus `TIES_PER_POINT` for every point of change. Only the replacements rise; every
 * other oil stays or falls, as far as that brings the bar nearer. Rules and limits of the shelf hold, widened
 * where the base itself stands outside; the wishes on measures do not.
 */
export function withoutStudy(brief: Brief, question: WithoutStudy, library: Library): StudyAnswer {
  const base = blendValues(library, question.prices, question.base)
  const search = new Replacing({ brief, library, question }, question)
  const single = search.of(question.candidates.map((oil) => [oil]))
  const able = question.candidates.filter((oil) => oil !== question.oil)
  const pairs = search.of(able.flatMap((a, i) => able.slice(i + 1).map((b) => [a, b] as const)))
  const results = [...single, ...pairs]
  if (results.length === 0) return { status: 'none', base, reason: { kind: 'no room' } }
  results.sort((a, b) => distance(a) - distance(b))
  return { status: 'found', base, results, leftOut: [] }
}

class Replacing {
  readonly #under: Brief
  readonly #space: NearSpace

  constructor(
    private readonly frame: StudyFrame,
    private readonly question: WithoutStudy,
  ) {
    const { brief, library } = frame
    this.#under = widened(brief, question)
    this.#space = new NearSpace({
      brief: this.#under,
      base: question.base,
      prices: question.prices,
      library,
      changes: false,
    })
    for (const oil of this.#space.oils) this.#space.limitOil(oil, this.#fallOnly(oil))
  }

  /** The best of these sets of replacements, the least moved first. */
  of(sets: readonly (readonly string[])[]): StudyResult[] {
    const found = sets.flatMap((oils) => {
      const value = this.#valueOf(oils)
      return value === undefined ? [] : [{ oils, value }]
    })
    found.sort((a, b) => a.value - b.value)
    const results = found.slice(0, 4 * this.question.most).flatMap(({ oils }) => this.#result(oils))
    return distinct(results, LEAST_PART_POINTS).slice(0, this.question.most)
  }

  #valueOf(oils: readonly string[]): number | undefined {
    return this.#solve(oils)?.value
  }

  #solve(oils: readonly string[]) {
    const { base } = this.question
    if (oils.includes(this.question.oil)) return undefined
    for (const oil of oils) this.#space.limitOil(oil, this.#riseOnly(oil))
    const perShare = this.#space.oils.map((oil) => (oils.includes(oil) ? 2 * TIES_PER_POINT : 0))
    const found = this.#space.nearest({ perTie: 1, perPoint: 0, perShare })
    for (const oil of oils) this.#space.limitOil(oil, this.#fallOnly(oil))
    if (found.status !== 'found') return undefined
    const risen = oils.every(
      (oil) => (found.blend[oil] ?? 0) - (base[oil] ?? 0) >= LEAST_PART_POINTS,
    )
    if (!risen) return undefined
    const already = oils.reduce((sum, oil) => sum + (base[oil] ?? 0), 0)
    return { blend: found.blend, value: found.value - 2 * TIES_PER_POINT * already }
  }

  #result(oils: readonly string[]): StudyResult[] {
    const found = this.#solve(oils)
    if (!found) return []
    return [resultOf(this.frame, found.blend, { kind: 'replaces', oils }, this.#under)]
  }

  #fallOnly(oil: string) {
    const share = oil === this.question.oil ? 0 : (this.question.base[oil] ?? 0)
    return { min: Math.min(share, this.#under.oils[oil]?.min ?? 0), max: share }
  }

  #riseOnly(oil: string) {
    return { min: this.question.base[oil] ?? 0, max: this.#under.oils[oil]?.max ?? WHOLE_PERCENT }
  }
}

/** The maker's shelf with the candidates on it and limits that the base keeps; no wishes. */
function widened(brief: Brief, { base, oil: gone, candidates, prices }: WithoutStudy): Brief {
  const ids = [...new Set([...Object.keys(brief.oils), ...Object.keys(base), ...candidates])]
  const oils = ids
    .filter((oil) => oil !== gone)
    .map((oil): [string, ShelfOil] => {
      const { min = 0, max = WHOLE_PERCENT } = brief.oils[oil] ?? {}
      const share = base[oil] ?? 0
      return [
        oil,
        { pricePerKg: prices[oil], min: Math.min(min, share), max: Math.max(max, share) },
      ]
    })
  return {
    oils: Object.fromEntries(oils),
    groups: brief.groups.map((group) => widenedGroup(group, base, gone)),
    measures: {},
    goal: { closestTo: base },
    rules: rulesAmong(brief.rules, (oil) => oil !== gone && ids.includes(oil), { steps: false }),
  }
}

function widenedGroup(group: OilGroup, base: WithoutStudy['base'], gone: string): OilGroup {
  const oils = group.oils.filter((oil) => oil !== gone)
  const share = group.oils.reduce((sum, oil) => sum + (base[oil] ?? 0), 0)
  const left = oils.reduce((sum, oil) => sum + (base[oil] ?? 0), 0)
  return {
    ...group,
    oils,
    min: Math.min(group.min ?? 0, left),
    max: Math.max(group.max ?? WHOLE_PERCENT, share),
  }
}
