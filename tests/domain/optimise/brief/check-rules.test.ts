import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { briefAsFile, briefFile, briefOf } from '../../../../src/data/brief-file'
import { parseValue } from '../../../../src/data/problems'
import type { Brief } from '../../../../src/domain/optimise/brief/brief'
import { checkBrief } from '../../../../src/domain/optimise/brief/check-brief'
import { type BriefRules, statesRules } from '../../../../src/domain/optimise/brief/brief-rules'
import { breaches } from '../../../../src/domain/optimise/space/verify'

const SOUND: Brief = {
  oils: { olive: {}, coconut: {}, castor: {}, palm: {} },
  groups: [],
  measures: {},
  goal: { maximise: 'lather' },
}

function problemsOf(rules: BriefRules) {
  return checkBrief({ ...SOUND, rules }, library)
}

const OUT = 'or leave the rule out.'
const NO_STEP = 'a step is from 0.01 to 100 %. Give one in that range, ' + OUT

describe('rules that make no sense', () => {
  test.each<[string, BriefRules, path: string, message: string]>([
    [
      'no oils at all',
      { atMostOils: 0 },
      'rules.atMostOils',
      `At most 0 oils are asked for. Give a whole number of 1 or more, ${OUT}`,
    ],
    [
      'half an oil',
      { atMostOils: 2.5 },
      'rules.atMostOils',
      `At most 2.5 oils are asked for. Give a whole number of 1 or more, ${OUT}`,
    ],
    [
      'a number of oils that is none',
      { atMostOils: NaN },
      'rules.atMostOils',
      `At most NaN oils are asked for. Give a whole number of 1 or more, ${OUT}`,
    ],
    [
      'a least share of nothing',
      { absentOrAtLeast: 0 },
      'rules.absentOrAtLeast',
      `An oil that is in should have at least 0 %; a share is over 0 and up to 100 %. Give one in that range, ${OUT}`,
    ],
    [
      'a least share over 100 %',
      { absentOrAtLeast: 120 },
      'rules.absentOrAtLeast',
      `An oil that is in should have at least 120 %; a share is over 0 and up to 100 %. Give one in that range, ${OUT}`,
    ],
    [
      'a step of nothing',
      { shareStep: 0 },
      'rules.shareStep',
      `Shares in steps of 0 % are asked for; ${NO_STEP}`,
    ],
    [
      'a negative step',
      { shareStep: -1 },
      'rules.shareStep',
      `Shares in steps of -1 % are asked for; ${NO_STEP}`,
    ],
    [
      'a step over 100 %',
      { shareStep: 200 },
      'rules.shareStep',
      `Shares in steps of 200 % are asked for; ${NO_STEP}`,
    ],
    [
      'a step no scale can weigh',
      { shareStep: 0.001 },
      'rules.shareStep',
      `Shares in steps of 0.001 % are asked for; ${NO_STEP}`,
    ],
    [
      'a step that 100 % is no multiple of',
      { shareStep: 3 },
      'rules.shareStep',
      "Shares in steps of 3 % can't add to 100 %, which is 33.3333 steps. Give a step that goes into 100 a whole number of times, such as 0.5, 1, 2.5 or 5.",
    ],
    [
      'an oil that needs a companion but is not on the shelf',
      { requires: [{ oil: 'lard', with: 'olive' }] },
      'rules.requires[0].oil',
      '"lard" is not on the shelf. Add it to oils or take the rule out.',
    ],
    [
      'a companion that is not on the shelf',
      {
        requires: [
          { oil: 'palm', with: 'olive' },
          { oil: 'castor', with: 'constructor' },
        ],
      },
      'rules.requires[1].with',
      '"constructor" is not on the shelf. Add it to oils or take the rule out.',
    ],
    [
      'an oil that is its own companion',
      { requires: [{ oil: 'palm', with: 'palm' }] },
      'rules.requires[0]',
      '"palm" is to go with itself. Name another oil or take the rule out.',
    ],
    [
      'a pair stated twice',
      {
        requires: [
          { oil: 'palm', with: 'olive' },
          { oil: 'palm', with: 'olive' },
        ],
      },
      'rules.requires[1]',
      'That "palm" goes with "olive" stands in rules.requires[0] too. State it once.',
    ],
    [
      'a group to choose from with a stranger',
      { oneOf: [['palm', 'lard']] },
      'rules.oneOf[0][1]',
      '"lard" is not on the shelf. Add it to oils or take the rule out.',
    ],
    [
      'a group to choose from of one',
      { oneOf: [['palm', 'olive'], ['castor']] },
      'rules.oneOf[1]',
      'At most one of 1 oils asks nothing. Name two oils or more, or take the group out.',
    ],
    [
      'a group to choose from that names an oil twice',
      { oneOf: [['palm', 'olive', 'palm']] },
      'rules.oneOf[0]',
      '"palm" stands here more than once. Name it once.',
    ],
  ])('%s', (_what, rules, path, message) => {
    expect(problemsOf(rules)).toEqual([{ path, message }])
  })
})

describe('rules that make sense', () => {
  test.each<[string, BriefRules]>([
    ['none', {}],
    ['more oils than there are', { atMostOils: 9 }],
    ['a least share of 100 %', { absentOrAtLeast: 100 }],
    ['steps of 0.01, 0.1, 12.5 or 100 %', { shareStep: 0.01 }],
    ['thirds', { shareStep: 100 / 3 }],
    [
      'an oil that goes with two others',
      {
        requires: [
          { oil: 'palm', with: 'olive' },
          { oil: 'palm', with: 'castor' },
        ],
      },
    ],
    [
      'two oils that go with one another',
      {
        requires: [
          { oil: 'palm', with: 'olive' },
          { oil: 'olive', with: 'palm' },
        ],
      },
    ],
    [
      'overlapping groups',
      {
        oneOf: [
          ['palm', 'olive'],
          ['olive', 'castor'],
        ],
      },
    ],
  ])('%s', (_what, rules) => {
    expect(problemsOf(rules)).toEqual([])
  })

  test.each([0.1, 0.5, 1, 2, 2.5, 4, 5, 10, 12.5, 20, 25, 50, 100])(
    'steps of %d %%',
    (shareStep) => {
      expect(problemsOf({ shareStep })).toEqual([])
    },
  )

  test('are stated only where some rule asks something', () => {
    const states = (rules: BriefRules | undefined) => statesRules({ rules })
    expect(
      [undefined, {}, { requires: [], oneOf: [] }, { atMostOils: undefined }].map(states),
    ).toEqual([false, false, false, false])
    expect(
      [{ atMostOils: 3 }, { shareStep: 5 }, { oneOf: [['palm', 'olive']] }].map(states),
    ).toEqual([true, true, true])
  })
})

describe('rules that a blend breaks', () => {
  const blend = { olive: 60, coconut: 27.5, castor: 8, palm: 4.5 }
  test.each<[string, BriefRules, string[]]>([
    [
      'too many oils',
      { atMostOils: 3 },
      ['rules.atMostOils: olive 60, coconut 27.5, castor 8, palm 4.5'],
    ],
    ['as many as may be', { atMostOils: 4 }, []],
    ['too little of two', { absentOrAtLeast: 10 }, ['rules.absentOrAtLeast: castor 8, palm 4.5']],
    ['just enough', { absentOrAtLeast: 4.5 }, []],
    ['off the step', { shareStep: 5 }, ['rules.shareStep: coconut 27.5, castor 8, palm 4.5']],
    ['on the step', { shareStep: 0.5 }, []],
    [
      'two of a group',
      {
        oneOf: [
          ['olive', 'lard'],
          ['castor', 'lard', 'palm'],
        ],
      },
      ['rules.oneOf[1]: castor 8, palm 4.5'],
    ],
    [
      'an oil without its companion',
      {
        requires: [
          { oil: 'castor', with: 'olive' },
          { oil: 'castor', with: 'lard' },
        ],
      },
      ['rules.requires[1]: castor 8, lard 0'],
    ],
    ['a companion alone', { requires: [{ oil: 'lard', with: 'olive' }] }, []],
  ])('%s', (_what, rules, broken) => {
    const brief = { ...SOUND, rules }
    expect(breaches(brief, blend, library)).toEqual(broken)
  })

  test('are told of shares to a millionth of a percent, and traces are no oil', () => {
    const rules = { atMostOils: 2, absentOrAtLeast: 40 }
    const at = (least: number, trace: number) =>
      breaches(
        { ...SOUND, rules },
        { olive: 100 - least - trace, castor: least, palm: trace },
        library,
      )
    expect(at(40 - 0.9e-6, 0.9e-6)).toEqual([])
    expect(at(40 - 3e-6, 0)).toHaveLength(1)
    expect(at(40, 3e-6)).toHaveLength(2)
  })

  test('a companion has a gram in a kilogram, not a trace', () => {
    const brief = { ...SOUND, rules: { requires: [{ oil: 'castor', with: 'olive' }] } }
    expect(breaches(brief, { castor: 99.9, olive: 0.1 }, library)).toEqual([])
    expect(breaches(brief, { castor: 99.91, olive: 0.09 }, library)).toHaveLength(1)
  })
})

describe('rules in a file', () => {
  const file = {
    format: 'barwright-brief/1',
    oils: { olive: {}, castor: {}, palm: {} },
    goal: { maximise: 'lather' },
    rules: {
      atMostOils: 5,
      absentOrAtLeast: 5,
      shareStep: 1,
      requires: [{ oil: 'castor', with: 'olive' }],
      oneOf: [['palm', 'olive']],
    },
  }

  test('are read as they stand, and written the same', () => {
    const parsed = parseValue(briefFile, file)
    if (parsed.status !== 'parsed') throw new Error('The file was refused')
    const brief = briefOf(parsed.value)
    expect(brief.rules).toEqual(file.rules)
    expect(briefAsFile(brief).rules).toEqual(file.rules)
  })

  test.each<[string, unknown, string]>([
    ['an unknown rule', { mostOils: 4 }, 'rules'],
    ['a rule of another type', { atMostOils: '5' }, 'rules.atMostOils'],
    ['a pair without a companion', { requires: [{ oil: 'castor' }] }, 'rules.requires[0].with'],
    ['a group that is no list', { oneOf: ['palm'] }, 'rules.oneOf[0]'],
  ])('are refused for %s', (_what, rules, path) => {
    const parsed = parseValue(briefFile, { ...file, rules })
    expect(parsed.status === 'invalid' && parsed.problems.map((one) => one.path)).toEqual([path])
  })
})
