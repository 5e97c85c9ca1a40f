import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { lyeCautions } from '../../src/data/cautions'
import { pageTest } from '../browser/page-test'
import { addFrom, goOn, goToView, gramsOf, group, openBatch, pick } from './batch-page'
import { field, SOON } from './brief-page'

const where = (page: Page) => page.locator('.where').innerText()

pageTest('the workshop shows one thing a screen, in order, the caution first', async ({ open }) => {
  const page = await openBatch(open)
  const grams = await gramsOf(page, 'shea')
  await goToView(page, 'Step by step')
  const caution = page.getByRole('region', { name: 'Lye caution' })
  expect(await caution.getByRole('listitem').allInnerTexts()).toEqual([...lyeCautions])
  expect(await where(page)).toBe('1 of 14')
  await goOn(page)
  expect(await where(page)).toBe('2 of 14: make ready')
  await goOn(page)
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(
    /^Shea butter, unrefined/u,
  )
  expect(await page.locator('[data-big]').getAttribute('data-big')).toBe(String(grams))
  const px = await page
    .locator('[data-big]')
    .evaluate((big) => Number.parseFloat(getComputedStyle(big).fontSize))
  expect(px).toBe(96)
})

pageTest('cautions stand beside the lye in the workshop too', async ({ open }) => {
  const page = await openBatch(open)
  await goToView(page, 'Step by step')
  while (!(await where(page)).includes('make the lye')) await goOn(page)
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/^Sodium hydroxide/u)
  const caution = await page.getByRole('region', { name: 'Lye caution' }).boundingBox()
  const figure = await page.locator('[data-big]').boundingBox()
  expect(caution?.y).toBeLessThan(figure?.y ?? 0)
  expect(await page.getByRole('list', { name: 'Mind' }).innerText()).toContain(
    'Hydroxide into water, never water onto hydroxide.',
  )
})

pageTest('ticks survive a reload, and one comes back to where one was', async ({ open }) => {
  const page = await openBatch(open)
  await goToView(page, 'Step by step')
  for (let screen = 0; screen < 4; screen++) await goOn(page)
  expect(await where(page)).toMatch(/^5 of 14/u)
  await page.getByText(/^kept on this machine/u).waitFor()
  await page.reload()
  await expect.poll(() => where(page), SOON).toMatch(/^5 of 14/u)
  await page.getByRole('link', { name: 'The sheet' }).click()
  expect(await page.getByLabel('Shea butter, unrefined weighed').isChecked()).toBe(true)
  expect(await page.getByLabel('Coconut oil weighed').isChecked()).toBe(true)
  expect(await page.getByLabel('Olive oil weighed').isChecked()).toBe(false)
})

pageTest('the workshop is worked by keys alone, to the end and back', async ({ open }) => {
  const page = await openBatch(open)
  await goToView(page, 'Step by step')
  await page.keyboard.press('ArrowRight')
  expect(await where(page)).toMatch(/^1 of/u)
  await page.getByRole('button', { name: /^Read, / }).focus()
  for (let screen = 0; screen < 14; screen++) {
    const asked = page.locator('[data-big]')
    // The field of a weight has the focus: one types and goes on.
    if ((await asked.count()) > 0)
      await page.keyboard.type((await asked.getAttribute('data-big')) ?? '')
    else if (screen > 0) await page.locator('.acts .main').focus()
    await page.keyboard.press('Enter')
  }
  await page.getByRole('heading', { name: 'The record' }).waitFor()
  await page.keyboard.press('ArrowLeft')
  expect(await where(page)).toMatch(/^14 of 14: cure/u)
  await page.keyboard.press('ArrowLeft')
  expect(await where(page)).toMatch(/^13 of 14: cut/u)
  for (let screen = 13; screen > 0; screen--) await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Print sheet' }).waitFor()
})

pageTest('a swipe goes on and back, a scroll does not', async ({ open }) => {
  const page = await openBatch(open, { size: 'phone' })
  await goToView(page, 'Step by step')
  await goOn(page)
  const swipe = (x: number, y: number) =>
    page.evaluate(
      ([dx, dy]) => {
        const touch = (clientX: number, clientY: number) =>
          new Touch({ identifier: 1, target: document.body, clientX, clientY })
        const [from, to] = [touch(200, 300), touch(200 + dx, 300 + dy)]
        const event = (name: string, touches: Touch[], changedTouches: Touch[]) =>
          window.dispatchEvent(new TouchEvent(name, { touches, changedTouches }))
        event('touchstart', [from], [from])
        event('touchend', [], [to])
      },
      [x, y] as const,
    )
  await swipe(-120, 10)
  await expect.poll(() => where(page), SOON).toMatch(/^2 of/u)
  await page.getByRole('button', { name: /^Done, / }).click()
  await swipe(100, -10)
  await swipe(-120, 10)
  await expect.poll(() => where(page), SOON).toMatch(/^3 of/u)
  await swipe(100, -10)
  await expect.poll(() => where(page), SOON).toMatch(/^2 of/u)
  await swipe(-80, 200)
  await swipe(-20, 0)
  expect(await where(page)).toMatch(/^2 of/u)
})

pageTest('a weight typed in the workshop is reckoned with on the sheet', async ({ open }) => {
  const page = await openBatch(open)
  await goToView(page, 'Step by step')
  await goOn(page)
  await goOn(page)
  await field(page, 'Shea butter, unrefined, weighed, g').fill('1600')
  await page.keyboard.press('Enter')
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/^Shea butter/u)
  await page.getByRole('button', { name: 'Leave it, new lye' }).click()
  await page.locator('.acts .main').click()
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/^Coconut oil/u)
  await page.getByRole('link', { name: 'The sheet' }).click()
  expect(await page.getByRole('region', { name: 'As really weighed' }).innerText()).toMatch(
    /Shea butter, unrefined\s+1\s600\.0/u,
  )
})

pageTest(
  'a quantity typed in the workshop goes to its own line, also when one goes on at once',
  async ({ open }) => {
    const page = await openBatch(open)
    await goToView(page, 'Step by step')
    await goOn(page)
    await goOn(page)
    await field(page, 'Shea butter, unrefined, weighed, g').fill('3 lb 5 oz')
    await page.keyboard.press('Tab')
    await page.getByRole('button', { name: /^Leave it/u }).click()
    await page.locator('.acts .main').click()
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/^Coconut oil/u)
    expect(await field(page, 'Coconut oil, weighed, g').inputValue()).toBe('')
    await field(page, 'Coconut oil, weighed, g').fill('five dragons')
    await page.keyboard.press('Enter')
    await expect
      .poll(() => field(page, 'Coconut oil, weighed, g').getAttribute('aria-invalid'), SOON)
      .toBe('true')
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toMatch(/^Coconut oil/u)
    await page.keyboard.press('Escape')
    await page.getByRole('link', { name: 'The sheet' }).click()
    // 3 x 453.59237 + 5 x 28.349523 g.
    await expect
      .poll(() => field(page, 'Shea butter, unrefined, weighed, g').inputValue(), SOON)
      .toBe('1502.5247')
    expect(await field(page, 'Coconut oil, weighed, g').inputValue()).toBe('')
  },
)

/** Puts a lock in the place of the browser's that writes down whether it is held. */
const watchLock = (page: Page) =>
  page.addInitScript(() => {
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: () => {
          document.documentElement.dataset['awake'] = 'yes'
          const lock = new EventTarget()
          return Promise.resolve(
            Object.assign(lock, {
              release: () => {
                document.documentElement.dataset['awake'] = 'no'
                return Promise.resolve()
              },
            }),
          )
        },
      },
    })
  })

pageTest('the screen is kept awake in the workshop and let go on leaving it', async ({ open }) => {
  const page = await open('', { own: true })
  await watchLock(page)
  await page.goto(`${page.url().split('#')[0] ?? ''}#batch/work`)
  await page.reload()
  const awake = () => page.evaluate(() => document.documentElement.dataset['awake'])
  await expect.poll(awake, SOON).toBe('yes')
  await page.getByText('screen stays awake').waitFor()
  await page.getByRole('link', { name: 'The sheet' }).click()
  await expect.poll(awake, SOON).toBe('no')
})

pageTest('the workshop works where the screen can’t be kept awake', async ({ open }) => {
  const page = await open('', { own: true })
  await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'wakeLock'))
  await page.goto(`${page.url().split('#')[0] ?? ''}#batch/work`)
  await page.reload()
  await page.getByRole('button', { name: /^Read, / }).waitFor()
  expect(await page.getByText('screen stays awake').count()).toBe(0)
})

pageTest('the label names both ways, allergens, net weight, code and duties', async ({ open }) => {
  const page = await openBatch(open)
  await group(page, 'Size and scales')
  await pick(page, 'Size by', 'number and weight of bars')
  await group(page, 'Fragrance')
  await addFrom(page, 'Add an essential oil', /^Lavender oil/u)
  await group(page, 'Papers and prices')
  await field(page, 'Made on').fill('2026-11-25')
  await field(page, 'Responsible person').fill('A. Maker, 1 Quay Street')
  await goToView(page, 'Label')
  const text = (name: string) => page.getByRole('region', { name, exact: true }).innerText()
  expect(await text('Ingredients, as put in')).toMatch(/Sodium Hydroxide.*Parfum.*Linalool/su)
  expect(await text('Ingredients, as made')).toMatch(/Sodium Cocoate.*Glycerin.*Linalool/su)
  expect(await text('On the bar')).toMatch(/Net weight\s+\d+\sg \(.*\soz\)/u)
  expect(await text('On the bar')).toContain('261125-01')
  expect(await text('On the bar')).toContain('A. Maker, 1 Quay Street')
  expect(await text('Allergens')).toMatch(/Linalool\s+\d\.\d+ to \d\.\d+\s+name it/u)
  expect(await text('To settle before printing')).toContain('free alkali')
  expect(await page.getByRole('region', { name: /^What the law still asks/u }).count()).toBe(3)
  expect(await page.getByText('the rules of the place of sale decide').count()).toBe(1)
})

pageTest(
  'a fragrance with a certificate of its own has its allergens on the label',
  async ({ open }) => {
    const page = await openBatch(open)
    await group(page, 'Fragrance')
    await page.getByLabel('Or another fragrance, by its name').fill('Night garden')
    await page.getByRole('button', { name: 'Add it' }).click()
    await addFrom(page, 'Name an allergen it holds', 'Coumarin')
    await field(page, 'Night garden, Coumarin, at most, %').fill('2')
    await field(page, 'Night garden, Coumarin, at least, %').fill('1')
    await addFrom(page, 'Add an essential oil', /^Lavender oil/u)
    await page.getByRole('button', { name: 'Enter the allergens of its certificate' }).click()
    // The library's list of lavender is there to be changed, so that none is lost by naming one.
    expect(await field(page, 'Lavender oil, Linalool, at most, %').inputValue()).not.toBe('')
    await goToView(page, 'Label')
    const allergens = await page.getByRole('region', { name: 'Allergens' }).innerText()
    expect(allergens).toMatch(/Coumarin\s+0\.\d+ to 0\.\d+\s+name it/u)
    expect(allergens).toContain('Linalool')
  },
)

pageTest('an ingredient list is copied as it stands', async ({ open }) => {
  const page = await openBatch(open, { own: true })
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write'])
  await goToView(page, 'Label')
  await page.getByRole('button', { name: 'Copy the ingredients as made' }).click()
  await page.getByText('copied').waitFor()
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  const shown = page.getByRole('region', { name: 'Ingredients, as made' }).locator('.text')
  expect(copied).toBe(await shown.innerText())
})
