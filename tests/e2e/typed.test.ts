import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, solved, SOON } from './brief-page'

/** What stands below a field through its own description; empty where nothing does. */
async function below(page: Page, input: Locator): Promise<string> {
  const id = await input.getAttribute('aria-describedby')
  return id === null ? '' : page.locator(`[id="${id}"]`).innerText()
}

const value = (input: Locator) => expect.poll(() => input.inputValue(), SOON)
const refused = (input: Locator) =>
  expect.poll(() => input.getAttribute('aria-invalid'), SOON).toBe('true')

pageTest(
  'both ends of a wish are typed into one field and undone in one step',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const [least, most] = [field(page, 'Hardness, at least'), field(page, 'Hardness, at most')]
    const before = [await least.inputValue(), await most.inputValue()]
    await least.fill('36–44')
    expect(await below(page, least)).toBe('36 to 44')
    await least.press('Enter')
    await value(least).toBe('36')
    await value(most).toBe('44')
    await page.keyboard.press('Control+z')
    await value(least).toBe(before[0] ?? '')
    await value(most).toBe(before[1] ?? '')
    await most.fill('>35')
    await most.press('Enter')
    await value(least).toBe('35')
    await value(most).toBe(before[1] ?? '')
    await least.fill('about 40')
    await least.press('Enter')
    await value(least).toBe('37.5')
    await value(most).toBe('42.5')
  },
)

pageTest(
  'a price is typed with its sign or for a pack, and said back until it is left',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const price = field(page, 'Price of Olive, per kg')
    await price.fill('€38.50/5l')
    expect(await price.inputValue()).toBe('€38.50/5l')
    expect(await below(page, price)).toMatch(/^8\.4\d EUR per kg, at 0\.91\d* kg a litre$/u)
    await price.press('Tab')
    await value(price).toMatch(/^8\.4\d$/u)
    expect(await below(page, price)).toBe('')
    await price.fill('38-44')
    await price.press('Tab')
    await refused(price)
    expect(await below(page, price)).toMatch(
      /^One figure here\. 38 or 44\?; 8\.4\d stays in force$/u,
    )
  },
)

pageTest('a message takes no click from the fields around it', async ({ open }) => {
  const page = await open()
  await solved(page)
  const fields = page.locator('.field input')
  const input = field(page, 'Coconut, at most, %')
  await input.fill('150')
  await input.press('Tab')
  await refused(input)
  const hidden = await fields.evaluateAll((all) =>
    all
      .filter((one) => one instanceof HTMLElement && one.offsetParent !== null)
      .flatMap((one) => {
        one.scrollIntoView({ block: 'center' })
        const { x, y, width, height } = one.getBoundingClientRect()
        const top = document.elementFromPoint(x + width / 2, y + height / 2)
        return top === one ? [] : [one.getAttribute('aria-label')]
      }),
  )
  expect(hidden).toEqual([])
})
