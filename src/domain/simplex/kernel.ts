/**
 * The two loops that most of the time goes into, over slices of Float64Array.
 *
 * On the `!` marks in this folder: `noUncheckedIndexedAccess` types every read of a typed array as
 * `number | undefined`. Loops here run over index ranges that the arrays were allocated for, so
 * the mark says "in range by construction" and costs nothing at run time. It is allowed in this
 * folder's numeric loops and nowhere else.
 */

/** Σ a[aStart + k] · b[bStart + k]. Four running sums, so that additions need not wait. */
export function dot(
  a: Float64Array,
  aStart: number,
  b: Float64Array,
  bStart: number,
  count: number,
): number {
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let k = 0
  for (; k + 3 < count; k += 4) {
    s0 += a[aStart + k]! * b[bStart + k]!
    s1 += a[aStart + k + 1]! * b[bStart + k + 1]!
    s2 += a[aStart + k + 2]! * b[bStart + k + 2]!
    s3 += a[aStart + k + 3]! * b[bStart + k + 3]!
  }
  for (; k < count; k++) s0 += a[aStart + k]! * b[bStart + k]!
  return s0 + s1 + (s2 + s3)
}

/** target[targetStart + k] += factor · source[sourceStart + k]. */
export function addMultiple(
  target: Float64Array,
  targetStart: number,
  factor: number,
  source: Float64Array,
  sourceStart: number,
  count: number,
): void {
  for (let k = 0; k < count; k++) {
    target[targetStart + k]! += factor * source[sourceStart + k]!
  }
}
