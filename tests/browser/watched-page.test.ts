import { createServer } from 'node:http'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Browser } from 'playwright-core'
import type { AddressInfo } from 'node:net'
import { connect } from './chromium'
import { openWatched } from './watched-page'

/** Pages that do one thing each that the watch must notice, and one that does nothing wrong. */
const PAGES: Readonly<Record<string, string>> = {
  '/quiet': '<p>Twelve bars cure</p>',
  '/console': '<script>console.error("lye is short")</script>',
  '/throws': '<script>throw new Error("no oils")</script>',
  '/rejects': '<script>Promise.reject(new Error("no blend"))</script>',
  '/missing': '<img src="./absent.png" alt="">',
  '/outside': '<script>void fetch("http://example.com/prices").catch(() => undefined)</script>',
  '/socket': '<script>new WebSocket("ws://example.com/")</script>',
  '/worker-outside': worker(
    "fetch('http://example.com/').catch(() => 0).then(() => postMessage(0))",
  ),
  '/worker-console': worker("console.error('no cost'); postMessage(0)"),
  '/worker-throws': worker("postMessage(0); throw new Error('no solver')"),
}

/** A page whose worker runs the code; its title is "done" after the worker's message. */
function worker(code: string): string {
  return `<script>
    new Worker(URL.createObjectURL(new Blob([${JSON.stringify(code)}]))).onmessage = () => {
      document.title = 'done'
    }
  </script>`
}

const server = createServer((request, response) => {
  const body = PAGES[request.url ?? '']
  response.writeHead(body === undefined ? 404 : 200, { 'content-type': 'text/html' })
  response.end(`<!doctype html><link rel="icon" href="data:,"><title>Bars</title>${body ?? ''}`)
})

let browser: Browser
beforeAll(async () => {
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  browser = await connect()
})
afterAll(async () => {
  await browser.close()
  server.close()
})

function address(path: string): string {
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`
}

async function complaintsOf(path: string, title = 'Bars'): Promise<string> {
  const watched = await openWatched(browser, address(path))
  await watched.page.waitForFunction((wanted) => document.title === wanted, title)
  await watched.page.waitForLoadState('networkidle')
  await watched.close()
  return watched.complaints.join('\n')
}

test('a quiet page gives no complaint', async () => {
  expect(await complaintsOf('/quiet')).toBe('')
})

test.each([
  ['/console', 'Console error: lye is short'],
  ['/throws', 'Page error: no oils'],
  ['/rejects', 'Page error: no blend'],
  ['/missing', 'Answer 404 for http'],
  ['/outside', 'Request outside this machine: http://example.com/prices'],
  ['/socket', 'Socket outside this machine: ws://example.com/'],
])('the page %s gives the complaint "%s"', async (path, complaint) => {
  expect(await complaintsOf(path)).toContain(complaint)
})

test.each([
  ['/worker-outside', 'example.com'],
  ['/worker-console', 'Console error: no cost'],
  ['/worker-throws', 'no solver'],
])('the worker of %s gives a complaint with "%s"', async (path, complaint) => {
  expect(await complaintsOf(path, 'done')).toContain(complaint)
})

test('a page opens in the asked size, theme and motion', async () => {
  const look = { size: 'phone', theme: 'dark', reducedMotion: true } as const
  const { page, close } = await openWatched(browser, address('/quiet'), look)
  const seen = await page.evaluate(() => ({
    width: window.screen.width,
    dark: matchMedia('(prefers-color-scheme: dark)').matches,
    reduced: matchMedia('(prefers-reduced-motion: reduce)').matches,
  }))
  await close()
  expect(seen).toEqual({ width: 390, dark: true, reduced: true })
})
