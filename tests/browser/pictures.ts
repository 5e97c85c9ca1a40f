import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import type { Open } from './page-test'
import { type Look, SIZES, type SizeName } from './watched-page'

/** Pictures the README shows; they are part of the repository. */
export const README_PICTURES = fileURLToPath(new URL('../../notebooks/pictures', import.meta.url))
/** Pictures to look at once; Git leaves this folder out. */
export const PASSING_PICTURES = fileURLToPath(new URL('../../dist/pictures', import.meta.url))

const SIZE_NAMES = Object.keys(SIZES) as SizeName[]
const THEMES = ['light', 'dark'] as const

/** Every size in every theme, without motion, so that two pictures of one page are alike. */
export const LOOKS: readonly (Look & { readonly name: string })[] = SIZE_NAMES.flatMap((size) =>
  THEMES.map((theme) => ({ name: `${size}-${theme}`, size, theme, reducedMotion: true })),
)

/** Writes a PNG of what the page shows now, once its fonts are there. Returns the file's path. */
export async function takePicture(
  page: Page,
  folder: string,
  name: string,
  { fullPage = false } = {},
): Promise<string> {
  const path = join(folder, `${name}.png`)
  await page.waitForLoadState('networkidle')
  await page.evaluate(() => document.fonts.ready.then(() => undefined))
  await page.screenshot({ path, fullPage, animations: 'disabled', caret: 'hide' })
  return path
}

/** `NAME-desktop-light.png` and so on; `prepare` brings the freshly opened page to the moment. */
export async function takeEveryLook(
  open: Open,
  folder: string,
  name: string,
  prepare: (page: Page) => Promise<void> = () => Promise.resolve(),
): Promise<string[]> {
  const paths: string[] = []
  for (const { name: lookName, ...look } of LOOKS) {
    const page = await open('', look)
    await prepare(page)
    paths.push(await takePicture(page, folder, `${name}-${lookName}`))
    await page.close()
  }
  return paths
}
