import { ALKALI_TITLES } from '../../../domain/chemistry/alkali'
import { batchFacts } from '../../../data/batch-facts'
import { library } from '../../../state/library'
import type { Mark, Standing } from '../../../domain/batch/superfat/stands-on'

/** A figure with its mark and, in words, what stands behind it. */
export interface MarkedFigure {
  readonly key: string
  readonly name: string
  readonly mark: Mark
  /** The mark in words. */
  readonly means: string
  readonly source: string
}

const MEANS: Readonly<Record<Mark, string>> = {
  certificate: 'certificate of this lot',
  ownTest: 'test of your own',
  read: 'read in print',
  recalled: 'recalled from memory',
  assumed: 'assumed, nothing better was found',
}

/** Figures at the lean end, as they stand on the page. */
export function standingsInWords(standings: readonly Standing[]): MarkedFigure[] {
  return standings.map(({ what, id, mark, source }, index) => ({
    key: `${what}:${id}:${index}`,
    name: nameOf(what, id),
    mark,
    means: MEANS[mark],
    source: sourceInWords(source),
  }))
}

function nameOf(what: Standing['what'], id: string): string {
  if (what === 'alkali') return ALKALI_TITLES[id === 'koh' ? 'koh' : 'naoh']
  if (what === 'acid') return batchFacts.acids.get(id)?.name ?? id
  return library.oils.get(id)?.shortName ?? id
}

/** The citation of a source of the library with what was taken from it; other words as they are. */
function sourceInWords(source: string): string {
  const known = library.sources.get(source)
  return known ? `${known.citation}. ${known.taken}` : source
}
