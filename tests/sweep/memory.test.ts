import { join } from 'node:path'
import { expect, test } from 'vitest'
import { mostMemory } from './memory'
import { scenarios, sweepFolder, writeLines } from './sweeping'

/** What a run may need more for five times the lines, in MB: heaps grow to their size at leisure. */
const LEEWAY_MB = 32

test('a sweep of five times the lines needs no more memory', async () => {
  const folder = await sweepFolder()
  const [few, many] = [join(folder, 'few.ndjson'), join(folder, 'many.ndjson')]
  await writeLines(few, scenarios(12_000))
  await writeLines(many, scenarios(60_000))
  const small = await mostMemory(few, join(folder, 'few-out.ndjson'))
  const large = await mostMemory(many, join(folder, 'many-out.ndjson'))
  expect(large - small).toBeLessThan(LEEWAY_MB)
})
