import type { Browser, Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { demo } from '../../src/data/demo'
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
 * failed answer and request to the outside, whatever else the test checks. Every test finds the page with
 * nothing kept but the example opened, on Map; or as on a first visit, see `Look`.
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
    await use(async (path = '', { begin = 'example', ...look } = {}) => {
      const isApp = path === '' || path.startsWith('#')
      const first = isApp && begin === 'example' ? '' : path
      const { page } = await pool.open(new URL(first, inject('pageAddress')).href, look)
      if (isApp && begin === 'example') await openExample(page, path === '' ? '#map' : path)
      return page
    })
    expect(await pool.takeBack()).toEqual([])
  },
})

/** Opens the example from a first visit, and goes to a place with it. */
export async function openExample(page: Page, hash: string): Promise<void> {
  await page.getByRole('button', { name: demo.name }).click()
  await page.evaluate((to) => (location.hash = to), hash)
}
