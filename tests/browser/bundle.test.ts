import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, inject, test } from 'vitest'

/** Words that stand in these packages' code and would survive the build: names of what they ask a server or a thread. */
const TELLTALES = [
  'bullmq',
  'ioredis',
  'piscina',
  'moveToFinished',
  'XREADGROUP',
  'barwright-sweep-1',
]

test('the page carries nothing of pool and queue', async () => {
  const files = await readdir(inject('builtPage'), { recursive: true })
  const scripts = files.filter((name) => name.endsWith('.js'))
  expect(scripts.length).toBeGreaterThan(2)
  for (const name of scripts) {
    const source = await readFile(join(inject('builtPage'), name), 'utf8')
    for (const word of TELLTALES) expect(source.includes(word), `${word} in ${name}`).toBe(false)
  }
})
