import { range, scaleLinear, type ScaleLinear } from 'd3'

/** A bar to be marked by its letter on a gauge. */
export interface Mark {
  readonly letter: string
  readonly value: number
  /** Marked before all others: the bar's own version. */
  readonly first?: boolean | undefined
}

/** A mark with the place of its letter, px from the left. */
export interface PlacedMark extends Mark {
  /** Where its value stands on the line. */
  readonly at: number
  /** Where its letter stands; a slanted stem leads there where that is another place. */
  readonly letterAt: number
}

/** The scale of a gauge and the values its ticks stand at. */
export interface BarScale {
  readonly x: ScaleLinear<number, number>
  readonly ticks: readonly number[]
}

/** Room between two letters, px from middle to middle. */
const LETTER_PX = 11
/** As many letters as are read at a glance. */
const MOST_LETTERS = 5

/** The scale from the least to the most of a measure over `width` px; a tick every `step`. */
export function barScale(least: number, most: number, step: number, width: number): BarScale {
  const x = scaleLinear([least, most], [0.5, width - 0.5])
  const ticks = range(Math.ceil(least / step), Math.floor(most / step) + 1)
  return { x, ticks: ticks.map((count) => count * step) }
}

/**
 * The marks that are shown, in their order on the line: the first ones and those nearest to `near`, five in
 * all. Their letters stand apart, as near to their values as that allows, and on the line's length.
 */
export function placeMarks(
  marks: readonly Mark[],
  near: number | undefined,
  { x }: Pick<BarScale, 'x'>,
): PlacedMark[] {
  const [low, high] = x.domain() as [number, number]
  const [start, end] = x.range() as [number, number]
  const away = ({ first, value }: Mark) =>
    first ? -1 : near === undefined ? 0 : Math.abs(value - near)
  const shown = marks
    .filter(({ value }) => value >= low && value <= high)
    .toSorted((a, b) => away(a) - away(b))
    .slice(0, MOST_LETTERS)
    .toSorted((a, b) => a.value - b.value)
  const places = apart(
    shown.map(({ value }) => x(value)),
    start,
    end,
  )
  return shown.map((mark, at) => ({ ...mark, at: x(mark.value), letterAt: places[at] ?? 0 }))
}

/**
 * Rising places moved apart to at least a letter's room: those that crowd form a row about their middle, and
 * rows that then touch become one. All stay between `start` and `end`.
 */
function apart(places: readonly number[], start: number, end: number): number[] {
  const rows: { readonly middle: number; readonly count: number }[] = []
  const half = (count: number) => ((count - 1) / 2) * LETTER_PX
  const inside = (middle: number, count: number) =>
    Math.max(start + half(count), Math.min(end - half(count), middle))
  for (const place of places) {
    let row = { middle: inside(place, 1), count: 1 }
    for (let last = rows.at(-1); last && touch(last, row); last = rows.at(-1)) {
      const count = last.count + row.count
      const middle = (last.middle * last.count + row.middle * row.count) / count
      rows.pop()
      row = { middle: inside(middle, count), count }
    }
    rows.push(row)
  }
  return rows.flatMap(({ middle, count }) =>
    Array.from({ length: count }, (_, at) => middle - half(count) + at * LETTER_PX),
  )

  function touch(left: (typeof rows)[number], right: (typeof rows)[number]): boolean {
    return right.middle - half(right.count) - (left.middle + half(left.count)) < LETTER_PX
  }
}
