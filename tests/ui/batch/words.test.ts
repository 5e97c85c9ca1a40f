import { describe, expect, test } from 'vitest'
import { EXAMPLE_WORK } from '../../../src/state/first-work'
import { GROUPS, groupMending } from '../../../src/ui/batch/order/groups'
import {
  FIRST_SHAPES,
  mouldInWords,
  mouldSizeInWords,
  reshaped,
  SHAPES,
  shapeOf,
} from '../../../src/ui/batch/words/mould-words'
import { orderInWords } from '../../../src/ui/batch/words/order-words'
import { massText, spanText, withMinus } from '../../../src/ui/batch/words/shown'
import { today } from '../../../src/data/today'

/** Thin spaces as plain ones. */
const plain = (text: string) => text.replaceAll('\u2009', ' ')

describe('moulds', () => {
  test('every shape begins with a mould of that shape', () => {
    for (const { value } of SHAPES) expect(shapeOf(FIRST_SHAPES[value])).toBe(value)
  })

  test('another shape keeps how many there are and how far they are filled', () => {
    const mould = { volumeMl: 500, count: 3, fillPercent: 90 }
    expect(reshaped(mould, 'waterGrams')).toEqual({ waterGrams: 1000, count: 3, fillPercent: 90 })
  })

  test('are said in words with their inside', () => {
    const loaf = { loafMm: { length: 250, bottomWidth: 80, topWidth: 90, height: 65 } }
    expect(mouldInWords({ ...loaf, count: 2 })).toBe('2 loaf moulds')
    expect(plain(mouldSizeInWords({ ...loaf, fillPercent: 95 }))).toBe(
      '250 by 80 to 90 by 65 mm, filled to 95 %',
    )
    expect(mouldInWords({ volumeMl: 1200 })).toBe('a mould')
    expect(plain(mouldSizeInWords({ volumeMl: 1200 }))).toBe('1 200 ml')
    expect(plain(mouldSizeInWords({ cavities: { count: 6, volumeMl: 95 } }))).toBe('6 of 95 ml')
    expect(plain(mouldSizeInWords({ cylinderMm: { diameter: 70, length: 300 } }))).toBe(
      '70 mm across, 300 mm long',
    )
    expect(plain(mouldSizeInWords({ waterGrams: 998 }))).toBe('998 g of water fill it')
    expect(plain(mouldSizeInWords({ boxMm: { length: 400, width: 250, height: 30 } }))).toBe(
      '400 by 250 by 30 mm',
    )
  })
})

describe('what was asked, under the title of a printed sheet', () => {
  const { batch } = EXAMPLE_WORK

  test('is short for a plain batch', () => {
    expect(plain(orderInWords(batch))).toBe(
      '6.5 % superfat by lye discount, sodium hydroxide 98.5 % pure at least, lye at 33.0 %, cold process',
    )
  })

  test('names both alkalis with the convention, fat kept back and solutions', () => {
    const words = orderInWords({
      ...batch,
      process: 'hot',
      water: { onlyFromLiquids: true },
      secondAlkali: { percent: 40, by: 'weight' },
      lyeSolution: { naoh: 50 },
      extraFat: { percent: 5, of: 'oils', oils: { shea: 1 }, when: 'afterCook' },
    })
    expect(plain(words)).toBe(
      '6.5 % superfat by lye discount, 5.0 % fat kept back, ' +
        'sodium hydroxide as solution of 50.0 % and potassium hydroxide 90.0 % pure at least for 40.0 % by weight, ' +
        'water only from liquids, hot process',
    )
  })
})

describe('groups', () => {
  test('say nothing of a plain batch', () => {
    expect(GROUPS.map(({ said }) => said(EXAMPLE_WORK.batch)).join('')).toBe('')
  })

  test.for([
    ['lots.olive.saponificationValue', 'lots'],
    ['acids[0].strengthPercent', 'additions'],
    ['mould.loafMm.length', 'size'],
    ['scale.oilStepG', 'size'],
    ['fragrance.blend', 'scent'],
    ['papers.productCode', 'papers'],
    ['liquids[1]', 'water'],
    ['extraFat.oils', 'lye'],
    ['cook', 'water'],
    ['blend.olive', undefined],
  ] as const)('the problem %s is mended in %s', ([path, group]) => {
    expect(groupMending(path)).toBe(group)
  })
})

test('a weight is shown to the step of its scale in any unit', () => {
  expect(plain(massText(1518, 'g', 1))).toBe('1 518 g')
  // 692 / 28.349523125 = 24.4096; a step of 1 g is 0.035 oz, so two decimals.
  expect(plain(massText(692, 'oz', 1))).toBe('24.41 oz')
})

test('spans and signs are written as the page writes them', () => {
  expect(plain(spanText({ low: 50, high: 65 }, '°C'))).toBe('50 to 65 °C')
  expect(withMinus('superfat -3.5 % (-1) on 2026-11-25')).toBe('superfat −3.5 % (−1) on 2026-11-25')
})

test('today is written as papers want it', () => {
  expect(today(new Date(2026, 1, 3, 12))).toBe('2026-02-03')
})
