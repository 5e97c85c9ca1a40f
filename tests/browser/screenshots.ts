import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from './page-test'
import { README_PICTURES, takePicture } from './pictures'

/** Pictures of the README by name: where they are taken, and what must be there first. */
const PICTURES: readonly {
  readonly name: string
  readonly path: string
  readonly ready: (page: Page) => Promise<void>
}[] = [
  {
    name: 'brief-map',
    path: '',
    ready: async (page) => {
      await page.locator('[data-figure]').waitFor()
      await page.getByRole('application').locator('.label').first().waitFor()
      await page.getByRole('region', { name: /^Why/u }).getByRole('img').first().waitFor()
    },
  },
  {
    name: 'batch',
    path: '#batch',
    ready: (page) => page.locator('[data-weigh="naoh"]').waitFor(),
  },
]

/** Run by `npm run screenshots`, never by `npm test`: it writes files of the repository. */
pageTest.for(PICTURES)('the picture $name is taken', async ({ name, path, ready }, { open }) => {
  const page = await open(path, { reducedMotion: true })
  await ready(page)
  expect(await takePicture(page, README_PICTURES, name)).toMatch(new RegExp(`${name}\\.png$`, 'u'))
})
