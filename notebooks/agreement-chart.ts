import { create, scaleLinear, scalePoint, type Selection } from 'd3'
import type { Agreement, Reading } from './oil-agreement'

const ROW_PX = 17
const TOP_PX = 46
const BOTTOM_PX = 8
const NAME_PX = 124
const GAP_PX = 8
const DOT_PX = 4.5
/** Below this width titles and ends are named in short. */
const NARROW_PX = 560
/** Positions shown, in widths of the stated range: room for a miss and its figure at the low side. */
const SHOWN = { wide: [-0.2, 1.05], narrow: [-0.45, 1.08] } as const

const PANELS = [
  {
    title: 'Saponification value',
    short: 'Saponification',
    reading: (row: Agreement) => row.saponification,
  },
  { title: 'Iodine value', short: 'Iodine', reading: (row: Agreement) => row.iodine },
] as const

/** Where the calculated values fall in the stated ranges: a row an oil, a panel a constant. */
export function agreementChart(rows: readonly Agreement[], width: number): SVGSVGElement {
  const height = TOP_PX + rows.length * ROW_PX + BOTTOM_PX
  const y = scalePoint(
    rows.map(({ id }) => id),
    [TOP_PX + ROW_PX / 2, height - BOTTOM_PX - ROW_PX / 2],
  )
  const svg = create('svg')
    .attr('class', 'agreement')
    .attr('width', width)
    .attr('height', height)
    .attr('role', 'img')
    .attr('aria-label', summaryOf(rows))
  svg
    .selectAll('text.oil')
    .data(rows)
    .join('text')
    .attr('class', (row) => `oil ${row.basis === 'published' ? 'read' : ''}`)
    .attr('x', NAME_PX - 10)
    .attr('y', (row) => y(row.id) ?? 0)
    .text((row) => row.name)
  const narrow = width < NARROW_PX
  const panelPx = (width - NAME_PX - GAP_PX) / 2
  PANELS.forEach((panel, index) => {
    const left = NAME_PX + index * (panelPx + GAP_PX)
    const x = scaleLinear(narrow ? SHOWN.narrow : SHOWN.wide, [left, left + panelPx])
    drawFrame(svg, narrow ? panel.short : panel.title, narrow ? ENDS_SHORT : ENDS, x, height)
    drawRows(svg, rows, panel.reading, x, y)
  })
  return svg.node() as SVGSVGElement
}

type Svg = Selection<SVGSVGElement, undefined, null, undefined>
type Across = ReturnType<typeof scaleLinear<number, number>>
type Down = ReturnType<typeof scalePoint<string>>

const ENDS = ['lowest stated', 'highest stated'] as const
const ENDS_SHORT = ['low', 'high'] as const

function drawFrame(
  svg: Svg,
  title: string,
  ends: readonly [string, string],
  x: Across,
  height: number,
): void {
  const band = svg.append('g')
  band
    .append('rect')
    .attr('class', 'band')
    .attr('x', x(0))
    .attr('y', TOP_PX)
    .attr('width', x(1) - x(0))
    .attr('height', height - TOP_PX - BOTTOM_PX)
  band.append('text').attr('class', 'title').attr('x', x(0)).attr('y', 16).text(title)
  ends.forEach((label, at) => {
    band
      .append('text')
      .attr('class', 'end')
      .attr('x', x(at))
      .attr('y', TOP_PX - 8)
      .attr('text-anchor', at === 0 ? 'start' : 'end')
      .text(label)
  })
}

function drawRows(
  svg: Svg,
  rows: readonly Agreement[],
  reading: (row: Agreement) => Reading,
  x: Across,
  y: Down,
): void {
  const groups = svg
    .append('g')
    .selectAll('g')
    .data(rows)
    .join('g')
    .attr('class', (row) => (row.basis === 'published' ? 'read' : 'recalled'))
    .attr('transform', (row) => `translate(0,${y(row.id) ?? 0})`)
  groups.append('line').attr('class', 'row').attr('x1', x(0)).attr('x2', x(1))
  groups
    .append('circle')
    .attr('class', 'value')
    .attr('cx', (row) => x(reading(row).position))
    .attr('r', DOT_PX)
    .append('title')
    .text((row) => sentenceOf(row, reading(row)))
  groups
    .filter((row) => !reading(row).inside)
    .append('text')
    .attr('class', 'miss')
    .attr('x', (row) => x(reading(row).position) - DOT_PX - 4)
    .text((row) => `${reading(row).calculated.toFixed(1)}`)
}

function sentenceOf({ name }: Agreement, { calculated, low, high }: Reading): string {
  return `${name}: ${calculated.toFixed(1)} calculated, ${low} to ${high} stated`
}

function summaryOf(rows: readonly Agreement[]): string {
  const inside = (reading: (row: Agreement) => Reading) =>
    rows.filter((row) => reading(row).inside).length
  const [saponification, iodine] = PANELS.map(({ reading }) => inside(reading))
  return (
    `Calculated saponification value inside the stated range for ${saponification} of ` +
    `${rows.length} oils, iodine value for ${iodine}. The table below gives every value.`
  )
}
