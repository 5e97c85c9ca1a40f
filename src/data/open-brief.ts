import { checkBrief } from '../domain/optimise/brief/check-brief'
import type { Brief } from '../domain/optimise/brief/brief'
import { briefFile, briefOf } from './brief-file'
import type { Library } from './library'
import type { OwnOil } from '../domain/blend/own-oil'
import { withOwnOils } from './own-oil-file'
import { type Parsed, parseJson } from './problems'

/** A brief as it was saved, with the oils of one's own that came with it. */
export interface OpenedBrief {
  readonly brief: Brief
  readonly ownOils: readonly OwnOil[]
}

/** The longest text that can be a brief, in characters; a thousand oils stay far below. */
const LONGEST_TEXT = 1e6

/**
 * Reads a brief for the page from the text of a file. A price that the brief would need may be missing:
 * the page has a place to give it.
 */
export function openBrief(text: string, library: Library): Parsed<OpenedBrief> {
  if (text.length > LONGEST_TEXT) return refused('The file is too long to be a brief.')
  const parsed = parseJson(briefFile, text)
  if (parsed.status === 'invalid') return parsed
  const { ownOils = [] } = parsed.value
  const known = withOwnOils(library, ownOils)
  if (known.status === 'invalid') return known
  const brief = briefOf(parsed.value)
  const problems = checkBrief(allPriced(brief), known.value)
  return problems.length > 0
    ? { status: 'invalid', problems }
    : { status: 'parsed', value: { brief, ownOils } }
}

function refused(message: string): Parsed<never> {
  return { status: 'invalid', problems: [{ path: '', message }] }
}

/** The brief as if no price were missing. */
function allPriced(brief: Brief): Brief {
  const oils = Object.fromEntries(
    Object.entries(brief.oils).map(([id, oil]) => [
      id,
      { ...oil, pricePerKg: oil.pricePerKg ?? 0 },
    ]),
  )
  return { ...brief, oils }
}
