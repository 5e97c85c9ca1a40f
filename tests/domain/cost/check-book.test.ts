import { expect, test } from 'vitest'
import { materialsWith } from '../../../src/data/price-materials'
import { checkBook } from '../../../src/domain/cost/check-book'
import type { PriceBook } from '../../../src/domain/cost/offer'
import { bookOf, offer } from './books'

const wrongs = (book: PriceBook) => checkBook(book, materialsWith(book.materials))

test('a sound book has nothing wrong in it', () => {
  const steps = [
    { fromPacks: 2, priceMinor: 900 },
    { fromPacks: 5, priceMinor: 800 },
  ]
  const book = bookOf([offer('olive', 5, 'l', steps), offer('carton', 100, 'piece', 0)], {
    materials: [{ id: 'carton', name: 'Carton' }],
    suppliers: [{ supplier: 'North', freightMinor: 900, freeFromMinor: 10_000 }],
    rates: { USD: 0.9 },
  })
  expect(wrongs(book)).toEqual([])
})

test.each<[string, PriceBook, RegExp]>([
  ['currency', bookOf([], { currency: 'euro' }), /three capital letters/u],
  ['rates.USD', bookOf([], { rates: { USD: 0 } }), /The rate is 0; give one above 0/u],
  ['offers[0].material', bookOf([offer('gold', 1, 'kg', 1)]), /no material "gold"/u],
  ['offers[0].size', bookOf([offer('olive', -1, 'kg', 1)]), /holds -1; give a size above 0/u],
  ['offers[0].on', bookOf([offer('olive', 1, 'kg', 1, { on: '2026-02-30' })]), /is no day/u],
  ['offers[0].steps', bookOf([offer('olive', 1, 'kg', [])]), /No price/u],
  [
    'offers[0].steps[0].priceMinor',
    bookOf([offer('olive', 1, 'kg', 9.5)]),
    /whole number of minor units/u,
  ],
  ['offers[0].supplier', bookOf([offer('olive', 1, 'kg', 9, { supplier: ' ' })]), /No supplier/u],
  [
    'offers[0].steps[1].fromPacks',
    bookOf([
      offer(
        'olive',
        1,
        'kg',
        [5, 5].map((fromPacks) => ({ fromPacks, priceMinor: 1 })),
      ),
    ]),
    /From 5 packs; give a whole number above 5/u,
  ],
  [
    'offers[0].tax.percent',
    bookOf([offer('olive', 1, 'kg', 9, { tax: { percent: 120, included: true } })]),
    /The tax is 120 %/u,
  ],
  [
    'offers[1].unit',
    bookOf([offer('olive', 1, 'kg', 9), offer('olive', 1, 'piece', 9)]),
    /one way/u,
  ],
  [
    'suppliers[0].supplier',
    bookOf([], { suppliers: [{ supplier: 'North' }, { supplier: 'north ' }] }),
    /stands twice/u,
  ],
])('%s is told where it is wrong', (path, book, message) => {
  const [first] = wrongs(book)
  expect(first?.path).toBe(path)
  expect(first?.message).toMatch(message)
})
