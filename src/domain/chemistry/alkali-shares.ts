import { ALKALI_MOLAR_MASS, type AlkaliKind } from './alkali'

/** A figure for each alkali. */
export type AlkaliShares = Readonly<Record<AlkaliKind, number>>

/**
 * Parts of the equivalents (0 to 1, adding to 1) of alkalis given as parts of their weight:
 * x_K = (w_K / M_K) / (w_K / M_K + w_Na / M_Na), w in any one unit, of pure hydroxide.
 * By hand: 60 to 40 by weight is 51.7 to 48.3 by mol.
 */
export function equivalentsFromWeights(weights: AlkaliShares): AlkaliShares {
  return shared({
    naoh: weights.naoh / ALKALI_MOLAR_MASS.naoh,
    koh: weights.koh / ALKALI_MOLAR_MASS.koh,
  })
}

/** The same figures as parts of their sum. */
export function shared({ naoh, koh }: AlkaliShares): AlkaliShares {
  const total = naoh + koh
  return { naoh: naoh / total, koh: koh / total }
}
