/** Ink of one line where it covers a whole pixel. */
export const FULL_INK = 256

/**
 * How much ink lines leave on each pixel of a picture. Ink only adds up, in whole numbers, so that a line
 * taken away leaves nothing behind: a brush costs what it changes, not all that is in sight. Lines are
 * drawn after X. Wu (SIGGRAPH '91, An efficient antialiasing technique): at each step along its longer
 * side a line shares its ink between the two pixels it lies between.
 */
export class LineInk {
  /** Ink on each pixel, a row of `width` pixels after the other. */
  readonly ink: Int32Array

  /**
   * `heights` has each line's heights in pixels from the top, one for each of `xs`, line by line; `xs`
   * are in pixels from the left, ascending. What lies outside the picture is left out.
   */
  constructor(
    readonly width: number,
    readonly height: number,
    private readonly heights: Float32Array,
    private readonly xs: readonly number[],
  ) {
    this.ink = new Int32Array(width * height)
  }

  /** Draws a line, or with -1 takes it away again. */
  put(line: number, sign: 1 | -1): void {
    const { xs, heights } = this
    const first = line * xs.length
    for (let k = 1; k < xs.length; k++) {
      this.#segment(
        xs[k - 1] ?? NaN,
        heights[first + k - 1] ?? NaN,
        xs[k] ?? NaN,
        heights[first + k] ?? NaN,
        sign,
      )
    }
  }

  #segment(x0: number, y0: number, x1: number, y1: number, sign: 1 | -1): void {
    const [dx, dy] = [x1 - x0, y1 - y0]
    if (Math.abs(dy) <= dx) {
      const slope = dy / dx
      for (let x = Math.round(x0); x < Math.round(x1); x++)
        this.#between(x, y0 + (x - x0) * slope, false, sign)
      return
    }
    const slope = dx / dy
    const [from, to] = dy > 0 ? [y0, y1] : [y1, y0]
    for (let y = Math.round(from); y < Math.round(to); y++)
      this.#between(y, x0 + (y - y0) * slope, true, sign)
  }

  /** Shares ink between two pixels beside each other across the way, the same to and fro. */
  #between(along: number, across: number, upright: boolean, sign: 1 | -1): void {
    const near = Math.floor(across)
    const far = Math.round((across - near) * FULL_INK)
    if (upright) {
      this.#add(near, along, sign * (FULL_INK - far))
      this.#add(near + 1, along, sign * far)
    } else {
      this.#add(along, near, sign * (FULL_INK - far))
      this.#add(along, near + 1, sign * far)
    }
  }

  #add(x: number, y: number, ink: number): void {
    if (x < 0 || y < 0 || x >= this.width || y >= this.height) return
    const place = y * this.width + x
    this.ink[place] = (this.ink[place] ?? 0) + ink
  }
}

/**
 * How much so many lines cover over each other, 0 to 1, if each alone covers a part `alone`: the light that
 * gets through one is what the next one takes its part of.
 */
export function coverOf(ink: number, alone: number): number {
  return alone >= 1 ? Math.min(1, ink / FULL_INK) : 1 - (1 - alone) ** (ink / FULL_INK)
}
