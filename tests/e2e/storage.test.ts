import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Open, pageTest } from '../browser/page-test'
import { bytesOf } from './saved'

/** Later than the page writes: at most 300 ms after a change. */
const WRITTEN_MS = 600

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

/** The page anew, with its storage changed before any of its own code runs. */
async function withStorage(open: Open, script: string): Promise<Page> {
  const page = await open('', { own: true })
  await page.context().addInitScript(script)
  await page.reload()
  return page
}

/** Puts a value where the kept work lies. */
async function plant(page: Page, work: unknown): Promise<void> {
  await page.evaluate(
    (value) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('barwright')
        opening.onerror = () => reject(new Error('The database did not open'))
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('work', 'readwrite')
          transaction.objectStore('work').put(value, 'now')
          transaction.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    work,
  )
}

const notesLeft = (page: Page) => page.evaluate(() => localStorage.length)

/** A note such as a page leaves that is closed before it has written. */
const leaveNote = (page: Page, note: string) =>
  page.evaluate((text) => localStorage.setItem('barwright-leaving', text), note)

async function expectAside(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click()
  await page.getByRole('menuitem', { name: /lies aside/u }).waitFor()
}

/** What lies in the database now. */
function keptRecord(page: Page): Promise<{ readonly at: number }> {
  return page.evaluate(
    () =>
      new Promise<{ at: number }>((resolve, reject) => {
        const opening = indexedDB.open('barwright')
        opening.onerror = () => reject(new Error('The database did not open'))
        opening.onsuccess = () => {
          const asking = opening.result.transaction('work').objectStore('work').get('now')
          asking.onsuccess = () => {
            opening.result.close()
            resolve(asking.result as { at: number })
          }
        }
      }),
  )
}

pageTest('everything typed is there again after a reload', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.getByRole('textbox', { name: 'Price of Shea, per kg' }).fill('6,85')
  await page.getByRole('textbox', { name: 'Name of the brief' }).fill('Harbour bar, spring')
  await page.getByRole('link', { name: 'Batch', exact: true }).click()
  await page
    .getByRole('textbox', { name: /weight/iu })
    .first()
    .fill('1234')
  await kept(page).waitFor()
  await page.waitForTimeout(WRITTEN_MS)
  await page.reload()
  expect(
    await page
      .getByRole('textbox', { name: /weight/iu })
      .first()
      .inputValue(),
  ).toBe('1234')
  await page.getByRole('link', { name: 'Brief and Map', exact: true }).click()
  expect(await hardest(page).inputValue()).toBe('43.5')
  const price = page.getByRole('textbox', { name: 'Price of Shea, per kg' })
  expect(await price.inputValue()).toBe('6.85')
  const name = page.getByRole('textbox', { name: 'Name of the brief' })
  expect(await name.inputValue()).toBe('Harbour bar, spring')
})

pageTest(
  'the last of quick changes is there when the page is reloaded at once',
  async ({ open }) => {
    // Writes are 300 ms apart: the last change here is left for the next page as this one goes.
    const page = await open()
    for (const value of ['43', '43.1', '43.2', '43.5']) {
      await ask(page, '44')
      await ask(page, value)
      await page.reload()
      expect(await hardest(page).inputValue()).toBe(value)
    }
  },
)

pageTest('a page left by a link and come back to has its last change', async ({ open }) => {
  const page = await open()
  const address = page.url()
  await ask(page, '43')
  await ask(page, '43.5')
  await page.goto('about:blank')
  await page.goto(address)
  expect(await hardest(page).inputValue()).toBe('43.5')
  await expect.poll(() => notesLeft(page)).toBe(0)
})

pageTest('what a closed tab left goes aside when another tab wrote later', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  const record = await keptRecord(page)
  await leaveNote(page, JSON.stringify({ record: { ...record, id: 'other/1', at: record.at - 1 } }))
  await page.reload()
  expect(await hardest(page).inputValue()).toBe('43.5')
  await expectAside(page)
  expect(await notesLeft(page)).toBe(0)
})

pageTest('a note of a closed tab that can not be read lies aside', async ({ open }) => {
  const page = await open()
  await leaveNote(page, '{"half')
  await page.reload()
  await expectAside(page)
  expect(await notesLeft(page)).toBe(0)
})

pageTest('a tab that is closed without a word loses nothing written before', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  const next = await page.context().newPage()
  const address = page.url()
  await page.close({ runBeforeUnload: false })
  await next.goto(address)
  expect(await hardest(next).inputValue()).toBe('43.5')
})

pageTest('a tab whose process dies loses nothing written before', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  const next = await page.context().newPage()
  const crashed = page.waitForEvent('crash')
  const killing = page.goto('chrome://crash').catch((error: unknown) => String(error))
  await crashed
  expect(await killing).toMatch(/crash/iu)
  await next.goto(page.url())
  expect(await hardest(next).inputValue()).toBe('43.5')
})

pageTest('a second tab shows the newest work, and the first one is told', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  const tab = await secondTab(page)
  expect(await hardest(tab).inputValue()).toBe('43.5')
  await ask(tab, '42')
  await notice(page, /Changed in another tab, \d\d:\d\d/u).waitFor()
  await expect.poll(() => hardest(page).inputValue()).toBe('42')
  await page.getByRole('button', { name: 'Back to what stood here' }).click()
  await expect.poll(() => hardest(page).inputValue()).toBe('43.5')
  await notice(tab, /Changed in another tab/u).waitFor()
  await expect.poll(() => hardest(tab).inputValue()).toBe('43.5')
})

pageTest('tabs that change by turns follow each other without end or loss', async ({ open }) => {
  const page = await open()
  await ask(page, '43')
  await page.waitForTimeout(WRITTEN_MS)
  const tab = await secondTab(page)
  for (const value of ['42', '43.5', '42.5', '43.25']) {
    const [from, to] = Number(value) % 1 === 0 ? [tab, page] : [page, tab]
    await ask(from, value)
    await expect.poll(() => hardest(to).inputValue()).toBe(value)
  }
  await page.getByRole('button', { name: 'File', exact: true }).click()
  expect(await page.getByRole('menuitem', { name: /lies aside/u }).count()).toBe(0)
})

pageTest('a tab that missed a write puts the unseen work aside and says so', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  await plant(page, { format: 'barwright-work/1', id: 'other', at: 1, work: 'unknown here' })
  await ask(page, '42')
  await notice(page, /Another tab had kept other work/u).waitFor()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Download it' }).click()
  const stream = await (await downloading).createReadStream()
  const text = (await stream.toArray()).map(String).join('')
  expect(text).toContain('unknown here')
})

pageTest('kept work that can not be read lies aside and the example opens', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  await page.waitForTimeout(WRITTEN_MS)
  await plant(page, { format: 'barwright-work/1', id: 'x', at: 1, work: { brief: 'broken' } })
  await page.reload()
  await notice(page, /can’t be read by this Barwright/u).waitFor()
  expect(await hardest(page).inputValue()).toBe('44')
  await page.reload()
  expect(await notice(page, /can’t be read/u).count()).toBe(0)
  const downloading = page.waitForEvent('download')
  await menu(page, /lies aside/u)
  const stream = await (await downloading).createReadStream()
  expect((await stream.toArray()).map(String).join('')).toContain('broken')
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
  const page = await withStorage(
    open,
    `const put = IDBObjectStore.prototype.put
     window.full = true
     IDBObjectStore.prototype.put = function (...args) {
       if (window.full) throw new DOMException('no', 'QuotaExceededError')
       return put.apply(this, args)
     }`,
  )
  await ask(page, '43.5')
  await notice(page, /there is no room left on this machine/u).waitFor()
  await page.evaluate('window.full = false')
  await ask(page, '43')
  await kept(page).waitFor()
  expect(await notice(page, /no room left/u).count()).toBe(0)
  await page.reload()
  expect(await hardest(page).inputValue()).toBe('43')
})

pageTest('a database that never answers does not keep the page from opening', async ({ open }) => {
  const page = await withStorage(
    open,
    `const silent = Object.create(IDBOpenDBRequest.prototype)
     silent.addEventListener = () => undefined
     IDBFactory.prototype.open = () => silent`,
  )
  await hardest(page).waitFor()
  await notice(page, /has not answered yet/u).waitFor()
})

pageTest(
  'work that comes late takes its place when it comes, and the page opens',
  async ({ open }) => {
    const page = await open('', { own: true })
    await ask(page, '43.5')
    await kept(page).waitFor()
    await page.waitForTimeout(WRITTEN_MS)
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
    expect(await hardest(page).inputValue()).toBe('44')
    await page.evaluate('window.released = true')
    await expect.poll(() => hardest(page).inputValue(), { timeout: 10_000 }).toBe('43.5')
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

pageTest('a brief goes to a file and comes back the same', async ({ open }) => {
  const page = await open()
  await ask(page, '43.5')
  const downloading = page.waitForEvent('download')
  await menu(page, /^Download the brief/u)
  const download = await downloading
  expect(download.suggestedFilename()).toBe('kitchen-bar-for-the-harbour-shop.brief.json')
  const file = { name: 'brief.json', mimeType: 'application/json', buffer: await bytesOf(download) }
  await menu(page, /^Start afresh/u)
  const picking = page.waitForEvent('filechooser')
  await menu(page, /^Open a brief file/u)
  await (await picking).setFiles(file)
  await expect.poll(() => hardest(page).inputValue()).toBe('43.5')
  const price = page.getByRole('textbox', { name: 'Price of Cocoa butter, per kg' })
  expect(await price.inputValue()).toBe('10.80')
})

pageTest.for<[string, string, RegExp]>([
  ['not JSON', 'olive 60', /Not a JSON file/u],
  ['another format', '{"format":"barwright-batch/1"}', /barwright-brief\/1/u],
  [
    'an unknown oil',
    '{"format":"barwright-brief/1","oils":{"dragon":{}},"goal":{"minimise":"wear"}}',
    /There is no oil "dragon"/u,
  ],
])('a file with %s says what is wrong and changes nothing', async ([, text, words], { open }) => {
  const page = await open()
  const picking = page.waitForEvent('filechooser')
  await menu(page, /^Open a brief file/u)
  const buffer = Buffer.from(text)
  await (await picking).setFiles({ name: 'odd.json', mimeType: 'application/json', buffer })
  const alert = page.getByRole('alert').filter({ hasText: 'odd.json can’t be opened as a brief' })
  expect(await alert.textContent()).toMatch(words)
  expect(await hardest(page).inputValue()).toBe('44')
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true)
})
