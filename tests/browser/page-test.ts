import type { Browser, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { connect } from './chromium'
import { PagePool } from './page-pool'
import type { Look } from './watched-page'

/** Opens a path of the built page, `''` for its start. */
export type Open = (path?: string, look?: Look) => Promise<Page>

interface PageFixtures {
  /** The browser of the test run, for a file. */
  browser: Browser
  /** Pages of a file, used again by its tests. */
  pool: PagePool
  open: Open
}

/**
 * A Vitest `test` with the built page in a browser. It fails on every console error, page error,
 * failed answer and request to the outside, whatever else the test checks. Every test finds the page as
 * on a first visit, with nothing kept.
 */
export const pageTest = test.extend<PageFixtures>({
  browser: [
    async ({}, use) => {
      const browser = await connect()
      await use(browser)
      await browser.close()
    },
    { scope: 'file' },
  ],
  pool: [
    async ({ browser }, use) => {
      const pool = new PagePool(browser)
      await use(pool)
      await pool.close()
    },
    { scope: 'file' },
  ],
  open: async ({ pool }, use) => {
    await use(async (path = '', look = {}) => {
      const { page } = await pool.open(new URL(path, inject('pageAddress')).href, look)
      return page
    })
    expect(await pool.takeBack()).toEqual([])
  },
})
