import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Open, pageTest } from '../browser/page-test'
import { plant, untilKept } from './kept'
import { bytesOf } from './saved'

// The order of writes, notes and tabs is tested in `tests/state/keeper.test.ts`; here is what only a real
// browser shows, and what the page says.

const hardest = (page: Page) => page.getByRole('textbox', { name: 'Hardness, at most' })
const kept = (page: Page) => page.getByText(/^kept on this machine, \d\d:\d\d$/u)
const notice = (page: Page, words: RegExp) => page.getByText(words)
const menu = async (page: Page, item: RegExp) => {
  await page.getByRole('button', { name: 'File', exact: true }).click()
  await page.getByRole('menuitem', { name: item }).click()
}

/** Another tab of the same browser. */
async function secondTab(page: Page): Promise<Page> {
  const tab = await page.context().newPage()
  await tab.goto(page.url())
  return tab
}

async function ask(page: Page, value: string): Promise<void> {
  await hardest(page).fill(value)
  await expect.poll(() => hardest(page).inputValue()).toBe(value)
}

const expectHardest = (page: Page, value: string) =>
  expect.poll(() => hardest(page).inputValue()).toBe(value)

/** Types it and waits until it is written. */
async function keep(page: Page, value: string): Promise<void> {
  await ask(page, value)
  await untilKept(page, `"max":${value}`)
}

/** The page anew, with its storage changed before any of its own code runs. */
async function withStorage(open: Open, script: string): Promise<Page> {
  const page = await open('', { own: true })
  await page.context().addInitScript(script)
  await page.reload()
  return page
}

const notesLeft = (page: Page) => page.evaluate(() => localStorage.length)

/** What a download that this begins holds. */
async function downloaded(page: Page, begin: () => Promise<void>): Promise<string> {
  const downloading = page.waitForEvent('download')
  await begin()
  return String(await bytesOf(await downloading))
}

pageTest('everything typed is there again after a reload', async ({ open }) => {
  const page = await open()
  const weight = () => page.getByRole('textbox', { name: /weight/iu }).first()
  await ask(page, '43.5')
  await page.getByRole('textbox', { name: 'Price of Shea, per kg' }).fill('6,85')
  await page.getByRole('textbox', { name: 'Name of the bar' }).fill('Harbour bar, spring')
  await page.getByRole('link', { name: 'Batch', exact: true }).click()
  await weight().fill('1234')
  await kept(page).waitFor()
  await untilKept(page, '"oilGrams":1234')
  await page.reload()
  expect(await weight().inputValue()).toBe('1234')
  await page.getByRole('link', { name: 'Map', exact: true }).click()
  expect(await hardest(page).inputValue()).toBe('43.5')
  const price = page.getByRole('textbox', { name: 'Price of Shea, per kg' })
  expect(await price.inputValue()).toBe('6.85')
  const name = page.getByRole('textbox', { name: 'Name of the bar' })
  expect(await name.inputValue()).toBe('Harbour bar, spring')
})

pageTest(
  'the last of quick changes is there when the page is left at once and come back to',
  async ({ open }) => {
    // Writes are 300 ms apart: the last change here is left for the next page as this one goes.
    const page = await open()
    const address = page.url()
    for (const value of ['43', '43.2']) {
      await ask(page, '44')
      await ask(page, value)
      await page.reload()
      expect(await hardest(page).inputValue()).toBe(value)
    }
    await ask(page, '43')
    await ask(page, '43.5')
    await page.goto('about:blank')
    await page.goto(address)
    expect(await hardest(page).inputValue()).toBe('43.5')
    await expect.poll(() => notesLeft(page)).toBe(0)
  },
)

pageTest(
  'a tab closed without a word, or whose process dies, loses nothing written before',
  async ({ open }) => {
    const page = await open()
    const address = page.url()
    await keep(page, '43.5')
    const next = await page.context().newPage()
    await page.close({ runBeforeUnload: false })
    await next.goto(address)
    expect(await hardest(next).inputValue()).toBe('43.5')
    await keep(next, '42.5')
    const last = await next.context().newPage()
    const crashed = next.waitForEvent('crash')
    const killing = next.goto('chrome://crash').catch((error: unknown) => String(error))
    await crashed
    expect(await killing).toMatch(/crash/iu)
    await last.goto(address)
    expect(await hardest(last).inputValue()).toBe('42.5')
  },
)

pageTest('a second tab shows the newest work, and tabs follow each other', async ({ open }) => {
  const page = await open()
  await keep(page, '43.5')
  const tab = await secondTab(page)
  expect(await hardest(tab).inputValue()).toBe('43.5')
  await ask(tab, '42')
  await notice(page, /Changed in another tab, \d\d:\d\d/u).waitFor()
  await expectHardest(page, '42')
  await page.getByRole('button', { name: 'Back to what stood here' }).click()
  await expectHardest(page, '43.5')
  await notice(tab, /Changed in another tab/u).waitFor()
  await expectHardest(tab, '43.5')
  for (const [from, to, value] of [
    [tab, page, '42'],
    [page, tab, '42.5'],
    [tab, page, '43'],
  ] as const) {
    await ask(from, value)
    await expectHardest(to, value)
  }
  await page.getByRole('button', { name: 'File', exact: true }).click()
  expect(await page.getByRole('menuitem', { name: /lies aside/u }).count()).toBe(0)
})

pageTest('work that is replaced unseen or can not be read lies aside', async ({ open }) => {
  const page = await open()
  await keep(page, '43.5')
  await plant(page, { format: 'barwright-work/1', id: 'other', at: 1, work: 'unknown here' })
  await ask(page, '42')
  await notice(page, /Another tab had kept other work/u).waitFor()
  const download = () => page.getByRole('button', { name: 'Download it' }).click()
  expect(await downloaded(page, download)).toContain('unknown here')

  await untilKept(page, '"max":42')
  await plant(page, { format: 'barwright-work/1', id: 'x', at: 1, work: { brief: 'broken' } })
  await page.reload()
  await notice(page, /can’t be read by this Barwright/u).waitFor()
  expect(await hardest(page).inputValue()).toBe('')
  await page.reload()
  await hardest(page).waitFor()
  expect(await notice(page, /can’t be read/u).count()).toBe(0)
  expect(await downloaded(page, () => menu(page, /lies aside/u))).toContain('broken')
})

pageTest('a browser that keeps nothing is named, and the page goes on', async ({ open }) => {
  const page = await withStorage(
    open,
    `IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError') }`,
  )
  await notice(page, /does not let this page keep anything/u).waitFor()
  await ask(page, '43.5')
  await page.getByText('not kept', { exact: true }).waitFor()
  expect(await hardest(page).inputValue()).toBe('43.5')
})

pageTest('a full machine is named, and the next change that fits is kept', async ({ open }) => {
  const page = await open()
  await hardest(page).waitFor()
  await page.evaluate(`{
    const put = IDBObjectStore.prototype.put
    window.full = true
    IDBObjectStore.prototype.put = function (...args) {
      if (window.full) throw new DOMException('no', 'QuotaExceededError')
      return put.apply(this, args)
    }
  }`)
  await ask(page, '43.5')
  await notice(page, /there is no room left on this machine/u).waitFor()
  await page.evaluate('window.full = false')
  await ask(page, '43')
  await kept(page).waitFor()
  expect(await notice(page, /no room left/u).count()).toBe(0)
  await page.reload()
  expect(await hardest(page).inputValue()).toBe('43')
})

pageTest(
  'a database that does not answer keeps no page from opening; work that comes late takes its place',
  async ({ open }) => {
    const page = await open('', { own: true })
    await keep(page, '43.5')
    await page.context().addInitScript(`
    const opening = indexedDB.open('barwright')
    opening.onsuccess = () => {
      const works = opening.result.transaction('work', 'readwrite').objectStore('work')
      const hold = () => {
        if (!window.released) works.get('now').onsuccess = hold
        else opening.result.close()
      }
      hold()
    }
  `)
    await page.reload()
    await notice(page, /has not answered yet/u).waitFor()
    expect(await hardest(page).inputValue()).toBe('')
    await page.evaluate('window.released = true')
    await expectHardest(page, '43.5')
    await kept(page).waitFor()
  },
)

pageTest('starting afresh empties the page and Undo brings it back', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await menu(page, /^Start afresh/u)
  await page.getByText(/^Put oils on the shelf/u).waitFor()
  expect(await hardest(page).inputValue()).toBe('')
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await hardest(page).inputValue()).toBe('43.5')
})

/** Opens a brief file by the menu. */
async function openFile(page: Page, name: string, buffer: Buffer): Promise<void> {
  const picking = page.waitForEvent('filechooser')
  await menu(page, /^Open a brief or batch file/u)
  await (await picking).setFiles({ name, mimeType: 'application/json', buffer })
}

pageTest('a brief goes to a file and comes back the same', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  const downloading = page.waitForEvent('download')
  await menu(page, /^Download the brief/u)
  const download = await downloading
  expect(download.suggestedFilename()).toBe('kitchen-bar-for-the-harbour-shop.brief.json')
  const file = await bytesOf(download)
  await menu(page, /^Start afresh/u)
  await openFile(page, 'harbour.json', file)
  await expectHardest(page, '43.5')
  const price = page.getByRole('textbox', { name: 'Price of Cocoa butter, per kg' })
  expect(await price.inputValue()).toBe('10.80')
})

/** Files that are no brief, and what is said of each. */
const ODD_FILES: readonly (readonly [name: string, text: string, words: RegExp])[] = [
  ['words.json', 'olive 60', /Not a JSON file/u],
  ['batch.json', '{"format":"barwright-batch/1"}', /blend/u],
  [
    'dragon.json',
    '{"format":"barwright-brief/1","oils":{"dragon":{}},"goal":{"minimise":"wear"}}',
    /There is no oil "dragon"/u,
  ],
]

pageTest('a file that is no brief says what is wrong and changes nothing', async ({ open }) => {
  const page = await open()
  for (const [name, text, words] of ODD_FILES) {
    await openFile(page, name, Buffer.from(text))
    const said = page.getByRole('alert').filter({ hasText: `${name} can’t be opened` })
    expect(await said.textContent()).toMatch(words)
    expect(await hardest(page).inputValue()).toBe('44')
  }
  // The one step there is to undo is the example's.
  await page.getByRole('button', { name: 'Undo' }).click()
  await expectHardest(page, '')
})
