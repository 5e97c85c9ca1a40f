import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { briefFile, briefOf } from '../../../../src/data/brief-file'
import { library } from '../../../../src/data/library'
import { parseJson } from '../../../../src/data/problems'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import type { ProgramOutcome } from '../../../../src/domain/lp/solvers/solve-program'
import { solveAt } from '../../../../src/domain/optimise/solve/point'
import type { Answer } from '../../../../src/domain/optimise/brief/answer'
import { solveBrief } from '../../../../src/domain/optimise/solve/solve'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import { attainableRegion } from '../../../../src/domain/optimise/map/attainable-region'
import { studyBrief } from '../../../../src/domain/optimise/solve/study'
import { UnsoundAnswer } from '../../../../src/domain/lp/unsound-answer'
import { libraryOfValues } from '../../blend/stub-library'
import { highs } from '../../lp/solvers/loaded-highs'

const example = exampleBrief()

/** Three oils by hand: hard is worth 60 of hardness and 10 of lather, and so on. */
const byHand = libraryOfValues({
  hard: { hardness: 60, lather: 10 },
  soft: { hardness: 20, lather: 20 },
  foaming: { hardness: 40, lather: 80 },
})
const SHELF: Brief = {
  oils: { hard: {}, soft: {}, foaming: {} },
  groups: [],
  measures: {},
  goal: { maximise: 'lather' },
}

describe('the example brief', () => {
  const answer = found(solveBrief(example, library, highs))

  test('comes to about 30 % coconut, 58.8 % olive and 11.2 % shea', () => {
    // The optimum moves with the typical profiles of data/oils.json, hence the half percent.
    expect(answer.blend.coconut).toBeCloseTo(30, 9)
    expect(answer.blend.olive).toSatisfy(within(58.8, 0.5))
    expect(answer.blend.shea).toSatisfy(within(11.2, 0.5))
    expect(Object.keys(answer.blend).sort()).toEqual(['coconut', 'olive', 'shea'])
  })

  test('costs about 6.47 per kg, which is what its shares cost', () => {
    const { coconut = NaN, olive = NaN, shea = NaN } = answer.blend
    expect(answer.goalValue).toSatisfy(within(6.47, 0.02))
    expect(answer.goalValue).toBeCloseTo((coconut * 3.9 + olive * 7.2 + shea * 9.5) / 100, 9)
    expect(answer.measures.cost).toBeCloseTo(answer.goalValue, 12)
  })

  test('stands at the hardness it asks for and at the most coconut', () => {
    const study = studyBrief(example, library, highs)
    expect(study.atLimit).toEqual(['oils.coconut.max', 'measures.hardness.min'])
  })
})

describe('a goal', () => {
  test('takes the oil that is best at it when nothing else is asked', () => {
    expect(solved(SHELF)).toMatchObject({ blend: { foaming: 100 }, goalValue: 80 })
  })

  test('is weighed against a range: 50 of hardness leaves room for half of each', () => {
    // By hand: hard and foaming average 50 at one half each; lather is then (10 + 80) / 2.
    const answer = solved({ ...SHELF, measures: { hardness: { min: 50 } } })
    expect(answer.blend.hard).toBeCloseTo(50, 9)
    expect(answer.blend.foaming).toBeCloseTo(50, 9)
    expect(answer.goalValue).toBeCloseTo(45, 9)
  })

  test('keeps to the share of a group', () => {
    const groups = [{ name: 'not foaming', oils: ['hard', 'soft'], min: 70 }]
    // By hand: 30 % of 80 and 70 % of soft's 20.
    expect(solved({ ...SHELF, groups }).goalValue).toBeCloseTo(38, 9)
  })

  test('uses no more of an oil than its limit and no less than its need', () => {
    const oils = { hard: { min: 12.5 }, soft: {}, foaming: { max: 40 } }
    const { blend } = solved({ ...SHELF, oils })
    expect(blend).toEqual({ hard: 12.5, soft: 47.5, foaming: 40 })
  })
})

describe('the least change from a blend', () => {
  test('is none where the blend keeps the brief', () => {
    const goal = { closestTo: { hard: 50, foaming: 50 } }
    const answer = solved({ ...SHELF, goal, measures: { hardness: { min: 50 } } })
    expect(answer.goalValue).toBeCloseTo(0, 9)
    expect(answer.blend).toEqual({ hard: 50, foaming: 50 })
  })

  test('moves as little as the brief needs', () => {
    // By hand: from soft to hard gains 40 points of hardness a whole, so 10 points take 25 %:
    // 25 percentage points fall and 25 rise.
    const goal = { closestTo: { soft: 50, hard: 50 } }
    const answer = solved({ ...SHELF, goal, measures: { hardness: { min: 50 } } })
    expect(answer.goalValue).toBeCloseTo(50, 9)
    expect(answer.blend.hard).toBeCloseTo(75, 9)
  })

  test('counts an oil that is not on the shelf as lost and as replaced', () => {
    const library = libraryOfValues({ soft: { hardness: 20 }, hard: { hardness: 60 }, gone: {} })
    const goal = { closestTo: { soft: 70, gone: 30 } }
    const brief = { ...SHELF, oils: { soft: {}, hard: {} }, goal }
    const answer = found(solveBrief(brief, library, highs))
    // By hand: the 30 % of the missing oil fall, and 30 % of others rise in its place.
    expect(answer.goalValue).toBeCloseTo(60, 9)
    expect(answer.blend.gone).toBeUndefined()
  })

  test('takes shares that add to 99.6 % as parts of their own sum', () => {
    const answer = solved({ ...SHELF, goal: { closestTo: { hard: 49.8, soft: 49.8 } } })
    expect(answer.blend.hard).toBeCloseTo(50, 9)
    expect(answer.goalValue).toBeCloseTo(0, 9)
  })
})

describe('an answer', () => {
  test('without a blend carries neither blend nor value', () => {
    const answer = solveBrief({ ...SHELF, measures: { hardness: { min: 61 } } }, byHand, highs)
    expect(answer).toEqual({ status: 'infeasible', conflict: ['measures.hardness.min'] })
  })

  test('to a wrong brief names what is wrong and is not solved', () => {
    const never = () => {
      throw new Error('A wrong brief was solved')
    }
    const answer = solveBrief({ ...SHELF, oils: {} }, byHand, never)
    expect(answer).toMatchObject({ status: 'invalid', problems: [{ path: 'oils' }] })
  })

  test('leaves out oils that are only the noise of a solver, and adds to 100 %', () => {
    const noisy = () => outcome([99.99999995, -1e-9, 5e-8], 10)
    const answer = found(solveBrief(SHELF_FOR_NOISE, byHand, noisy))
    expect(answer.blend).toEqual({ hard: 100 })
  })

  test('never holds a share over 100 %, so that it can be made into a batch', () => {
    const raw = 100 - 1e-7
    const { blend } = found(solveBrief(SHELF_FOR_NOISE, byHand, () => outcome([raw, 0, 0], 10)))
    expect(Math.max(...Object.values(blend))).toBeLessThanOrEqual(100)
  })

  test('has no cost where an oil has no price', () => {
    expect(solved(SHELF).measures.cost).toBeUndefined()
  })
})

describe('a solver that errs is found out', () => {
  const hardness = { hardness: { min: 50 } }

  test.for([
    ['shares that add to 90 %', [50, 40, 0], 'sum.min'],
    ['shares that add to 110 %', [60, 50, 0], 'sum.max'],
    ['a negative share', [110, -10, 0], 'oils.soft.min'],
    ['too soft a blend', [0, 50, 50], 'measures.hardness.min'],
    ['no number at all', [NaN, 50, 50], 'sum.min'],
    ['a point that is too short', [], 'sum.min'],
  ] as const)('with %s', ([, point, place]) => {
    const solve = () =>
      solveBrief({ ...SHELF, measures: hardness }, byHand, () => outcome(point, 0))
    expect(solve).toThrow(UnsoundAnswer)
    expect(solve).toThrow(place)
  })

  test('with too much of an oil', () => {
    const oils = { ...SHELF.oils, hard: { max: 30 } }
    const solve = () => solveBrief({ ...SHELF, oils }, byHand, () => outcome([40, 60, 0], 0))
    expect(solve).toThrow('oils.hard.max: 40')
  })

  test('with too little of a group', () => {
    const groups = [{ name: 'g', oils: ['soft', 'foaming'], min: 30 }]
    const solve = () => solveBrief({ ...SHELF, groups }, byHand, () => outcome([80, 10, 10], 0))
    expect(solve).toThrow('groups[0].min: 20')
  })

  test('with a value that its own blend does not come to', () => {
    const solve = () => solveBrief(SHELF, byHand, () => outcome([0, 0, 100], -81))
    expect(solve).toThrow('claims a goal of 81; the blend comes to 80')
  })

  test('with a blend without bounds', () => {
    expect(() => solveBrief(SHELF, byHand, () => ({ status: 'unbounded' }))).toThrow(UnsoundAnswer)
  })
})

describe('a brief that asks its ranges of any lot', () => {
  const measures = { hardness: { min: 26 } }
  const robust: Brief = { ...example, measures, robust: true }

  test('stands at its limit in the lots that have least, and typical lots lie beyond', () => {
    const study = studyBrief(robust, library, highs)
    const answer = found(study.answer)
    expect(study.atLimit).toContain('measures.hardness.min')
    expect(answer.measures.hardness).toBeGreaterThan(27)
  })

  test('costs no less than one that asks them of typical lots', () => {
    const typical = found(solveBrief({ ...robust, robust: false }, library, highs))
    expect(found(solveBrief(robust, library, highs)).goalValue).toBeGreaterThan(typical.goalValue)
  })

  test('is solved at a point of the map, which is of typical lots', () => {
    const answer = found(solveAt(robust, { hardness: 33, lather: 36 }, library, highs))
    expect(answer.measures.hardness).toBeCloseTo(33, 5)
    expect(answer.measures.lather).toBeCloseTo(36, 5)
  })

  test('is told which change would free it where it asks too much', () => {
    const hard = { ...robust, measures: { hardness: { min: 60 } } }
    const { answer, relaxations } = studyBrief(hard, library, highs)
    expect(answer.status).toBe('infeasible')
    const changes = relaxations.map(({ limit, to }) => [limit, to] as const)
    const [hardness] = changes.filter(([limit]) => limit === 'measures.hardness.min')
    const free = (min: number) =>
      solveBrief({ ...hard, measures: { hardness: { min } } }, library, highs).status
    expect(free(hardness?.[1] ?? NaN)).toBe('optimal')
    expect(free((hardness?.[1] ?? NaN) + 0.1)).toBe('infeasible')
  })
})

describe('prices of any currency', () => {
  // Money per kg from thousandths to tens of millions; the blend must not depend on the unit.
  test.for([0.001, 1, 1_000, 100_000, 10_000_000])('times %f give the same blend', (factor) => {
    const oils = Object.fromEntries(
      Object.entries(example.oils).map(([oil, limits]) => [
        oil,
        { ...limits, pricePerKg: (limits.pricePerKg ?? NaN) * factor },
      ]),
    )
    const measures = { ...example.measures, cost: { max: 7.5 * factor } }
    const answer = found(solveBrief({ ...example, oils, measures }, library, highs))
    const first = found(solveBrief(example, library, highs))
    expect(answer.goalValue / factor).toBeCloseTo(first.goalValue, 6)
    expect(answer.blend.olive).toBeCloseTo(first.blend.olive ?? NaN, 5)
  })
})

test('of a large sum of money one part in a million is noise, and more is not', () => {
  const oils = { olive: { pricePerKg: 200_000 }, coconut: { pricePerKg: 100_000 } }
  const brief: Brief = {
    ...SHELF,
    oils,
    measures: { cost: { max: 150_000 } },
    goal: { minimise: 'cost' },
  }
  const at = (olive: number) => () => outcome([olive, 100 - olive], 1_000 * olive + 100_000)
  // By hand: a hundred-millionth of a percent more olive costs 0.00001 more, a thousandth costs 1.
  expect(solveBrief(brief, library, at(50 + 1e-8)).status).toBe('optimal')
  expect(() => solveBrief(brief, library, at(50 + 1e-3))).toThrow('measures.cost.max')
})

describe('the best blend at a point', () => {
  test('hits the point and is best at the goal there', () => {
    // By hand: hardness 40 is all foaming, half hard and half soft, or between; lather is 80 or 15.
    const brief = { ...SHELF, goal: { minimise: 'lather' } }
    const answer = found(solveAt(brief, { hardness: 40 }, byHand, highs))
    expect(answer.measures.hardness).toBeCloseTo(40, 5)
    expect(answer.goalValue).toBeCloseTo(15, 4)
    expect(answer.blend.hard).toBeCloseTo(50, 4)
  })

  test('sets aside the wishes on its own measures and keeps the others', () => {
    const measures = { hardness: { min: 55 }, lather: { max: 15 } }
    const brief: Brief = { ...SHELF, measures, goal: { minimise: 'lather' } }
    expect(solveAt(brief, { hardness: 40 }, byHand, highs).status).toBe('optimal')
    const both = solveAt({ ...brief, goal: SHELF.goal }, { hardness: 40 }, byHand, highs)
    expect(found(both).goalValue).toBeCloseTo(15, 4)
  })

  test('has no answer outside what the shelf can reach', () => {
    expect(solveAt(SHELF, { hardness: 61 }, byHand, highs).status).toBe('infeasible')
  })

  test('reaches a corner of the region as it was read off', () => {
    for (const corner of attainableRegion(new BlendSpace(SHELF, byHand), ['hardness', 'lather'])) {
      const point = { hardness: corner.x, lather: corner.y }
      expect(solveAt(SHELF, point, byHand, highs).status).toBe('optimal')
    }
  })
})

/** All of the first oil is least lather; the point given beside it is solver's noise. */
const SHELF_FOR_NOISE: Brief = { ...SHELF, goal: { minimise: 'lather' } }

function outcome(point: readonly number[], objective: number): ProgramOutcome {
  return { status: 'optimal', point, objective }
}

function solved(brief: Brief) {
  return found(solveBrief(brief, byHand, highs))
}

function found(answer: Answer) {
  if (answer.status !== 'optimal') throw new Error(`The answer is ${JSON.stringify(answer)}`)
  return answer
}

function within(expected: number, slack: number) {
  return (value: number) => Math.abs(value - expected) <= slack
}

function exampleBrief(): Brief {
  const path = new URL('../../../cases/files/brief.json', import.meta.url)
  const file = parseJson(briefFile, readFileSync(path, 'utf8'))
  if (file.status === 'invalid') throw new Error(JSON.stringify(file.problems))
  return briefOf(file.value)
}
