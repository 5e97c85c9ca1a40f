import { limitsOf } from '../brief/limits'
import { limitInWords, type Speech, valueInWords } from './limit-words'
import type { Nearest } from '../infeasible/nearest'

const COUNTS = ['', '', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

/** Which limits cannot hold together, in one sentence; the paths are those of `conflictOf`. */
export function conflictSentence(speech: Speech, conflict: readonly string[]): string {
  const limits = namesOf(speech, conflict)
  const [only] = limits
  if (only !== undefined && limits.length === 1) return `No blend of the shelf has ${only}.`
  const count = COUNTS[limits.length] ?? String(limits.length)
  return `These ${count} cannot hold together: ${list(limits)}. Without any one of them the rest can.`
}

/** The changes that make the nearest brief with a blend, or which locked limits stand in the way. */
export function nearestSentence(speech: Speech, nearest: Nearest): string {
  if (nearest.status === 'locked') {
    const limits = namesOf(speech, nearest.conflict)
    return `The locked limits leave no blend: ${list(limits)}. Unlock one of them.`
  }
  if (nearest.changes.length === 0) return 'The brief has a blend as it stands.'
  const limits = limitsOf(speech.brief)
  const changes = nearest.changes.flatMap(({ limit: path, to }) => {
    const limit = limits.find((one) => one.path === path)
    if (!limit) return []
    const asked = valueInWords(speech, limit, limit.value)
    return [`${limitInWords(speech, limit, to)} instead of ${asked}`]
  })
  return `The nearest brief with a blend asks for ${list(changes)}.`
}

function namesOf(speech: Speech, paths: readonly string[]): string[] {
  return limitsOf(speech.brief)
    .filter(({ path }) => paths.includes(path))
    .map((limit) => limitInWords(speech, limit))
}

/** "a", "a and b", "a, b and c". */
function list(parts: readonly string[]): string {
  const last = parts.at(-1) ?? ''
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`
}
