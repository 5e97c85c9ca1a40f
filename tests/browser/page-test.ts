import type { Browser, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { launchBrowser } from './chromium'
import { serve, type Site } from './serve'
import { type Look, openWatched, type WatchedPage } from './watched-page'

/** Opens a path of the built page, `''` for its start. */
export type Open = (path?: string, look?: Look) => Promise<Page>

interface PageFixtures {
  /** One browser for the tests of a file. */
  browser: Browser
  /** The built page on a local port, for the tests of a file. */
  site: Site
  open: Open
}

/**
 * A Vitest `test` with the built page in a browser. It fails on every console error, page error,
 * failed answer and request to the outside, whatever else the test checks.
 */
export const pageTest = test.extend<PageFixtures>({
  browser: [
    async ({}, use) => {
      const browser = await launchBrowser()
      await use(browser)
      await browser.close()
    },
    { scope: 'file' },
  ],
  site: [
    async ({}, use) => {
      const site = await serve(inject('builtPage'))
      await use(site)
      await site.close()
    },
    { scope: 'file' },
  ],
  open: async ({ browser, site }, use) => {
    const opened: WatchedPage[] = []
    await use(async (path = '', look = {}) => {
      const watched = await openWatched(browser, new URL(path, site.url).href, look)
      opened.push(watched)
      return watched.page
    })
    await Promise.all(opened.map((watched) => watched.close()))
    expect(opened.flatMap((watched) => watched.complaints)).toEqual([])
  },
})
