import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { EXAMPLE_WORK } from '../../src/state/first-work'
import { openDatabase } from '../../src/storage/database'
import { Tab, freshBrowser } from './tabs'

beforeEach(freshBrowser)
afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

const KEY = 'barwright-leaving'
const SOON = { timeout: 20_000 }

/** What lies in the database. */
async function kept() {
  const database = await openDatabase(() => undefined)
  const record = await database.get('work', 'now')
  database.close()
  return record
}

/** Puts something where the kept work lies. */
async function plant(record: unknown): Promise<void> {
  const database = await openDatabase(() => undefined)
  await database.put('work', record as never, 'now')
  database.close()
}

const broken = { format: 'barwright-work/1', id: 'x', at: 1, work: { brief: 'broken' } }

test('a first visit opens on the example and writes nothing', async () => {
  const tab = await Tab.open()
  await tab.keeper.write()
  expect(tab.history.now).toEqual(EXAMPLE_WORK)
  expect(tab.keeper.keeping).toEqual({ status: 'nothing yet' })
  expect(await kept()).toBeUndefined()
})

test('what was written is there on the next visit', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  expect(tab.keeper.keeping.status).toBe('kept')
  tab.die()
  expect((await Tab.open()).name).toBe('spring')
})

test('changes that follow each other closely are a few writes, and the last one stands', async () => {
  const tab = await Tab.open()
  const keep = vi.spyOn(tab.store, 'keep')
  for (let k = 1; k <= 50; k++) tab.rename(`spring ${k}`)
  await expect.poll(async () => (await Tab.open()).name, SOON).toBe('spring 50')
  expect(keep.mock.calls.length).toBeLessThanOrEqual(2)
})

test('a change made while one is written is written after it', async () => {
  const tab = await Tab.open()
  const first = tab.write('spring')
  tab.rename('summer')
  await first
  await expect.poll(async () => (await Tab.open()).name, SOON).toBe('summer')
})

test('writes that were asked for at once land in their order', async () => {
  const tab = await Tab.open()
  await Promise.all(['1', '2', '3', '4', '5'].map((name) => tab.write(name)))
  tab.die()
  expect((await Tab.open()).name).toBe('5')
  expect(await tab.aside()).toEqual([])
})

test('the last change of a tab that is closed is left for the next one', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  vi.spyOn(tab.store, 'keep').mockReturnValue(new Promise(() => undefined))
  tab.rename('summer')
  tab.leave()
  const next = await Tab.open()
  expect(next.name).toBe('summer')
  expect(localStorage.getItem(KEY)).toBeNull()
  expect(await next.aside()).toEqual([])
})

test('a note whose work was written all the same is not taken twice', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  tab.rename('summer')
  tab.leave()
  await expect.poll(() => localStorage.getItem(KEY), SOON).toBeNull()
  const next = await Tab.open()
  expect([next.name, await next.aside()]).toEqual(['summer', []])
})

test('a note of a tab that closed before another wrote goes aside', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  const record = await kept()
  const note = { record: { ...record, id: 'other/1', at: (record?.at ?? NaN) - 1 } }
  localStorage.setItem(KEY, JSON.stringify(note))
  tab.die()
  const next = await Tab.open()
  expect(next.name).toBe('spring')
  expect(next.keeper.asideCount).toBe(1)
  expect(localStorage.getItem(KEY)).toBeNull()
})

test('a later note of a tab that had not seen the kept work replaces it and puts it aside', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  const record = await kept()
  tab.rename('summer')
  const note = { ...record, id: 'other/1', at: (record?.at ?? NaN) + 1, work: tab.history.now }
  localStorage.setItem(KEY, JSON.stringify({ record: note }))
  tab.die()
  const next = await Tab.open()
  expect([next.name, await next.aside()]).toEqual(['summer', ['spring']])
})

test('a note that can not be read goes aside as it stands', async () => {
  localStorage.setItem(KEY, '{"half')
  const tab = await Tab.open()
  expect([tab.name, await tab.aside()]).toEqual([EXAMPLE_WORK.brief.name, ['{"half']])
  expect(tab.keeper.asideCount).toBe(1)
  expect(localStorage.getItem(KEY)).toBeNull()
})

test('a tab takes over what another one wrote, says so, and undo brings its own back', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  await one.write('spring')
  await expect.poll(() => other.name, SOON).toBe('spring')
  await other.write('summer')
  await expect.poll(() => one.name, SOON).toBe('summer')
  expect(one.keeper.notice?.kind).toBe('from another tab')
  one.history.undo()
  await one.keeper.write()
  await expect.poll(() => other.name, SOON).toBe('spring')
  expect(await one.aside()).toEqual([])
})

test('tabs that change by turns follow each other without loss', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  for (let k = 0; k < 10; k++) {
    const [from, to] = k % 2 === 0 ? [one, other] : [other, one]
    await from.write(`turn ${k}`)
    await expect.poll(() => to.name, SOON).toBe(`turn ${k}`)
  }
  expect(await one.aside()).toEqual([])
})

test('quick writes of another tab are taken over in their order', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  await other.write('1')
  await other.write('2')
  await other.write('3')
  await expect.poll(() => one.name, SOON).toBe('3')
  await one.write('4')
  expect(await one.aside()).toEqual([])
})

/** One tab has read what the other wrote, and its keeper does not know yet. */
async function tabsWhileReading() {
  const [one, other] = [await Tab.open(), await Tab.open()]
  let goOn = () => {}
  const held = new Promise<void>((resolve) => (goOn = resolve))
  const reading = new Promise<void>((resolve) => {
    one.store.hold = () => {
      resolve()
      return held
    }
  })
  await other.write('theirs')
  await reading
  return { one, other, goOn }
}

test('a change made while another tab’s work is read stays, and that work goes aside', async () => {
  const { one, other, goOn } = await tabsWhileReading()
  one.rename('mine')
  goOn()
  await expect.poll(() => other.name, SOON).toBe('mine')
  expect(one.name).toBe('mine')
  expect(await one.aside()).toEqual(['theirs'])
  expect(one.keeper.notice?.kind).toBe('replaced unseen')
})

test('a change also written while another tab’s work is read stays', async () => {
  const { one, other, goOn } = await tabsWhileReading()
  await one.write('mine')
  goOn()
  await expect.poll(() => other.name, SOON).toBe('mine')
  await one.keeper.look()
  expect(one.name).toBe('mine')
  expect(await one.aside()).toEqual(['theirs'])
})

test('a tab that never heard of a write puts the unseen work aside and says so', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  await plant({ format: 'barwright-work/1', id: 'other', at: 1, work: 'unknown here' })
  await tab.write('summer')
  expect(tab.keeper.notice).toEqual({ kind: 'replaced unseen' })
  expect(tab.keeper.asideCount).toBe(1)
  expect(await tab.keeper.asideText()).toContain('unknown here')
})

test('a tab that slept looks for what was written and takes it', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  one.die()
  await other.write('summer')
  expect(one.name).toBe(EXAMPLE_WORK.brief.name)
  await one.keeper.look()
  expect(one.name).toBe('summer')
})

test('kept work that can not be read goes aside once, and the example opens', async () => {
  await plant(broken)
  const tab = await Tab.open()
  expect(tab.history.now).toEqual(EXAMPLE_WORK)
  expect(tab.keeper.notice?.kind).toBe('unreadable')
  expect(await tab.keeper.asideText()).toContain('broken')
  tab.die()
  const next = await Tab.open()
  expect([next.keeper.notice, next.keeper.asideCount]).toEqual([undefined, 1])
})

test('a browser that keeps nothing is named, and the page goes on', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('no', 'SecurityError')
  })
  const tab = await Tab.open()
  expect(tab.keeper.keeping).toMatchObject({
    status: 'failed',
    reason: expect.stringContaining('does not let this page keep anything') as string,
  })
  await tab.write('spring')
  expect(tab.name).toBe('spring')
})

test('a full machine is named, and the next change that fits is kept', async () => {
  const tab = await Tab.open()
  const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('no', 'QuotaExceededError')
  })
  await tab.write('spring')
  expect(tab.keeper.keeping).toMatchObject({
    status: 'failed',
    reason: expect.stringContaining('no room left on this machine') as string,
  })
  full.mockRestore()
  await tab.write('summer')
  expect(tab.keeper.keeping.status).toBe('kept')
  tab.die()
  expect((await Tab.open()).name).toBe('summer')
})

test('a database that never answers does not keep the page from opening', async () => {
  const silent = Object.create(IDBOpenDBRequest.prototype) as IDBOpenDBRequest
  silent.addEventListener = () => undefined
  vi.spyOn(indexedDB, 'open').mockReturnValue(silent)
  const tab = await Tab.open()
  expect(tab.history.now).toEqual(EXAMPLE_WORK)
  expect(tab.keeper.keeping).toMatchObject({
    status: 'failed',
    reason: expect.stringContaining('has not answered yet') as string,
  })
})

test('work that comes late takes its place when it comes, and nothing is written before', async () => {
  const before = await Tab.open()
  await before.write('spring')
  before.die()
  const tab = new Tab()
  let goOn = () => {}
  const held = new Promise<void>((resolve) => (goOn = resolve))
  tab.store.hold = () => held
  const keep = vi.spyOn(tab.store, 'keep')
  await tab.start()
  expect(tab.name).toBe(EXAMPLE_WORK.brief.name)
  const writing = tab.keeper.write()
  goOn()
  await writing
  await expect.poll(() => tab.name, SOON).toBe('spring')
  expect(keep).not.toHaveBeenCalled()
})

/** Holds the first write of a tab back once the database has it. */
function heldWrite(tab: Tab) {
  let goOn = () => {}
  const held = new Promise<void>((resolve) => (goOn = resolve))
  const written = new Promise<void>((resolve) => {
    tab.store.holdWrite = () => {
      tab.store.holdWrite = undefined
      resolve()
      return held
    }
  })
  return { written, goOn }
}

test('a change taken back while it is written is written as taken back', async () => {
  const tab = await Tab.open()
  await tab.write('spring')
  const { written, goOn } = heldWrite(tab)
  const writing = tab.write('summer')
  await written
  tab.history.undo()
  tab.keeper.put(tab.history.now)
  goOn()
  await writing
  await expect.poll(async () => (await Tab.open()).name, SOON).toBe('spring')
})

test('what another tab makes of a change while it is still being written is taken over', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  const { written, goOn } = heldWrite(one)
  const writing = one.write('mine')
  await written
  await expect.poll(() => other.name, SOON).toBe('mine')
  await other.write('mine, and theirs')
  goOn()
  await writing
  await expect.poll(() => one.name, SOON).toBe('mine, and theirs')
  expect(await one.aside()).toEqual([])
})

test('a change in the very turn in which another tab’s work is taken over is not lost', async () => {
  const [one, other] = [await Tab.open(), await Tab.open()]
  one.store.taking = () => queueMicrotask(() => one.rename('mine'))
  await other.write('theirs')
  await expect.poll(() => other.name, SOON).toBe('mine')
  expect(one.name).toBe('mine')
})

test('a change on a page that opened before the database answered stays, and the kept work goes aside', async () => {
  const before = await Tab.open()
  await before.write('spring')
  before.die()
  const tab = new Tab()
  let goOn = () => {}
  const held = new Promise<void>((resolve) => (goOn = resolve))
  tab.store.hold = () => held
  await tab.start()
  tab.rename('mine')
  goOn()
  await expect
    .poll(async () => (await kept())?.work, SOON)
    .toMatchObject({ brief: { name: 'mine' } })
  expect([tab.name, await tab.aside()]).toEqual(['mine', ['spring']])
})
