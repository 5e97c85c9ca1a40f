import type { BrowserContext, Page } from 'playwright-core'
import { expect, inject } from 'vitest'
import { demo } from '../../src/data/demo'
import { openExample, pageTest } from '../browser/page-test'
import { SIZES } from '../browser/watched-page'
import { field, nowText, SOON } from './brief-page'
import { untilKept } from './kept'

/** Put before the thread's own code: what a study makes of the thread. */
const LOOPS = `addEventListener('message', ({ data }) => {
  if (data.path?.[0] === 'study') for (;;) {}
})\n`
const DIES = `addEventListener('message', ({ data }) => {
  if (data.path?.[0] === 'study') throw new Error('the thread is broken')
})\n`

/** Lets the first so many threads start with a fault. Counts the threads started. */
async function breakThreads(context: BrowserContext, fault: string, count: number) {
  const started = { count: 0 }
  await context.route(/solver\.worker-[^/]*\.js$/u, async (route) => {
    started.count++
    const answer = await route.fetch()
    const body = await answer.text()
    await route.fulfill({ response: answer, body: started.count <= count ? fault + body : body })
  })
  return started
}

/** A page on Map that keeps the example, so that it begins with a study when it is loaded again. */
async function keptExample(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  await page.goto(inject('pageAddress'))
  await openExample(page, '#map')
  await untilKept(page, demo.name)
  return page
}

/** Longer than any thread may take for one question. */
const TOO_LONG_MS = 31_000

pageTest(
  'a thread that never ends its study is ended, and the next change starts another',
  async ({ browser }) => {
    const context = await browser.newContext({ viewport: SIZES.desktop })
    const page = await keptExample(context)
    const started = await breakThreads(context, LOOPS, 1)
    await page.clock.install()
    await page.reload()
    await page.locator('.answer').getByText('looking …').waitFor()
    await expect.poll(() => started.count, SOON).toBe(1)
    await expect
      .poll(async () => {
        await page.clock.fastForward(TOO_LONG_MS)
        return page.locator('.answer').innerText()
      }, SOON)
      .toMatch(/^Stopped\s+No answer within \d+ ms\. Change anything to try again\.$/u)
    await field(page, 'Hardness, at least').fill('40')
    await expect.poll(() => nowText(page, 'Hardness'), SOON).toBe('40.0')
    expect(started.count).toBe(2)
    await context.close()
  },
)

pageTest('a thread that dies is told, and the next change starts another', async ({ browser }) => {
  const context = await browser.newContext({ viewport: SIZES.desktop })
  const page = await keptExample(context)
  const started = await breakThreads(context, DIES, 1)
  await page.reload()
  await page.getByText('Stopped').waitFor()
  expect(await page.locator('.answer').innerText()).toContain('the thread is broken')
  await field(page, 'Hardness, at least').fill('40')
  await expect.poll(() => nowText(page, 'Hardness'), SOON).toBe('40.0')
  expect(started.count).toBe(2)
  await context.close()
})
