import type { Browser, Page } from 'playwright-core'
import { rm } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { published } from '../../notebooks/oil-agreement'
import { connect } from '../browser/chromium'
import { serve, type Site } from '../browser/serve'
import { openWatched } from '../browser/watched-page'
import { buildNotebooks, notebookNames } from './build-notebooks'

let folder: string
let site: Site
let browser: Browser

beforeAll(async () => {
  folder = await buildNotebooks()
  ;[site, browser] = await Promise.all([serve(folder), connect()])
})

afterAll(async () => {
  await Promise.all([browser?.close(), site?.close()])
  await rm(folder, { recursive: true, force: true })
})

/** Opens a notebook, waits for its last cell to have drawn, hands over the page, then closes it. */
async function look<T>(name: string, at: (page: Page) => Promise<T>) {
  const { page, complaints, close } = await openWatched(browser, new URL(name, site.url).href)
  await page.locator('main svg').last().waitFor({ state: 'attached' })
  await page.locator('.observablehq--running').first().waitFor({ state: 'detached' })
  const seen = await at(page)
  await close()
  return { seen, complaints }
}

describe('every notebook, opened offline', async () => {
  it.each(await notebookNames())(
    '%s shows no error and asks nothing of the outside',
    async (name) => {
      const { seen, complaints } = await look(name, (page) =>
        page.locator('.observablehq--error').allInnerTexts(),
      )
      expect(seen).toEqual([])
      expect(complaints).toEqual([])
    },
  )

  it.each(await notebookNames())('%s has a picture with marks', async (name) => {
    const { seen } = await look(name, (page) =>
      page.locator('main svg').first().locator('circle, rect, path, line').count(),
    )
    // The least that makes a chart and not an icon.
    expect(seen).toBeGreaterThan(10)
  })

  it.each(await notebookNames())('%s shows neither NaN nor undefined', async (name) => {
    const { seen } = await look(name, (page) => page.locator('main').innerText())
    expect(seen.length).toBeGreaterThan(500)
    expect(seen).not.toMatch(/NaN|undefined|\[object/)
  })

  it.each(await notebookNames())('%s fits a phone without scrolling sideways', async (name) => {
    const { seen } = await look(name, async (page) => {
      await page.setViewportSize({ width: 390, height: 844 })
      return page.evaluate(() => document.documentElement.scrollWidth)
    })
    expect(seen).toBeLessThanOrEqual(390)
  })
})

describe('01-oil-data.html', () => {
  it('draws two dots for each oil whose ranges were read', async () => {
    const { seen } = await look('01-oil-data.html', (page) =>
      page.locator('figure svg.agreement circle').count(),
    )
    expect(seen).toBe(2 * published.length)
  })

  it('draws every profile under every name', async () => {
    const { seen } = await look('01-oil-data.html', (page) =>
      page.locator('svg.disguises rect').count(),
    )
    expect(seen).toBe(published.length ** 2)
  })

  it('opens on its claim, with the number of oils in it', async () => {
    const { seen } = await look('01-oil-data.html', (page) => page.locator('.claim').innerText())
    expect(seen).toContain(`${published.length} oils`)
  })
})
