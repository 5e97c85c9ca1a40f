import { describe, expect, test } from 'vitest'
import { csvOf } from '../../../src/ui/kit/csv'

const lines = (text: string) => text.replace('\uFEFF', '').split('\r\n').slice(0, -1)

describe('a table as comma-separated values', () => {
  test.each(['=1+1', '+1', '-1', '@sum', '\tx', '\r=1', "'=1"])(
    '%j is text and never runs',
    (text) => {
      const [cell = ''] = lines(csvOf([[text]]))
      expect(cell.replace(/^"/u, '').startsWith(`'${text}`)).toBe(true)
    },
  )

  test('numbers stay numbers, below 0 too, with a point and no grouping', () => {
    expect(lines(csvOf([[-5.25, 12000, 0.1]]))).toEqual(['-5.25,12000,0.1'])
  })

  test('quotes what holds a comma, a quote or a line break (RFC 4180, rules 6 and 7)', () => {
    expect(csvOf([['a,b', 'say "so"', 'two\nlines']])).toBe(
      '\uFEFF"a,b","say ""so""","two\nlines"\r\n',
    )
  })

  test('leaves empty what is not known and what is no number', () => {
    expect(lines(csvOf([[undefined, NaN, 'x']]))).toEqual([',,x'])
  })

  test('starts with the mark that makes spreadsheets read UTF-8', () => {
    expect(csvOf([['€']]).charCodeAt(0)).toBe(0xfeff)
  })
})
