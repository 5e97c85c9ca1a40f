import type { Page } from 'playwright-core'

/** What the page's main thread was busy with, ms. */
export interface MainThread {
  readonly script: number
  readonly style: number
  readonly layout: number
  /** All of it: with the above also parsing, painting, collecting garbage. */
  readonly all: number
}

const SECOND_MS = 1000

/** The main thread's time while something is done, by Chromium's own count. */
export async function mainThreadDuring(page: Page, act: () => Promise<void>): Promise<MainThread> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const read = async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    return new Map(metrics.map(({ name, value }) => [name, value * SECOND_MS]))
  }
  const before = await read()
  await act()
  const after = await read()
  await session.detach()
  const spent = (name: string) => (after.get(name) ?? NaN) - (before.get(name) ?? NaN)
  return {
    script: spent('ScriptDuration'),
    style: spent('RecalcStyleDuration'),
    layout: spent('LayoutDuration'),
    all: spent('TaskDuration'),
  }
}
