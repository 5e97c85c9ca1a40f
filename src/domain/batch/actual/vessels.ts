import type { Actuals } from './actual-weights'

/** Where what is weighed goes. The lye is made in the jug; all else stands in the pot. */
export type Vessel = 'pot' | 'jug'

/** What the empty vessels weigh, g; a vessel left out stands on a scale that was zeroed with it. */
export type Tares = { readonly [vessel in Vessel]?: number | undefined }

/** Of the lye in the jug only a part went into the pot, with plain water in place of the rest. */
export interface LyePart {
  /** Lye into the pot, g. */
  readonly usedG: number
  /** All the lye there was, g. */
  readonly ofG: number
  /** Plain water put into the pot in its place, g. */
  readonly waterG: number
}

/** One weighing, by its vessel. */
export interface Reading {
  readonly vessel: Vessel
  /** What the vessel holds once it is in, g. */
  readonly holdsG: number
  /** What the scale then shows, g: the vessel counts where its weight is known. */
  readonly showsG: number
  /** What the scale showed before, g. */
  readonly beforeG: number
}

/** A step as far as its weighings go. */
export interface PouredStep {
  readonly id: string
  readonly vessel: Vessel
  readonly lines: readonly { readonly key: string; readonly grams: number }[]
}

/** The step in which the jug is poured into the pot. */
const POURED_TOGETHER = 'combine'

/**
 * What pot and jug show once each line is in, g by key: the planned weights, or those given in their place.
 * When lye meets oil the pot takes all that the jug holds, or the part of it that is used.
 */
export function readingsOf(
  steps: readonly PouredStep[],
  grams: Actuals = {},
  { tares = {}, part }: { tares?: Tares; part?: LyePart | undefined } = {},
): ReadonlyMap<string, Reading> {
  const holds = { pot: 0, jug: 0 }
  const readings = new Map<string, Reading>()
  for (const { id, vessel, lines } of steps) {
    const tare = tares[vessel] ?? 0
    for (const line of lines) {
      const beforeG = tare + holds[vessel]
      holds[vessel] += grams[line.key] ?? line.grams
      const holdsG = holds[vessel]
      readings.set(line.key, { vessel, holdsG, showsG: tare + holdsG, beforeG })
    }
    if (id === POURED_TOGETHER) holds.pot += part ? part.usedG + part.waterG : holds.jug
  }
  return readings
}

/** What the pot holds when all lye that is used is in and nothing later is, g. */
export function batterG(
  steps: readonly PouredStep[],
  grams: Actuals,
  part: LyePart | undefined,
): number {
  const before = steps.slice(0, 1 + steps.findIndex(({ id }) => id === POURED_TOGETHER))
  const of = (which: Vessel) =>
    before
      .filter(({ vessel }) => vessel === which)
      .flatMap(({ lines }) => lines)
      .reduce((g, line) => g + (grams[line.key] ?? line.grams), 0)
  return of('pot') + (part ? part.usedG + part.waterG : of('jug'))
}
