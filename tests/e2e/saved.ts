import { buffer } from 'node:stream/consumers'
import type { Download, Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** What an item of a Download menu saves; fails where the file is called otherwise. */
export async function saved(
  page: Page,
  item: string,
  name: string,
  within: Page | Locator = page,
): Promise<Buffer> {
  const download = page.waitForEvent('download')
  await within.getByRole('button', { name: 'Download', exact: true }).click()
  await page.getByRole('menuitem', { name: item, exact: true }).click()
  const file = await download
  expect(file.suggestedFilename()).toBe(name)
  return bytesOf(file)
}

/** What a download holds. */
export async function bytesOf(download: Download): Promise<Buffer> {
  return buffer(await download.createReadStream())
}

/** Rows of a comma-separated file without quoted commas. */
export function rowsOf(csv: Buffer): string[] {
  return csv.toString('utf8').replace('\uFEFF', '').trimEnd().split('\r\n')
}

/** Width and height of a PNG picture, dots (ISO/IEC 15948, 11.2.2). */
export function pngSize(png: Buffer): readonly [number, number] {
  expect(png.subarray(1, 4).toString('latin1')).toBe('PNG')
  return [png.readUInt32BE(16), png.readUInt32BE(20)]
}
