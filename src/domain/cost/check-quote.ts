import { isDay, noDay } from '../batch/order/dates'
import { type Problem, problem } from '../blend/check-blend'
import { WHOLE_PERCENT } from '../units'
import type { Aim, PricePoints } from './price-points'
import type { QuoteChoices } from './quote'

/** Bars beyond any order that a small maker could fill. */
const MOST_BARS = 100_000

/** Quantities in one quote. */
const MOST_QUANTITIES = 12

/** What is wrong with the choices of a quote; empty where one can be given. */
export function checkQuote(choices: QuoteChoices, path: string): Problem[] {
  const { quantities, aim, points, retail, taxPercent, quotedOn } = choices
  const least: readonly (readonly [keyof QuoteChoices, number])[] = [
    ['orderMinor', choices.orderMinor],
    ['leastBars', choices.leastBars],
    ['packingDays', choices.packingDays],
    ['validDays', choices.validDays],
  ]
  return [
    ...(quantities.length === 0 || quantities.length > MOST_QUANTITIES
      ? [
          problem(
            `${path}.quantities`,
            `${quantities.length} quantities; give 1 to ${MOST_QUANTITIES}.`,
          ),
        ]
      : []),
    ...quantities.flatMap((bars, at) =>
      Number.isSafeInteger(bars) && bars >= 1 && bars <= MOST_BARS
        ? []
        : [
            problem(
              `${path}.quantities[${at}]`,
              `${bars} bars; give a whole number from 1 to ${MOST_BARS}.`,
            ),
          ],
    ),
    ...checkAim(aim, `${path}.aim`),
    ...checkPoints(points, `${path}.points`),
    ...(retail
      ? [
          ...checkAim(retail.aim, `${path}.retail.aim`),
          ...checkPoints(retail.points, `${path}.retail.points`),
        ]
      : []),
    ...(taxPercent >= 0 && taxPercent <= WHOLE_PERCENT
      ? []
      : [problem(`${path}.taxPercent`, `The tax is ${taxPercent} %; give 0 to 100 %.`)]),
    ...least.flatMap(([key, value]) =>
      value >= 0 && Number.isFinite(value)
        ? []
        : [problem(`${path}.${key}`, `${value} stands here; give 0 or more.`)],
    ),
    ...(choices.batchesPerWeek > 0
      ? []
      : [
          problem(
            `${path}.batchesPerWeek`,
            `${choices.batchesPerWeek} batches a week; give how many you make.`,
          ),
        ]),
    ...(isDay(quotedOn) ? [] : [problem(`${path}.quotedOn`, noDay(quotedOn))]),
  ]
}

/** A margin of 100 % would be an endless price. */
function checkAim(aim: Aim, path: string): Problem[] {
  if ('markup' in aim)
    return aim.markup >= 0 && Number.isFinite(aim.markup)
      ? []
      : [problem(`${path}.markup`, `A markup of ${aim.markup} %; give 0 % or more.`)]
  return aim.margin >= 0 && aim.margin < WHOLE_PERCENT
    ? []
    : [
        problem(
          `${path}.margin`,
          `A margin of ${aim.margin} % of the price; it runs from 0 to under 100 %. A markup may be more.`,
        ),
      ]
}

function checkPoints({ stepMinor, lessMinor = 0 }: PricePoints, path: string): Problem[] {
  if (!Number.isSafeInteger(stepMinor) || stepMinor < 1)
    return [
      problem(
        `${path}.stepMinor`,
        `A step of ${stepMinor}; give a whole number of minor units from 1.`,
      ),
    ]
  return Number.isSafeInteger(lessMinor) && lessMinor >= 0 && lessMinor < stepMinor
    ? []
    : [
        problem(
          `${path}.lessMinor`,
          `${lessMinor} less; give a whole number from 0 to under the step of ${stepMinor}.`,
        ),
      ]
}
