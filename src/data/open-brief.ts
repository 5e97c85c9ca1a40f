import { checkBrief } from '../domain/optimise/brief/check-brief'
import type { Brief } from '../domain/optimise/brief/brief'
import type { Library } from '../domain/blend/library'
import { briefFile, briefOf } from './brief-file'
import { ownOilsRefused } from './own-oil-file'
import { type Parsed, parseJson } from './problems'

/** The longest text that can be a brief, in characters; a thousand oils stay far below. */
const LONGEST_TEXT = 1e6

/**
 * Reads a brief for the page from the text of a file. A price that the brief would need may be missing:
 * the page has a place to give it.
 */
export function openBrief(text: string, library: Library): Parsed<Brief> {
  if (text.length > LONGEST_TEXT) return refused('The file is too long to be a brief.')
  const parsed = parseJson(briefFile, text)
  if (parsed.status === 'invalid') return parsed
  const refusals = ownOilsRefused(parsed.value.ownOils, 'ownOils')
  if (refusals.length > 0) return { status: 'invalid', problems: refusals }
  const brief = briefOf(parsed.value)
  const problems = checkBrief(allPriced(brief), library)
  return problems.length > 0 ? { status: 'invalid', problems } : { status: 'parsed', value: brief }
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
