import { expect, test } from 'vitest'
import { landedCost } from '../../../src/domain/cost/landed'
import { landedSteps, type MaterialFact, packAmount } from '../../../src/domain/cost/offer'
import { suppliesOf } from '../../../src/domain/cost/supply'
import { bookOf, KG, offer, supplies, TODAY } from './books'

const OLIVE = [offer('olive', 5, 'kg', 3550), offer('olive', 1, 'kg', 790)]

test('7 kg of olive are bought as one pack of 5 kg and two of 1 kg', () => {
  // By hand: 35.50 + 2 × 7.90 = 51.30; two of 5 kg would be 71.00.
  const landed = landedCost(supplies(OLIVE), 7 * KG, { leftovers: 'lost' })
  expect(landed).toMatchObject({ leftover: 0, chargedMinor: 5130, cover: { minor: 5130 } })
  // One more kg costs 35.50 / 5 = 7.10, and so would 7 kg 49.70.
  expect(landed?.marginalPerUnit).toBeCloseTo(0.71, 12)
  expect(landed?.proRataMinor).toBe(4970)
})

test('leftovers are charged or not, as asked', () => {
  // By hand: 8.5 kg need 2 packs of 5 kg at 71.00 or 5 + 4 × 1 at 67.10, of which 0.5 kg is left:
  // 67.10 × 0.5 / 9 = 3.7277… so 3.73; 67.10 − 3.73 = 63.37.
  expect(landedCost(supplies(OLIVE), 8.5 * KG, { leftovers: 'lost' })).toMatchObject({
    chargedMinor: 6710,
  })
  expect(landedCost(supplies(OLIVE), 8.5 * KG, { leftovers: 'valued' })).toMatchObject({
    leftoverMinor: 373,
    chargedMinor: 6337,
  })
})

test('waste makes more to be bought and each kg dearer', () => {
  // By hand: 4.9 kg / 0.98 = 5.000 kg, one pack; 35.50 / 5 / 0.98 = 7.2449 a kg, × 4.9 = 35.50.
  const landed = landedCost(supplies(OLIVE), 4.9 * KG, { wastePercent: 2, leftovers: 'lost' })
  expect(landed).toMatchObject({ chargedMinor: 3550, proRataMinor: 3550 })
  expect((landed?.marginalPerUnit ?? 0) * 10).toBeCloseTo(7.244897959, 8)
})

test('a drum that nobody would take for a spoonful does not set the price of one', () => {
  const drum = offer('olive', 200, 'kg', 100_000)
  const landed = landedCost(supplies([...OLIVE, drum]), 0.5 * KG, { leftovers: 'lost' })
  expect((landed?.marginalPerUnit ?? 0) * KG).toBeCloseTo(790, 9)
})

test.each([
  // By hand: 12.10 with 21 % in it is 10.00; a share of freight of 0.80 comes on top.
  ['taken out where the maker gets it back', true, { percent: 21, included: true }, 1080],
  // 12.10 + 0.80 × 1.21 = 13.068, so 13.07.
  ['left in where not', false, { percent: 21, included: true }, 1307],
  // 12.10 × 1.21 + 0.968 = 15.609, so 15.61.
  ['put on where it is not in it and not got back', false, { percent: 21, included: false }, 1561],
  ['left off where it is not in it and got back', true, { percent: 21, included: false }, 1290],
])('tax is %s', (_, taxBack, tax, packMinor) => {
  const one = offer('shea', 1, 'kg', 1210, { tax, freightMinor: 80 })
  expect(landedSteps(one, bookOf([one], { taxBack }))).toEqual([{ fromPacks: 1, packMinor }])
})

test('a price in another currency is turned into the book’s, decimals and all', () => {
  // By hand: 2500 yen at 0.0062 euro are 15.50 euro; yen have no decimals, euro two.
  const one = offer('camellia', 1, 'kg', 2500, { currency: 'JPY' })
  expect(landedSteps(one, bookOf([one], { rates: { JPY: 0.0062 } }))).toEqual([
    { fromPacks: 1, packMinor: 1550 },
  ])
  expect(landedSteps(one, bookOf([one]))).toBeUndefined()
})

test('a pack by volume weighs by its density', () => {
  // By hand: 5 l × 0.916 kg/l = 4.58 kg.
  expect(
    packAmount(offer('olive', 5, 'l', 3000), { name: 'Olive', densityGPerMl: 0.916 }),
  ).toBeCloseTo(4580, 9)
  expect(packAmount(offer('olive', 500, 'ml', 3000), { name: 'Olive' })).toBeUndefined()
})

test('what can’t be bought says why and what to do', () => {
  const facts = (id: string): MaterialFact => ({ name: id })
  const offers = [
    offer('olive', 5, 'l', 3000),
    offer('shea', 1, 'kg', 900, { currency: 'USD' }),
    offer('castor', 1, 'kg', 900, { on: '2027-01-01' }),
  ]
  const why = (material: string) =>
    suppliesOf(material, bookOf(offers), facts, TODAY).missing.map(({ message }) => message)
  expect(why('olive')).toEqual([
    'olive is sold by volume (5 l) and has no density. Give it in g/ml, or the pack by weight.',
  ])
  expect(why('shea')).toEqual(['shea of Harbour Oils is priced in USD. Give its rate to EUR.'])
  expect(why('castor')).toEqual(['castor has no price. Add a pack to the price book.'])
})
