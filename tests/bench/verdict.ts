import type { Standing } from './program/contest'
import type { TaskResult } from './program/task'
import { time, times } from './table'
import { BEST, type Target } from './targets'

/** A target beside what was measured. */
export interface Verdict {
  readonly target: Target
  readonly own: Standing
  readonly best: Standing
  /** Rival's median in our median, of the best rival. */
  readonly ratioToBest: number
  /** One entry for each part of the target, in words. */
  readonly met: readonly string[]
  readonly missed: readonly string[]
}

/** Whether an entry is one of ours. */
export function isOurs({ name }: Standing): boolean {
  return name.startsWith('barwright')
}

export function verdictOn(target: Target, { standings }: TaskResult): Verdict {
  const own = standingOf(standings, target.own)
  const best = standings
    .filter((one) => !isOurs(one))
    .reduce((a, b) => (b.times.median < a.times.median ? b : a))
  const rival = target.ratio.to === BEST ? best : standingOf(standings, target.ratio.to)
  const parts = [...ratioParts(target, own, rival), ...guideParts(target, own)]
  return {
    target,
    own,
    best,
    ratioToBest: best.times.median / own.times.median,
    met: parts.filter(({ isMet }) => isMet).map(({ text }) => text),
    missed: parts.filter(({ isMet }) => !isMet).map(({ text }) => text),
  }
}

interface Part {
  readonly isMet: boolean
  readonly text: string
}

function ratioParts({ ratio }: Target, own: Standing, rival: Standing): Part[] {
  const { to, atLeast, alsoInP99 } = ratio
  const named = to === BEST ? `${BEST} (${rival.name})` : to
  const part = (found: number, where: string): Part => ({
    isMet: found >= atLeast,
    text: `${times(found)} ${named}${where}, at least ${atLeast}`,
  })
  const median = part(rival.times.median / own.times.median, '')
  return alsoInP99 ? [median, part(rival.times.p99 / own.times.p99, ' in p99')] : [median]
}

function guideParts(
  { medianMs, p99Ms, p99PerMedian }: Target,
  { times: { median, p99 } }: Standing,
) {
  const parts: Part[] = []
  const guide = (value: number, most: number, what: string) =>
    parts.push({ isMet: value <= most, text: `${what} ${time(value)}, guide ${time(most)}` })
  if (medianMs !== undefined) guide(median, medianMs, 'median')
  if (p99Ms !== undefined) guide(p99, p99Ms, 'p99')
  if (p99PerMedian !== undefined) {
    const found = p99 / median
    const text = `p99 ${times(found)} the own median, at most ${p99PerMedian}`
    parts.push({ isMet: found <= p99PerMedian, text })
  }
  return parts
}

export function standingOf(standings: readonly Standing[], name: string): Standing {
  const found = standings.find((one) => one.name === name)
  if (found) return found
  throw new Error(`No figures of ${name}; there are ${standings.map((one) => one.name).join(', ')}`)
}

/** Whether all solvers say the same, and who does not. */
export function agreement({ standings }: TaskResult): string {
  const odd = standings.flatMap(({ name, answers, none, differing }) => [
    ...(none > 0 ? [`${name}: no answer to ${none} of ${answers}`] : []),
    ...(differing > 0 ? [`${name}: ${differing} of ${answers} differ`] : []),
  ])
  const most = Math.max(...standings.map(({ answers }) => answers))
  return odd.length > 0 ? odd.join('; ') : `all ${most} agree`
}
