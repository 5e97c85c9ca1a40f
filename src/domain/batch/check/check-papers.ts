import { problem, type Problem } from '../../blend/check-blend'
import { isClearCode } from '../order/batch-code'
import { between, notNegative } from './check-numbers'
import { isReason } from './check-words'
import { isDay, noDay } from '../order/dates'
import type { BatchOrder } from '../order/order'

/** Most days of cure (three years), batches a day, and moisture of a dry bar that is still a bar. */
const CURE_DAYS = { least: 0, most: 1096, unit: 'days' }
const NUMBERS = { least: 1, most: 99, unit: '' }
const MOISTURE = { least: 0, most: 30, unit: '% water' }

/** What is wrong with what is written on papers, with prices, and with how the bars cure. */
export function paperProblems({
  papers,
  cure,
  pricesPerKg = {},
  confirmedLean,
}: BatchOrder): Problem[] {
  const { madeOn, productCode, number } = papers ?? {}
  return [
    ...(madeOn === undefined || isDay(madeOn) ? [] : [problem('papers.madeOn', noDay(madeOn))]),
    ...(productCode === undefined || isClearCode(productCode)
      ? []
      : [
          problem(
            'papers.productCode',
            `"${productCode}" can be misread. Use capital letters but I and O, and figures.`,
          ),
        ]),
    ...between('papers.number', number, NUMBERS),
    ...between('cure.days', cure?.days, CURE_DAYS),
    ...between('cure.finalMoisturePercent', cure?.finalMoisturePercent, MOISTURE),
    ...Object.entries(pricesPerKg).flatMap(([id, price]) =>
      notNegative(`pricesPerKg.${id}`, price, 'a kg'),
    ),
    ...(confirmedLean === undefined || isReason(confirmedLean)
      ? []
      : [
          problem(
            'confirmedLean',
            `"${confirmedLean}" is no reason. Say in words why these lots are safe, such as "titrated olive lot 7: 190 mg KOH/g", or take the confirmation out.`,
          ),
        ]),
  ]
}
