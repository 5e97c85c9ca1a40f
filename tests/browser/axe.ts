import { createRequire } from 'node:module'
import type axe from 'axe-core'
import type { Page } from 'playwright-core'

declare global {
  interface Window {
    axe: typeof axe | undefined
  }
}

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js')

/** The rules of axe-core that look at colours; all others read the document and where things stand. */
const OF_COLOURS = ['color-contrast', 'link-in-text-block']

/**
 * What axe-core (WCAG 2.2 A and AA and its best practice) finds at fault in the light theme and in the dark
 * one, in words. Where the document is the same in the dark, only the rules about colours are asked again.
 * Expects a page in the light theme that does not move.
 */
export async function axeFaults(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.addScriptTag({ path: AXE })
  const before = await bodyOf(page)
  const light = await faults(page)
  const dark = await inTheDark(page, async () => {
    const same = (await bodyOf(page)) === before
    return faults(page, same ? OF_COLOURS : undefined)
  })
  return [...light, ...dark.map((fault) => `in the dark, ${fault}`)]
}

/** What a look at a page in the dark theme finds; the page is in the light one before and after. */
export async function inTheDark<T>(page: Page, look: () => Promise<T>): Promise<T> {
  await page.emulateMedia({ colorScheme: 'dark' })
  try {
    return await look()
  } finally {
    await page.emulateMedia({ colorScheme: 'light' })
  }
}

const bodyOf = (page: Page) => page.evaluate(() => document.body.outerHTML)

function faults(page: Page, rules?: readonly string[]): Promise<string[]> {
  return page.evaluate(async (only) => {
    if (!window.axe) throw new Error('axe-core is not on the page')
    const { violations } = await window.axe.run(document, {
      resultTypes: ['violations'],
      ...(only ? { runOnly: { type: 'rule', values: [...only] } } : {}),
    })
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`))
  }, rules)
}
