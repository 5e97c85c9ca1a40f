import { expect, test } from 'vitest'
import { mapFrame } from '../../../src/charts/map-frame'
import {
  mapWords,
  offInWords,
  outsideIsFree,
  placeWords,
  takenOn,
} from '../../../src/ui/map/map-words'

const bar = { id: 'one', letter: 'K', name: 'First bar', x: 41.6, y: 12.2 }
const spots = {
  present: { at: { x: 300, y: 200 }, cost: '€2.10' },
  best: { at: { x: 400, y: 100 }, words: 'more lather and more mildness' },
  landmarks: [{ landmark: bar, at: { x: 500, y: 300 } }],
}
const linesOf = (narrow: boolean) => mapWords(spots, narrow).map(({ lines }) => lines)

test('a wide map names what is in hand with its cost, the edge and the bars known', () => {
  expect(linesOf(false)).toEqual([
    ['now', '€2.10 per kg'],
    ['no blend has both', 'more lather and more mildness'],
    ['K First bar'],
  ])
})

test('a narrow map has letters for names and says nothing of the edge', () => {
  expect(linesOf(true)).toEqual([['now', '€2.10 per kg'], ['K']])
})

test('a blend of unknown cost is now, and no more', () => {
  const present = { at: { x: 0, y: 0 }, cost: undefined }
  expect(mapWords({ present, best: undefined, landmarks: [] }, false)[0]?.lines).toEqual(['now'])
})

test('words keep off marks, which weigh more than the edge', () => {
  const frame = mapFrame(700)
  const [words] = [mapWords({ ...spots, best: undefined, landmarks: [] }, false)]
  const free = placeWords(words, takenOn(frame, [], []), frame)
  expect(free.get('now')?.anchor).toBe('start')
  const marks = [{ x: 330, y: 225 }]
  const moved = placeWords(words, takenOn(frame, [], marks), frame)
  expect(moved.get('now')?.anchor).toBe('end')
})

test('what bare paper means is said only where no word stands', () => {
  const frame = mapFrame(700)
  const at = { left: frame.left + 100, right: frame.left + 150, top: frame.top + 20, bottom: 70 }
  expect(outsideIsFree(frame, [])).toBe(true)
  expect(outsideIsFree(frame, [at])).toBe(false)
  expect(outsideIsFree(frame, [{ ...at, top: 300, bottom: 320 }])).toBe(true)
})

test('what lies off the map is named with its place', () => {
  expect(offInWords([])).toBe('')
  expect(offInWords([bar])).toBe('Off the map: K First bar at 42 and 12')
})
