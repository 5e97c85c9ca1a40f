import { describe, expect, test } from 'vitest'
import { library } from '../../../../src/data/library'
import { COST } from '../../../../src/domain/blend/measure'
import { type Limit, limitsOf } from '../../../../src/domain/optimise/brief/limits'
import { type LimitReason, reasonsFor } from '../../../../src/domain/optimise/why/reasons'
import { goalMeasure } from '../../../../src/domain/optimise/brief/brief'
import { type Case, realCases } from '../sensitivity/random-briefs'
import { feasibleOnes } from '../sensitivity/reference'

const BRIEFS = 250
const SEED = 31

const told = feasibleOnes(realCases(BRIEFS, SEED)).map((one) => {
  const reasons = reasonsFor(one.brief, one.library)
  if (!reasons) throw new Error(`No reasons for ${one.name}`)
  return { one, reasons }
})

/** Names may hold digits, so they are taken out before figures are read. */
function figuresIn(sentence: string, { brief }: Case): number[] {
  const names = [
    ...brief.groups.map(({ name }) => name),
    ...[...library.oils.values()].map(({ shortName }) => shortName),
  ].sort((a, b) => b.length - a.length)
  const text = names.reduce((kept, name) => kept.replaceAll(name, '_'), sentence)
  const figures = text.match(/−?\d{1,3}(?:\u2009\d{3})+(?:\.\d+)?|−?\d+(?:\.\d+)?/gu) ?? []
  return figures.map((figure) => Number(figure.replace('−', '-').replaceAll('\u2009', '')))
}

function nameOf({ brief }: Case, { kind, subject }: Limit): string | undefined {
  if (kind === 'oil') return library.oils.get(subject)?.shortName
  if (kind === 'group') return brief.groups[Number(subject)]?.name
  return library.measures.find(({ id }) => id === subject)?.name
}

/** Within half of the second digit of a worth, or a cent. */
function isWorth(figure: number | undefined, worth: number): boolean {
  return Math.abs((figure ?? NaN) - worth) <= Math.max(0.0500001 * worth, 1e-7)
}

/** Rounded towards the limit's value by less than a tenth, or less than half the stretch. */
function isEnd(figure: number | undefined, end: number | null, value: number): boolean {
  const short = Math.abs((end ?? NaN) - (figure ?? NaN))
  const stretch = Math.abs((end ?? NaN) - value)
  const between = (figure ?? NaN) >= Math.min(end ?? NaN, value) - 1e-7
  const inside = between && (figure ?? NaN) <= Math.max(end ?? NaN, value) + 1e-7
  return inside && short <= Math.min(0.1, stretch) + 1e-7
}

describe('a sentence about a limit', () => {
  const sentences = told.flatMap(({ one, reasons }) =>
    reasons.limits.map((reason, k) => {
      const limit = limitsOf(one.brief).find(({ path }) => path === reason.limit)
      if (!limit) throw new Error(`No limit ${reason.limit}`)
      return { one, reason, limit, text: reasons.sentences[k] ?? '' }
    }),
  )
  const isOnePrice = ({ worthPerUnit: { relax, tighten } }: LimitReason) =>
    tighten !== null && Math.abs(tighten - relax) <= 1e-6 * tighten
  const unit = (limit: Limit) => (limit.subject === COST ? [1] : [])

  test('begins with its name, side and value', () => {
    expect(sentences.length).toBeGreaterThan(80)
    for (const { one, limit, text } of sentences) {
      const side = limit.side === 'min' ? 'at least' : 'at most'
      expect(text.startsWith(`${nameOf(one, limit)} ${side} `), text).toBe(true)
      expect(figuresIn(text, one)[0], text).toBeCloseTo(limit.value, 6)
    }
  })

  test('tells the one price and its span', () => {
    const ones = sentences.filter(({ reason }) => isOnePrice(reason))
    expect(ones.length).toBeGreaterThan(40)
    for (const { one, reason, limit, text } of ones) {
      const figures = figuresIn(text, one)
      const [, worth, ...rest] = figures
      const [from, to] = rest.slice(unit(limit).length)
      expect(figures.length, text).toBe(4 + unit(limit).length)
      expect(isWorth(worth, reason.worthPerUnit.relax), text).toBe(true)
      expect(isEnd(from, reason.span[0], limit.value), text).toBe(true)
      expect(isEnd(to, reason.span[1], limit.value), text).toBe(true)
    }
  })

  test('tells both prices where they differ, each with its own end', () => {
    const two = sentences.filter(({ reason }) => !isOnePrice(reason))
    expect(two.length).toBeGreaterThan(10)
    for (const { one, reason, limit, text } of two) {
      const { relax, tighten } = reason.worthPerUnit
      const ends = limit.side === 'min' ? reason.span : [...reason.span].reverse()
      const parts = text.slice(text.indexOf(':') + 1).split(';')
      const isTold = (part: string | undefined, worth: number, end: number | null | undefined) => {
        const figures = figuresIn(part ?? '', one).slice(unit(limit).length)
        expect(isWorth(figures[0], worth), text).toBe(true)
        expect(isEnd(figures[1], end ?? null, limit.value), text).toBe(true)
      }
      if (relax > 0) isTold(parts[0], relax, ends[0])
      else expect(parts[0]).toMatch(/^ giving way changes nothing\.?$/u)
      if (tighten !== null) isTold(parts[1], tighten, ends[1])
      else if (parts[1]) expect(parts[1]).toContain('nothing is within reach')
    }
  })

  test('is about money where the goal is cost, and about points else', () => {
    for (const { one, reason, text } of sentences) {
      if (reason.worthPerUnit.relax === 0) continue
      const goal = goalMeasure(one.brief.goal)
      const name = library.measures.find(({ id }) => id === goal)?.name ?? ''
      expect(text).toContain(goal === COST ? ' per kg' : ` points of ${name}`)
    }
  })
})

describe('a sentence about an oil', () => {
  const priced = told.filter(({ reasons }) => reasons.oilsIn.length > 0)

  test('tells the price now and the ends of its span, rounded towards it', () => {
    expect(priced.length).toBeGreaterThan(15)
    for (const { one, reasons } of priced) {
      for (const { oil, priceSpan } of reasons.oilsIn) {
        const text = sentenceAbout(oil, reasons.sentences, 'The blend stays as it is')
        const now = one.brief.oils[oil]?.pricePerKg ?? NaN
        const ends = priceSpan.filter((end) => end !== null)
        const figures = figuresIn(text, one)
        if (text.includes(' only while ')) continue
        expect(figures.length, text).toBe(ends.length === 0 ? 0 : ends.length + 1)
        if (ends.length > 0) expect(figures.at(-1), text).toBeCloseTo(now, 6)
        ends.forEach((end, k) => expect(isEnd(figures[k], end, now), text).toBe(true))
      }
    }
  })

  test('tells the price below which it comes in, or that there is none', () => {
    for (const { one, reasons } of priced) {
      for (const { oil, entersBelowPricePerKg: below } of reasons.oilsOut) {
        const text = sentenceAbout(oil, reasons.sentences, '')
        if (below === null) expect(text).toContain('would come in at no price: ')
        else expect(isEnd(figuresIn(text, one)[0], below, 0), text).toBe(true)
      }
    }
  })

  function sentenceAbout(oil: string, sentences: readonly string[], start: string): string {
    const name = library.oils.get(oil)?.shortName ?? oil
    const found = sentences.filter(
      (one) =>
        one.startsWith(start) &&
        (one.startsWith(`${name} would `) ||
          new RegExp(`(while|whatever) ${name} costs`, 'u').test(one)),
    )
    expect(found.length, `${name} in ${sentences.join(' ')}`).toBe(1)
    return found[0] ?? ''
  }
})

test('money is written as the caller wants it', () => {
  const [one] = told.filter(({ reasons }) =>
    reasons.oilsOut.some((out) => out.entersBelowPricePerKg),
  )
  if (!one) throw new Error('No brief is about cost')
  const words = { money: (amount: number, decimals: number) => `€${amount.toFixed(decimals)}` }
  const sentences = reasonsFor(one.one.brief, library, { words })?.sentences ?? []
  expect(sentences.filter((text) => /come in below €\d+\.\d\d/u.test(text)).length).toBeGreaterThan(
    0,
  )
})
