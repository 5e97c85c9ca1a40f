import { expect, test } from 'vitest'
import { durationText, Pace, progressText } from '../../src/sweep/progress'

test('rate and time left are of this run, and what earlier runs did counts as done', () => {
  let nowMs = 0
  const pace = new Pace({ offset: 500, lines: 50 }, 1000, () => nowMs)
  nowMs = 2000
  // By hand: 25 lines and 250 bytes in 2 s; 250 bytes are left at 125 a second.
  expect(pace.at(750, 75)).toEqual({
    lines: 75,
    doneFraction: 0.75,
    linesPerSecond: 12.5,
    secondsLeft: 2,
  })
})

test('nothing answered yet promises no time', () => {
  const pace = new Pace({ offset: 0, lines: 0 }, 1000, () => 0)
  expect(pace.at(0, 0).secondsLeft).toBeUndefined()
})

test('the bar tells part, lines, rate and time left', () => {
  const text = progressText({
    lines: 250_000,
    doneFraction: 0.25,
    linesPerSecond: 4120.4,
    secondsLeft: 182,
  })
  expect(text).toBe(
    '━━━━━━──────────────────   25 %  250,000 lines  4,120 a second  3 min 2 s left',
  )
})

test('durations are told in two parts at most', () => {
  expect([0.2, 59, 60, 3599, 3600, 7325].map(durationText)).toEqual([
    '1 s',
    '59 s',
    '1 min 0 s',
    '59 min 59 s',
    '1 h 0 min',
    '2 h 2 min',
  ])
})
