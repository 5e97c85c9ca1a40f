import { flushSync } from 'svelte'
import { expect, test } from 'vitest'
import { EffectLog } from '../setup/effect-log.svelte'

test('effects run in these tests as they do in the page, without a DOM', () => {
  const log = new EffectLog()
  flushSync()
  log.grams = 5
  flushSync()
  log.stop()
  expect(log.seen).toEqual([1, 5])
  expect(typeof globalThis.document).toBe('undefined')
})
