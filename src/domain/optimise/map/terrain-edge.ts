import type { GoOn } from '../search/allowance'
import type { Height, Heights, Cell } from './heights'
import { amongOilsOf } from '../search/question'
import { searchFor } from '../search/search'

/** Where the region ends on a line of the grid, between two neighbouring points of which one has a blend. */
export interface RegionEnd {
  /** The axis along which the line runs. */
  readonly along: 'x' | 'y'
  /** Numbers of the first of the two points; the other is the next one along the axis. */
  readonly row: number
  readonly column: number
  /** Value on that axis up to which, from the point with a blend, there is one everywhere. */
  readonly at: number
  /** Whether that is proved, to EDGE_PART of the grid's step. */
  readonly isExact: boolean
}

/** A grid of heights: [row of y][column of x]. */
export interface HeightGrid {
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly rows: readonly (readonly Height[])[]
}

/** Ends are told apart to this part of the grid's step: on a grid of 60 some millionths of the region's width. */
const EDGE_PART = 1e-4

/** A piece that begins so many of those parts further on goes on without a break. */
const SAME_PLACE = 2

/** Sets of oils that may take over from one another within one step of the grid. */
const MOST_TURNS = 20

/** The ends of the region on the line of a grid's row, and on the lines from it to the next row. */
export function endsFromRow(
  heights: Heights,
  { x, y, rows }: HeightGrid,
  row: number,
  goOn: GoOn,
): RegionEnd[] {
  return x.flatMap((_, column) => {
    const here = { x: x[column] ?? NaN, y: y[row] ?? NaN, height: rows[row]?.[column] }
    const right = { x: x[column + 1] ?? NaN, y: here.y, height: rows[row]?.[column + 1] }
    const above = { x: here.x, y: y[row + 1] ?? NaN, height: rows[row + 1]?.[column] }
    const ends = [
      { along: 'x' as const, end: endBetween(heights, 'x', here, right, goOn) },
      { along: 'y' as const, end: endBetween(heights, 'y', here, above, goOn) },
    ]
    return ends.flatMap(({ along, end }) => (end ? [{ along, row, column, ...end }] : []))
  })
}

interface GridPoint {
  readonly x: number
  readonly y: number
  readonly height: Height | undefined
}

type End = Pick<RegionEnd, 'at' | 'isExact'>

/** The end between two points; undefined unless just one has a blend and the other is proved to have none. */
function endBetween(
  heights: Heights,
  axis: 'x' | 'y',
  a: GridPoint,
  b: GridPoint,
  goOn: GoOn,
): End | undefined {
  const [from, to] = b.height?.state === 'none' ? [a, b] : [b, a]
  if (to.height?.state !== 'none' || !from.height || !('shares' in from.height)) return undefined
  const line = new Line(heights, axis, axis === 'x' ? from.y : from.x)
  return line.endFrom(from[axis], to[axis], from.height.shares, goOn)
}

/** A line of a map along one axis, at a value of the other. */
class Line {
  constructor(
    private readonly heights: Heights,
    private readonly axis: 'x' | 'y',
    private readonly across: number,
  ) {}

  /**
   * From a blend on, as far as its oils reach; from there on with other oils, if any reach on without a
   * break, and so forth.
   */
  endFrom(from: number, to: number, shares: Float64Array, goOn: GoOn): End {
    const step = EDGE_PART * (to - from)
    let end = from
    for (let turn = 0, oilsOf = shares; turn < MOST_TURNS; turn++) {
      const onward = this.#heights('most', end, to)
      const reached = searchFor(amongOilsOf(onward, oilsOf), goOn)
      if ('value' in reached) end = reached.value
      if ((to - end) / step < 1) return { at: to, isExact: true }
      const next = searchFor(this.#heights('least', end + step, to), goOn)
      if (next.status === 'infeasible') return { at: end, isExact: true }
      if (next.status === 'undecided') return { at: end, isExact: false }
      if ((next.value - end) / step > SAME_PLACE)
        return { at: end, isExact: next.status === 'optimal' }
      oilsOf = next.shares
    }
    return { at: end, isExact: false }
  }

  /** The question of the place nearest to where the line goes (`most`), or to where it comes from. */
  #heights(way: 'least' | 'most', from: number, to: number) {
    const across = [this.across, this.across] as const
    const along = from < to ? ([from, to] as const) : ([to, from] as const)
    const place: Cell = this.axis === 'x' ? { x: along, y: across } : { x: across, y: along }
    const rises = from < to
    return this.heights.along(this.axis, place, rises === (way === 'most') ? 'most' : 'least')
  }
}
