import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, inject, test } from 'vitest'

/** What is only for sweeps, and only for those over several machines. */
const FOR_SWEEPS = ['piscina']
const FOR_QUEUES = ['bullmq', 'ioredis']

/** All that a built file loads as soon as it is loaded itself: what it imports, and what that imports. */
async function loadedWith(entry: string): Promise<Set<string>> {
  const found = new Set<string>()
  const look = async (name: string): Promise<void> => {
    if (found.has(name)) return
    found.add(name)
    if (!name.startsWith('./')) return
    const source = await readFile(join(inject('builtCli'), name), 'utf8')
    const imports = source.matchAll(/(?:^|;)(?:import|export)\b[^"';()]*?["']([^"']+)["']/gmu)
    for (const [, path] of imports) if (path !== undefined) await look(path)
  }
  await look(`./${entry}`)
  return found
}

test('a command that is no sweep loads neither the pool nor the queue', async () => {
  const chunks = await readdir(inject('builtCli'))
  const solve = chunks.find((name) => /^solve-.*\.js$/u.test(name)) ?? 'none'
  const loaded = new Set([...(await loadedWith('barwright.js')), ...(await loadedWith(solve))])
  expect(loaded).toContain('node:util')
  for (const name of [...FOR_SWEEPS, ...FOR_QUEUES]) expect(loaded).not.toContain(name)
})

test('a sweep on one machine does not load the queue', async () => {
  const chunks = (await readdir(inject('builtCli'))).filter((name) => name.endsWith('.js'))
  const loads = await Promise.all(chunks.map(loadedWith))
  const withPool = loads.filter((loaded) => loaded.has('piscina') && !loaded.has('bullmq'))
  expect(withPool).not.toEqual([])
  for (const name of ['sweep-thread.js', 'solver-thread.js'])
    for (const queue of FOR_QUEUES) expect(await loadedWith(name)).not.toContain(queue)
})
