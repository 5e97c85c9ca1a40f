import { glpk } from './glpk'
import { highs } from './highs'
import { jslp } from './jslp'
import type { Rival } from './rival'
import { yalps } from './yalps'

/** All rivals, loaded. */
export interface Rivals {
  readonly yalps: Rival
  /** The same without the bounds that the sum row implies. */
  readonly yalpsLean: Rival
  /** For searches with 0-1 variables, which it may not end for minutes. */
  readonly yalpsWithin: (timeoutMs: number) => Rival
  readonly jslp: Rival
  readonly jslpLean: Rival
  readonly glpk: Rival
  readonly highs: Rival
  /** One model changed in place and run again from its last basis. */
  readonly highsKept: Rival
}

export async function loadRivals(): Promise<Rivals> {
  const { cold, kept } = await highs()
  return {
    yalps: yalps(),
    yalpsLean: yalps({ name: 'yalps, lean', lean: true }),
    yalpsWithin: (timeoutMs) => yalps({ timeoutMs }),
    jslp: jslp(),
    jslpLean: jslp({ name: 'javascript-lp-solver, lean', lean: true }),
    glpk: await glpk(),
    highs: cold,
    highsKept: kept,
  }
}
