import { ALKALI_MOLAR_MASS, type AlkaliKind } from '../../chemistry/alkali'
import { percentFromFraction } from '../../units'
import type { AlkaliLimits, Titration } from './alkali-test'

const ML_PER_LITRE = 1000

/**
 * Free caustic alkali in percent of the bar, as `kind`: V·N·M / 1000 / g × 100, with V ml of acid of N
 * mol/l and M g/mol. With M = 40.0 for NaOH it is V·N·4.0/g, as the ethanol method for free caustic alkali
 * (ISO 456, recalled) has it: 0.1 ml of 0.1 N on 5 g is 0.008 %.
 */
export function alkaliPercent(
  acidMl: number,
  { normality, sampleG }: Pick<Titration, 'normality' | 'sampleG'>,
  kind: AlkaliKind,
): number {
  const mol = (acidMl / ML_PER_LITRE) * normality
  return percentFromFraction((mol * ALKALI_MOLAR_MASS[kind]) / sampleG)
}

/** Acid that the soap took, ml: less the blank; a blank over it by less than a reading's error leaves 0. */
export function takenMl({ acidMl, blankMl = 0 }: Titration): number {
  return Math.max(0, acidMl - blankMl)
}

/**
 * How far a titration may be off by reading the burette alone, percent as `kind`: one reading's error for
 * the soap and, where there is one, one for the blank, both the same way.
 */
export function readingPercent(
  test: Titration,
  { readingMl }: Pick<AlkaliLimits, 'readingMl'>,
  kind: AlkaliKind,
): number {
  const readings = test.blankMl === undefined ? 1 : 2
  return alkaliPercent(readings * readingMl, test, kind)
}
