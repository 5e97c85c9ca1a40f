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
const FRAME_BUDGET_MS = 7

/** Lines drawn between looks at the clock. */
const LINES_PER_LOOK = 200

/** So many lines at full ink would be a blot: the more there are, the fainter each one. */
const INK_OF_ALL = 260
const FAINTEST = 0.03

/**
 * Draws lines on a canvas over as many frames as they need, a little each frame, so that a brush never
 * waits for the lines. Whatever it reads is followed: new lines start the drawing afresh.
 */
export function linesLayer(lines: () => Lines): (canvas: HTMLCanvasElement) => () => void {
  return (canvas) => {
    const drawing = begin(canvas, lines())
    let frame = requestAnimationFrame(next)
    function next() {
      if (drawing()) frame = requestAnimationFrame(next)
    }
    return () => cancelAnimationFrame(frame)
  }
}

/** Clears a canvas for some lines and returns what draws the next part; false when all is drawn. */
function begin(canvas: HTMLCanvasElement, lines: Lines): () => boolean {
  const { heights, axes, kept, width, height } = lines
  const context = canvas.getContext('2d')
  if (!context) throw new Error('This browser has no canvas to draw lines on')
  const ratio = devicePixelRatio
  canvas.width = width * ratio
  canvas.height = height * ratio
  context.scale(ratio, ratio)
  context.strokeStyle = getComputedStyle(canvas).getPropertyValue('--terrain')
  context.globalAlpha = Math.max(FAINTEST, Math.min(1, INK_OF_ALL / Math.max(1, kept.length) / 2))
  const xs = axes.map(({ x }) => x)
  let drawn = 0
  return () => {
    const start = performance.now()
    while (drawn < kept.length && performance.now() - start < FRAME_BUDGET_MS) {
      const until = Math.min(kept.length, drawn + LINES_PER_LOOK)
      for (; drawn < until; drawn++) strokeLine(context, heights, kept[drawn] ?? 0, xs)
    }
    return drawn < kept.length
  }
}

function strokeLine(
  context: CanvasRenderingContext2D,
  heights: Float32Array,
  row: number,
  xs: readonly number[],
): void {
  context.beginPath()
  xs.forEach((x, place) => {
    const y = heights[row * xs.length + place] ?? 0
    if (place === 0) context.moveTo(x, y)
    else context.lineTo(x, y)
  })
  context.stroke()
}
