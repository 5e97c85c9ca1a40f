import { createWriteStream } from 'node:fs'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { expect, test } from 'vitest'
import { systemFiles } from '../../src/sweep/files'
import { scanAnswers } from '../../src/sweep/scan'
import { mostMemory } from '../sweep/memory'
import { scenario, sweepFolder } from '../sweep/sweeping'

/** What a run may need more for ten times the lines, in MB: heaps have grown to their size by then. */
const LEEWAY_MB = 24

async function writeScenarios(path: string, count: number): Promise<void> {
  function* lines() {
    for (let number = 0; number < count; number++) yield `${JSON.stringify(scenario(number))}\n`
  }
  await pipeline(Readable.from(lines()), createWriteStream(path))
}

test('a sweep of a million lines needs no more memory than one of a hundred thousand', async () => {
  const folder = await sweepFolder()
  const [few, many] = [join(folder, 'few.ndjson'), join(folder, 'many.ndjson')]
  await writeScenarios(few, 100_000)
  await writeScenarios(many, 1_000_000)
  const small = await mostMemory(few, join(folder, 'few-out.ndjson'))
  const large = await mostMemory(many, join(folder, 'many-out.ndjson'))
  expect((await scanAnswers(systemFiles, join(folder, 'many-out.ndjson'))).lines).toBe(1_000_000)
  expect(large - small).toBeLessThan(LEEWAY_MB)
})
