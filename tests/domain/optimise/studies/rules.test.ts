import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { blendValues } from '../../../../src/domain/blend/values'
import type { Brief, Limits } from '../../../../src/domain/optimise/brief/brief'
import { bestBlend } from '../../../../src/domain/optimise/search/best-blend'
import { brokenRules } from '../../../../src/domain/optimise/space/broken-rules'
import type { BetterStudy, StudyQuestion } from '../../../../src/domain/optimise/studies/question'
import { oneStepStudy } from '../../../../src/domain/optimise/studies/study'
import { highs } from '../../lp/solvers/loaded-highs'
import { first, KITCHEN, ONE_TIE, PRICES, resultsOf, SHELF, WITH_PALM } from './bases'

const RULES = { atMostOils: 4, absentOrAtLeast: 3 }
const RULED: Brief = { ...SHELF, rules: RULES }
const HARDER: BetterStudy = {
  kind: 'better',
  measure: 'hardness',
  base: KITCHEN,
  prices: PRICES,
  tolerances: Object.fromEntries(Object.entries(ONE_TIE).filter(([id]) => id !== 'hardness')),
  keepWishes: false,
}

describe('studies under rules of the brief', () => {
  test.each<[string, StudyQuestion]>([
    ['harder', HARDER],
    ['cheaper', { ...HARDER, measure: 'cost', tolerances: ONE_TIE }],
    ['more like it', { ...HARDER, kind: 'like', tolerances: ONE_TIE, stepPoints: 10, most: 4 }],
    [
      'without palm',
      {
        kind: 'without',
        base: WITH_PALM,
        prices: PRICES,
        oil: 'palm',
        candidates: Object.keys(SHELF.oils),
        most: 4,
      },
    ],
  ])('%s: every result keeps them', (_, question) => {
    const results = resultsOf(oneStepStudy(RULED, question, library))
    expect(results.length).toBeGreaterThan(0)
    for (const { blend } of results) expect(brokenRules(RULES, blend)).toEqual([])
  })

  test('the hardest is as hard as the best of all choices of up to four oils, each solved by HiGHS', () => {
    const found = first(resultsOf(oneStepStudy(RULED, HARDER, library)))
    const values = blendValues(library, PRICES, KITCHEN)
    const measures = Object.entries(HARDER.tolerances).map(([id, tolerance]): [string, Limits] => {
      const value = values[id] ?? NaN
      return [id, { min: value - tolerance, max: value + tolerance }]
    })
    const held = {
      ...SHELF,
      measures: Object.fromEntries(measures),
      goal: { maximise: 'hardness' },
    }
    const upToFour = [1, 2, 3, 4].flatMap((count) => choices(Object.keys(SHELF.oils), count))
    const hardest = upToFour.map((chosen) => {
      const oils = chosen.map((oil) => [
        oil,
        { ...SHELF.oils[oil], min: Math.max(RULES.absentOrAtLeast, SHELF.oils[oil]?.min ?? 0) },
      ])
      // Olive may not be left out: the shelf asks for at least 15 % of it.
      if (!chosen.includes('olive')) return -Infinity
      const brief = { ...held, oils: Object.fromEntries(oils) as Brief['oils'] }
      return bestBlend(brief, library, highs)?.goalValue ?? -Infinity
    })
    // Studies stand a hundred-thousandth of a tolerance inside it.
    expect(Math.abs((found.measures.hardness ?? NaN) - Math.max(...hardest))).toBeLessThan(0.005)
  })

  test('steps of shares hold for the most and are named where another way does not keep them', () => {
    const rules = { shareStep: 1 }
    const results = resultsOf(oneStepStudy({ ...SHELF, rules }, HARDER, library))
    for (const { role, blend, gives } of results) {
      const broken = brokenRules(rules, blend).length > 0
      expect(gives).toEqual(broken ? ['rules.shareStep'] : [])
      if (role.kind !== 'least change') expect(broken).toBe(false)
    }
  })
})

/** All choices of so many of some items. */
function choices<T>(items: readonly T[], count: number): T[][] {
  if (count === 0) return [[]]
  return items.flatMap((item, at) =>
    choices(items.slice(at + 1), count - 1).map((rest) => [item, ...rest]),
  )
}
