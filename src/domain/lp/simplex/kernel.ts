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

/**
 * target[targetStart + k] += factor · source[sourceStart + k]. Four at a time, all read before any
 * is written: both may be slices of one array, so a read after a write would have to wait for it.
 */
export function addMultiple(
  target: Float64Array,
  targetStart: number,
  factor: number,
  source: Float64Array,
  sourceStart: number,
  count: number,
): void {
  let k = 0
  for (; k + 3 < count; k += 4) {
    const t = targetStart + k
    const s = sourceStart + k
    const t0 = target[t]! + factor * source[s]!
    const t1 = target[t + 1]! + factor * source[s + 1]!
    const t2 = target[t + 2]! + factor * source[s + 2]!
    const t3 = target[t + 3]! + factor * source[s + 3]!
    target[t] = t0
    target[t + 1] = t1
    target[t + 2] = t2
    target[t + 3] = t3
  }
  for (; k < count; k++) target[targetStart + k]! += factor * source[sourceStart + k]!
}
