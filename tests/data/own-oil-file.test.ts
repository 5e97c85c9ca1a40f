import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { briefFile, briefOf } from '../../src/data/brief-file'
import { library } from '../../src/data/library'
import { openBrief } from '../../src/data/open-brief'
import { ownOilShape, ownOilsAsFile, readOwnOils, withOwnOils } from '../../src/data/own-oil-file'
import file from '../cases/files/oils.json'

const read = (value: unknown) => readOwnOils(JSON.stringify(value))
const withFirst = (change: object) => ({ ...file, oils: [{ ...file.oils[0], ...change }] })

test('a file of oils comes back from what is written of it', () => {
  const first = read(file)
  if (first.status === 'invalid') throw new Error(JSON.stringify(first.problems))
  expect(first.value).toHaveLength(2)
  expect(read(ownOilsAsFile(first.value))).toEqual(first)
})

test('its oils stand beside those of the library', () => {
  const parsed = read(file)
  const both = withOwnOils(library, parsed.status === 'parsed' ? parsed.value : [])
  if (both.status === 'invalid') throw new Error(JSON.stringify(both.problems))
  expect(both.value.oils.size).toBe(library.oils.size + 2)
  expect(both.value.oils.get('own-olive-0830')).toMatchObject({
    name: 'Olive oil, lot OL-0830',
    saponificationValue: { low: 188, typical: 189.5, high: 191, basis: 'certificate' },
  })
  expect(library.oils.has('own-olive-0830')).toBe(false)
})

describe('a file of oils is refused with', () => {
  test.each([
    ['an id of another beginning', { id: 'laurel' }, 'oils[0].id', /Begin with own-/u],
    ['a kind that there is not', { kind: 'mineral' }, 'oils[0].kind', /"triglyceride" or/u],
    ['a key that nothing reads', { price: 4 }, 'oils[0]', /Unknown key price/u],
    ['a share as text', { acids: { oleic: '70' } }, 'oils[0].acids.oleic', /"70" stands here/u],
    ['a long short name', { shortName: 'Seventeen letters' }, 'oils[0].shortName', /16 letters/u],
  ])('%s', (_, change, path, message) => {
    const parsed = read(withFirst(change))
    expect(parsed).toMatchObject({ status: 'invalid', problems: [{ path }] })
    expect(parsed.status === 'invalid' && parsed.problems[0]?.message).toMatch(message)
  })
})

const BRIEF = { format: 'barwright-brief/1', oils: { olive: {} }, goal: { maximise: 'lather' } }

test('a brief may carry oils, and they are no part of the question', () => {
  const carried = briefFile.parse({ ...BRIEF, ownOils: file.oils })
  expect(carried.ownOils).toHaveLength(2)
  expect(briefOf(carried)).not.toHaveProperty('ownOils')
})

test('the page opens them with the brief, and says which of them is wrong', () => {
  const text = (oils: unknown) => JSON.stringify({ ...BRIEF, ownOils: oils })
  const read = z.array(ownOilShape).parse(file.oils)
  expect(openBrief(text(file.oils), library)).toMatchObject({
    status: 'parsed',
    value: { ownOils: read },
  })
  const wrong = [{ ...read[0], from: 'dragon' }]
  expect(openBrief(text(wrong), library)).toMatchObject({
    status: 'invalid',
    problems: [{ path: 'ownOils[0].from' }],
  })
})
