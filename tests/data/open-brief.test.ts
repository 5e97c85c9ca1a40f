import { expect, test } from 'vitest'
import { briefAsFile } from '../../src/data/brief-file'
import { library } from '../../src/data/library'
import { openBrief } from '../../src/data/open-brief'
import { briefOfDraft, wholeBriefOf, withOil } from '../../src/state/draft'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { draftOfBrief } from '../../src/state/draft-of-brief'

const BATCH_G = 5000
const text = (value: unknown) => JSON.stringify(value)
const messagesOf = (file: string) => {
  const parsed = openBrief(file, library)
  return parsed.status === 'invalid' ? parsed.problems.map(({ message }) => message) : []
}

test('the brief of a draft comes back from its file the same', () => {
  const brief = briefOfDraft(EXAMPLE_WORK.brief, BATCH_G)
  const parsed = openBrief(text(briefAsFile(brief)), library)
  if (parsed.status === 'invalid') throw new Error(parsed.problems[0]?.message)
  const draft = draftOfBrief(EXAMPLE_WORK.brief, parsed.value.brief, 'again')
  expect(text(briefAsFile(briefOfDraft(draft, BATCH_G)))).toBe(text(briefAsFile(brief)))
})

test('a brief that lacks a price opens: the page has a place to give it', () => {
  const draft = withOil(EXAMPLE_WORK.brief, 'tallow-beef')
  const brief = wholeBriefOf(draft, BATCH_G)
  expect(brief.goal).toEqual({ minimise: 'cost' })
  expect(openBrief(text(briefAsFile(brief)), library)).toMatchObject({
    status: 'parsed',
    value: { brief: { goal: { minimise: 'cost' }, measures: { cost: brief.measures['cost'] } } },
  })
})

test.each([
  ['no JSON', 'olive 60', /^Not a JSON file/u],
  ['nothing', '', /^Not a JSON file/u],
  ['a list', '[]', /Give a value of type object/u],
  ['another format', '{"format":"barwright-batch/1"}', /barwright-brief\/1/u],
  [
    'an oil nobody knows',
    '{"format":"barwright-brief/1","oils":{"dragon":{}},"goal":{"minimise":"wear"}}',
    /There is no oil "dragon"/u,
  ],
  [
    'a measure nobody knows',
    '{"format":"barwright-brief/1","oils":{"olive":{}},"goal":{"minimise":"sparkle"}}',
    /There is no measure "sparkle"/u,
  ],
  [
    'a share over the whole',
    '{"format":"barwright-brief/1","oils":{"olive":{"max":400}},"goal":{"minimise":"wear"}}',
    /400/u,
  ],
  ['a text without end', `"${'x'.repeat(2e6)}"`, /^The file is too long to be a brief\.$/u],
])('a file with %s is refused with the reason', (_, file, message) => {
  expect(messagesOf(file).some((one) => message.test(one))).toBe(true)
})
