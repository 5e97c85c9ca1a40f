import { describe, expect, test } from 'vitest'
import { measureOf } from '../../../../src/domain/blend/library'
import { checkBrief } from '../../../../src/domain/optimise/brief/check-brief'
import { formulate } from '../../../../src/domain/optimise/space/formulate'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { type Limit, limitsOf } from '../../../../src/domain/optimise/brief/limits'
import { nearestFeasible } from '../../../../src/domain/optimise/infeasible/nearest'
import { breaches } from '../../../../src/domain/optimise/space/verify'
import { Random } from '../../../generator/random'
import { libraryOfValues } from '../../blend/stub-library'
import { type Case, clashCases, randomCases } from '../sensitivity/random-briefs'
import { bestValue, leastCost, moved } from '../sensitivity/reference'

const PER_KIND = 80
const SEED = 4000
const CLASHES = 300
/** Difference of two totals that is rounding, in units. */
const ROUNDING = 1e-7

const clashing = [...randomCases(PER_KIND, SEED), ...clashCases(CLASHES, SEED)].filter(
  (one) => bestValue(one) === undefined,
)
const answers = clashing.map((one, n) => {
  const locked = n % 2 === 0 ? [] : someLimits(one.brief, n)
  return { one, locked, nearest: nearestFeasible(one.brief, one.library, { locked }) }
})
const found = answers.flatMap(({ nearest, ...rest }) =>
  nearest.status === 'found' ? [{ ...rest, nearest }] : [],
)

/** Each limit with one chance in three. */
function someLimits(brief: Brief, seed: number): string[] {
  const random = new Random(seed)
  return limitsOf(brief).flatMap(({ path }) => (random.chance(1 / 3) ? [path] : []))
}

/** Units of one step of a limit, as the docs say: a tie of a measure, one percentage point of a share. */
function unitsPer({ library }: Case, { kind, subject }: Limit): number {
  return kind === 'measure' ? 1 / measureOf(library, subject).tie : 1
}

/** The elastic program put together anew from the oils: its optimum by HiGHS. */
function leastUnits(one: Case, locked: readonly string[]): number | undefined {
  const { brief, library } = one
  const oils = Object.keys(brief.oils)
  const soft = limitsOf(brief)
  const width = oils.length + soft.length
  const named = formulate(brief, library, 'limits only').rows
  const perPercent = ({ kind, subject, path }: Limit): Map<number, number> => {
    if (kind === 'oil') return new Map([[oils.indexOf(subject), 1]])
    const row = named.find(({ name }) => name === path || `${path}.`.startsWith(`${name}.`))
    return new Map([...(row?.coefficients ?? [])].entries())
  }
  const rows = soft.map((limit, k) => {
    const coefficients = new Array<number>(width).fill(0)
    for (const [oil, value] of perPercent(limit)) coefficients[oil] = value
    coefficients[oils.length + k] = limit.side === 'min' ? 1 : -1
    return limit.side === 'min'
      ? { coefficients, lower: limit.value, upper: Infinity }
      : { coefficients, lower: -Infinity, upper: limit.value }
  })
  const whole = new Array<number>(width).fill(0).fill(1, 0, oils.length)
  return leastCost({
    cost: [...oils.map(() => 0), ...soft.map((limit) => unitsPer(one, limit))],
    lower: new Array<number>(width).fill(0),
    upper: [
      ...oils.map(() => 100),
      ...soft.map(({ path }) => (locked.includes(path) ? 0 : Infinity)),
    ],
    rows: [...rows, { coefficients: whole, lower: 100, upper: 100 }],
  })
}

type Changes = (typeof found)[number]['nearest']['changes']

function changed(one: Case, changes: Changes): Case {
  return changes.reduce((kept, { limit, to }) => moved(kept, limit, to), one)
}

function limitOf({ brief }: Case, path: string): Limit {
  const limit = limitsOf(brief).find((other) => other.path === path)
  if (!limit) throw new Error(`No limit ${path}`)
  return limit
}

function totalUnits(one: Case, changes: Changes): number {
  return changes.reduce(
    (sum, { limit, from, to }) => sum + Math.abs(to - from) * unitsPer(one, limitOf(one, limit)),
    0,
  )
}

describe('the nearest brief', () => {
  test('is found for over a hundred briefs, with one change and with more', () => {
    expect(found.length).toBeGreaterThan(120)
    const sizes = found.map(({ nearest }) => nearest.changes.length)
    expect(sizes.filter((size) => size === 1).length).toBeGreaterThan(40)
    expect(sizes.filter((size) => size > 1).length).toBeGreaterThan(20)
    expect(found.filter(({ locked }) => locked.length > 0).length).toBeGreaterThan(30)
  })

  test('gives way by the least weighted total, by HiGHS', () => {
    for (const { one, locked, nearest } of found) {
      const least = leastUnits(one, locked) ?? NaN
      expect(Math.abs(nearest.units - least), one.name).toBeLessThan(ROUNDING * Math.max(1, least))
    }
  })

  test('is rounded to marks that lose less than two steps each', () => {
    for (const { one, nearest } of found) {
      const total = totalUnits(one, nearest.changes)
      const steps = nearest.changes.map(({ limit }) => {
        const step = limit.startsWith('measures.cost') ? 0.01 : 0.1
        return 2 * step * unitsPer(one, limitOf(one, limit))
      })
      expect(total, one.name).toBeGreaterThanOrEqual(nearest.units - ROUNDING)
      const most = steps.reduce((sum, step) => sum + step, nearest.units)
      expect(total, one.name).toBeLessThan(most + ROUNDING)
      for (const { to, limit } of nearest.changes) {
        const marks = to * (limit.startsWith('measures.cost') ? 100 : 10)
        expect(Math.abs(marks - Math.round(marks)), `${one.name} ${to}`).toBeLessThan(1e-9 * 1e4)
      }
    }
  })

  test('is a sound brief that has a blend, by HiGHS, and the blend given keeps it', () => {
    for (const { one, nearest } of found) {
      const after = changed(one, nearest.changes)
      expect(checkBrief(after.brief, after.library), one.name).toEqual([])
      expect(bestValue(after), one.name).toBeDefined()
      expect(breaches(after.brief, nearest.blend, after.library), one.name).toEqual([])
    }
  })

  test('changes each limit once, to the side that gives way, and no locked one', () => {
    for (const { one, locked, nearest } of found) {
      const paths = nearest.changes.map(({ limit }) => limit)
      expect(new Set(paths).size).toBe(paths.length)
      for (const { limit, from, to } of nearest.changes) {
        const { side, value } = limitOf(one, limit)
        expect(from).toBe(value)
        expect(locked).not.toContain(limit)
        expect(side === 'min' ? from - to : to - from).toBeGreaterThan(0)
      }
    }
  })

  test('needs every one of its changes', () => {
    for (const { one, nearest } of found) {
      for (const change of nearest.changes) {
        const others = nearest.changes.filter((other) => other !== change)
        expect(bestValue(changed(one, others)), `${one.name} ${change.limit}`).toBeUndefined()
      }
    }
  })

  test('is missing only where the locked limits clash among themselves', () => {
    const stuck = answers.filter(({ nearest }) => nearest.status === 'locked')
    expect(stuck.length).toBeGreaterThan(3)
    for (const { one, locked, nearest } of stuck) {
      expect(leastUnits(one, locked), one.name).toBeUndefined()
      if (nearest.status !== 'locked') continue
      expect(nearest.conflict.length).toBeGreaterThan(0)
      for (const path of nearest.conflict) expect(locked).toContain(path)
    }
  })
})

/** Two oils and one measure, 20 and 80 points; its tie is 1 point. */
const library = libraryOfValues({ soft: { firmness: 20 }, hard: { firmness: 80 } })
const plain: Brief = {
  oils: { soft: {}, hard: {} },
  groups: [],
  measures: {},
  goal: { maximise: 'firmness' },
}

test('crossed ends of one range part where it costs least', () => {
  const brief = { ...plain, measures: { firmness: { min: 60, max: 50 } } }
  const nearest = nearestFeasible(brief, library)
  if (nearest.status !== 'found') throw new Error('No nearest brief')
  expect(nearest.units).toBeCloseTo(10, 9)
  expect(nearest.changes.length).toBe(1)
})

test('a locked end of a crossed range stays, and the other gives way', () => {
  const brief = { ...plain, measures: { firmness: { min: 60, max: 50 } } }
  const nearest = nearestFeasible(brief, library, { locked: ['measures.firmness.max'] })
  expect(nearest).toMatchObject({
    status: 'found',
    changes: [{ limit: 'measures.firmness.min', from: 60, to: 50 }],
  })
})

test('a brief that has a blend needs no change', () => {
  expect(nearestFeasible(plain, library)).toEqual({
    status: 'found',
    changes: [],
    blend: { hard: 100 },
    units: 0,
  })
})

test('a goal of staying close to a blend decides which blend the nearest brief gets', () => {
  const brief: Brief = {
    ...plain,
    oils: { soft: {}, hard: { max: 30 } },
    measures: { firmness: { min: 39 } },
    goal: { closestTo: { soft: 100 } },
  }
  // 39 points need 31.67 % hard: a point of the wish (1 unit) is dearer than 1.67 % of hard.
  const nearest = nearestFeasible(brief, library, { locked: ['measures.firmness.min'] })
  if (nearest.status !== 'found') throw new Error('No nearest brief')
  expect(nearest.changes).toEqual([{ limit: 'oils.hard.max', from: 30, to: 31.7 }])
  expect(nearest.blend['hard']).toBeCloseTo(31 + 2 / 3, 6)
})

test('a change that the rounding of another has made needless is taken back', () => {
  // Hard must reach 30.03 % and soft, at most 69.94 % by its points, the rest: 0.03 % of each is missing.
  // Rounded, hard may reach 30.1 %, and soft needs no more than it has.
  const shares = libraryOfValues({
    soft: { hardPart: 0, softPart: 50 },
    hard: { hardPart: 100, softPart: 0 },
  })
  const brief: Brief = {
    ...plain,
    oils: { soft: {}, hard: { max: 30 } },
    measures: { hardPart: { min: 30.03 }, softPart: { max: 34.97 } },
    goal: { maximise: 'hardPart' },
  }
  const nearest = nearestFeasible(brief, shares, { locked: ['measures.hardPart.min'] })
  if (nearest.status !== 'found') throw new Error('No nearest brief')
  expect(nearest.units).toBeCloseTo(0.03 + 0.015, 9)
  expect(nearest.changes).toEqual([{ limit: 'oils.hard.max', from: 30, to: 30.1 }])
})
