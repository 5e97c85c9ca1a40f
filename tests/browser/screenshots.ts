import { expect } from 'vitest'
import { pageTest } from './page-test'
import { README_PICTURES, takeEveryLook } from './pictures'

/** Run by `npm run screenshots`, never by `npm test`: it writes files of the repository. */
pageTest('the pictures of the README are taken', async ({ open }) => {
  expect(await takeEveryLook(open, README_PICTURES, 'start')).toHaveLength(4)
})
