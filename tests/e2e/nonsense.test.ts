import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, figure, goTo, shares, solved, SOON } from './brief-page'

/** What no field can make sense of. */
const NEVER = ['abc', '--', '1e999', '5,,5', '1,250', '🧼 5']

/** The message beside a field, through the field's own description. */
async function messageOf(page: Page, input: Locator): Promise<string> {
  const id = await input.getAttribute('aria-describedby')
  if (id === null) return ''
  return page.locator(`[id="${id}"]`).innerText()
}

async function enter(input: Locator, text: string): Promise<void> {
  await input.fill(text)
  await input.press('Enter')
}

const refused = (input: Locator) =>
  expect.poll(() => input.getAttribute('aria-invalid'), SOON).toBe('true')
const accepted = (input: Locator) =>
  expect.poll(() => input.getAttribute('aria-invalid'), SOON).toBe('false')

/** How far a message stands from its field, px; 0 where they touch. */
async function distance(page: Page, input: Locator): Promise<number> {
  const id = (await input.getAttribute('aria-describedby')) ?? ''
  const [at, from] = [await page.locator(`[id="${id}"]`).boundingBox(), await input.boundingBox()]
  if (!at || !from) return Infinity
  const gap = (start: number, length: number, otherStart: number, otherLength: number) =>
    Math.max(0, otherStart - (start + length), start - (otherStart + otherLength))
  return Math.max(
    gap(at.x, at.width, from.x, from.width),
    gap(at.y, at.height, from.y, from.height),
  )
}

async function expectNothingBroken(page: Page): Promise<void> {
  const text = await page.locator('body').innerText()
  expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/u)
  const drawn = await page
    .locator('svg')
    .evaluateAll((drawings) => drawings.map((drawing) => drawing.outerHTML).join(''))
  expect(drawn).not.toMatch(/NaN|undefined|Infinity/u)
}

/** Puts nonsense into every field of what is on screen; each must say so and keep its value. */
async function expectAllRefuse(page: Page): Promise<void> {
  const inputs = await page.locator('.field input').all()
  expect(inputs.length).toBeGreaterThan(3)
  for (const [index, input] of inputs.entries()) {
    const before = await input.inputValue()
    const nonsense = NEVER[index % NEVER.length] ?? ''
    await enter(input, nonsense)
    await refused(input)
    const message = await messageOf(page, input)
    expect(message).toMatch(/Not a number|two ways/u)
    expect(message).toContain(before === '' ? '' : `${Number(before)}`)
    expect(await distance(page, input)).toBeLessThan(8)
    await input.press('Escape')
    await accepted(input)
    expect(await input.inputValue()).toBe(before)
  }
}

pageTest(
  'every field of the brief refuses nonsense beside it and keeps its value',
  async ({ open }) => {
    const page = await open()
    const cost = await solved(page)
    const blend = await shares(page)
    await expectAllRefuse(page)
    await expectNothingBroken(page)
    expect(await figure(page)).toBe(cost)
    expect(await shares(page)).toEqual(blend)
  },
)

pageTest(
  'every field of the batch refuses nonsense beside it and keeps its value',
  async ({ open }) => {
    const page = await open('#batch')
    const alkali = page.locator('[data-weigh="naoh"] [data-grams]')
    const grams = await alkali.innerText()
    await expectAllRefuse(page)
    await expectNothingBroken(page)
    expect(await alkali.innerText()).toBe(grams)
  },
)

pageTest('all kinds of nonsense in one field leave the same blend', async ({ open }) => {
  const page = await open()
  const cost = await solved(page)
  const input = field(page, 'Hardness, at least')
  for (const nonsense of NEVER) {
    await enter(input, nonsense)
    await refused(input)
    expect(await messageOf(page, input)).toContain('38 stays in force')
  }
  await expectNothingBroken(page)
  expect(await figure(page)).toBe(cost)
  await input.press('Escape')
  expect(await input.inputValue()).toBe('38')
})

pageTest.for([
  ['Price of Shea, per kg', '-3', 'At least 0; 6.20 stays in force'],
  ['Coconut, at most, %', '150', 'Between 0 and 100; 35 stays in force'],
  ['Olive, at least, %', '-3', 'Between 0 and 100; 15 stays in force'],
] as const)('%s refuses %s with its range', async ([name, text, message], { open }) => {
  const page = await open()
  await solved(page)
  const input = field(page, name)
  await enter(input, text)
  await refused(input)
  expect(await messageOf(page, input)).toBe(message)
})

pageTest(
  'a lye that would not stay dissolved is refused and the last weights stay',
  async ({ open }) => {
    const page = await open('#batch')
    const alkali = page.locator('[data-weigh="naoh"] [data-grams]')
    const grams = await alkali.innerText()
    const water = await page.locator('[data-weigh="water"] [data-grams]').innerText()
    const input = field(page, 'Water as lye concentration, %')
    await enter(input, '62')
    await refused(input)
    const said = page.getByRole('alert').filter({ hasText: 'stays in force' })
    await expect
      .poll(() => said.innerText(), SOON)
      .toMatch(/62\.0 % hydroxide, and more than 50 % does not stay dissolved/u)
    expect(await alkali.innerText()).toBe(grams)
    expect(await page.locator('[data-weigh="water"] [data-grams]').innerText()).toBe(water)
  },
)

pageTest('a wish may be out of range, empty, or written with a comma', async ({ open }) => {
  const page = await open()
  const cost = await solved(page)
  const input = field(page, 'Wear, at most')
  await enter(input, '')
  await accepted(input)
  expect(await input.getAttribute('placeholder')).toBe('any')
  await expect.poll(() => figure(page), SOON).toBeLessThan(cost)
  await enter(input, '54,5')
  await expect.poll(() => input.inputValue(), SOON).toBe('54.5')
  await enter(field(page, 'Hardness, at least'), '-3')
  await accepted(field(page, 'Hardness, at least'))
  await solved(page)
  await expectNothingBroken(page)
})

pageTest(
  'an emptied price lets what is asked about cost wait, and all else goes on',
  async ({ open }) => {
    const page = await open()
    await solved(page)
    const input = field(page, 'Price of Castor, per kg')
    await enter(input, '')
    await page.getByText('The cheapest waits for a price of castor').waitFor()
    await accepted(input)
    await enter(input, '4.9')
    await accepted(input)
    await solved(page)
    expect(await page.getByText('waits for a price').count()).toBe(0)
  },
)

pageTest(
  'weights are read with their units and sums, and a size can’t be left empty',
  async ({ open }) => {
    const page = await open('#batch')
    const input = field(page, 'Weight of all oils, g')
    for (const [text, shown] of [
      ['2 * 450 g', '900'],
      ['1 lb 4 oz', '566.99046'],
      ['1,5 kg', '1500'],
    ] as const) {
      await enter(input, text)
      await expect.poll(() => input.inputValue(), SOON).toBe(shown)
      await accepted(input)
    }
    await enter(input, '')
    await refused(input)
    expect(await messageOf(page, input)).toBe('Give a number; 1500 stays in force')
    await goTo(page, 'map')
    await goTo(page, 'batch')
    await expect.poll(() => input.inputValue(), SOON).toBe('1500')
  },
)

pageTest(
  'Escape brings back the value from before, also after figures that could be used',
  async ({ open }) => {
    const page = await open('#batch')
    const input = field(page, 'Weight of all oils, g')
    const olive = page.locator('[data-weigh="olive"] [data-grams]')
    const grams = await olive.innerText()
    await input.press('Control+a')
    await input.pressSequentially('6000')
    expect(await olive.innerText()).not.toBe(grams)
    await input.pressSequentially(' *')
    expect(await olive.innerText()).toBe(grams)
    await input.press('Escape')
    expect(await input.inputValue()).toBe('5000')
    await input.press('Control+a')
    await input.pressSequentially('70')
    await input.press('Escape')
    expect(await input.inputValue()).toBe('5000')
    expect(await olive.innerText()).toBe(grams)
  },
)
