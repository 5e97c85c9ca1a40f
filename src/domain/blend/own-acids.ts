import { WHOLE_PERCENT } from '../units'
import type { SourcedRange } from './oil'

/** A figure that a maker states, with how far it may be off, in its unit. */
export interface OwnFigure {
  readonly value: number
  readonly within?: number | undefined
}

type Acids = Readonly<Record<string, SourcedRange>>
type Sources = Pick<SourcedRange, 'basis' | 'source' | 'typicalBasis' | 'typicalSource'>

/** How far stated acids may miss 100 and still be all there are, g per 100 g. */
export const SUM_SLACK_G = 1

/** How far an acid of a certificate may be off where it does not say: a part of it, and points; assumed. */
const SHARE_PART = 0.05
const LEAST_POINTS = 0.3

/** What stated acids add to, g per 100 g of acids. */
export function statedSum(stated: Readonly<Record<string, OwnFigure>>): number {
  return Object.values(stated).reduce((sum, { value }) => sum + value, 0)
}

/**
 * The acids of an oil of one's own, g per 100 g: the stated ones with their tolerance, and the others of the oil
 * copied from, scaled to what is left of 100 (assumed, their ranges wide enough for both). Acids that are
 * not stated are left out where the stated ones add to 100.
 */
export function ownAcids(
  stated: Readonly<Record<string, OwnFigure>> | undefined,
  copied: Acids,
  figure: Sources,
): Acids {
  if (!stated) return copied
  const left = WHOLE_PERCENT - statedSum(stated)
  return {
    ...Object.fromEntries(
      Object.entries(stated).map(([id, share]) => [id, { ...shareRange(share), ...figure }]),
    ),
    ...(left > SUM_SLACK_G ? shared(left, unstated(stated, copied)) : {}),
  }
}

/** The acids of the oil copied from that a maker did not state. */
export function unstated(stated: Readonly<Record<string, OwnFigure>>, copied: Acids): Acids {
  return Object.fromEntries(Object.entries(copied).filter(([id]) => !(id in stated)))
}

function shareRange({ value, within }: OwnFigure) {
  const room = within ?? Math.max(LEAST_POINTS, value * SHARE_PART)
  return {
    low: Math.max(0, value - room),
    typical: value,
    high: Math.min(WHOLE_PERCENT, value + room),
  }
}

function shared(left: number, others: Acids): Acids {
  const sum = Object.values(others).reduce((total, { typical }) => total + typical, 0)
  if (sum <= 0) return {}
  const part = left / sum
  return Object.fromEntries(
    Object.entries(others).map(([id, range]) => {
      const typical = range.typical * part
      return [
        id,
        {
          ...range,
          low: Math.min(range.low, typical),
          typical,
          high: Math.min(WHOLE_PERCENT, Math.max(range.high, typical)),
          typicalBasis: 'assumption',
          typicalSource: 'what the stated acids leave of 100, shared out as in the oil copied from',
        },
      ]
    }),
  )
}
