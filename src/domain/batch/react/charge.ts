import { MOLAR_MASS_WATER } from '../../chemistry/atoms'
import type { AlkaliShares } from '../../chemistry/alkali-shares'
import { acidTakes, type WeighedAcid, weighedAcids } from '../weigh/acid-weights'
import { type WeighedAlkali, weighedAlkalis } from '../weigh/alkali-weights'
import type { Reckoning } from '../weigh/reckoning'

/** The alkali and acids of a batch as weighed. */
export interface Charge {
  readonly alkalis: readonly WeighedAlkali[]
  readonly acids: readonly WeighedAcid[]
  /** Pure hydroxide, mol. */
  readonly alkaliMol: number
  /** What of it acids take, mol; never more than there is. */
  readonly acidMol: number
  /** Parts of the equivalents, 0 to 1. */
  readonly shares: AlkaliShares
  /** Mean molar mass of the hydroxide, g/mol. */
  readonly gPerMol: number
}

/** A salt made from an acid; acid that found no alkali is counted with it. */
export interface Salt {
  readonly acid: WeighedAcid
  readonly grams: number
}

export function chargeOf({ order, weights, facts }: Reckoning): Charge {
  const alkalis = weighedAlkalis(order, weights.alkaliGrams)
  const acids = weighedAcids(order, weights.acidGrams, facts)
  const alkaliMol = total(alkalis, ({ equivalentsMol }) => equivalentsMol)
  const shareOf = (kind: WeighedAlkali['kind']) =>
    total(
      alkalis.filter((one) => one.kind === kind),
      ({ equivalentsMol }) => equivalentsMol,
    ) / alkaliMol
  return {
    alkalis,
    acids,
    alkaliMol,
    acidMol: Math.min(acidTakes(acids, 'all'), alkaliMol),
    shares: { naoh: shareOf('naoh'), koh: shareOf('koh') },
    gPerMol: total(alkalis, ({ pureG }) => pureG) / alkaliMol,
  }
}

/**
 * The salts of the acids in g: dry acid + hydroxide − the water they form. By hand: 15 g of citric acid
 * and 9.368 g of NaOH make 20.15 g of trisodium citrate and 4.22 g of water.
 */
export function saltsOf({ acids, acidMol, gPerMol }: Charge): Salt[] {
  const asked = acidTakes(acids, 'all')
  const part = asked > 0 ? acidMol / asked : 0
  return acids.map((acid) => {
    const dryG = acid.grams - acid.waterG
    return { acid, grams: dryG + acid.equivalentsMol * part * (gPerMol - MOLAR_MASS_WATER) }
  })
}

function total<T>(items: readonly T[], of: (item: T) => number): number {
  return items.reduce((sum, item) => sum + of(item), 0)
}
