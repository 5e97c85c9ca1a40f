import { expect, test } from 'vitest'
import { guardRows, purityInWords } from '../../../../src/domain/batch/sheet/guard-rows'
import type { BatchOrder } from '../../../../src/domain/batch/order/order'
import { ready } from '../plans'

const told = (change: Partial<BatchOrder>) =>
  new Map(guardRows(ready(change)).map(({ what, value }) => [what, value]))

test('a sheet says which purity was used, how it is meant and what the lean end counts', () => {
  const of = (change: Partial<BatchOrder>) => purityInWords(ready(change).order, 'naoh')
  expect(of({ purity: { naoh: 97 } })).toBe('97 % at least; the lean end counts it as 100 %')
  expect(of({ purity: { naoh: 98 }, purityIs: { naoh: 'exactly' } })).toBe('98 % exactly')
  const certificate = { certificate: 'NA-2207', within: 0.3 }
  expect(of({ purity: { naoh: 99 }, purityIs: { naoh: certificate } })).toBe(
    '99 % by certificate NA-2207; the lean end counts it as 99.3 %',
  )
  expect(of({ purity: {} })).toBe('taken as pure')
})

test('the tick is an empty box until it is set by hand, and stands only where the worst is under 0', () => {
  const lean = { purity: { naoh: 97 }, superfat: 5 }
  const plan = ready(lean)
  expect(plan.superfat.reachPercent.min).toBeLessThan(0)
  expect(told(lean).get('Worst case read')).toBe('[ ]')
  expect(told({ ...lean, leanSeen: true }).get('Worst case read')).toBe('[x] ticked by hand')
  expect(told({ superfat: 20 }).has('Worst case read')).toBe(false)
})

test('the wide span stands beside one that a certificate narrows', () => {
  expect(told({ superfat: 8 }).has('At worst, without certificates')).toBe(false)
  const lots = { olive: { saponificationValue: 190, tolerance: 1 } }
  const rows = told({ superfat: 8, lots })
  const least = (what: string) => Number.parseFloat(rows.get(what) ?? '')
  expect(least('At worst, without certificates')).toBeLessThan(least('At worst'))
})
