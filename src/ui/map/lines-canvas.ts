import { coverOf, FULL_INK, LineInk } from '../../charts/line-ink'
import type { LineAxis } from '../../charts/lines'

/** What the canvas shows. */
export interface Lines {
  /** Heights of all lines in px, `axes.length` a row. */
  readonly heights: Float32Array
  readonly axes: readonly LineAxis[]
  /** Rows to draw. */
  readonly kept: Uint32Array
  readonly width: number
  readonly height: number
}

/** Time that drawing may take of one frame, so that a drag stays at 60 frames a second, ms. */
const FRAME_BUDGET_MS = 6

/** Lines drawn between looks at the clock. */
const LINES_PER_LOOK = 64

/** So many lines at full ink would be a blot: the more there are, the fainter each one. */
const INK_OF_ALL = 130
const FAINTEST = 0.008

const BYTES = 4
const OPAQUE = 255

/**
 * Draws lines on a canvas over as many frames as they need, a little each frame, so that a brush never
 * waits for the lines. Whatever it reads is followed: only lines that come or go are drawn anew.
 */
export function linesLayer(lines: () => Lines): (canvas: HTMLCanvasElement) => () => void {
  let drawing: Drawing | undefined
  return (canvas) => {
    const now = lines()
    if (!drawing?.fits(canvas, now)) drawing = new Drawing(canvas, now)
    const current = drawing
    current.keep(now.kept)
    let frame = requestAnimationFrame(next)
    function next() {
      if (current.goOn()) frame = requestAnimationFrame(next)
    }
    // The ink is the theme's; drawings on the page follow it by themselves, a canvas does not.
    const themes = new MutationObserver(() => current.show())
    themes.observe(document.documentElement, { attributeFilter: ['data-theme'] })
    return () => {
      cancelAnimationFrame(frame)
      themes.disconnect()
    }
  }
}

/** Lines of one sample on one canvas: which are wanted, which are drawn, and the ink of those. */
class Drawing {
  readonly #context: CanvasRenderingContext2D
  readonly #image: ImageData
  readonly #ink: LineInk
  readonly #wanted: Uint8Array
  readonly #drawn: Uint8Array
  #alone = 1

  constructor(
    private readonly canvas: HTMLCanvasElement,
    private readonly lines: Lines,
    private readonly ratio = devicePixelRatio,
  ) {
    const { heights, axes, width, height } = lines
    canvas.width = Math.max(1, Math.round(width * ratio))
    canvas.height = Math.round(height * ratio)
    const context = canvas.getContext('2d')
    if (!context) throw new Error('This browser has no canvas to draw lines on')
    this.#context = context
    this.#image = context.createImageData(canvas.width, canvas.height)
    this.#ink = new LineInk(
      canvas.width,
      canvas.height,
      heights.map((y) => y * ratio),
      axes.map(({ x }) => x * ratio),
    )
    this.#wanted = new Uint8Array(heights.length / Math.max(1, axes.length))
    this.#drawn = new Uint8Array(this.#wanted.length)
  }

  /** Whether it is a drawing of these lines, at the size and sharpness of the canvas. */
  fits(canvas: HTMLCanvasElement, { heights, width, height }: Lines): boolean {
    return (
      canvas === this.canvas &&
      devicePixelRatio === this.ratio &&
      heights === this.lines.heights &&
      width === this.lines.width &&
      height === this.lines.height
    )
  }

  keep(rows: Uint32Array): void {
    this.#wanted.fill(0)
    for (const row of rows) this.#wanted[row] = 1
    this.#alone = Math.max(FAINTEST, Math.min(1, INK_OF_ALL / Math.max(1, rows.length)))
  }

  /** Draws for one frame's time and shows it; false when nothing is left to draw. */
  goOn(): boolean {
    const start = performance.now()
    let left = false
    let sinceLook = 0
    for (let row = 0; row < this.#wanted.length && !left; row++) {
      const wanted = this.#wanted[row] ?? 0
      if (wanted === this.#drawn[row]) continue
      this.#ink.put(row, wanted === 1 ? 1 : -1)
      this.#drawn[row] = wanted
      if (++sinceLook % LINES_PER_LOOK === 0) left = performance.now() - start > FRAME_BUDGET_MS
    }
    this.show()
    return left
  }

  /** Puts the ink on the canvas in the theme's colour. */
  show(): void {
    const { ink } = this.#ink
    const { data } = this.#image
    const [red, green, blue] = colourOf(this.#context, this.canvas)
    const opacities = opacityTable(this.#alone)
    const most = opacities.length - 1
    for (let place = 0, at = 0; place < ink.length; place++, at += BYTES) {
      data[at] = red
      data[at + 1] = green
      data[at + 2] = blue
      data[at + 3] = opacities[Math.min(most, (ink[place] ?? 0) >> TABLE_SHIFT)] ?? OPAQUE
    }
    this.#context.putImageData(this.#image, 0, 0)
  }
}

/** The table goes in steps of a sixteenth of a line's ink. */
const TABLE_SHIFT = 4

/** Where the cover of lines over each other can't be told from all there is. */
const ALL = 0.998

/** Opacity, 0 to 255, for each step of ink up to where it is full. */
function opacityTable(alone: number): Uint8Array {
  const lines = alone >= 1 ? 1 : Math.log(1 - ALL) / Math.log(1 - alone)
  const steps = Math.ceil((lines * FULL_INK) / (1 << TABLE_SHIFT))
  return Uint8Array.from({ length: steps + 1 }, (_, step) =>
    Math.round(OPAQUE * coverOf(step << TABLE_SHIFT, alone)),
  )
}

/** The ink's colour as the page has it now, each part 0 to 255. */
function colourOf(
  context: CanvasRenderingContext2D,
  canvas: HTMLCanvasElement,
): readonly [number, number, number] {
  context.fillStyle = getComputedStyle(canvas).getPropertyValue('--terrain')
  const value = Number.parseInt(context.fillStyle.slice(1, 7), 16)
  return [(value >> 16) & OPAQUE, (value >> 8) & OPAQUE, value & OPAQUE]
}
