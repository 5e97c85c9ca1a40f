import fc from 'fast-check'
import { unit as massOf } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { sheetHtml } from '../../src/cli/sheet-html'
import { batchFacts } from '../../src/data/batch-facts'
import { labelFacts } from '../../src/data/label-facts'
import { library } from '../../src/data/library'
import { actualReport } from '../../src/domain/batch/actual/actuals'
import type { BatchOrder } from '../../src/domain/batch/order/order'
import { UNTESTED } from '../../src/domain/batch/release/release'
import { planBatch, type ReadyPlan } from '../../src/domain/batch/result/plan'
import { sheetOf } from '../../src/domain/batch/sheet/sheet'
import { sheetText } from '../../src/domain/batch/sheet/sheet-text'
import { judgeLine } from '../../src/domain/batch/workshop/judge'
import type { MassUnit } from '../../src/domain/units'
import { labelOf } from '../../src/domain/label/label'
import { labelText } from '../../src/domain/label/label-text'
import { lineFigureText, lineText } from '../../src/ui/batch/words/shown'
import { verdictHead } from '../../src/ui/batch/workshop/verdict-words'
import { soundOrder } from '../domain/batch/random-orders'

const UNITS: readonly MassUnit[] = ['g', 'kg', 'oz', 'lb']
const NAMES = { naoh: 'Sodium hydroxide', koh: 'Potassium hydroxide' } as const
const SEED = 20_312
const RUNS = 120
/** Figures read back from a text through a unit differ by floating point, as a part. */
const NOISE = 1e-9

/** Orders with and without scales: without one, weights have every decimal there is. */
const orders = fc
  .tuple(soundOrder, fc.boolean())
  .map(([order, exact]): BatchOrder => (exact ? { ...order, scale: undefined } : order))

/** What a text says a weight is, g; the thin space and the true minus are the page's. */
function gramsIn(text: string): number {
  return massOf(text.replaceAll(/\s/gu, ' ').replaceAll(/(?<=\d) (?=\d)/gu, '')).toNumber('g')
}

function overPlans(check: (plan: ReadyPlan) => void): void {
  let seen = 0
  const one = (order: BatchOrder) => {
    const plan = planBatch(order, library, batchFacts)
    if (plan.status === 'invalid') return
    seen++
    check(plan)
  }
  fc.assert(fc.property(orders, one), { seed: SEED, numRuns: RUNS })
  expect(seen).toBeGreaterThan(RUNS / 2)
}

/** Every line of a text that names the hydroxide and gives a weight. */
function weightsNamed(text: string, name: string, unit: MassUnit): number[] {
  return text
    .split(/\n|<\/tr>/u)
    .filter((line) => line.toLowerCase().includes(name.toLowerCase()))
    .flatMap((line) => [...line.matchAll(new RegExp(`([\\d.]+) ${unit}\\b`, 'gu'))])
    .map(([, figure]) => massOf(Number(figure), unit).toNumber('g'))
}

describe('no text shows more hydroxide than is weighed', () => {
  test('on the sheet as text and as a page, and on the label', () => {
    let weights = 0
    overPlans((plan) => {
      const answer = sheetOf(plan, ['Lye burns.'])
      if (answer.status === 'refused') return
      const label = labelOf(plan, library, labelFacts, UNTESTED)
      const labelled = label.status === 'ready' ? labelText(label.label) : ''
      for (const kind of ['naoh', 'koh'] as const) {
        const most = (plan.alkaliGrams[kind] ?? 0) * (1 + NOISE)
        for (const unit of UNITS)
          for (const text of [sheetText(answer.sheet, unit), sheetHtml(answer.sheet, unit)]) {
            const shown = weightsNamed(`${text}\n${labelled}`, NAMES[kind], unit)
            weights += shown.length
            for (const grams of shown) expect(grams, `${kind} in ${unit}`).toBeLessThanOrEqual(most)
          }
      }
    })
    expect(weights).toBeGreaterThan(RUNS)
  })

  test('on the page, in every unit', () => {
    overPlans(({ ingredients }) => {
      for (const line of ingredients)
        for (const unit of UNITS) {
          const texts = [lineText(line, unit), `${lineFigureText(line, unit)} ${unit}`]
          for (const grams of texts.map(gramsIn)) {
            if (line.kind === 'alkali')
              expect(grams).toBeLessThanOrEqual(line.grams * (1 + NOISE) + onMark(line.stepG))
            if (['oil', 'extraFat', 'water', 'acid'].includes(line.kind))
              expect(grams).toBeGreaterThanOrEqual(line.grams * (1 - NOISE) - onMark(line.stepG))
          }
        }
    })
  })

  test('nor less water or more lye in what mends a batch, nor less to take out again', () => {
    let told = 0
    overPlans((plan) => {
      const lye = plan.ingredients.find(({ kind }) => kind === 'alkali')
      if (!lye) return
      for (const part of [0.31, 0.8437]) {
        const actual = { [lye.key]: lye.grams * part }
        const answer = actualReport(plan, actual, library, batchFacts)
        if (answer.status === 'invalid' || !answer.report.topUp) continue
        const { topUp, advice } = answer.report
        for (const kind of ['naoh', 'koh'] as const)
          for (const [, figure] of advice
            .join(' ')
            .matchAll(new RegExp(`([\\d.]+) g ${NAMES[kind].toLowerCase()}`, 'gu'))) {
            told++
            expect(Number(figure)).toBeLessThanOrEqual((topUp.alkaliGrams[kind] ?? 0) + NOISE)
          }
        const [, water] = /in ([\d.]+) g cold water/u.exec(advice.join(' ')) ?? []
        if (water !== undefined)
          expect(Number(water)).toBeGreaterThanOrEqual(topUp.waterGrams - NOISE)
      }
      const actual = { [lye.key]: lye.grams * 1.31237 }
      const known = { library, facts: batchFacts }
      const verdict = judgeLine(plan, { actual, left: {} }, lye.key, AT_JUG, known)
      if (verdict.state !== 'over') return
      const head = verdictHead({ line: { ...lye, id: lye.id }, verdict, unit: 'g', lye: 'jug' })
      const over = gramsIn(head.replace(' too much.', ''))
      expect(over).toBeGreaterThanOrEqual(verdict.offG * (1 - NOISE) - onMark(lye.stepG))
      told++
    })
    expect(told).toBeGreaterThan(RUNS / 4)
  })
})

const AT_JUG = { skipped: false, lye: 'jug' } as const

/** A weight this small a part of a step from a mark is on it, g. */
function onMark(stepG: number | null): number {
  return (stepG ?? 0) * 1e-3
}
