import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, map, shares, shelfNames, solved, SOON } from './brief-page'

pageTest(
  'an oil is added by another name, priced, banned, locked and taken off by keyboard',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const search = page.getByRole('combobox', { name: /^Add an oil/u })
    await search.focus()
    await page.keyboard.type('suet')
    await page.getByRole('option', { name: /^Tallow, beef/u }).waitFor()
    await page.keyboard.press('Enter')
    await expect.poll(() => shelfNames(page), SOON).toContain('Beef tallow')
    expect(await search.inputValue()).toBe('')

    const price = field(page, 'Price of Beef tallow, per kg')
    await page.getByText(/waits for a price of beef tallow/u).waitFor()
    await price.focus()
    await page.keyboard.type('0.5')
    await page.keyboard.press('Enter')
    await expect.poll(async () => (await shares(page))['tallow-beef'] ?? 0, SOON).toBeGreaterThan(1)
    const share = (await shares(page))['tallow-beef'] ?? NaN

    const lock = page.getByRole('button', { name: 'Lock Beef tallow at its share' })
    await lock.press('Enter')
    expect(await lock.getAttribute('aria-pressed')).toBe('true')
    await field(page, 'Hardness, at least').fill('40')
    await page.getByText('locked at').waitFor()
    await solved(page)
    // A lock holds the share as shown, to half of its one decimal.
    expect(Math.abs(((await shares(page))['tallow-beef'] ?? NaN) - share)).toBeLessThanOrEqual(0.1)

    await page.getByRole('button', { name: 'Ban Beef tallow' }).press('Space')
    await expect.poll(() => shares(page), SOON).not.toHaveProperty('tallow-beef')
    await page.getByText('no beef tallow').waitFor()
    await page.getByRole('button', { name: 'Take Beef tallow off the shelf' }).press('Enter')
    await expect.poll(() => page.getByText('no beef tallow').count(), SOON).toBe(0)
    expect(await price.count()).toBe(0)
  },
)

pageTest(
  'an oil nobody knows is said to be unknown, and leaving clears the search',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const search = page.getByRole('combobox', { name: /^Add an oil/u })
    await search.focus()
    await page.keyboard.type('unobtainium')
    await page.getByText('No oil here has “unobtainium”').waitFor()
    await page.keyboard.press('Escape')
    await page.keyboard.press('Tab')
    expect(await search.inputValue()).toBe('')
  },
)

pageTest('an empty shelf teaches what to do, and two oils make a map', async ({ open }) => {
  const page = await open()
  await solved(page)
  const takeOff = page.getByRole('button', { name: /^Take .* off the shelf$/u })
  for (let left = await takeOff.count(); left > 0; left--) await takeOff.first().click()
  await page.getByText('Put oils on the shelf: type a name above.').waitFor()
  await page.getByText('The shelf is empty. Add at least one oil.').waitFor()
  await map(page).getByText('Add two oils and the land appears.').waitFor()
  expect(await page.getByRole('link', { name: 'Take to Batch' }).isVisible()).toBe(false)
  expect(await shares(page)).toEqual({})

  for (const measure of ['Hardness', 'Lather', 'Conditioning', 'Mildness', 'Keeping'])
    await field(page, `${measure}, at least`).fill('')
  for (const measure of ['Hardness', 'Wear', 'Cost'])
    await field(page, `${measure}, at most`).fill('')
  const search = page.getByRole('combobox', { name: /^Add an oil/u })
  for (const [name, price] of [
    ['Olive', '7'],
    ['Coconut', '3'],
  ] as const) {
    await search.fill(name)
    await page
      .getByRole('option', { name: `${name} oil` })
      .first()
      .waitFor()
    await page.keyboard.press('Enter')
    await field(page, `Price of ${name}, per kg`).fill(price)
  }
  await expect.poll(() => shares(page), SOON).toEqual({ coconut: 100 })
  await map(page).locator('.edge').first().waitFor()
})

pageTest('without a price the cost has no gauge, and other goals go on', async ({ open }) => {
  const page = await open()
  await solved(page)
  await page.getByRole('combobox', { name: /^Goal/u }).click()
  await page.getByRole('option', { name: 'hardest blend' }).click()
  await field(page, 'Cost, at most').fill('')
  await field(page, 'Price of Castor, per kg').fill('')
  await page.getByText('Give every oil a price and its cost appears.').waitFor()
  await expect.poll(() => page.locator('[data-figure]').innerText(), SOON).toMatch(/^4\d\.\d$/u)
})
