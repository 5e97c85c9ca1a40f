import type { Attachment } from 'svelte/attachments'
import { on } from 'svelte/events'
import type { MapPoint } from '../../charts/map'
import { panned, zoomed } from '../../charts/zoom'
import type { Desks } from '../desks/desks.svelte'
import type { MapDrawing } from './map-drawing.svelte'

/** A press that moves this far pans the map and takes nothing, px. */
const PAN_FROM_PX = 5
const ZOOM_STEP = 1.25

interface Press {
  readonly x: number
  readonly y: number
  readonly window: Desks['view']['window']
  pans: boolean
}

/**
 * Lets pointer, wheel and keys onto the map, whose first SVG is the drawing: to look around, pan, zoom, take
 * the blend under the cross, pin it, and go back.
 */
export function mapHand(drawing: MapDrawing, desks: Desks): Attachment<HTMLElement> {
  return (box) => {
    const svg = box.querySelector('svg')
    if (!svg) throw new Error('The map has no drawing')
    box.tabIndex = 0
    const offs = [
      ...pointing(svg, drawing, desks),
      on(box, 'keydown', (event) => press(event, drawing, desks)),
    ]
    return () => offs.forEach((off) => off())
  }
}

/** Hears an event of a drawing, after what lies in it has had its say; returns what ends that. */
function hear<Type extends keyof SVGElementEventMap>(
  svg: SVGSVGElement,
  type: Type,
  then: (event: SVGElementEventMap[Type]) => void,
  options?: AddEventListenerOptions,
): () => void {
  return on(svg, type, (event) => then(event as SVGElementEventMap[Type]), options)
}

function pointing(svg: SVGSVGElement, drawing: MapDrawing, { view }: Desks) {
  let press: Press | undefined
  const pointed = ({ clientX, clientY }: MouseEvent): MapPoint => {
    const { left, top } = svg.getBoundingClientRect()
    return drawing.at(clientX - left, clientY - top)
  }
  return [
    hear(svg, 'pointerdown', ({ clientX: x, clientY: y }) => {
      press = { x, y, window: view.window, pans: false }
    }),
    hear(svg, 'pointermove', (event) => {
      if (press?.window && event.buttons === 1) {
        const [dx, dy] = [event.clientX - press.x, event.clientY - press.y]
        press.pans ||= Math.hypot(dx, dy) > PAN_FROM_PX
        if (press.pans) view.window = panned(press.window, dx, dy, drawing.scales)
      }
      if (!press?.pans) drawing.lookAt(pointed(event))
    }),
    hear(svg, 'pointerleave', () => (press = undefined)),
    hear(svg, 'click', (event) => {
      const pans = press?.pans
      press = undefined
      if (pans) return
      drawing.lookAt(pointed(event))
      if (drawing.cross) view.take(drawing.cross)
    }),
    hear(
      svg,
      'wheel',
      (event) => {
        if (!event.ctrlKey && !event.metaKey) return
        event.preventDefault()
        view.window = zoomed(
          drawing.extent,
          event.deltaY < 0 ? ZOOM_STEP : 1 / ZOOM_STEP,
          pointed(event),
        )
      },
      { passive: false },
    ),
  ]
}

function press(event: KeyboardEvent, drawing: MapDrawing, desks: Desks): void {
  if (event.ctrlKey || event.metaKey) return
  const moves = keysOf(event.shiftKey, drawing, desks)
  const move = moves[event.key] ?? moves[event.key.toLowerCase()]
  if (!move) return
  event.preventDefault()
  move()
}

/** What keys do, by name; Shift walks in fine steps. */
function keysOf(
  fine: boolean,
  drawing: MapDrawing,
  { view, explorer, bench }: Desks,
): Readonly<Record<string, () => void>> {
  const { cross, present, region, steps } = drawing
  const from = cross ?? present ?? region[0]
  if (!from) return {}
  const by = { x: steps.x[fine ? 'fine' : 'drag'], y: steps.y[fine ? 'fine' : 'drag'] }
  const walk = (x: number, y: number) => () =>
    drawing.lookAt({ x: from.x + x * by.x, y: from.y + y * by.y })
  const zoom = (factor: number) => () =>
    (view.window = zoomed(drawing.extent, factor, cross ?? present))
  return {
    ArrowRight: walk(1, 0),
    ArrowLeft: walk(-1, 0),
    ArrowUp: walk(0, 1),
    ArrowDown: walk(0, -1),
    Enter: () => cross && view.take(cross),
    p: () => {
      const there = cross && view.probe?.answer.status === 'optimal' ? view.probe.answer : undefined
      if (there) bench.pin(there, 'pinned on the map')
      else if (explorer.present) bench.pin(explorer.present, 'the blend in hand')
    },
    '+': zoom(ZOOM_STEP),
    '-': zoom(1 / ZOOM_STEP),
    '0': () => (view.window = undefined),
    n: () => {
      explorer.unpick()
      drawing.lookAway()
    },
  }
}
