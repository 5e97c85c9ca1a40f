import { massFigure } from '../../../domain/batch/result/shown-mass'
import { library } from '../../../state/library'
import { costOn, type PriceWalk } from '../../../domain/optimise/reprice/price-walk'
import type { Replacement } from '../../../domain/replace/gone'
import { oilsInOrder } from '../../../charts/bench-oil'
import { type Cell, fileNumber } from '../../kit/csv'
import { labelWords, oilWord } from './words'

/** The cheapest formulas by the price of an oil as a table for a file: a row for each span of prices. */
export function walkRows(walk: PriceWalk, oil: string, currency: string): Cell[][] {
  const oils = oilsInOrder(
    walk.pieces.map(({ blend }) => blend),
    library.oils,
  )
  const perKg = `${currency} per kg`
  return [
    [
      `${oil} from, ${perKg}`,
      `${oil} to, ${perKg}`,
      ...oils.map(({ name }) => `${name}, % of oil weight`),
      `Costs at the first, ${perKg}`,
      `Costs at the last, ${perKg}`,
      `Holding at the first, ${perKg}`,
      `Holding at the last, ${perKg}`,
    ],
    ...walk.pieces.map(({ from, to, blend, costAtFrom, costAtTo }) => [
      fileNumber(from),
      fileNumber(to),
      ...oils.map(({ id }) => fileNumber(blend[id] ?? 0)),
      fileNumber(costAtFrom),
      fileNumber(costAtTo),
      fileNumber(costOn(walk.held, from)),
      fileNumber(costOn(walk.held, to)),
    ]),
  ]
}

/** What can take the place of an oil as a table for a file: a row for each replacement. */
export function goneRows(replacements: readonly Replacement[], currency: string): Cell[][] {
  const oils = oilsInOrder(
    replacements.map(({ blend }) => blend),
    library.oils,
  )
  const measureName = (id: string) => library.measures.find((one) => one.id === id)?.name ?? id
  return [
    [
      'Instead',
      ...oils.map(({ name }) => `${name}, % of oil weight`),
      'Beyond its tolerance',
      `Change a bar, ${currency}`,
      `Change a year, ${currency}`,
      'Hydroxide before, g',
      'Hydroxide after, g',
      'On the label',
    ],
    ...replacements.map(({ oils: instead, blend, misses, costChange, batch }) => {
      const ready = batch.status === 'ready' ? batch : undefined
      const grams = (of: 'beforeG' | 'afterG') =>
        ready?.alkali
          .map((one) => `${one.kind} ${massFigure(one[of], 'g', null, 'down').value}`)
          .join(', ')
      return [
        instead.map(oilWord).join(' and '),
        ...oils.map(({ id }) => fileNumber(blend[id] ?? 0)),
        misses
          .map(({ measure, by }) => `${measureName(measure)} ${fileNumber(by) ?? ''}`)
          .join(', '),
        fileNumber(costChange?.perBar),
        fileNumber(costChange?.perYear),
        grams('beforeG'),
        grams('afterG'),
        ready && labelWords(ready.label),
      ]
    }),
  ]
}
