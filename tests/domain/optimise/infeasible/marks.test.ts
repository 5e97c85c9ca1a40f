import { describe, expect, test } from 'vitest'
import type { Limit } from '../../../../src/domain/optimise/brief/limits'
import { marksBeyond } from '../../../../src/domain/optimise/infeasible/marks'

const wish = { path: 'measures.lather.min', kind: 'measure', subject: 'lather', value: 50 } as const
const share = { path: 'oils.olive.max', kind: 'oil', subject: 'olive', value: 50 } as const

describe('a limit that must give way is rounded', () => {
  test.each<[string, number, Limit, number[]]>([
    ['down where it is a least', 38.07, { ...wish, side: 'min' }, [38, 37.9]],
    ['up where it is a most', 38.03, { ...wish, side: 'max' }, [38.1, 38.2]],
    [
      'not at all where it is a mark but for noise',
      38.1 + 1e-9,
      { ...wish, side: 'max' },
      [38.1, 38.2],
    ],
    ['to whole cents of money', 4.567, { ...wish, subject: 'cost', side: 'max' }, [4.57, 4.58]],
    ['below 0 where a measure may be', -0.02, { ...wish, side: 'min' }, [-0.1, -0.2]],
    ['not beyond 100 % of a share', 99.97, { ...share, side: 'max' }, [100]],
    ['not below 0 % of a share', 0.03, { ...share, side: 'min' }, [0]],
  ])('%s', (_, value, limit, marks) => {
    expect(marksBeyond(value, limit)).toEqual(marks)
  })
})
