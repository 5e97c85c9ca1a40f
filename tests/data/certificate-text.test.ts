import { describe, expect, test } from 'vitest'
import { readCertificate } from '../../src/data/certificate-text'
import { library } from '../../src/data/library'

const read = (text: string) => readCertificate(text, library.acids)

/** A certificate of our own making, with what such papers do. */
const PAPER = `CERTIFICATE OF ANALYSIS No. CA-2231
Product: laurel oil    Lot: LB-0311
Parameter              Method               Specification    Result
Saponification value   ISO 3657:2020        190 - 205        199.0 ± 2 mg KOH/g
Iodine value (Wijs)    AOCS Cd 1d-92        70 - 95          81,4
C12:0 Lauric acid      AOCS Ce 1h-05        12.0 - 25.0      19,4 %
C14:0 Myristic         AOCS Ce 1h-05                         1.1
C16:0  (palmitic acid) 14.2 %
C16:1 n-7              < 0.6
Stearic acid C18:0     2,1
C18:1 cis-9            38.5
C18:1 n-7              3.0
Linoleic acid (C18:2 n-6)  18.6
α-Linolenic acid       n.d.
Total saturated        36.8
`

describe('a certificate', () => {
  test('is read by names, C-numbers and percent, decimal commas and all', () => {
    const { acids, unread } = read(PAPER)
    expect(acids).toEqual({
      lauric: { value: 19.4 },
      myristic: { value: 1.1 },
      palmitic: { value: 14.2 },
      palmitoleic: { value: 0, within: 0.6 },
      stearic: { value: 2.1 },
      oleic: { value: 41.5 },
      linoleic: { value: 18.6 },
      'alpha-linolenic': { value: 0 },
    })
    expect(unread).toEqual([])
  })

  test('gives its values, the lot and its number', () => {
    expect(read(PAPER)).toMatchObject({
      saponificationValue: { value: 199, within: 2 },
      iodineValue: { value: 81.4 },
      lot: 'LB-0311',
      certificate: 'CA-2231',
    })
    expect(read(PAPER).sumPercent).toBeCloseTo(96.9, 9)
  })
})

describe('a line', () => {
  test.for<readonly [line: string, acid: string, value: number, within?: number]>([
    ['C12:0 48.2', 'lauric', 48.2],
    ['C 12:0 = 48,2 %', 'lauric', 48.2],
    ['12:0\t48.2', 'lauric', 48.2],
    ['Lauric acid 45.1–53.2', 'lauric', 49.15, 4.05],
    ['Dodecanoic acid 45.1 to 53.2 result 48.2', 'lauric', 48.2],
    ['C18:1 OH ricinoleic acid 88', 'ricinoleic', 88],
    ['C18:1 OH 88', 'ricinoleic', 88],
    ['C18:3 n-3 9.2', 'alpha-linolenic', 9.2],
    ['C18:3 n-6 9.2', 'gamma-linolenic', 9.2],
    ['C18:3 (ω-6) 9.2', 'gamma-linolenic', 9.2],
    ['gamma linolenic acid 9.2', 'gamma-linolenic', 9.2],
    ['Linolenic acid 9.2', 'alpha-linolenic', 9.2],
    ['Palmitoleic acid 0.3', 'palmitoleic', 0.3],
    ['C20:1 gadoleic 1.3', 'gondoic', 1.3],
    ['C22:1 41.2', 'erucic', 41.2],
    ['C24:1 nervonic max. 0.4', 'nervonic', 0, 0.4],
    ['Erucic acid ND', 'erucic', 0],
    ['Punicic acid C18:3 65', 'punicic', 65],
    ['Stearic acid ISO 12966-4:2015 2.1', 'stearic', 2.1],
  ])('“%s” is %s', ([line, acid, value, within]) => {
    const { acids, unread } = read(line)
    expect(unread).toEqual([])
    expect(acids).toEqual({ [acid]: within === undefined ? { value } : { value, within } })
  })

  test.each([
    ['C26:0 0.4', /no acid C26:0/u],
    ['C16:0 stearic acid 12', /differ: stearic and C16:0/u],
    ['Oleic acid see annex', /no figure/u],
    ['Oleic acid 412', /more than 100 %/u],
    ['Total trans oleic 0.4', /adds up others/u],
    ['Saponification value: see annex', /no figure/u],
  ])('“%s” is told as not understood', (line, reason) => {
    const { acids, unread } = read(line)
    expect(acids).toEqual({})
    expect(unread).toEqual([{ line, reason: expect.stringMatching(reason) as string }])
  })

  test('that stands twice counts once and is told', () => {
    const { acids, unread } = read('C18:1 41\nC18:1 41')
    expect(acids).toEqual({ oleic: { value: 41 } })
    expect(unread).toEqual([{ line: 'C18:1 41', reason: 'It stands twice.' }])
  })

  test.each(['', 'Peroxide value 2.1', 'Colour: yellow', 'Density at 20 °C 0.915'])(
    '“%s” is no matter of acids',
    (line) => {
      expect(read(line)).toMatchObject({ acids: {}, unread: [], sumPercent: 0 })
    },
  )
})
