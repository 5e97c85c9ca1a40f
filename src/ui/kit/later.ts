import type { Component } from 'svelte'

/** Loads a component that needs nothing of who shows it. */
export type LateComponent = () => Promise<{ readonly default: Component }>

/** Loads once more what did not come, styles and all: a link that failed would not be asked for again. */
export function loadAgain(load: LateComponent): ReturnType<LateComponent> {
  for (const link of document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]'))
    if (!link.sheet) link.remove()
  return load()
}

/**
 * Loads one after the other while the page has nothing else to do, so that they are there even when the
 * server is not. What does not come is asked for again, and said, when it is looked at.
 * Returns what calls it off.
 */
export function loadWhenIdle(loads: readonly (() => Promise<unknown>)[]): () => void {
  let off = false
  const next = ([load, ...others]: typeof loads) => {
    if (!load || off) return
    const goOn = () => next(others)
    whenIdle(() => void load().then(goOn, goOn))
  }
  next(loads)
  return () => (off = true)
}

/** Not every browser tells when it is idle; there, after what is at hand. */
function whenIdle(then: () => void): void {
  if ('requestIdleCallback' in window) requestIdleCallback(then)
  else setTimeout(then)
}
