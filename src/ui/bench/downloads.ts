import { massFigure } from '../../domain/batch/result/shown-mass'
import { oilsInOrder } from '../../charts/bench-oil'
import { library } from '../../state/library'
import { sum } from '../../domain/batch/weigh/weights'
import { COST } from '../../domain/blend/measure'
import { GRAMS_PER_KG } from '../../domain/units'
import { type Column, costPerBar } from '../../state/bench-facts'
import type { Bench } from '../../state/bench.svelte'
import { type Cell, fileNumber } from '../kit/csv'
import type { PictureSheet } from '../kit/picture-sheet'
import { BENCH_MEASURES, benchTitle, columnInWords, flagInWords } from './words'

/** The Bench as a table for a file: a row for each thing compared, a column for each candidate. */
export function benchRows(bench: Bench, currency: string): Cell[][] {
  const { columns } = bench
  const row = (name: string, unit: string, cell: (column: Column) => Cell): Cell[] => [
    name,
    unit,
    ...columns.map(cell).map((one) => (typeof one === 'number' ? fileNumber(one) : one)),
  ]
  const blends = columns.map(({ candidate }) => candidate.blend)
  return [
    row('Letter', '', ({ candidate }) => candidate.letter),
    row('Name', '', ({ candidate }) => candidate.name),
    row('Role', '', ({ isReference }) => (isReference ? 'reference' : '')),
    ...BENCH_MEASURES.flatMap(({ id, name, unit }) => [
      row(
        name,
        unit === 'points' ? 'points' : `${currency} per kg oils`,
        ({ values }) => values[id],
      ),
      row(`${name}, beside the reference`, '', ({ differences }) => differences.get(id)?.by),
      row(`${name}, can it be told`, '', ({ differences }) => differences.get(id)?.standing),
    ]),
    row('Cost of a bar', `${currency} for ${bench.barGrams} g as poured`, (column) =>
      costPerBar(column, bench.barGrams),
    ),
    ...oilsInOrder(blends, library.oils).map(({ id, name }) =>
      row(name, '% of oil weight', ({ candidate }) => candidate.blend[id] ?? 0),
    ),
    row('Superfat, likely least (19 lots in 20)', '%', ({ plan }) =>
      plan.status === 'ready' ? plan.superfat.likely.percent.min : undefined,
    ),
    row('Superfat, likely most (19 lots in 20)', '%', ({ plan }) =>
      plan.status === 'ready' ? plan.superfat.likely.percent.max : undefined,
    ),
    row('Superfat, worst there can be', '%', ({ plan }) =>
      plan.status === 'ready' ? plan.superfat.reachPercent.min : undefined,
    ),
    row('Hydroxide as weighed', 'g per kg oils', ({ plan }) =>
      plan.status === 'ready'
        ? massFigure((GRAMS_PER_KG * sum(plan.alkaliGrams)) / sum(plan.oilGrams), 'g', null, 'down')
            .value
        : undefined,
    ),
    row('Look out for', '', ({ flags }) => flags.map(flagInWords).join('; ')),
    row('In words', '', (column) => {
      const { lead, rest } = columnInWords(column, currency)
      return column.isReference ? '' : `${lead} ${rest}`
    }),
    row('From', '', ({ candidate }) => candidate.from),
    row('Note', '', ({ candidate }) => candidate.note),
  ]
}

const MARGIN_PX = 24
const NAME_PX = 120
const ROW_PX = 52
const LINE_PX = 20

/** The axes on screen as one picture, with what the letters stand for. */
export function axesSheet(bench: Bench): PictureSheet | undefined {
  const axes = [...document.querySelectorAll<SVGSVGElement>('svg.bench-axis')]
  const [first] = axes
  if (!first) return undefined
  const top = MARGIN_PX + 2 * LINE_PX
  const below = top + axes.length * ROW_PX
  const names = bench.columns.map(({ candidate, isReference }) =>
    isReference
      ? `${candidate.letter}  ${candidate.name}, the reference`
      : `${candidate.letter}  ${candidate.name}`,
  )
  return {
    width: 2 * MARGIN_PX + NAME_PX + first.getBoundingClientRect().width,
    height: below + (names.length + 1) * LINE_PX + MARGIN_PX,
    parts: axes.map((drawing, at) => ({ drawing, x: MARGIN_PX + NAME_PX, y: top + at * ROW_PX })),
    captions: [
      {
        text: benchTitle(bench.columns.length - 1, bench.columns[0]?.candidate.name ?? ''),
        x: MARGIN_PX,
        y: MARGIN_PX + 14,
        size: 15,
        strong: true,
      },
      ...axes.map((svg, at) => ({
        text: axisName(svg),
        x: MARGIN_PX,
        y: top + at * ROW_PX + 30,
        strong: true,
      })),
      ...names.map((text, at) => ({ text, x: MARGIN_PX, y: below + (at + 1) * LINE_PX })),
    ],
  }
}

function axisName(svg: SVGSVGElement): string {
  const measure = BENCH_MEASURES.find(({ id }) => id === svg.dataset['measure'])
  return measure?.id === COST ? 'Cost per kg' : (measure?.name ?? '')
}
