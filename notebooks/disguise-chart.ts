import { create, scaleBand } from 'd3'
import type { Disguise } from './oil-agreement'

const NAME_PX = 128
const HEAD_PX = 96
/** A cell never grows beyond this, so that names stay near their column. */
const LARGEST_CELL_PX = 30

/** Which published oil's profile would pass for which oil: a row a range, a column a profile. */
export function disguiseChart(all: readonly Disguise[], width: number): SVGSVGElement {
  const names = [...new Set(all.map(({ range }) => range.name))]
  const sidePx = Math.min(width - NAME_PX - 8, names.length * LARGEST_CELL_PX)
  const x = scaleBand(names, [NAME_PX, NAME_PX + sidePx]).padding(0.12)
  const y = scaleBand(names, [HEAD_PX, HEAD_PX + sidePx]).padding(0.12)
  const svg = create('svg')
    .attr('class', 'disguises')
    .attr('width', width)
    .attr('height', HEAD_PX + sidePx)
    .attr('role', 'img')
    .attr('aria-label', summaryOf(all))
  svg
    .selectAll('text.range')
    .data(names)
    .join('text')
    .attr('class', 'range')
    .attr('x', NAME_PX - 8)
    .attr('y', (name) => (y(name) ?? 0) + y.bandwidth() / 2)
    .text((name) => name)
  svg
    .selectAll('text.profile')
    .data(names)
    .join('text')
    .attr('class', 'profile')
    .attr('transform', (name) => {
      const middle = (x(name) ?? 0) + x.bandwidth() / 2
      return `translate(${middle},${HEAD_PX - 6}) rotate(-60)`
    })
    .text((name) => name)
  svg
    .selectAll('rect')
    .data(all)
    .join('rect')
    .attr('class', classOf)
    .attr('x', ({ profile }) => x(profile.name) ?? 0)
    .attr('y', ({ range }) => y(range.name) ?? 0)
    .attr('width', x.bandwidth())
    .attr('height', y.bandwidth())
    .append('title')
    .text(sentenceOf)
  return svg.node() as SVGSVGElement
}

function classOf({ saponification, iodine, profile, range }: Disguise): string {
  const passed = saponification && iodine ? 'both' : saponification ? 'alkali' : 'none'
  return profile === range ? `${passed} own` : passed
}

function sentenceOf({ saponification, iodine, profile, range }: Disguise): string {
  const word = (passes: boolean) => (passes ? 'in' : 'out of')
  return (
    `The profile of ${profile.name} is ${word(saponification)} the saponification range of ` +
    `${range.name} and ${word(iodine)} its iodine range`
  )
}

function summaryOf(all: readonly Disguise[]): string {
  const wrong = all.filter(({ profile, range }) => profile !== range)
  const both = wrong.filter(({ saponification, iodine }) => saponification && iodine)
  return `${both.length} of ${wrong.length} wrong profiles pass both tests.`
}
