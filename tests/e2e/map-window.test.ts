import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { expectNow, field, landed, shares, SOON, solved, typed } from './brief-page'

/** Takes what is at a place of the page and moves it by some px. */
async function drag(page: Page, selector: string, dx: number, dy: number): Promise<void> {
  const box = await page.locator(selector).first().boundingBox()
  if (!box) throw new Error(`There is no ${selector}`)
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + dx, y + dy, { steps: 6 })
  await page.mouse.up()
}

pageTest('a corner of the window moves both of its wishes, in one hand', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  const before = await shares(page)
  await drag(page, '.map rect.grip', -60, 60)
  const [hardness, lather] = [
    await typed(page, 'Hardness, at least'),
    await typed(page, 'Lather, at least'),
  ]
  expect(hardness).toBeLessThan(38)
  expect(lather).toBeLessThan(35)
  // Both move in the steps that flags are dragged in.
  expect(((hardness ?? NaN) * 2) % 1).toBe(0)
  expect(((lather ?? NaN) * 2) % 1).toBe(0)
  await expectNow(page, 'Hardness', (hardness ?? NaN).toFixed(1))
  await expect.poll(() => shares(page), SOON).not.toEqual(before)
  expect(await page.getByText('picked on the map').count()).toBe(0)
  await page.keyboard.press('Control+z')
  await expect.poll(() => typed(page, 'Hardness, at least'), SOON).toBe(38)
  expect(await typed(page, 'Lather, at least')).toBe(35)
})

pageTest('an edge of the window moves its own wish alone', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  const edges = await page.locator('.map path.hit').count()
  // The example asks for hardness from 38 to 44 and lather from 35 on.
  expect(edges).toBe(3)
  await field(page, 'Lather, at least').fill('')
  await field(page, 'Hardness, at most').fill('')
  await expect.poll(() => page.locator('.map path.hit').count(), SOON).toBe(1)
  await drag(page, '.map path.hit', -80, 0)
  expect(await typed(page, 'Hardness, at least')).toBeLessThan(38)
  expect(await typed(page, 'Lather, at least')).toBeUndefined()
})
