import type { Region } from './rule-book'

/** A part of the search still to be looked into. */
export interface Node {
  /** No blend in it is cheaper than this. */
  readonly bound: number
  /** Order of making: ties go to the older, so that a search is the same every time. */
  readonly number: number
  readonly region: Region
  /** Basis its parent was solved with, to start from. */
  readonly basis: Uint8Array | null
}

/** The open nodes, least bound first: a binary heap. */
export class OpenNodes {
  private readonly heap: Node[] = []

  /** Least bound among them; Infinity when there are none. */
  get bound(): number {
    return this.heap[0]?.bound ?? Infinity
  }

  push(node: Node): void {
    const { heap } = this
    let k = heap.push(node) - 1
    while (k > 0) {
      const parent = (k - 1) >> 1
      if (!precedes(node, heap[parent]!)) break
      heap[k] = heap[parent]!
      k = parent
    }
    heap[k] = node
  }

  pop(): Node | null {
    const { heap } = this
    const top = heap[0]
    const last = heap.pop()
    if (top === undefined || last === undefined) return null
    if (heap.length > 0) this.sink(last)
    return top
  }

  private sink(node: Node): void {
    const { heap } = this
    let k = 0
    for (;;) {
      let child = 2 * k + 1
      if (child >= heap.length) break
      if (child + 1 < heap.length && precedes(heap[child + 1]!, heap[child]!)) child++
      if (!precedes(heap[child]!, node)) break
      heap[k] = heap[child]!
      k = child
    }
    heap[k] = node
  }
}

function precedes(a: Node, b: Node): boolean {
  return a.bound < b.bound || (a.bound === b.bound && a.number < b.number)
}
