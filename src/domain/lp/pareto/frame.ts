import { addMultiple, axis, dot, length, unit } from './vectors'

/** Times a vector is made orthogonal to the frame: the second removes what rounding left. */
const PASSES = 2

/**
 * Orthonormal axes grown one vector at a time (Gram-Schmidt, repeated once so that the axes are
 * orthogonal to the last digit: Å. Björck, Numerical Methods for Least Squares Problems (1996),
 * section 2.4.5). It answers what the hull asks of a handful of vectors: are they independent, and
 * what is orthogonal to them all.
 */
export class Frame {
  readonly axes: Float64Array[] = []

  constructor(readonly size: number) {}

  /** What is left of a vector once its parts along the axes are taken away. */
  residual(vector: Float64Array): Float64Array {
    const rest = vector.slice()
    for (let pass = 0; pass < PASSES; pass++) {
      for (const axis of this.axes) addMultiple(rest, -dot(rest, axis), axis)
    }
    return rest
  }

  /** Adds the direction in which a vector leaves the frame; returns how far it does. */
  add(vector: Float64Array): number {
    const rest = this.residual(vector)
    this.axes.push(unit(rest))
    return length(rest)
  }

  /**
   * Adds those of some vectors that leave the frame by more than `least`, the farthest first, and
   * returns their places in that order.
   */
  addFarthest(vectors: readonly Float64Array[], least: number): number[] {
    const used: number[] = []
    while (this.axes.length < this.size) {
      const rests = vectors.map((vector) => length(this.residual(vector)))
      const farthest = rests.reduce((best, rest, k) => (rest > (rests[best] ?? -1) ? k : best), 0)
      const vector = vectors[farthest]
      if (!vector || !((rests[farthest] ?? 0) > least)) break
      this.add(vector)
      used.push(farthest)
    }
    return used
  }

  /** A unit vector orthogonal to all axes; they must be fewer than `size`. */
  complement(): Float64Array {
    return unit(this.residual(unit(this.residual(axis(this.#leastCovered(), this.size)))))
  }

  /** The coordinate that the axes leave most of: theirs are least there in squares. */
  #leastCovered(): number {
    let least = 0
    let leastCover = Infinity
    for (let i = 0; i < this.size; i++) {
      let cover = 0
      for (const axis of this.axes) cover += (axis[i] ?? NaN) ** 2
      if (cover < leastCover) {
        leastCover = cover
        least = i
      }
    }
    return least
  }
}
