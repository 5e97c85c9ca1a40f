import { describe, expect, test } from 'vitest'
import type { Blend } from '../../../../src/domain/blend/blend'
import { oilOf } from '../../../../src/domain/blend/library'
import { blendValue } from '../../../../src/domain/blend/values'
import { BlendSpace } from '../../../../src/domain/optimise/space/blend-space'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { BriefCheck, breaches } from '../../../../src/domain/optimise/space/verify'
import { UnsoundAnswer } from '../../../../src/domain/lp/unsound-answer'
import { libraryOfValues } from '../../blend/stub-library'

const library = libraryOfValues({
  olive: { hardness: 20 },
  coconut: { hardness: 60 },
  castor: { hardness: 10 },
})
const brief: Brief = {
  oils: { olive: { max: 70 }, coconut: { min: 10, max: 50 }, castor: {} },
  groups: [{ name: 'liquid', oils: ['olive', 'castor'], min: 60, max: 80 }],
  measures: { hardness: { min: 25, max: 35 } },
  goal: { minimise: 'hardness' },
}

/** By hand: hardness is 0.65 × 20 + 0.3 × 60 + 0.05 × 10 = 31.5. */
const SOUND: Blend = { olive: 65, coconut: 30, castor: 5 }

/** What is wrong with some blends, every figure by hand. */
const WRONG: readonly (readonly [what: string, blend: Blend, found: readonly string[]])[] = [
  ['nothing', SOUND, []],
  ['too little in all', { ...SOUND, castor: 4 }, ['sum.min: 99']],
  ['too much in all', { ...SOUND, castor: 6 }, ['sum.max: 101']],
  ['too much of an oil', { olive: 71, coconut: 29 }, ['oils.olive.max: 71']],
  [
    'an oil missing that must be there',
    { olive: 70, castor: 30 },
    ['oils.coconut.min: 0', 'groups[0].max: 100', 'measures.hardness.min: 17'],
  ],
  ['an oil that is not on the shelf', { ...SOUND, palm: 0 }, ['oils.palm: not on the shelf']],
  [
    'an oil from elsewhere that has no price',
    { olive: 50, coconut: 30, palm: 20 },
    ['oils.palm: not on the shelf'],
  ],
  [
    'too little of a group and too much of a measure',
    { olive: 55, coconut: 45 },
    ['groups[0].min: 55', 'measures.hardness.max: 38'],
  ],
  [
    'too little of a measure',
    { olive: 45, coconut: 20, castor: 35 },
    ['measures.hardness.min: 24.5'],
  ],
  [
    'a share that is no number',
    { ...SOUND, olive: NaN },
    ['sum', 'oils.olive', 'groups[0]', 'measures.hardness'].flatMap((path) => [
      `${path}.min: NaN`,
      `${path}.max: NaN`,
    ]),
  ],
]

describe('a blend held against a brief', () => {
  test.for(WRONG)('has wrong: %s', ([, blend, found]) => {
    expect(breaches(brief, blend, library)).toEqual(found)
  })

  test('is judged alike by one check for many, in any order', () => {
    const check = new BriefCheck(brief, library)
    for (const [, blend, found] of [...WRONG, ...WRONG.toReversed()]) {
      expect(check.breaches(blend)).toEqual(found)
    }
  })

  test('may miss a limit by a millionth and no more', () => {
    const at = (off: number) =>
      breaches(brief, { olive: 70 + off, coconut: 25, castor: 5 - off }, library)
    expect(at(0.9e-6)).toEqual([])
    expect(at(1.1e-6)).toHaveLength(1)
  })

  test('is judged by the oils and not by what was solved', () => {
    // By hand: liquids end at 80 %, all castor, and 0.8 × 10 + 0.2 × 60 = 20.
    const space = new BlendSpace(brief, library)
    space.limit('hardness', {})
    const softest = space.least(space.perPercent('hardness'))?.x ?? []
    expect(() => space.checkedBlend(softest)).toThrow(UnsoundAnswer)
    expect(() => space.checkedBlend(softest)).toThrow('measures.hardness.min: 20')
  })
})

describe('figures that were reckoned before', () => {
  test('are not served for other measures under the same ids', () => {
    const harder = libraryOfValues({
      olive: { hardness: 30 },
      coconut: { hardness: 60 },
      castor: { hardness: 10 },
    })
    // By hand: 0.65 × 30 + 0.3 × 60 + 0.05 × 10 = 38.
    for (const [one, hardness] of [
      [library, 31.5],
      [harder, 38],
      [library, 31.5],
    ] as const) {
      expect(blendValue(one, {}, 'hardness', SOUND)).toBeCloseTo(hardness, 12)
      expect(breaches(brief, SOUND, one)).toHaveLength(hardness > 35 ? 1 : 0)
    }
  })

  test('are not served for another oil under the same id', () => {
    const [olive, coconut] = [oilOf(library, 'olive'), oilOf(library, 'coconut')]
    const oils = new Map([...library.oils, ['olive', { ...olive, acids: coconut.acids }]])
    expect(blendValue(library, {}, 'hardness', { olive: 100 })).toBeCloseTo(20, 12)
    expect(blendValue({ ...library, oils }, {}, 'hardness', { olive: 100 })).toBeCloseTo(60, 12)
    expect(blendValue(library, {}, 'hardness', { olive: 100 })).toBeCloseTo(20, 12)
  })
})
