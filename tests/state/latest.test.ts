import { expect, test } from 'vitest'
import { Latest } from '../../src/state/latest'

interface Asked {
  readonly question: string
  readonly signal: AbortSignal
  readonly answer: (text: string) => void
  readonly fail: () => void
}

/** Questions wait until the test answers them. */
function heldQuestions() {
  const asked: Asked[] = []
  const heard: string[] = []
  const latest = new Latest<string, string>(
    (question, signal) =>
      new Promise((answer, reject) => {
        asked.push({ question, signal, answer, fail: () => reject(new Error(`no ${question}`)) })
      }),
    (question, answer) => heard.push(`${question}: ${answer}`),
    (question, error) => heard.push(`${question} failed: ${String(error)}`),
  )
  const settle = () => new Promise((done) => setTimeout(done))
  return { latest, asked, heard, settle, names: () => asked.map(({ question }) => question) }
}

test('a question is asked at once and its answer heard', async () => {
  const { latest, asked, heard, settle } = heldQuestions()
  latest.put('a')
  asked[0]?.answer('1')
  await settle()
  expect(heard).toEqual(['a: 1'])
})

test('while one question is under way, only the newest of the others is asked', async () => {
  const { latest, asked, names, settle } = heldQuestions()
  for (const question of ['a', 'b', 'c', 'd']) latest.put(question)
  expect(names()).toEqual(['a'])
  asked[0]?.answer('1')
  await settle()
  expect(names()).toEqual(['a', 'd'])
})

test('the answer of an overtaken question is not heard', async () => {
  const { latest, asked, heard, settle } = heldQuestions()
  latest.put('a')
  latest.put('b')
  asked[0]?.answer('1')
  await settle()
  expect(heard).toEqual([])
  asked[1]?.answer('2')
  await settle()
  expect(heard).toEqual(['b: 2'])
})

test('a question asked after an answer is asked too', async () => {
  const { latest, asked, heard, settle } = heldQuestions()
  latest.put('a')
  asked[0]?.answer('1')
  await settle()
  latest.put('b')
  asked[1]?.answer('2')
  await settle()
  expect(heard).toEqual(['a: 1', 'b: 2'])
})

test('an error is told with its question, and later questions are asked all the same', async () => {
  const { latest, asked, heard, settle } = heldQuestions()
  latest.put('a')
  asked[0]?.fail()
  await settle()
  latest.put('b')
  asked[1]?.answer('2')
  await settle()
  expect(heard).toEqual(['a failed: Error: no a', 'b: 2'])
})

test('the error of an overtaken question is not told', async () => {
  const { latest, asked, heard, settle } = heldQuestions()
  latest.put('a')
  latest.put('b')
  asked[0]?.fail()
  await settle()
  asked[1]?.answer('2')
  await settle()
  expect(heard).toEqual(['b: 2'])
})

test('a question is told by its signal that it is overtaken, and the newer one is not', async () => {
  const { latest, asked, settle } = heldQuestions()
  latest.put('a')
  expect(asked[0]?.signal.aborted).toBe(false)
  latest.put('b')
  expect(asked[0]?.signal.aborted).toBe(true)
  asked[0]?.fail()
  await settle()
  expect(asked[1]?.signal.aborted).toBe(false)
})

test('what is stopped is not heard, nor is what waited behind it, and later questions are asked', async () => {
  const { latest, asked, heard, settle, names } = heldQuestions()
  latest.put('a')
  latest.put('b')
  latest.stop()
  asked[0]?.answer('1')
  await settle()
  latest.put('c')
  asked[1]?.answer('3')
  await settle()
  expect(names()).toEqual(['a', 'c'])
  expect(heard).toEqual(['c: 3'])
})
