/*
 * Short vectors of two to five numbers. Reads past the end would give NaN, which the hull's own
 * checks do not let through.
 */

/** Σ a[i] · b[i]. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += (a[i] ?? NaN) * (b[i] ?? NaN)
  return sum
}

/** into += factor · source. */
export function addMultiple(into: Float64Array, factor: number, source: Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] ?? NaN) + factor * (source[i] ?? NaN)
}

/** Euclid's length. */
export function length(vector: Float64Array): number {
  return Math.sqrt(dot(vector, vector))
}

/** The same direction at length 1; a vector of zeros stays as it is. */
export function unit(vector: Float64Array): Float64Array {
  const size = length(vector)
  const scaled = vector.slice()
  if (size > 0) for (let i = 0; i < scaled.length; i++) scaled[i] = (scaled[i] ?? NaN) / size
  return scaled
}

/** The opposite direction. */
export function negated(vector: Float64Array): Float64Array {
  const opposite = new Float64Array(vector.length)
  addMultiple(opposite, -1, vector)
  return opposite
}

/** The direction of an axis, of that many entries. */
export function axis(index: number, size: number): Float64Array {
  const vector = new Float64Array(size)
  vector[index] = 1
  return vector
}

/** Sum of some vectors of that many entries. */
export function sum(vectors: Iterable<Float64Array>, size: number): Float64Array {
  const total = new Float64Array(size)
  for (const vector of vectors) addMultiple(total, 1, vector)
  return total
}
