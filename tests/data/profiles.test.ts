import { describe, expect, it } from 'vitest'
import type { OilFamily } from '../../src/domain/blend/oil'
import { allOils, oilOf } from './oils'

describe('typical profiles', () => {
  it.each(allOils.map((oil) => [oil.id, oil] as const))(
    'of %s add up to 100 within 1 g per 100 g of acids',
    (_, { acids }) => {
      const sum = Object.values(acids).reduce((total, { typical }) => total + typical, 0)
      expect(Math.abs(sum - 100)).toBeLessThanOrEqual(1)
    },
  )

  it.each(allOils.map((oil) => [oil.id, oil] as const))('of %s lie in their ranges', (_, oil) => {
    const outside = Object.entries(oil.acids).filter(
      ([, { low, typical, high }]) => typical < low || typical > high,
    )
    expect(outside).toEqual([])
  })

  it.each(allOils.map((oil) => [oil.id, oil] as const))(
    'of %s could be met: the lows leave room and the highs reach 100',
    (_, { acids }) => {
      const shares = Object.values(acids)
      expect(shares.reduce((total, { low }) => total + low, 0)).toBeLessThanOrEqual(100)
      expect(shares.reduce((total, { high }) => total + high, 0)).toBeGreaterThanOrEqual(100)
    },
  )
})

describe('the family of an oil', () => {
  const SHORT = ['butyric', 'caproic', 'caprylic', 'capric', 'lauric', 'myristic', 'myristoleic']
  const LONG_SATURATED = ['pentadecanoic', 'palmitic', 'margaric', 'stearic', 'arachidic'].concat(
    'behenic',
    'lignoceric',
    'dihydroxystearic',
  )
  const POLYUNSATURATED = ['linoleic', 'alpha-linolenic', 'gamma-linolenic', 'punicic'].concat(
    'eleostearic',
    'eicosadienoic',
    'arachidonic',
    'docosadienoic',
    'abietic',
  )

  /** The rule of data/oils.md, in g per 100 g of acids. */
  function familyByRule(id: string): OilFamily {
    const { acids } = oilOf(id)
    const total = (names: readonly string[]) =>
      names.reduce((sum, name) => sum + (acids[name]?.typical ?? 0), 0)
    if (total(['ricinoleic']) >= 40) return 'ricinoleic'
    if (total(SHORT) >= 40) return 'lauric'
    if (total(LONG_SATURATED) >= 35) return 'hard'
    return total(POLYUNSATURATED) >= 35 ? 'polyunsaturated' : 'oleic'
  }

  it.each(allOils.map(({ id, family }) => [id, family] as const))(
    'of %s follows from its acids',
    (id, family) => {
      expect(family).toBe(familyByRule(id))
    },
  )
})
