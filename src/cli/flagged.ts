import { flagRules } from '../data/flags'
import type { Blend } from '../domain/blend/blend'
import type { MeasureValues } from '../domain/blend/compare'
import { type Flag, flagsOf, isBeyondTrust } from '../domain/blend/flags'
import type { Library } from '../domain/blend/library'

interface Known {
  readonly blend: Blend
  readonly measures: MeasureValues
}

/** A blend with what a maker should know of it before making it. */
export type Flagged<T> = T & { readonly flags?: readonly Flag[] }

/** An answer with the flags of its blend, or of each of its alternatives or corners. */
export function withFlags<T extends object>(answer: T, library: Library): T {
  if (isKnown(answer)) return flagged(answer, library)
  if ('alternatives' in answer && areKnown(answer.alternatives))
    return { ...answer, alternatives: trustedFirst(answer.alternatives, library) }
  if ('vertices' in answer && areKnown(answer.vertices))
    return { ...answer, vertices: answer.vertices.map((one) => flagged(one, library)) }
  return answer
}

function flagged<T extends Known>(one: T, library: Library): Flagged<T> {
  return { ...one, flags: flagsOf(one.blend, one.measures, flagRules, library) }
}

/** In their order, but last of all those of which the measures can't say what a bar will be. */
function trustedFirst<T extends Known>(all: readonly T[], library: Library): Flagged<T>[] {
  const rank = ({ flags = [] }: Flagged<T>) => Number(isBeyondTrust(flags))
  return all.map((one) => flagged(one, library)).sort((a, b) => rank(a) - rank(b))
}

function isKnown(value: object): value is Known {
  return 'blend' in value && 'measures' in value
}

function areKnown(value: unknown): value is readonly Known[] {
  return (
    Array.isArray(value) &&
    value.every((one: unknown) => typeof one === 'object' && one !== null && isKnown(one))
  )
}
