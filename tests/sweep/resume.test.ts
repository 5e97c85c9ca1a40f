import { readFile, truncate } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { sizeOf, slowLines, start, sweepFolder, until, writeLines } from './sweeping'

/** Lines that are searched for, so that there is a middle to be killed in on any machine. */
const LINES = 600

/** No matter how slow the machine is. */
const HALF_AN_HOUR = 1_800_000

test(
  'a sweep killed again and again goes on where it was, to the same bytes as an unbroken run',
  async () => {
    const folder = await sweepFolder()
    const [input, whole, broken] = ['in', 'whole', 'broken'].map((name) =>
      join(folder, `${name}.ndjson`),
    )
    if (!input || !whole || !broken) throw new Error('The folder has no paths')
    await writeLines(input, slowLines(LINES))
    expect(await start(['sweep', input, '--out', whole]).exit).toBe(0)
    const wholeBytes = await readFile(whole)
    const part = `${broken}.part`

    for (const fraction of [0.15, 0.4, 0.7]) {
      const run = start(['sweep', input, '--out', broken])
      await until(async () => (await sizeOf(part)) > fraction * wholeBytes.length)
      run.kill('SIGKILL')
      expect(await run.exit).toBeNull()
      const left = await sizeOf(part)
      expect(left).toBeLessThan(wholeBytes.length)
      // As a kill leaves it that comes while a line is being written.
      await truncate(part, left - 7)
    }
    const last = start(['sweep', input, '--out', broken])
    expect(await last.exit).toBe(0)
    const { answeredBefore, answeredNow } = JSON.parse(last.output()) as {
      answeredBefore: number
      answeredNow: Record<string, number>
    }
    expect(answeredBefore).toBeGreaterThan(0.6 * LINES)
    const now = Object.values(answeredNow).reduce((sum, count) => sum + count, 0)
    expect(answeredBefore + now).toBe(LINES)
    expect(await readFile(broken)).toEqual(wholeBytes)
  },
  HALF_AN_HOUR,
)
