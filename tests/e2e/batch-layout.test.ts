import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { addFrom, goToView, group, openBatch } from './batch-page'
import { field } from './brief-page'
import { overflow, smallTargets, sticksOut } from './sideways'

/** Narrowest screens, 1440 px at 200 %, the layout for 1024, and the widest. */
const WIDTHS = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 720, height: 450 },
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
] as const

const GROUPS = [
  'Size and scales',
  'Lye and superfat',
  'Lots',
  'Water and liquids',
  'Acids and additives',
  'Fragrance',
  'Cook and cure',
  'Papers and prices',
] as const

/** A batch with something of everything in it, weighed wrong. */
async function fullBatch(page: Page): Promise<void> {
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /vinegar/u)
  await addFrom(page, 'Add an additive', /^Tetrasodium glutamate/u)
  await group(page, 'Water and liquids')
  await addFrom(page, 'Add milk, tea, purée …', /^Goat/u)
  await group(page, 'Fragrance')
  await addFrom(page, 'Add an essential oil', /^Rosemary oil, Tunisia/u)
  await field(page, 'Coconut oil, weighed, g').fill('0')
  await page.getByRole('region', { name: 'As really weighed' }).waitFor()
}

pageTest.for(WIDTHS)(
  'nothing of the batch sticks out sideways, $width px wide',
  async (size, { open }) => {
    const page = await openBatch(open, { size: 'phone' })
    await fullBatch(page)
    await page.setViewportSize(size)
    const check = async (what: string) =>
      expect([what, await overflow(page), await sticksOut(page)]).toEqual([what, 0, []])
    for (const name of GROUPS) {
      await group(page, name)
      await check(name)
    }
    await goToView(page, 'Label')
    await page.getByRole('region', { name: 'Allergens' }).waitFor()
    await check('label')
    await goToView(page, 'Step by step')
    await page.getByRole('button', { name: /^Read, /u }).click()
    await page.getByRole('button', { name: /^Done, /u }).click()
    await page.locator('[data-big]').waitFor()
    await check('workshop')
  },
)

pageTest('targets of the batch on a touch screen are at least 24 px each way', async ({ open }) => {
  const page = await openBatch(open, { size: 'phone' })
  await fullBatch(page)
  for (const name of GROUPS) {
    await group(page, name)
    expect([name, await smallTargets(page)]).toEqual([name, []])
  }
  await goToView(page, 'Step by step')
  await page.getByRole('button', { name: /^Read, /u }).waitFor()
  expect(await smallTargets(page)).toEqual([])
})
