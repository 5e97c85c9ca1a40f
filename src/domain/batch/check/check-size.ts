import { problem, type Problem } from '../../blend/check-blend'
import { between, partPercent, positive, positiveIfGiven } from './check-numbers'
import type { Bars, Cut, Mould, MouldShape } from '../order/mould'
import { cutLengthMm } from '../order/mould'
import type { BatchOrder } from '../order/order'
import { pasteProblems } from '../order/soap-kind'

/** Most that trimming takes, percent of the bars: more is a slip of the pen. */
const MOST_TRIM_PERCENT = 50

/** Thinnest slice that holds together, mm: thinner is a slip of the pen. */
const LEAST_SLICE_MM = 1

/** Most bars or moulds of one batch: more is a slip of the pen. */
const MOST_PIECES = 100_000

/** What is wrong with how large a batch is to be, and with how it is cut. */
export function sizeProblems(order: BatchOrder): Problem[] {
  const { oilGrams, mould, bars } = order
  const given = [oilGrams, mould, bars].filter((size) => size !== undefined)
  if (given.length !== 1)
    return [
      problem(
        'oilGrams',
        'Give one size: the weight of all oils, a mould, or bars; and not more than one.',
      ),
    ]
  return [
    ...(oilGrams === undefined ? [] : positive('oilGrams', oilGrams, 'g of oils')),
    ...(mould ? mouldProblems(mould) : []),
    ...(bars ? barProblems(bars) : []),
    ...(order.cut ? cutProblems(order.cut, mould) : []),
    ...pasteProblems(order),
  ]
}

function mouldProblems(mould: Mould): Problem[] {
  const fill = mould.fillPercent
  return [
    ...shapeProblems(mould),
    ...partPercent('mould.fillPercent', fill, 'fill'),
    ...positiveIfGiven('mould.densityGPerMl', mould.densityGPerMl, 'g/ml'),
    ...countProblems('mould.count', mould.count),
  ]
}

function shapeProblems(mould: MouldShape): Problem[] {
  if ('volumeMl' in mould) return positive('mould.volumeMl', mould.volumeMl, 'ml')
  if ('waterGrams' in mould) return positive('mould.waterGrams', mould.waterGrams, 'g of water')
  if ('cavities' in mould)
    return [
      ...countProblems('mould.cavities.count', mould.cavities.count),
      ...positive('mould.cavities.volumeMl', mould.cavities.volumeMl, 'ml'),
    ]
  if ('boxMm' in mould) return lengthProblems('mould.boxMm', { ...mould.boxMm })
  if ('loafMm' in mould) return lengthProblems('mould.loafMm', { ...mould.loafMm })
  return lengthProblems('mould.cylinderMm', { ...mould.cylinderMm })
}

function lengthProblems(path: string, lengths: Readonly<Record<string, number>>): Problem[] {
  return Object.entries(lengths).flatMap(([side, mm]) => positive(`${path}.${side}`, mm, 'mm'))
}

function barProblems(bars: Bars): Problem[] {
  return [
    ...countProblems('bars.count', bars.count),
    ...positive('bars.grams', bars.grams, 'g'),
    ...between('bars.trimPercent', bars.trimPercent, {
      least: 0,
      most: MOST_TRIM_PERCENT,
      unit: '%',
    }),
  ]
}

function cutProblems(cut: Cut, mould: Mould | undefined): Problem[] {
  if ('barGrams' in cut) return positive('cut.barGrams', cut.barGrams, 'g')
  if (!(cut.thicknessMm >= LEAST_SLICE_MM && Number.isFinite(cut.thicknessMm)))
    return [
      problem(
        'cut.thicknessMm',
        `The slices are ${cut.thicknessMm} mm thick. Give ${LEAST_SLICE_MM} mm or more.`,
      ),
    ]
  const length = mould && cutLengthMm(mould)
  if (length === undefined)
    return [
      problem(
        'cut.thicknessMm',
        'Slices need a mould of stated length: a box, a loaf or a cylinder. Or give cut.barGrams.',
      ),
    ]
  if (cut.thicknessMm <= length) return []
  return [
    problem(
      'cut.thicknessMm',
      `The slices are ${cut.thicknessMm} mm thick and the mould is ${length} mm long. Give less.`,
    ),
  ]
}

function countProblems(path: string, count: number | undefined): Problem[] {
  if (count === undefined || (Number.isInteger(count) && count >= 1 && count <= MOST_PIECES))
    return []
  return [problem(path, `The count is ${count}. Give a whole number from 1 to ${MOST_PIECES}.`)]
}
