import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type PlannedFile, planOf } from '../../src/cli/batch-plan'
import { batchFacts } from '../../src/data/batch-facts'
import { batchFile } from '../../src/data/batch-file'
import { library } from '../../src/data/library'
import { withOwnOils } from '../../src/data/own-oil-file'
import { actualReport } from '../../src/domain/batch/actual/actuals'
import { parseValue } from '../../src/data/problems'

const FOLDER = new URL('../cases/files/', import.meta.url)
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8'))

/** A file in which every number stands that a batch file can hold. */
const FULL = {
  format: 'barwright-batch/1',
  blend: { olive: 60, coconut: 25, shea: 15 },
  oilGrams: 1000,
  alkali: { naoh: 60, koh: 40 },
  purity: { naoh: 98, koh: 90 },
  purityIs: { naoh: { certificate: 'NA-2207', within: 0.3 } },
  purityUpTo: { naoh: 99.5, koh: 92 },
  superfat: 8,
  extraFat: { percent: 2, of: 'allFat', oils: { castor: 100 }, when: 'afterCook' },
  lots: { olive: { saponificationValue: 190, tolerance: 1, name: 'OL-1', certificate: 'C 7' } },
  water: { ratio: 2.4 },
  acids: [
    {
      acid: 'lactic',
      percentOfOils: 1,
      strengthPercent: 80,
      strengthFromPercent: 78,
      alkali: 'add',
    },
  ],
  liquids: [
    { liquid: 'oat-drink', grams: 100, waterPercent: 91, fatPercent: 1.2, when: 'lye' },
    { liquid: 'oat-drink', replacesPercent: 10, when: 'lye' },
  ],
  additives: [
    { additive: 'kaolin', grams: 10 },
    { additive: 'kaolin', percentOfOils: 1 },
  ],
  fragrance: {
    percentOfOils: 2,
    blend: { lavender: 50, rosemary: 50 },
    certificates: {
      lavender: {
        allergens: [{ allergen: 'linalool', lowPercent: 20, highPercent: 40 }],
        ifraMostPercent: 20,
        flashC: 70,
      },
    },
  },
  process: 'hot',
  cook: { extraWaterPercentOfOils: 5 },
  lye: { startC: 20, iceGrams: 50 },
  cure: { days: 30, finalMoisturePercent: 12 },
  scale: { oilStepG: 1, lyeStepG: 0.1, oilErrorG: 1, lyeErrorG: 0.1 },
  pricesPerKg: { olive: 7.4 },
  papers: { product: 'Bar', madeOn: '2026-11-01', number: 3 },
  actual: { 'oil:olive': 600 },
  confirmedLean: 'Titrated the olive oil, lot 7: 190 mg KOH/g',
  release: {
    tests: [
      {
        way: 'titration',
        on: '2026-11-20',
        who: 'A. Maker',
        bar: 'third from the left',
        acidMl: 1,
        blankMl: 0.1,
        normality: 0.1,
        sampleG: 10,
      },
    ],
  },
}

const FILES: readonly (readonly [name: string, file: unknown])[] = [
  ['a file with everything', FULL],
  ...readdirSync(FOLDER)
    .filter((name) => /^batch.*\.json$/u.test(name))
    .map((name) => [name, read(name)] as const),
]

type Path = readonly (string | number)[]

function numbersIn(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  )
}

function withAt(value: unknown, path: Path, put: unknown): unknown {
  const copy: unknown = structuredClone(value)
  const holder = path
    .slice(0, -1)
    .reduce<unknown>((place, key) => Reflect.get(Object(place), key), copy)
  Reflect.set(Object(holder), path.at(-1) ?? '', put)
  return copy
}

/** Degrees may lie under 0, and nothing else may. */
const MAY_BE_NEGATIVE = /startC|flashC/u

/** A problem says what is wrong, and in a sentence of its own what to do. */
const SAYS_WHAT_TO_DO = /[.?:] [A-Z].{3,}\.$/u

/** What the command line finds wrong with what was weighed. */
function weighedProblems({ plan, actual }: Extract<PlannedFile, { status: 'ready' }>) {
  const answer = actual && actualReport(plan, actual, library, batchFacts)
  return answer?.status === 'invalid' ? answer.problems : []
}

function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersOf)
}

function plannedOf(value: unknown): PlannedFile {
  const file = parseValue(batchFile, value)
  if (file.status === 'invalid') return file
  const known = withOwnOils(library, file.value.ownOils ?? [])
  return known.status === 'invalid' ? known : planOf(file.value, known.value)
}

describe.each(FILES)('every number of %s', (_, file) => {
  const places = numbersIn(file)

  test('stands in a file that is otherwise sound', () => {
    const planned = plannedOf(file)
    expect(planned.status === 'invalid' ? planned.problems : []).toEqual([])
    expect(places.length).toBeGreaterThan(5)
  })

  test.each([1e300, -1e300, 1e15, 1e-300, NaN, null, '1e300 g'])(
    'is refused as %s, with its place, the value and what to give',
    (put) => {
      for (const path of places) {
        const parsed = parseValue(batchFile, withAt(file, path, put))
        const at = path.join('.')
        if (parsed.status === 'parsed') throw new Error(`${at} may be ${String(put)}`)
        const told = parsed.problems.map((one) => `${one.path}: ${one.message}`).join(' ')
        expect(told, at).toMatch(/stands here\. .*Give/u)
        expect(told, at).toContain(String(path[0]))
        if (typeof put === 'number' && Math.abs(put) >= 1e15)
          expect(told, at).toMatch(/\d (at most|or more)/u)
      }
    },
  )

  test('as 0 or −1 is refused by name with what to give, or makes a plan of finite figures', () => {
    for (const path of places)
      for (const put of [0, -1]) {
        const at = path.join('.')
        const planned = plannedOf(withAt(file, path, put))
        const problems = planned.status === 'invalid' ? planned.problems : weighedProblems(planned)
        for (const { message } of problems) expect(message, at).toMatch(SAYS_WHAT_TO_DO)
        if (planned.status === 'invalid' || problems.length > 0) continue
        if (put < 0) expect(at).toMatch(MAY_BE_NEGATIVE)
        for (const figure of numbersOf(planned.plan)) expect(figure, at).toSatisfy(Number.isFinite)
      }
  })
})
