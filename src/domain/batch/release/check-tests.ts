import { problem, type Problem } from '../../blend/check-blend'
import { between, positive } from '../check/check-numbers'
import { processOf } from '../react/cure'
import { daysAfter, isDay, noDay } from '../order/dates'
import type { BatchOrder, Process } from '../order/order'
import type { AlkaliLimits, AlkaliTest, ReleaseRecord, Titration } from './alkali-test'
import { isPin } from './pin'

/**
 * Days from making until bars are cut and the cure begins, at the earliest: common practice. Raw soap in
 * the mould is still lye for a day; a cook leaves soap.
 */
export const CURE_BEGINS_AFTER_DAYS: Readonly<Record<Process, number>> = { cold: 1, hot: 0 }

/** All that is wrong with tests as they were entered; `today` is YYYY-MM-DD. */
export function testProblems(
  { tests }: ReleaseRecord,
  order: BatchOrder,
  limits: AlkaliLimits,
  today: string,
): Problem[] {
  return tests.flatMap((test, index) => {
    const path = `release.tests[${index}]`
    return [
      ...dayProblems(test.on, order, today, path),
      ...wordProblems(test, path),
      ...(test.way === 'titration' ? titrationProblems(test, limits, path) : []),
    ]
  })
}

function dayProblems(on: string, order: BatchOrder, today: string, path: string): Problem[] {
  const at = `${path}.on`
  if (!isDay(on)) return [problem(at, noDay(on))]
  const madeOn = order.papers?.madeOn
  if (madeOn === undefined || !isDay(madeOn))
    return [
      problem(
        'papers.madeOn',
        'A test is counted from the day of making, which is not said. Say it first.',
      ),
    ]
  const begins = daysAfter(madeOn, CURE_BEGINS_AFTER_DAYS[processOf(order)])
  if (on < begins)
    return [
      problem(
        at,
        `The test is of ${on}; made on ${madeOn}, the bars can’t be tested before ${begins}, when the cure begins. Test a bar then, or correct the day.`,
      ),
    ]
  if (on > today)
    return [problem(at, `The test is of ${on}, and today is ${today}. Enter it when it is made.`)]
  return []
}

function wordProblems({ who, bar, batch }: AlkaliTest, path: string): Problem[] {
  return [
    ...(who.trim() === '' ? [problem(`${path}.who`, 'Say who made the test.')] : []),
    ...(bar.trim() === ''
      ? [problem(`${path}.bar`, 'Say which bar was tested, by its mark or place on the rack.')]
      : []),
    ...(batch === undefined || isPin(batch)
      ? []
      : [
          problem(
            `${path}.batch`,
            `"${batch}" pins the test to no batch. Take it from release.pin of the command batch.`,
          ),
        ]),
  ]
}

function titrationProblems(test: Titration, limits: AlkaliLimits, path: string): Problem[] {
  const { buretteMl, normality, mostSampleG } = limits
  const burette = { least: 0, most: buretteMl, unit: 'ml' }
  const volumes = [
    ...between(`${path}.acidMl`, test.acidMl, burette),
    ...between(`${path}.blankMl`, test.blankMl, burette),
  ]
  return [
    ...volumes.map((one) => ({
      ...one,
      message: `${one.message} The burette holds ${buretteMl} ml: read it again, or take less soap.`,
    })),
    ...(volumes.length === 0 ? blankProblems(test, limits, path) : []),
    ...between(`${path}.normality`, test.normality, { ...normality, unit: 'N' }).map((one) => ({
      ...one,
      message: `${one.message} 0.1 N is usual; read the bottle again.`,
    })),
    ...sampleProblems(test.sampleG, mostSampleG, `${path}.sampleG`),
  ]
}

function blankProblems(test: Titration, { readingMl }: AlkaliLimits, path: string): Problem[] {
  const { acidMl, blankMl = 0 } = test
  if (blankMl <= acidMl + readingMl) return []
  const message = `The blank took ${blankMl} ml and the soap ${acidMl} ml; the blank may be at most ${readingMl} ml over. Neutralise the alcohol and titrate both again.`
  return [problem(`${path}.blankMl`, message)]
}

function sampleProblems(sampleG: number, mostG: number, path: string): Problem[] {
  const none = positive(path, sampleG, 'g')
  if (none.length > 0 || sampleG <= mostG) return none
  const message = `The sample is ${sampleG} g; at most ${mostG} g dissolves as one. Give its weight in g, usually 5.`
  return [problem(path, message)]
}
