import { describe, expect, test } from 'vitest'
import { library } from '../../../src/data/library'
import { differences, shareChanges } from '../../../src/domain/blend/compare'
import {
  BENCH_MEASURES,
  benchTitle,
  besideReference,
  comparative,
  comparativeInRow,
  costInWords,
  measuresInWords,
  oilsInWords,
  signedDifference,
} from '../../../src/ui/bench/words'

const REFERENCE = {
  hardness: 38.7,
  lather: 36.5,
  conditioning: 47.1,
  mildness: 61.2,
  wear: 54.7,
  keeping: 92.2,
  cost: 3.6,
}
const told = (change: Partial<typeof REFERENCE>) =>
  differences(library.measures, { ...REFERENCE, ...change }, REFERENCE)
const words = (change: Partial<typeof REFERENCE>) =>
  measuresInWords(told(change).filter(({ measure }) => measure !== 'cost'))
const cost = (value: number) => told({ cost: value }).find(({ measure }) => measure === 'cost')

describe('words for a difference', () => {
  test('every measure on the Bench has its own, and none says better or worse', () => {
    for (const { id } of BENCH_MEASURES)
      for (const standing of ['more', 'less'] as const) {
        expect(comparative(id, standing)).not.toMatch(/better|worse|best/u)
        expect(comparative(id, standing)).not.toBe(
          comparative(id, standing === 'more' ? 'less' : 'more'),
        )
      }
  })

  test('a row needs no name again: lather is more, hardness is harder', () => {
    expect(comparativeInRow('lather', 'more')).toBe('more')
    expect(comparativeInRow('hardness', 'more')).toBe('harder')
  })

  test('less wear is a bar that lasts longer', () => {
    expect(comparative('wear', 'less')).toBe('lasts longer')
  })
})

describe('a figure beside the reference', () => {
  test('under the tie is a tie and is cut, so that 4.96 does not read as 5.0', () => {
    const [hardness] = told({ hardness: 38.7 + 4.96 })
    expect(besideReference(hardness, 1)).toEqual({ standing: 'tie', by: '+4.9', word: 'tie' })
  })

  test('at the tie is told with its sign and word', () => {
    const [hardness] = told({ hardness: 30 })
    expect(besideReference(hardness, 1)).toEqual({ standing: 'less', by: '−8.7', word: 'softer' })
  })

  test('of nothing has no sign', () => {
    expect(signedDifference({ by: 0.001, standing: 'tie' }, 1)).toBe('0.0')
  })
})

describe('what a bar does, in words', () => {
  test('the largest difference first, then that all else ties', () => {
    expect(words({ hardness: 30, conditioning: 61.6 })).toBe(
      'More conditioning by 14.5, softer by 8.7; all else ties.',
    )
  })

  test('one or two ties are named', () => {
    const most = { hardness: 30, lather: 50, conditioning: 61.6, mildness: 70 }
    expect(words({ ...most, wear: 70 })).toMatch(/; keeping ties\.$/u)
    expect(words(most)).toMatch(/; wear and keeping tie\.$/u)
  })

  test('bars that no measure tells apart are never said to be more of anything', () => {
    expect(words({ hardness: 43.6, lather: 32 })).toBe('No measure can tell the two apart.')
  })
})

describe('what a blend costs, in words', () => {
  test.each([
    [4.57, '€0.97 dearer per kg.'],
    [3.2, '€0.40 cheaper per kg.'],
    [3.64, 'Costs about the same.'],
  ])('%d beside 3.60 per kg', (value, text) => {
    expect(costInWords(cost(value), [], 'EUR')).toBe(text)
  })

  test('names the oils that have no price', () => {
    expect(costInWords(undefined, ['tallow-beef'], 'EUR')).toBe('No price for beef tallow.')
  })
})

describe('what changed in the oils', () => {
  const last = { palm: 34, coconut: 28, olive: 22, 'rapeseed-low-erucic': 16 }

  test('what left leads, then what came, rose and fell', () => {
    const next = { coconut: 33.3, shea: 35, olive: 15, 'rice-bran': 16.7 }
    expect(oilsInWords(shareChanges(last, next))).toEqual({
      lead: 'Palm 34, rapeseed 16 out.',
      rest: 'Shea 35, rice bran 17 in; coconut 5 more; olive 7 less.',
    })
  })

  test('what came leads where nothing left', () => {
    const next = { palm: 29, coconut: 28, olive: 22, 'rapeseed-low-erucic': 16, castor: 5 }
    expect(oilsInWords(shareChanges(last, next))).toEqual({
      lead: 'Castor 5 in.',
      rest: 'Palm 5 less.',
    })
  })

  test('changes that round to nothing are none', () => {
    expect(oilsInWords(shareChanges(last, { ...last, palm: 34.3 })).lead).toBe('The same oils.')
  })
})

test.each([
  [4, 'Four candidates against last year’s bar'],
  [1, 'One candidate against last year’s bar'],
  [0, 'Last year’s bar, alone on the Bench'],
  [49, '49 candidates against last year’s bar'],
])('the title counts %d beside the reference', (count, title) => {
  expect(benchTitle(count, 'Last year’s bar')).toBe(title)
})
