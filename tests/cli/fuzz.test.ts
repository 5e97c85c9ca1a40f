import { expect, test } from 'vitest'
import { faultOf, fuzzedCalls } from './fuzzing'

/** Every so manieth call here; all of them in the long tests. */
const STEP = 29

test('with any number, text or key changed a call ends with 0 to 3, in JSON and without a trace', async () => {
  const faults: string[] = []
  let [seen, tried] = [0, 0]
  for (const call of fuzzedCalls()) {
    if (seen++ % STEP !== 0) continue
    tried++
    const fault = await faultOf(call)
    if (fault !== undefined)
      faults.push(`${call.args.join(' ')} ${call.file} ${call.place}: ${fault}`)
  }
  expect(faults).toEqual([])
  expect(tried).toBeGreaterThan(200)
}, 600_000)
