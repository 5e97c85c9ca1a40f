import type { FattyAcid } from '../chemistry/fatty-acid'
import type { NaturalRange, OilFamily } from './oil'

/** g per 100 g of acids from which an acid of a kind names the family of its oil (data/oils.md). */
const RICINOLEIC_G = 40
const SHORT_G = 40
const HARD_G = 35
const POLYUNSATURATED_G = 35

/** The longest acid that counts as short. */
const SHORT_CARBONS = 14

/**
 * The family of an oil by its typical acids (g per 100 g of acids): ricinoleic, lauric, hard, polyunsaturated,
 * else oleic, whichever comes first. Throws for an acid that is not listed.
 */
export function familyOf(
  profile: Readonly<Record<string, NaturalRange>>,
  acids: ReadonlyMap<string, FattyAcid>,
): OilFamily {
  const gramsOf = (counts: (acid: FattyAcid) => boolean) =>
    Object.entries(profile).reduce((sum, [id, { typical }]) => {
      const acid = acids.get(id)
      if (!acid) throw new Error(`Fatty acid ${id} is not listed: add it to data/fatty-acids.json`)
      return counts(acid) ? sum + typical : sum
    }, 0)
  if (gramsOf(({ id }) => id === 'ricinoleic') >= RICINOLEIC_G) return 'ricinoleic'
  if (gramsOf(({ carbons }) => carbons <= SHORT_CARBONS) >= SHORT_G) return 'lauric'
  const isHard = ({ carbons, doubleBonds }: FattyAcid) =>
    carbons > SHORT_CARBONS && doubleBonds === 0
  if (gramsOf(isHard) >= HARD_G) return 'hard'
  return gramsOf(({ doubleBonds }) => doubleBonds > 1) >= POLYUNSATURATED_G
    ? 'polyunsaturated'
    : 'oleic'
}
