import type { RuledTerrain } from '../domain/optimise/map/terrain-ruled'
import type { MapPoint } from './map'

/** Numbers of a grid's point; one outside of it counts as a point without a blend. */
interface GridPoint {
  readonly row: number
  readonly column: number
}

/** Where the edge of a piece of land crosses from one point of the grid to the next. */
interface Crossing {
  readonly key: string
  readonly place: MapPoint
}

/**
 * The edge of a land under rules as closed rings in the axes' units: around every piece, and around
 * every hole in one. It runs straight from one line of the grid to the next, through the proved ends of
 * the land where they are known and half-way between two points where they are not yet. Marching squares;
 * two pieces that meet in a square only across its corner stay apart.
 */
export function edgeRings(terrain: RuledTerrain): MapPoint[][] {
  const next = new Map<string, Crossing>()
  const starts = new Map<string, Crossing>()
  for (let row = -1; row < terrain.y.length; row++) {
    for (let column = -1; column < terrain.x.length; column++) {
      for (const [from, to] of cutsThrough(terrain, { row, column })) {
        starts.set(from.key, from)
        next.set(from.key, to)
      }
    }
  }
  const rings: MapPoint[][] = []
  for (const [key, start] of starts) {
    if (!next.has(key)) continue
    const ring: MapPoint[] = []
    for (let at: Crossing | undefined = start; at;) {
      ring.push(at.place)
      const to = next.get(at.key)
      next.delete(at.key)
      at = to && next.has(to.key) ? to : undefined
    }
    rings.push(ring)
  }
  return rings
}

/**
 * Cuts through the square above and to the right of a point, each from where the edge leaves the land,
 * going round the square, to where this run of land began.
 */
function cutsThrough(terrain: RuledTerrain, { row, column }: GridPoint): [Crossing, Crossing][] {
  const corners: readonly GridPoint[] = [
    { row, column },
    { row, column: column + 1 },
    { row: row + 1, column: column + 1 },
    { row: row + 1, column },
  ]
  const isLand = corners.map((corner) => hasBlend(terrain, corner))
  const sides = corners.map((from, k) => [from, corners[(k + 1) % corners.length] ?? from] as const)
  return sides.flatMap(([from, to], side): [Crossing, Crossing][] => {
    const leaves = isLand[side] === true && isLand[(side + 1) % sides.length] === false
    if (!leaves) return []
    let first = side
    while (isLand[first] === true) first = (first + sides.length - 1) % sides.length
    const entry = sides[first]
    return entry ? [[crossingOf(terrain, from, to), crossingOf(terrain, entry[0], entry[1])]] : []
  })
}

function hasBlend({ values }: RuledTerrain, { row, column }: GridPoint): boolean {
  return (values[row]?.[column] ?? null) !== null
}

/** The crossing on a side of a square; the same from both squares that share the side. */
function crossingOf(terrain: RuledTerrain, a: GridPoint, b: GridPoint): Crossing {
  const [from, to] = a.row + a.column < b.row + b.column ? [a, b] : [b, a]
  const along = from.row === to.row ? 'x' : 'y'
  const key = `${along} ${from.row} ${from.column}`
  const [start, end] = [placeOf(terrain, from), placeOf(terrain, to)]
  // Beyond the grid's last point no blend was looked for: the land is drawn up to the point itself.
  if (!start || !end) return { key, place: start ?? end ?? { x: NaN, y: NaN } }
  const found = endsOf(terrain).get(key)
  const at = found ?? (start[along] + end[along]) / 2
  return { key, place: { ...start, [along]: at } }
}

function placeOf({ x, y }: RuledTerrain, { row, column }: GridPoint): MapPoint | undefined {
  const [across, up] = [x[column], y[row]]
  return across === undefined || up === undefined ? undefined : { x: across, y: up }
}

const knownEnds = new WeakMap<RuledTerrain, ReadonlyMap<string, number>>()

/** The ends found so far by the side they lie on. */
function endsOf(terrain: RuledTerrain): ReadonlyMap<string, number> {
  const known = knownEnds.get(terrain)
  if (known) return known
  const ends = new Map(
    terrain.ends.map(({ along, row, column, at }) => [`${along} ${row} ${column}`, at] as const),
  )
  knownEnds.set(terrain, ends)
  return ends
}
