import { gzipSync } from 'node:zlib'
import type { Browser } from 'playwright-core'

/** What one first visit took: times from the start of navigation, ms. */
export interface FirstLoad {
  /** Until the page takes input: its fields are there. */
  readonly input: number
  /** Until the first blend stands at the top. */
  readonly blend: number
  /** Until the first map is drawn. */
  readonly map: number
  /** JavaScript asked for by then, worker and all, each file gzipped at the usual level. */
  readonly scripts: readonly { readonly name: string; readonly gzipBytes: number }[]
}

interface Marks {
  input?: number
  blend?: number
  map?: number
}

declare global {
  interface Window {
    benchMarks: Marks
  }
}

/** Opens a page in a fresh profile, with nothing kept and nothing cached. */
export async function firstLoad(browser: Browser, url: string): Promise<FirstLoad> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const bodies: Promise<{ name: string; gzipBytes: number }>[] = []
  let hasBlend = false
  context.on('response', (response) => {
    if (hasBlend || !/javascript/u.test(response.headers()['content-type'] ?? '')) return
    const name = new URL(response.url()).pathname
    bodies.push(response.body().then((body) => ({ name, gzipBytes: gzipSync(body).length })))
  })
  const page = await context.newPage()
  await page.addInitScript(markTimes)
  await page.goto(url)
  await page.locator('[data-figure]').waitFor()
  hasBlend = true
  await page.locator('.map path.edge').waitFor()
  const { input = NaN, blend = NaN, map = NaN } = await page.evaluate(() => window.benchMarks)
  const scripts = await Promise.all(bodies)
  await context.close()
  return { input, blend, map, scripts }
}

/** Runs in the page before anything else and notes when each part first appears. */
function markTimes(): void {
  const marks: Marks = {}
  const parts = {
    input: 'input[inputmode]',
    blend: '[data-figure]',
    map: '.map path.edge',
  } as const
  window.benchMarks = marks
  new MutationObserver(() => {
    for (const part of ['input', 'blend', 'map'] as const)
      if (marks[part] === undefined && document.querySelector(parts[part]) !== null)
        marks[part] = performance.now()
  }).observe(document, { subtree: true, childList: true, attributes: true })
}
