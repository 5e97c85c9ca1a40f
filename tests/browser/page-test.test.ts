import { expect } from 'vitest'
import { pageTest } from './page-test'

pageTest('the built page opens without a complaint', async ({ open }) => {
  const page = await open()
  expect(await page.title()).toContain('Barwright')
})
