import { describe, expect, test } from 'vitest'
import file from '../../data/allergens.json'
import { allergenList, scents } from '../../src/data/fragrance-file'

/** The check digit of a CAS number: Σ digit × place from the right, modulo 10. */
function casHolds(cas: string): boolean {
  const digits = cas.replaceAll('-', '')
  const sum = [...digits.slice(0, -1)]
    .toReversed()
    .reduce((total, digit, i) => total + Number(digit) * (i + 1), 0)
  return sum % 10 === Number(digits.at(-1))
}

describe('the list of allergens', () => {
  const { allergens, banned } = allergenList

  test('has the 24 older names, 12 older entries and 45 new entries 327 to 371', () => {
    expect(allergens.filter(({ listed }) => listed === 'older')).toHaveLength(24)
    const entries = allergens.map(({ annexEntry }) => annexEntry)
    const added = entries.filter((entry) => entry >= 327)
    expect(added.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 45 }, (_, i) => 327 + i))
    expect(allergens).toHaveLength(81)
    expect(new Set(entries).size).toBe(81)
  })

  test('has CAS numbers whose check digits hold', () => {
    const numbers = [...allergens.flatMap(({ cas }) => cas), ...banned.map(({ cas }) => cas)]
    expect(numbers.filter((cas) => !casHolds(cas))).toEqual([])
    expect(casHolds('78-70-5')).toBe(false)
  })

  test('names no CAS twice, and none that is banned', () => {
    const numbers = allergens.flatMap(({ cas }) => cas)
    expect(numbers.toSorted()).toEqual([...new Set(numbers)].toSorted())
    for (const { cas } of banned) expect(numbers).not.toContain(cas)
  })

  test('asks for a name above 0.01 % of a product that is rinsed off', () => {
    expect(file.rinseOffLimitPercent).toBe(0.01)
  })

  /** The added names as a public summary of the regulation lists them, read; the list in data/ was not made of it. */
  test.for([
    ...['Pinus Mugo', 'Cedrus Atlantica Oil/Extract', 'Turpentine', 'Alpha-Terpinene'],
    ...['Myroxylon Pereirae Oil/Extract', 'Rose Ketones', '3-Propylidenephthalide'],
    ...['Methyl Salicylate', 'Acetyl Cedrene', 'Anethole', 'Benzaldehyde', 'Camphor'],
    ...['Beta-Caryophyllene', 'Carvone', 'Hexamethylindanopyran', 'Linalyl Acetate', 'Menthol'],
    ...['Salicylaldehyde', 'Santalol', 'Terpineol', 'Vanillin', 'Cananga Odorata Oil/Extract'],
    ...['Citrus Aurantium Peel Oil', 'Citrus Limon Peel Oil', 'Lemongrass Oil'],
    ...['Eucalyptus Globulus Oil', 'Eugenia Caryophyllus Oil', 'Lavandula Oil/Extract'],
    ...['Mentha Piperita Oil', 'Pelargonium Graveolens Flower Oil', 'Pogostemon Cablin Oil'],
    ...['Rose Flower Oil/Extract', 'Santalum Album Oil', 'Geranyl Acetate', 'Pinene'],
  ])('holds %s as added', (name) => {
    expect(allergens.find((one) => one.name === name)?.listed).toBe('2023')
  })
})

describe('essential oils', () => {
  test('hold no more than the whole of what is listed, at the low ends', () => {
    for (const { id, constituents } of scents) {
      const low = constituents.reduce((sum, { lowPercent }) => sum + lowPercent, 0)
      expect(low, id).toBeLessThanOrEqual(100)
      expect(constituents.length, id).toBeGreaterThan(0)
    }
  })

  test('have a note where the profile is known with low confidence', () => {
    const weak = ['geranium', 'rosemary-spain', 'eucalyptus-globulus', 'ylang-ylang']
    for (const id of weak)
      expect(scents.find((one) => one.id === id)?.note, id).toMatch(/Low confidence/u)
  })

  /** PMC9148000 Table 2 and PMC9000678 Table 6, read. */
  test.for([
    ['lavender', 'linalool', 20, 43],
    ['lavender', 'linalyl-acetate', 25, 47],
    ['lavandin-grosso', 'camphor', 6.5, 8],
    ['lavender-spike', 'linalool', 34, 50],
  ] as const)('%s holds %s of %f to %f %%', ([scent, allergen, low, high]) => {
    const one = scents
      .find(({ id }) => id === scent)
      ?.constituents.find((c) => c.allergen === allergen)
    expect([one?.lowPercent, one?.highPercent]).toEqual([low, high])
  })
})
