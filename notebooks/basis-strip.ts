import type { Basis } from '../src/domain/chemistry/fatty-acid'

/** Surest first; the order of the strip. */
const ORDER: readonly Basis[] = ['published', 'derived', 'common practice', 'memory', 'assumption']

/** Below this share a segment is too narrow for its word; the caption still says it. */
const NARROWEST_LABEL_PERCENT = 8

/** How many figures have each basis: a strip whose segments are as wide as their number, and words. */
export function basisStrip(counts: ReadonlyMap<Basis, number>): HTMLElement {
  const figure = document.createElement('figure')
  const caption = document.createElement('figcaption')
  caption.textContent = wordsOf(counts)
  figure.append(stripOf(counts), caption)
  return figure
}

function stripOf(counts: ReadonlyMap<Basis, number>): HTMLElement {
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0)
  const strip = document.createElement('div')
  strip.className = 'counts'
  strip.setAttribute('aria-hidden', 'true')
  for (const basis of ORDER) {
    const count = counts.get(basis)
    if (count) strip.append(segmentOf(basis, (100 * count) / total))
  }
  return strip
}

function segmentOf(basis: Basis, percent: number): HTMLElement {
  const segment = document.createElement('span')
  segment.className = basis
  segment.style.width = `${percent}%`
  segment.textContent = percent < NARROWEST_LABEL_PERCENT ? '' : basis
  return segment
}

function wordsOf(counts: ReadonlyMap<Basis, number>): string {
  return ORDER.flatMap((basis) =>
    counts.has(basis) ? [`${counts.get(basis)} ${basis}`] : [],
  ).join(', ')
}
