import { leavesRoom } from '../lp/touching'
import { WHOLE_PERCENT } from '../units'
import { type Blend, totalShare } from './blend'
import type { Library } from './library'

/** One thing wrong with what a person put in: where it stands, and what to change. */
export interface Problem {
  readonly path: string
  readonly message: string
}

/** How far stated shares may add up beside 100 % before they are called wrong, in percent. */
export const SHARE_SUM_SLACK_PERCENT = 0.5

/** What is wrong with the shares of a stated blend; empty when it can be scaled to 100 %. */
export function checkBlend(blend: Blend, library: Library, path: string): Problem[] {
  const unknown = Object.keys(blend).flatMap((oil) => unknownOil(oil, library, `${path}.${oil}`))
  const wrong = Object.entries(blend).flatMap(([oil, share]) =>
    share >= 0 && leavesRoom(share, WHOLE_PERCENT) ? [] : [shareProblem(`${path}.${oil}`, share)],
  )
  if (wrong.length > 0) return [...unknown, ...wrong]
  const total = totalShare(blend)
  if (Math.abs(total - WHOLE_PERCENT) <= SHARE_SUM_SLACK_PERCENT) return unknown
  const message = `The shares add to ${plain(total)} %; a blend adds to 100 %. Change the shares until they do.`
  return [...unknown, problem(path, message)]
}

/** The problem of naming an oil that the library does not hold. */
export function unknownOil(oil: string, library: Library, path: string): Problem[] {
  if (library.oils.has(oil)) return []
  return [
    problem(path, `There is no oil "${oil}" in the library. The command oils lists their ids.`),
  ]
}

/** The problem of a share outside 0 to 100 %. */
export function shareProblem(path: string, share: number): Problem {
  const message = `The share is ${plain(share)} %; shares run from 0 to 100 %. Give one in that range.`
  return problem(path, message)
}

/** A problem at a path. */
export function problem(path: string, message: string): Problem {
  return { path, message }
}

/** A number as a person would write it, without the noise of floating point. */
export function plain(value: number): string {
  return String(Number(value.toPrecision(6)))
}
