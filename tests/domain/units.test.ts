import { evaluate, type Unit, unit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import {
  ALKALI_MOLAR_MASS,
  alkaliEquivalents,
  alkaliGrams,
  equivalentsIn,
} from '../../src/domain/chemistry/alkali'
import { MOLAR_MASS_KOH } from '../../src/domain/chemistry/atoms'
import {
  fractionFromPerMille,
  GRAMS_PER,
  gramsFrom,
  MG_PER_GRAM,
  ML_PER_LITRE,
  MS_PER_SECOND,
} from '../../src/domain/units'

/** A quantity in a unit, by mathjs, which refuses to turn one dimension into another. */
function inUnit(expression: string, name: string, values: Readonly<Record<string, number>> = {}) {
  return (evaluate(expression, { ...values }) as Unit).toNumber(name)
}

describe('conversion factors are those of mathjs', () => {
  test.each([
    ['g', 'g'],
    ['kg', 'kg'],
    ['oz', 'oz'],
    ['lb', 'lbm'],
  ] as const)('of %s', (ours, theirs) => {
    expect(GRAMS_PER[ours]).toBeCloseTo(unit(1, theirs).toNumber('g'), 12)
    expect(gramsFrom(2.5, ours)).toBeCloseTo(unit(2.5, theirs).toNumber('g'), 12)
  })

  test('of milligrams, millilitres, milliseconds and g per kg', () => {
    expect(MG_PER_GRAM).toBeCloseTo(unit(1, 'g').toNumber('mg'), 9)
    expect(ML_PER_LITRE).toBeCloseTo(unit(1, 'litre').toNumber('ml'), 9)
    expect(MS_PER_SECOND).toBeCloseTo(unit(1, 's').toNumber('ms'), 9)
    expect(fractionFromPerMille(13)).toBeCloseTo(inUnit('13 g/kg * 1 kg', 'kg'), 12)
  })
})

describe('the alkali of a fat has the dimension its name says', () => {
  const values = { koh: MOLAR_MASS_KOH }

  test('saponification value over molar mass is an amount, in mol', () => {
    const mol = inUnit('500 g * 190 mg/g / (koh g/mol)', 'mol', values)
    expect(alkaliEquivalents(500, 190)).toBeCloseTo(mol, 12)
  })

  test.each(['naoh', 'koh'] as const)(
    'an amount of %s times its molar mass is a mass, in g',
    (kind) => {
      const molar = { molar: ALKALI_MOLAR_MASS[kind] }
      expect(alkaliGrams(1.5, kind)).toBeCloseTo(inUnit('1.5 mol * molar g/mol', 'g', molar), 12)
      expect(equivalentsIn(100, 0.9, kind)).toBeCloseTo(
        inUnit('0.9 * 100 g / (molar g/mol)', 'mol', molar),
        12,
      )
    },
  )
})
