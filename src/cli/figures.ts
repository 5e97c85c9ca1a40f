import { problem, type Problem } from '../domain/blend/check-blend'
import type { Read } from './number-flag'
import type { Flags } from './command'

/** Figures by name, typed as "olive=60,coconut=40"; undefined where the flag is left out. */
export function readFigures(
  typed: Flags[string],
  flag: string,
): Read<Readonly<Record<string, number>> | undefined> {
  if (typed === undefined) return { value: undefined }
  const figures: Record<string, number> = {}
  for (const part of String(typed).split(',')) {
    const [name = '', figure = '', ...more] = part.split('=').map((text) => text.trim())
    const value = figure === '' ? NaN : Number(figure)
    if (name === '' || more.length > 0 || !Number.isFinite(value))
      return { problem: problem(flag, `"${part}" is no figure. Write it as olive=60.`) }
    if (Object.hasOwn(figures, name))
      return { problem: problem(flag, `"${name}" stands here more than once. Name it once.`) }
    figures[name] = value
  }
  return { value: figures }
}

/** What several flags were read as. */
type Values<R> = { readonly [K in keyof R]: R[K] extends Read<infer T> ? T : never }

/** Several flags read together: all their values, or all that is wrong with them. */
export function readAll<R extends Readonly<Record<string, Read<unknown>>>>(
  reads: R,
): { readonly values: Values<R> } | { readonly problems: readonly Problem[] } {
  const problems = Object.values(reads).flatMap((read) => ('problem' in read ? [read.problem] : []))
  if (problems.length > 0) return { problems }
  const values = Object.entries(reads).map(([flag, read]) => [
    flag,
    'value' in read ? read.value : undefined,
  ])
  return { values: Object.fromEntries(values) as Values<R> }
}
