import { downloadBlob, downloadText } from '../download'
import { fontFaces } from './picture-fonts'
import type { PictureCaption, PicturePart, PictureSheet } from './picture-sheet'

const SVG = 'http://www.w3.org/2000/svg'

/** Dots for each px of the page, so that a picture can be printed. */
const PNG_SCALE = 2

/** All that the page's style sheets say of a drawing, carried over into it. */
const STYLES = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-opacity',
  'opacity',
  'paint-order',
  'visibility',
  'display',
  'font-family',
  'font-size',
  'font-weight',
  'font-feature-settings',
  'letter-spacing',
  'text-anchor',
  'dominant-baseline',
  'white-space',
] as const

/** Saves a drawing, or several on a sheet, as an SVG file that looks the same anywhere. */
export async function saveSvg(source: SVGSVGElement | PictureSheet, name: string): Promise<void> {
  const { text } = await drawn(source)
  downloadText(`${name}.svg`, text, 'image/svg+xml')
}

/** Saves a drawing, or several on a sheet, as a PNG file of two dots a px. */
export async function savePng(source: SVGSVGElement | PictureSheet, name: string): Promise<void> {
  const { text, width, height } = await drawn(source)
  const image = new Image()
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }))
  try {
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = Math.ceil(width * PNG_SCALE)
    canvas.height = Math.ceil(height * PNG_SCALE)
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'))
    if (!blob)
      throw new Error(
        `The browser can't draw a picture of ${canvas.width} by ${canvas.height} dots.`,
      )
    downloadBlob(`${name}.png`, blob)
  } finally {
    URL.revokeObjectURL(address)
  }
}

async function drawn(source: SVGSVGElement | PictureSheet) {
  const sheet = source instanceof SVGSVGElement ? sheetOf(source) : source
  const root = element('svg', {
    xmlns: SVG,
    width: sheet.width,
    height: sheet.height,
    viewBox: `0 0 ${sheet.width} ${sheet.height}`,
  })
  const page = getComputedStyle(document.body)
  const fonts = element('style', {})
  fonts.textContent = await fontFaces(page.fontFamily)
  root.append(fonts, element('defs', {}))
  root.append(element('rect', { width: '100%', height: '100%', fill: paper() }))
  for (const part of sheet.parts) root.append(copyOf(part))
  for (const caption of sheet.captions) root.append(words(caption, page))
  addDefinitions(root)
  const text = new XMLSerializer().serializeToString(root)
  return { text, width: sheet.width, height: sheet.height }
}

function sheetOf(svg: SVGSVGElement): PictureSheet {
  const { width, height } = svg.getBoundingClientRect()
  return { width, height, parts: [{ drawing: svg, x: 0, y: 0 }], captions: [] }
}

function paper(): string {
  return getComputedStyle(document.documentElement).backgroundColor
}

/** A drawing as it looks on the page, free of the page's style sheets. */
function copyOf({ drawing, x, y }: PicturePart): SVGElement {
  const { width, height } = drawing.getBoundingClientRect()
  if (drawing instanceof HTMLCanvasElement)
    return element('image', { x, y, width, height, href: drawing.toDataURL() })
  const copy = drawing.cloneNode(true) as SVGSVGElement
  carryStyles(drawing, copy)
  for (const [name, value] of Object.entries({ x, y, width, height }))
    copy.setAttribute(name, String(value))
  copy.setAttribute('overflow', 'visible')
  return copy
}

function carryStyles(from: Element, to: Element): void {
  const computed = getComputedStyle(from)
  to.setAttribute(
    'style',
    STYLES.map((name) => `${name}:${computed.getPropertyValue(name)}`).join(';'),
  )
  // What a style sheet outranks says nothing any more, and may name the page's own variables.
  for (const name of ['class', ...STYLES]) to.removeAttribute(name)
  for (const [index, child] of [...from.children].entries()) {
    const other = to.children[index]
    if (other) carryStyles(child, other)
  }
}

function words(
  { text, x, y, size = 13, strong = false }: PictureCaption,
  page: CSSStyleDeclaration,
) {
  const caption = element('text', { x, y })
  caption.textContent = text
  const weight = strong ? '640' : page.fontWeight
  caption.setAttribute(
    'style',
    `fill:${page.color};font-family:${page.fontFamily};font-size:${size}px;font-weight:${weight};white-space:pre`,
  )
  return caption
}

/** Brings along what the drawing points at by id, such as the textures of oils. */
function addDefinitions(root: SVGElement): void {
  const text = new XMLSerializer().serializeToString(root)
  const ids = new Set([...text.matchAll(/url\((?:&quot;|")?#([\w-]+)/gu)].map(([, id]) => id))
  const defs = root.querySelector('defs')
  for (const id of ids) {
    const original = id === undefined ? null : document.getElementById(id)
    if (!original || root.querySelector(`[id="${id}"]`)) continue
    const copy = original.cloneNode(true) as Element
    for (const [index, child] of [...original.children].entries()) {
      const other = copy.children[index]
      if (other) carryStyles(child, other)
    }
    defs?.append(copy)
  }
}

function element(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const made = document.createElementNS(SVG, name)
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value))
  return made
}
