/**
 * Chooses from a pool the blends that differ most from one another, after some that are set: again and
 * again the one whose least total change to those chosen is largest, until there are `count` or the next
 * would change less than `leastChange` percentage points from one already there.
 *
 * The smallest change between any two chosen is at least half of that of the best choice there is from
 * the pool, whatever the first is (T.F. Gonzalez, Theoretical Computer Science 38 (1985) 293, since
 * total change is a metric); to do better for certain is NP-hard. Blends are arrays of shares in percent.
 */
export function mostDistinct(
  set: readonly Float64Array[],
  pool: readonly Float64Array[],
  count: number,
  leastChange: number,
): Float64Array[] {
  const chosen = [...set]
  const changes = Float64Array.from(pool, (one) => changeToNearest(one, chosen))
  while (chosen.length < count) {
    const farthest = placeOfMost(changes)
    const next = pool[farthest]
    if (!next || !((changes[farthest] ?? NaN) >= leastChange)) break
    chosen.push(next)
    pool.forEach((one, place) => {
      changes[place] = Math.min(changes[place] ?? NaN, changeBetween(one, next))
    })
  }
  return chosen
}

/** The least total change to any of some blends, in percentage points; Infinity to none. */
export function changeToNearest(blend: Float64Array, others: readonly Float64Array[]): number {
  return others.reduce((least, one) => Math.min(least, changeBetween(blend, one)), Infinity)
}

/** Total change between two blends in percentage points, as `totalChange` of their records. */
export function changeBetween(a: Float64Array, b: Float64Array): number {
  let change = 0
  for (let oil = 0; oil < a.length; oil++) change += Math.abs((a[oil] ?? NaN) - (b[oil] ?? NaN))
  return change
}

function placeOfMost(values: Float64Array): number {
  let place = 0
  for (let k = 1; k < values.length; k++) if ((values[k] ?? NaN) > (values[place] ?? NaN)) place = k
  return place
}
