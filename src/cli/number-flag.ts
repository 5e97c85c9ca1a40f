import { problem, type Problem } from '../domain/blend/check-blend'

/** What a flag was read as, or what is wrong with it. */
export type Read<T> = { readonly value: T } | { readonly problem: Problem }

/** A number typed after a flag, between two limits. */
export function readNumber(
  typed: unknown,
  flag: string,
  { least, most, whole }: { least: number; most: number; whole: boolean },
): Read<number> {
  const value = typeof typed === 'string' && typed.trim() !== '' ? Number(typed) : NaN
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return { value }
  const kind = whole ? 'a whole number' : 'a number'
  return wrong(flag, `${flag} is "${String(typed)}". Give ${kind} from ${least} to ${most}.`)
}

/** A flag that can't be read, and why. */
export function wrong(flag: string, message: string): { readonly problem: Problem } {
  return { problem: problem(flag, message) }
}
