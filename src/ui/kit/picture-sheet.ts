/** A drawing of the page, or what is painted on a canvas, and where it goes on a sheet, px. */
export interface PicturePart {
  readonly drawing: SVGSVGElement | HTMLCanvasElement
  readonly x: number
  readonly y: number
}

/** Words on a sheet; `y` is their base line, px. */
export interface PictureCaption {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly size?: number
  readonly strong?: boolean
}

/** Several drawings and words on one sheet. */
export interface PictureSheet {
  readonly width: number
  readonly height: number
  readonly parts: readonly PicturePart[]
  readonly captions: readonly PictureCaption[]
}

const MARGIN_PX = 24
const LINE_PX = 20

/** Drawings laid over one another, with words above them, the first line strong, and below them. */
export function captioned(
  drawings: readonly PicturePart['drawing'][],
  above: readonly string[],
  below: readonly string[] = [],
): PictureSheet {
  const boxes = drawings.map((drawing) => drawing.getBoundingClientRect())
  const top = MARGIN_PX + above.length * LINE_PX
  const foot = top + Math.max(...boxes.map(({ height }) => height))
  const line = (text: string, y: number) => ({ text, x: MARGIN_PX, y })
  return {
    width: Math.max(...boxes.map(({ width }) => width)) + 2 * MARGIN_PX,
    height: foot + below.length * LINE_PX + MARGIN_PX,
    parts: drawings.map((drawing) => ({ drawing, x: MARGIN_PX, y: top })),
    captions: [
      ...above.map((text, at) => ({ ...line(text, (at + 1.5) * LINE_PX), strong: at === 0 })),
      ...below.map((text, at) => line(text, foot + (at + 0.7) * LINE_PX)),
    ],
  }
}

/** Room for the words beside a drawing in a column of them. */
const WORDS_PX = 360
const GAP_PX = 16

/** Drawings one below the other, each with its words beside it, the first line strong. */
export function stacked(
  rows: readonly { readonly drawing: SVGSVGElement; readonly words: readonly string[] }[],
  title: string,
): PictureSheet {
  const boxes = rows.map(({ drawing }) => drawing.getBoundingClientRect())
  const width = Math.max(...boxes.map((box) => box.width))
  const row = Math.max(...boxes.map((box) => box.height)) + GAP_PX
  const top = MARGIN_PX + 2 * LINE_PX
  return {
    width: width + WORDS_PX + 2 * MARGIN_PX,
    height: top + rows.length * row + MARGIN_PX,
    parts: rows.map(({ drawing }, at) => ({ drawing, x: MARGIN_PX, y: top + at * row })),
    captions: [
      { text: title, x: MARGIN_PX, y: 1.5 * LINE_PX, strong: true },
      ...rows.flatMap(({ words }, at) =>
        words.map((text, line) => ({
          text,
          x: MARGIN_PX + width + GAP_PX,
          y: top + at * row + (line + 0.8) * LINE_PX,
          strong: line === 0,
        })),
      ),
    ],
  }
}
