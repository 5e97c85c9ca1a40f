import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, goTo, map, solved, wish } from './brief-page'
import { overflow, smallTargets, sticksOut } from './sideways'

/** Narrowest screens, 1440 px at 200 %, the layout for 1024, and the widest. */
const WIDTHS = [
  { width: 320, height: 640 },
  { width: 390, height: 844 },
  { width: 720, height: 450 },
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
] as const

pageTest(
  'nothing sticks out sideways at any width, in either place, also in a clash',
  async ({ open }) => {
    const page = await open('', { size: 'phone' })
    const check = async (what: string, width: number) =>
      expect([what, width, await overflow(page), await sticksOut(page)]).toEqual([
        what,
        width,
        0,
        [],
      ])
    for (const size of WIDTHS) {
      await page.setViewportSize(size)
      await goTo(page, 'map')
      await solved(page)
      await check('map', size.width)
      await field(page, 'Lather, at least').fill('80')
      await page.getByText('No blend', { exact: true }).waitFor()
      await check('clash', size.width)
      await field(page, 'Lather, at least').fill('35')
      await solved(page)
      await goTo(page, 'batch')
      await page.locator('[data-weigh="naoh"]').waitFor()
      await check('batch', size.width)
    }
  },
)

/** Where a part of the page stands, px. */
async function boxOf(page: Page, name: string) {
  const box = await page.getByRole('region', { name, exact: true }).boundingBox()
  if (!box) throw new Error(`There is no ${name} on the page`)
  return box
}

pageTest(
  'at 1440 by 900 the sentence, wishes, shelf and map stand on one screen',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const [wishes, shelf, map] = [
      await boxOf(page, 'Wishes'),
      await boxOf(page, 'Shelf'),
      await boxOf(page, 'Map'),
    ]
    expect(shelf.y + shelf.height).toBeLessThanOrEqual(900)
    expect(map.y + map.height).toBeLessThanOrEqual(900)
    expect(map.x).toBeGreaterThan(wishes.x + wishes.width)
  },
)

pageTest('at 1024 wishes and map stand side by side and the shelf below both', async ({ open }) => {
  const page = await open()
  await page.setViewportSize({ width: 1024, height: 768 })
  await solved(page)
  const [wishes, shelf, map] = [
    await boxOf(page, 'Wishes'),
    await boxOf(page, 'Shelf'),
    await boxOf(page, 'Map'),
  ]
  expect(map.x).toBeGreaterThan(wishes.x + wishes.width)
  expect(shelf.y).toBeGreaterThan(wishes.y + wishes.height)
  expect(shelf.width).toBeCloseTo(1024 - 48, 0)
})

pageTest(
  'at 200 % of 1440 by 900 every wish can be reached and is not covered',
  async ({ open }) => {
    const page = await open('', { pixelRatio: 2 })
    await page.setViewportSize({ width: 720, height: 450 })
    await solved(page)
    for (const measure of ['Hardness', 'Keeping']) {
      const input = field(page, `${measure}, at least`)
      await input.scrollIntoViewIfNeeded()
      await input.click()
      await input.press('ArrowRight')
    }
    expect(await wish(page, 'Keeping').isVisible()).toBe(true)
  },
)

/** Half of a phone's height, px: the map leaves the rest to the wishes. */
const PHONE_HALF_PX = 422

pageTest('on a phone the map stays in sight while the last wish is dragged', async ({ open }) => {
  const page = await open('', { size: 'phone' })
  await solved(page)
  await field(page, 'Keeping, at least').focus()
  const chart = await map(page).boundingBox()
  if (!chart) throw new Error('There is no map')
  const input = await field(page, 'Keeping, at least').boundingBox()
  expect(chart.y).toBeGreaterThanOrEqual(0)
  expect(chart.y + chart.height).toBeLessThan(PHONE_HALF_PX)
  expect(input?.y).toBeGreaterThanOrEqual(chart.y + chart.height)
  const { x = 0, y = 0, width = 0, height = 0 } = input ?? {}
  const onTop = await page.evaluate(
    ([left, top]) => document.elementFromPoint(left, top)?.getAttribute('aria-label'),
    [x + width / 2, y + height / 2] as const,
  )
  expect(onTop).toBe('Keeping, at least')
})

pageTest('targets on a touch screen are at least 24 px each way', async ({ open }) => {
  const page = await open('', { size: 'phone' })
  await solved(page)
  expect(await smallTargets(page)).toEqual([])
})

pageTest('with reduced motion nothing moves', async ({ open }) => {
  const page = await open('', { reducedMotion: true })
  await solved(page)
  const moving = await page.evaluate(() =>
    [...document.querySelectorAll('*')].flatMap((element) => {
      const { transitionDuration, animationDuration } = getComputedStyle(element)
      const still = [transitionDuration, animationDuration].every((times) =>
        times.split(', ').every((time) => Number.parseFloat(time) === 0),
      )
      return still ? [] : [element.outerHTML.slice(0, 80)]
    }),
  )
  expect(moving).toEqual([])
  expect(await page.evaluate(() => document.getAnimations().length)).toBe(0)
})
