import type { Attachment } from 'svelte/attachments'

/** What a drag of a column tells the table. */
export interface Dragging {
  /** The column the dragged one would take; undefined once the drag is over. */
  over(id: string, column: number | undefined): void
  /** The dragged one was let go over a column. */
  drop(id: string, column: number): void
}

/** A pointer that moved less than this pressed and did not drag, px. */
const SLACK_PX = 6
/** So near to the side of the table a drag scrolls it on, px, and by so much at a time. */
const EDGE_PX = 48
const SCROLL_PX = 16

/** Makes the head of a column draggable along its table. */
export function draggable(id: string, dragging: Dragging): Attachment<HTMLElement> {
  return (handle) => {
    let startX: number | undefined
    let over: number | undefined

    const down = (event: PointerEvent) => {
      if (event.button !== 0) return
      startX = event.clientX
      handle.setPointerCapture(event.pointerId)
    }
    const move = (event: PointerEvent) => {
      if (startX === undefined) return
      if (over === undefined && Math.abs(event.clientX - startX) < SLACK_PX) return
      scrollAlong(handle, event.clientX)
      over = columnAt(handle, event.clientX)
      dragging.over(id, over)
    }
    const up = () => {
      const column = over
      end()
      if (column === undefined) return
      dragging.drop(id, column)
    }
    const end = () => {
      startX = undefined
      over = undefined
      dragging.over(id, undefined)
    }
    handle.addEventListener('pointerdown', down)
    handle.addEventListener('pointermove', move)
    handle.addEventListener('pointerup', up)
    handle.addEventListener('pointercancel', end)
    return () => {
      handle.removeEventListener('pointerdown', down)
      handle.removeEventListener('pointermove', move)
      handle.removeEventListener('pointerup', up)
      handle.removeEventListener('pointercancel', end)
    }
  }
}

/** The column whose middle is nearest, never the reference's. */
function columnAt(handle: HTMLElement, x: number): number {
  const heads = [...(handle.closest('tr')?.querySelectorAll('[data-candidate]') ?? [])]
  const away = heads.map((head) => {
    const { left, width } = head.getBoundingClientRect()
    return Math.abs(left + width / 2 - x)
  })
  return Math.max(1, away.indexOf(Math.min(...away)))
}

function scrollAlong(handle: HTMLElement, x: number): void {
  const box = handle.closest('.scroll')
  if (!box) return
  const { left, right } = box.getBoundingClientRect()
  if (x > right - EDGE_PX) box.scrollLeft += SCROLL_PX
  if (x < left + EDGE_PX) box.scrollLeft -= SCROLL_PX
}
