import { describe, expect, test } from 'vitest'
import { limitsOf } from '../../src/domain/optimise/brief/limits'
import { briefOfDraft, type Draft, priceOf, type ShelfRow, withRow } from '../../src/state/draft'
import { draftOfBrief } from '../../src/state/draft-of-brief'
import { withLimitMoved } from '../../src/state/limit-moves'
import { originDoubts, tagsOnShelf, withTagBanned } from '../../src/state/shelf-tags'
import { gramsToBuy, type Stock } from '../../src/state/stock'

const BATCH_G = 5000

const DRAFT: Draft = {
  name: 'Three oils',
  currency: 'EUR',
  shelf: [
    { oil: 'palm-kernel', pricePerKg: 2, banned: true },
    { oil: 'olive', pricePerKg: 7, min: 5, max: 60, banned: false },
    { oil: 'lard', banned: false },
    { oil: 'palm', banned: false },
  ],
  groups: [
    { name: 'gone', oils: ['palm-kernel'], max: 5 },
    { name: 'hard', oils: ['lard', 'palm'], min: 10, max: 40 },
  ],
  wishes: {},
  goal: { minimise: 'hardness' },
  axes: ['hardness', 'lather'],
}

const rowOf = (draft: Draft, oil: string) => draft.shelf.find((row) => row.oil === oil)
const oliveIn = (change: Partial<ShelfRow>) =>
  briefOfDraft(withRow(DRAFT, 'olive', change), BATCH_G).oils['olive']

describe('stock', () => {
  test('no more of an oil goes in than is there', () => {
    // By hand: 600 g of 5 000 g are 12 %.
    expect(oliveIn({ stock: { grams: 600, use: 'at most' } })).toMatchObject({ min: 5, max: 12 })
  })

  test('a typed most below what is there stays in force', () => {
    expect(oliveIn({ max: 10, stock: { grams: 600, use: 'at most' } })?.max).toBe(10)
  })

  test('what is to be used up goes in as a whole and goes before typed limits and locks', () => {
    const stock: Stock = { grams: 600, use: 'all' }
    expect(oliveIn({ min: 20, max: 30, lockedAt: 25, stock })).toMatchObject({ min: 12, max: 12 })
  })

  test('more than the batch holds is the whole batch', () => {
    expect(oliveIn({ stock: { grams: 6000, use: 'all' } })).toMatchObject({ min: 100, max: 100 })
    expect(oliveIn({ stock: { grams: 6000, use: 'at most' } })?.max).toBe(60)
  })

  test('none in stock keeps an oil out', () => {
    expect(oliveIn({ min: undefined, stock: { grams: 0, use: 'at most' } })?.max).toBe(0)
  })

  test('where more may be bought, what is there limits nothing and the rest is told in grams', () => {
    const stock: Stock = { grams: 600, use: 'buy' }
    expect(oliveIn({ stock })).toMatchObject({ min: 5, max: 60 })
    // By hand: 15 % of 5 000 g are 750 g.
    expect(gramsToBuy(stock, 15, BATCH_G)).toBeCloseTo(150, 9)
    expect(gramsToBuy(stock, 10, BATCH_G)).toBe(0)
  })
})

describe('packs', () => {
  const olive = { oil: 'olive', pricePerKg: 7, banned: false }

  test('a whole pack goes before the price typed per kg', () => {
    expect(priceOf({ ...olive, pack: { size: 5, unit: 'kg', price: 40 } })).toBe(8)
    expect(oliveIn({ pack: { size: 5, unit: 'kg', price: 40 } })?.pricePerKg).toBe(8)
  })

  test('while a pack lacks a figure, the price typed per kg stays in force', () => {
    expect(priceOf({ ...olive, pack: { size: 5, unit: 'kg' } })).toBe(7)
  })

  test('a pack in litres is weighed by the density of its oil, and without one it has no price', () => {
    // data/oils.json gives olive oil a density and shea butter, solid at 25 °C, none.
    const pack = { size: 5, unit: 'l', price: 45 } as const
    expect(priceOf({ ...olive, pack })).toBeGreaterThan(9)
    expect(priceOf({ oil: 'shea', banned: false, pack })).toBeUndefined()
  })
})

describe('bans by tag', () => {
  test('every oil of the tag is banned and let back in', () => {
    const banned = withTagBanned(DRAFT, 'palm-derived', true)
    expect(rowOf(banned, 'palm')?.banned).toBe(true)
    expect(rowOf(banned, 'palm-kernel')).toBe(rowOf(DRAFT, 'palm-kernel'))
    expect(rowOf(banned, 'olive')?.banned).toBe(false)
    expect(rowOf(withTagBanned(banned, 'palm-derived', false), 'palm-kernel')?.banned).toBe(false)
  })

  test('a banned oil lets its lock go', () => {
    const locked = withRow(DRAFT, 'lard', { lockedAt: 20 })
    expect(rowOf(withTagBanned(locked, 'animal', true), 'lard')?.lockedAt).toBeUndefined()
  })

  test('tags say how many of their oils are open and banned', () => {
    const tags = tagsOnShelf(DRAFT)
    expect(tags.find(({ tag }) => tag === 'palm-derived')).toEqual({
      tag: 'palm-derived',
      open: 1,
      banned: 1,
    })
    expect(tags.some(({ tag }) => tag === 'dairy')).toBe(false)
  })

  const STEARIC = { oil: 'stearic-acid-65', banned: false }
  const withStearic = { ...DRAFT, shelf: [...DRAFT.shelf, STEARIC] }
  const doubted = (draft: Draft) => originDoubts(draft).map(({ oil, tags }) => [oil.id, ...tags])

  test.each(['palm-derived', 'animal'])(
    'a ban on all that is %s tells that stearic acid may be of it',
    (tag) => {
      expect(doubted(withStearic)).toEqual([])
      expect(doubted(withTagBanned(withStearic, tag, true))).toEqual([['stearic-acid-65', tag]])
    },
  )

  test('stearic acid that is banned itself leaves no doubt, and one palm oil left open is no ban', () => {
    const palmFree = withTagBanned(withStearic, 'palm-derived', true)
    expect(doubted(withRow(palmFree, 'stearic-acid-65', { banned: true }))).toEqual([])
    expect(doubted(withRow(palmFree, 'palm', { banned: false }))).toEqual([])
  })
})

describe('a limit moved from elsewhere', () => {
  function moved(draft: Draft, path: string, to: number): Draft {
    const brief = briefOfDraft(draft, BATCH_G)
    const limit = limitsOf(brief).find((one) => one.path === path)
    if (!limit) throw new Error(`The brief has no limit ${path}`)
    const after = withLimitMoved(draft, brief, limit, to)
    const now = limitsOf(briefOfDraft(after, BATCH_G)).find((one) => one.path === path)
    expect(now?.value).toBe(to)
    return after
  }

  test('an oil’s typed most', () => {
    expect(rowOf(moved(DRAFT, 'oils.olive.max', 70), 'olive')).toMatchObject({ min: 5, max: 70 })
  })

  test('a lock opens at one end and holds at the other', () => {
    const locked = withRow(DRAFT, 'olive', { lockedAt: 30 })
    const row = rowOf(moved(locked, 'oils.olive.max', 34), 'olive')
    expect(row).toMatchObject({ min: 29.95, max: 34, lockedAt: undefined })
  })

  test('more than is there means that more is bought', () => {
    const short = withRow(DRAFT, 'olive', { stock: { grams: 600, use: 'at most' } })
    const row = rowOf(moved(short, 'oils.olive.max', 14), 'olive')
    expect(row).toMatchObject({ max: 14, stock: { grams: 600, use: 'buy' } })
  })

  test('less than all of what is there leaves it the most', () => {
    const all = withRow(DRAFT, 'olive', { stock: { grams: 600, use: 'all' } })
    const row = rowOf(moved(all, 'oils.olive.min', 9), 'olive')
    expect(row).toMatchObject({ min: 9, stock: { grams: 600, use: 'at most' } })
  })

  test('a group after one whose oils are all banned is the one that moves, with its banned oils', () => {
    const palmFree = withRow(DRAFT, 'palm', { banned: true })
    const draft = moved(palmFree, 'groups[0].max', 45)
    expect(draft.groups).toEqual([
      { name: 'gone', oils: ['palm-kernel'], max: 5 },
      { name: 'hard', oils: ['lard', 'palm'], min: 10, max: 45 },
    ])
  })
})

test('a brief from elsewhere takes the place of the shelf, wishes and goal', () => {
  const brief = briefOfDraft(DRAFT, BATCH_G)
  const draft = draftOfBrief({ ...DRAFT, shelf: [], wishes: { lather: { min: 1 } } }, brief, 'Got')
  expect(briefOfDraft(draft, BATCH_G)).toEqual(brief)
  expect(draft.name).toBe('Got')
})
