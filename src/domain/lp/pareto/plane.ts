import { asInteger, exactDot, onGrid, orthogonalTo } from './exact'
import { Frame } from './frame'
import { addMultiple, axis, dot, length, negated, unit } from './vectors'

/**
 * Normals of simplices flatter than this are computed exactly. Flatness is the volume as a part of what
 * it would be with right angles; the rounding of a normal is about 1e-15 over it.
 */
const FLAT = 1e-3

/**
 * Depths, per length of the vectors they are computed from, beyond which a sign is certain: ten times
 * the rounding of the flattest simplex not computed exactly.
 */
const CERTAIN_DEPTH = 1e-11

/**
 * What a hull is made of, homogeneous: (1, z) is the point z, (0, r) a direction r in which the hull
 * goes on for ever.
 */
export class Generator {
  readonly length: number
  #integers: readonly bigint[] | undefined

  /** Expects a weight of 0 or 1 and coordinates on the grid. */
  constructor(readonly vector: Float64Array) {
    this.length = length(vector)
  }

  get isPoint(): boolean {
    return this.vector[0] === 1
  }

  /** The same without rounding, its coordinates in units of the grid; few are ever asked for. */
  get integers(): readonly bigint[] {
    this.#integers ??= Array.from(this.vector, (one, i) => (i === 0 ? BigInt(one) : asInteger(one)))
    return this.#integers
  }
}

/** A generator with its coordinates on the grid. */
export function generatorOf(vector: Float64Array): Generator {
  return new Generator(vector.map((one, i) => (i === 0 ? one : onGrid(one))))
}

/** A plane through d generators in d dimensions, with a side that is inside. */
export class Plane {
  /** Whether it bounds nothing that can be seen. */
  readonly isAtInfinity: boolean
  readonly #origin: Generator | undefined
  #exact: readonly bigint[] | null = null

  private constructor(
    readonly through: readonly Generator[],
    /**
     * (offset, normal) with an inward normal of length 1: `offset + normal · z` is how deep a point z
     * lies inside. (1, 0 … 0) if all generators are directions: the plane at infinity.
     */
    readonly vector: Float64Array,
    /** Volume of the simplex of the generators, directions counted with length 1. */
    readonly volume: number,
  ) {
    this.#origin = originOf(through)
    this.isAtInfinity = this.#origin === undefined
  }

  /** The plane through independent generators that has another one inside. */
  static through(generators: readonly Generator[], inner: Generator): Plane {
    const size = inner.vector.length
    const origin = originOf(generators)
    if (!origin) return new Plane(generators, axis(0, size), 0)
    const frame = new Frame(size - 1)
    const ways = generators.filter((one) => one !== origin).map((one) => wayTo(one, origin))
    const heights = ways.map((way) => frame.add(way))
    const volume = product(heights)
    const flat = volume < FLAT * product(ways.map(length))
    const normal = flat ? unit(doubles(exactNormal(generators, origin))) : frame.complement()
    const plane = new Plane(generators, planeVector(normal, origin), volume)
    if (plane.sideOf(inner) > 0) return plane
    return new Plane(generators, planeVector(negated(normal), origin), volume)
  }

  /** How deep a generator lies inside; below 0 outside. */
  depthOf({ vector }: Generator): number {
    return dot(this.vector, vector)
  }

  /** A number above 0 for a generator inside, below 0 outside, and 0 exactly on the plane. */
  sideOf(generator: Generator): number {
    const depth = this.depthOf(generator)
    const reach = generator.length + (this.#origin?.length ?? 0)
    if (Math.abs(depth) > CERTAIN_DEPTH * reach) return depth
    this.#exact ??= this.#withoutRounding()
    return Number(exactDot(this.#exact, generator.integers))
  }

  /** A multiple of the plane's vector. */
  #withoutRounding(): bigint[] {
    const origin = this.#origin
    if (!origin) return Array.from(this.vector, BigInt)
    const normal = exactNormal(this.through, origin)
    const inward = dot(doubles(normal), this.vector.subarray(1)) > 0
    const facing = inward ? normal : normal.map((one) => -one)
    return [-exactDot(facing, origin.integers.slice(1)), ...facing]
  }
}

/** A point among some generators, if there is any. */
function originOf(generators: readonly Generator[]): Generator | undefined {
  return generators.find(({ isPoint }) => isPoint)
}

/** (offset, normal) of the plane with a normal through a point. */
function planeVector(normal: Float64Array, origin: Generator): Float64Array {
  const vector = new Float64Array(1 + normal.length)
  vector.set(normal, 1)
  vector[0] = -dot(vector, origin.vector)
  return vector
}

/** The way from a point to another, or a direction itself. On the grid there is no rounding in it. */
function wayTo({ vector, isPoint }: Generator, origin: Generator): Float64Array {
  const way = vector.slice(1)
  if (isPoint) addMultiple(way, -1, origin.vector.subarray(1))
  return way
}

/** A normal of the plane through some generators, one of them a point; facing either way. */
function exactNormal(generators: readonly Generator[], origin: Generator): bigint[] {
  const ways = generators
    .filter((one) => one !== origin)
    .map(({ integers }) => {
      const [weight = 0n] = integers
      return integers.map((one, i) => one - weight * (origin.integers[i] ?? 0n)).slice(1)
    })
  return orthogonalTo(ways)
}

function product(factors: readonly number[]): number {
  return factors.reduce((total, one) => total * one, 1)
}

function doubles(vector: readonly bigint[]): Float64Array {
  return Float64Array.from(vector, Number)
}
