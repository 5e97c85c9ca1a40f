import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { expect } from 'vitest'
import { pageTest } from './page-test'
import { takeEveryLook } from './pictures'

/** Width and height in pixels, from bytes 16 to 23 of a PNG file (ISO/IEC 15948, IHDR chunk). */
async function pixelsOf(path: string): Promise<string> {
  const png = await readFile(path)
  return `${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`
}

pageTest('pictures come in three sizes and two themes', async ({ open }) => {
  const folder = await mkdtemp(join(tmpdir(), 'barwright-pictures-'))
  try {
    const paths = await takeEveryLook(open, folder, 'start')
    const sizes = await Promise.all(paths.map(pixelsOf))
    expect(paths.map((path, index) => `${basename(path)} ${sizes[index]}`)).toEqual([
      'start-desktop-light.png 1440x900',
      'start-desktop-dark.png 1440x900',
      'start-tablet-light.png 768x1024',
      'start-tablet-dark.png 768x1024',
      'start-phone-light.png 390x844',
      'start-phone-dark.png 390x844',
    ])
  } finally {
    await rm(folder, { recursive: true })
  }
})
