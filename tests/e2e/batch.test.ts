import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { BatchFile } from '../../src/data/batch-file'
import { pageTest } from '../browser/page-test'
import { addFrom, figureOf, goToView, gramsOf, group, openBatch, pick, row } from './batch-page'
import { field, SOON } from './brief-page'
import { barwright } from './command-line'
import { bytesOf } from './saved'

/** The demo's five oils, by id. */
const OILS = ['shea', 'coconut', 'olive', 'rapeseed-low-erucic', 'sunflower-high-oleic']

pageTest('the plain case is one sentence, folded groups and the weights', async ({ open }) => {
  const page = await openBatch(open)
  expect(await page.getByRole('button', { expanded: true }).count()).toBe(0)
  expect(await page.locator('[data-weigh]').count()).toBe(OILS.length + 2)
  const steps = await page
    .locator('[data-step]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('data-step')))
  expect(steps).toEqual([
    'ready',
    'hardFats',
    'liquidOils',
    'water',
    'lye',
    'combine',
    'mould',
    'cut',
    'cure',
  ])
  await page.getByText(/nineteen lots in twenty leave/u).waitFor()
})

pageTest('a unit is how one weighs: it never changes the batch', async ({ open }) => {
  const page = await openBatch(open)
  const before = await Promise.all([...OILS, 'naoh', 'water'].map((id) => gramsOf(page, id)))
  await group(page, 'Size and scales')
  await pick(page, 'Weights in', 'oz')
  await expect.poll(() => row(page, 'naoh').innerText(), SOON).toMatch(/24\.4\d?\soz/u)
  // 692 g / 28.3495 = 24.41 oz; the scale's step of 1 g is 0.04 oz.
  const after = await Promise.all([...OILS, 'naoh', 'water'].map((id) => gramsOf(page, id)))
  expect(after).toEqual(before)
  await field(page, 'Weight of all oils, oz').fill('16 oz')
  await page.keyboard.press('Enter')
  const oils = async () =>
    (await Promise.all(OILS.map((id) => gramsOf(page, id)))).reduce((g, one) => g + one)
  // A pound: 453.59 g, each of five oils rounded to 1 g.
  await expect.poll(async () => Math.abs((await oils()) - 453.59) < 2.5, SOON).toBe(true)
})

pageTest(
  'both alkalis share the work by mol or by weight, each with its purity',
  async ({ open }) => {
    const page = await openBatch(open)
    await pick(page, 'Alkali', 'both hydroxides')
    await group(page, 'Lye and superfat')
    await field(page, 'Potassium hydroxide does, %').fill('40')
    await row(page, 'koh').waitFor()
    const ratio = async () =>
      ((await gramsOf(page, 'koh')) * 0.9) / ((await gramsOf(page, 'naoh')) * 0.985)
    // By hand: 40 x 56.105 / (60 x 39.997) = 0.9352 by mol, 40 / 60 = 0.6667 by weight.
    await expect.poll(ratio, SOON).toBeCloseTo(0.9352, 2)
    await pick(page, 'Shares of the alkalis', 'by weight')
    await expect.poll(ratio, SOON).toBeCloseTo(0.6667, 2)
    await pick(page, 'Potassium hydroxide comes as', 'ready-made solution')
    expect(await row(page, 'koh').innerText()).toContain('as solution of 50 %')
  },
)

pageTest(
  'a hot process keeps fat back for after the cook, and cold takes it along',
  async ({ open }) => {
    const page = await openBatch(open)
    await pick(page, 'Process', 'hot process')
    await group(page, 'Cook and cure')
    await pick(page, 'Extra fat', /kept back/u)
    await field(page, 'Extra fat, %').fill('4')
    await field(page, 'Water to boil off, % of oils').fill('3')
    const kept = page.locator('[data-key="extraFat:shea"]')
    // By hand: 4 % of 5 000 g.
    await expect
      .poll(() => kept.locator('[data-grams]').getAttribute('data-grams'), SOON)
      .toBe('200')
    expect(await kept.innerText()).toContain('kept back, after the cook')
    const [cook, late] = [
      await page.locator('[data-step="cook"]').boundingBox(),
      await kept.boundingBox(),
    ]
    expect(late?.y).toBeGreaterThan(cook?.y ?? Infinity)
    expect(await page.locator('[data-key="cookWater"] [data-grams]').innerText()).toContain('150')
    await expect
      .poll(
        () => page.getByText(/% of the oils, .*\s+of all fat, .*\s+of the\s+equivalents/su).count(),
        SOON,
      )
      .toBe(1)
    await pick(page, 'Process', 'cold process')
    await expect.poll(() => kept.innerText(), SOON).toContain('extra fat, no alkali of its own')
    expect(await page.locator('[data-key="cookWater"]').count()).toBe(0)
  },
)

pageTest('acids, liquids, additives and fragrance go to their steps', async ({ open }) => {
  const page = await openBatch(open)
  const before = await gramsOf(page, 'naoh')
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /^Citric acid, anhydrous/u)
  await addFrom(page, 'Add an additive', /^Kaolin/u)
  await group(page, 'Water and liquids')
  await addFrom(page, 'Add milk, tea, purée …', /^Goat/u)
  await group(page, 'Fragrance')
  await addFrom(page, 'Add an essential oil', /^Lavender oil/u)
  // 50 g of citric acid take 50 x 3 x 39.997 / 192.123 = 31.23 g of pure NaOH, 31.70 g of 98.5 %.
  await expect
    .poll(async () => (await gramsOf(page, 'naoh')) - before, SOON)
    .toBeCloseTo(31.7, -0.5)
  const stepOf = (id: string) =>
    row(page, id).evaluate((one) => one.closest('[data-step]')?.getAttribute('data-step'))
  expect(await Promise.all(['citric', 'goat-milk', 'kaolin', 'lavender'].map(stepOf))).toEqual([
    'water',
    'water',
    'trace',
    'trace',
  ])
  expect(await page.getByText('Allergens to name:').locator('..').innerText()).toContain('Linalool')
  await page.getByRole('button', { name: 'Take out Lavender oil' }).click()
  await expect.poll(() => row(page, 'lavender').count(), SOON).toBe(0)
})

pageTest('a size by mould or by bars makes the batch that fills it', async ({ open }) => {
  const page = await openBatch(open)
  await group(page, 'Size and scales')
  await pick(page, 'Size by', 'mould to fill')
  await pick(page, 'Shape of the mould', 'water that fills it')
  await field(page, 'Water that fills it, g').fill('998.2')
  // A litre (CRC: 0.9982 g/ml); the batter's density is reckoned and told.
  await expect.poll(() => figureOf(page, 'Batter, g per ml'), SOON).toMatch(/^1\.0/u)
  const density = Number((await figureOf(page, 'Batter, g per ml')).slice(0, 5))
  const pot = Number((await figureOf(page, 'All in the pot')).replaceAll(/[^\d]/gu, ''))
  expect(Math.abs(pot - 1000 * density)).toBeLessThanOrEqual(4)
  await pick(page, 'Size by', 'number and weight of bars')
  await field(page, 'Number of bars').fill('24')
  await field(page, 'Weight of a bar, g').fill('100')
  await expect.poll(() => figureOf(page, 'Bars'), SOON).toMatch(/^24 of .*, 100\sg dry$/u)
})

/** The likely span as written, percent. */
async function likelySpan(page: Page): Promise<readonly [number, number]> {
  const text = await page.getByText(/nineteen lots in twenty leave/u).innerText()
  const [, low = '', high = ''] = /leave ([−\d.]+) to ([−\d.]+)/u.exec(text) ?? []
  return [Number(low.replace('−', '-')), Number(high.replace('−', '-'))]
}

pageTest(
  'a certificate narrows the span; a NaOH factor is caught and its button mends it',
  async ({ open }) => {
    const page = await openBatch(open)
    const width = async () => {
      const [low, high] = await likelySpan(page)
      return high - low
    }
    const before = await width()
    const grams = await gramsOf(page, 'naoh')
    await group(page, 'Lots')
    const value = field(page, 'Shea butter, unrefined, saponification value, mg KOH/g')
    await value.fill('0.128')
    await expect.poll(() => value.getAttribute('aria-invalid'), SOON).toBe('true')
    // What stood before stays in force, and the sentence leads to its field.
    expect(await gramsOf(page, 'naoh')).toBe(grams)
    const sentence = page.getByRole('alert').filter({ hasText: 'looks like' })
    await sentence.getByRole('button', { name: 'Shea butter, unrefined, sap' }).click()
    expect(await value.evaluate((one) => one === document.activeElement)).toBe(true)
    // By hand: 0.128 x 56.105 / 39.997 x 1000 = 179.5.
    await page.getByRole('button', { name: 'Take 179.5 mg KOH/g' }).click()
    await expect.poll(() => value.inputValue(), SOON).toBe('179.5')
    await expect.poll(width, SOON).toBeLessThan(before - 0.5)
    await page.getByText(/Certificates narrow it; were they another lot’s/u).waitFor()
    await field(page, 'Shea butter, unrefined, lot').fill('SB-0914')
    expect(await row(page, 'shea').innerText()).toContain('SB-0914')
    expect(await sentence.count()).toBe(0)
  },
)

pageTest(
  'a value outside what sound lots have waits for its lot and its certificate',
  async ({ open }) => {
    const page = await openBatch(open)
    await group(page, 'Lots')
    const grams = await gramsOf(page, 'naoh')
    await field(page, 'Olive oil, saponification value, mg KOH/g').fill('200')
    await page.getByRole('alert').filter({ hasText: 'lies outside' }).waitFor()
    expect(await gramsOf(page, 'naoh')).toBe(grams)
    await field(page, 'Olive oil, lot').fill('Lot 7')
    await field(page, 'Olive oil, certificate').fill('CoA 2207')
    await expect.poll(() => gramsOf(page, 'naoh'), SOON).toBeGreaterThan(grams)
    expect(await page.getByRole('list', { name: 'Warnings' }).innerText()).toContain('CoA 2207')
  },
)

pageTest('each alkali keeps its own purity while the other is picked', async ({ open }) => {
  const page = await openBatch(open)
  const purity = field(page, 'Purity, %')
  const stated = await gramsOf(page, 'naoh')
  await purity.fill('99')
  // By hand: 98.5 / 99 of it.
  await expect.poll(() => gramsOf(page, 'naoh'), SOON).toBeCloseTo((stated * 98.5) / 99, -0.5)
  const naoh = await gramsOf(page, 'naoh')
  await pick(page, 'Alkali', 'potassium hydroxide')
  await row(page, 'koh').waitFor()
  await purity.fill('90')
  await pick(page, 'Alkali', 'sodium hydroxide')
  await expect.poll(() => purity.inputValue(), SOON).toBe('99')
  await expect.poll(() => gramsOf(page, 'naoh'), SOON).toBe(naoh)
  expect(await row(page, 'naoh').innerText()).toContain('99 % pure')
})

pageTest('a purity typed as a fraction is named, and the last good one stays', async ({ open }) => {
  const page = await openBatch(open)
  const grams = await gramsOf(page, 'naoh')
  const purity = field(page, 'Purity, %')
  await purity.fill('0.99')
  const sentence = page.getByRole('alert').filter({ hasText: 'did you mean 99 %' })
  await sentence.waitFor()
  expect(await sentence.count()).toBe(1)
  expect(await purity.getAttribute('aria-invalid')).toBe('true')
  expect(await gramsOf(page, 'naoh')).toBe(grams)
  expect(await page.getByRole('button', { name: 'Print sheet' }).isEnabled()).toBe(true)
  await page.getByLabel('Superfat, %', { exact: true }).fill('0.05')
  await page.getByRole('alert').filter({ hasText: 'did you mean 5 %' }).waitFor()
  await purity.fill('99')
  await expect.poll(() => sentence.count(), SOON).toBe(0)
  await expect.poll(() => gramsOf(page, 'naoh'), SOON).toBeLessThan(grams)
})

pageTest('a purity that no bag has waits for the number of its certificate', async ({ open }) => {
  const page = await openBatch(open)
  const grams = await gramsOf(page, 'naoh')
  await field(page, 'Purity, %').fill('90')
  await page.getByRole('alert').filter({ hasText: 'is sold with 95 to 100 %' }).waitFor()
  const panel = await group(page, 'Lye and superfat')
  await panel.getByRole('button', { name: 'certificate', exact: true }).click()
  await field(page, 'Sodium hydroxide, certificate').fill('NA-2207')
  // By hand: 98.5 / 90 of it.
  await expect.poll(() => gramsOf(page, 'naoh'), SOON).toBeCloseTo((grams * 98.5) / 90, -0.5)
  await panel.getByText(/Weighed out as 90; the lean end counts it as 90\.5/u).waitFor()
  await page.getByText(/stands on 1 certificate/u).waitFor()
  await panel.getByRole('button', { name: /^Sodium hydroxide: certificate/u }).click()
  await panel.getByText(/certificate of this lot: NA-2207/u).waitFor()
})

pageTest('5 % with ordinary oils prints, with its warning and its tick', async ({ open }) => {
  const page = await openBatch(open)
  await field(page, 'Weight of all oils, g').fill('1000')
  await field(page, 'Superfat, %').fill('5')
  const span = page.getByRole('region', { name: 'Superfat span' })
  await span.getByText(/leaves free lye: −/u).waitFor()
  expect(await span.innerText()).toMatch(/1 lot in \d+/u)
  expect(await page.getByRole('button', { name: 'Print sheet' }).isEnabled()).toBe(true)
  const ways = span.getByRole('button', { name: /^(?:Weigh the lye|Ask for)/u })
  expect(await ways.count()).toBe(2)
  const tick = span.getByRole('checkbox')
  await tick.check()
  await page.emulateMedia({ media: 'print' })
  expect(await span.locator('.paper.seen').isVisible()).toBe(true)
  expect(await page.locator('[data-wrong]:visible').count()).toBe(3)
  await page.emulateMedia({ media: null })
  // Leaner lots than those that were ticked want another look.
  await field(page, 'Superfat, %').fill('4.5')
  await expect.poll(() => tick.isChecked(), SOON).toBe(false)
  await ways.last().click()
  await expect.poll(() => span.getByText(/leaves free lye/u).count(), SOON).toBe(0)
})

pageTest('a small batch begins with a finer scale for the lye', async ({ open }) => {
  const page = await openBatch(open)
  await field(page, 'Weight of all oils, g').fill('400')
  await page.getByText(/so small a batch begins with a finer scale/u).waitFor()
  const grams = await gramsOf(page, 'naoh')
  expect(Math.abs(grams * 10 - Math.round(grams * 10))).toBeLessThan(1e-6)
  await group(page, 'Size and scales')
  await pick(page, 'Lye scale, step', /^1 g/u)
  await expect.poll(async () => Number.isInteger(await gramsOf(page, 'naoh')), SOON).toBe(true)
  expect(await page.getByText(/begins with a finer scale/u).count()).toBe(0)
})

pageTest('all that is chosen survives a reload, and undo goes back over it', async ({ open }) => {
  const page = await openBatch(open)
  await pick(page, 'Process', 'hot process')
  await group(page, 'Papers and prices')
  await page.getByRole('button', { name: 'Made today' }).click()
  await field(page, 'Product code').fill('KB')
  await page.getByLabel('Coconut oil weighed').check()
  await page.getByText(/^kept on this machine/u).waitFor()
  await expect.poll(() => page.locator('.code').innerText(), SOON).toMatch(/^Batch \d{6}-KB-01$/u)
  await page.reload()
  await row(page, 'naoh').waitFor()
  expect(await page.locator('.code').innerText()).toMatch(/-KB-01$/u)
  expect(await page.getByLabel('Coconut oil weighed').isChecked()).toBe(true)
  expect(await page.locator('[data-step="cook"]').count()).toBe(1)
})

pageTest('undo takes back each choice of the batch', async ({ open }) => {
  const page = await openBatch(open)
  const grams = await gramsOf(page, 'naoh')
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /^Malic/u)
  await row(page, 'malic').waitFor()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => row(page, 'malic').count(), SOON).toBe(0)
  expect(await gramsOf(page, 'naoh')).toBe(grams)
  await page.getByRole('button', { name: 'Redo' }).click()
  await row(page, 'malic').waitFor()
})

pageTest('actual weights say how the batch really stands and what mends it', async ({ open }) => {
  const page = await openBatch(open)
  const naoh = await gramsOf(page, 'naoh')
  await field(page, 'Sodium hydroxide, weighed, g').fill(String(Math.round(naoh * 1.1)))
  const really = page.getByRole('region', { name: 'As really weighed' })
  await expect.poll(() => really.innerText(), SOON).toContain('Free lye: superfat −2')
  // By hand: 6.6 % superfat is 0.934 of the fat's equivalents; x 1.1 leaves −2.7 %.
  expect(await really.innerText()).toMatch(/superfat −2\.[5-9]\s%/u)
  expect(await really.getByRole('rowheader', { name: /^More /u }).count()).toBe(OILS.length)
  await field(page, 'Sodium hydroxide, weighed, g').fill(String(Math.round(naoh * 0.9)))
  await expect.poll(() => really.innerText(), SOON).toContain('Richer than asked')
  expect(await really.innerText()).toMatch(
    /Only if you are sure .* g sodium hydroxide, dissolved in .* g cold water/u,
  )
  await field(page, 'Sodium hydroxide, weighed, g').fill('')
  await field(page, 'Coconut oil, weighed, g').fill('0')
  await expect.poll(() => really.innerText(), SOON).toContain('Missing: Coconut oil')
  await page.getByRole('button', { name: 'clear ticks and weighings' }).click()
  await expect.poll(() => really.count(), SOON).toBe(0)
})

pageTest('a lean batch has no sheet until it is mended or confirmed', async ({ open }) => {
  const page = await openBatch(open)
  await field(page, 'Superfat, %').fill('1')
  const print = page.getByRole('button', { name: 'Print sheet' })
  await expect.poll(() => print.isDisabled(), SOON).toBe(true)
  await page
    .getByRole('heading', { name: /^No sheet: 1 lot in \d+ would leave free lye/u })
    .waitFor()
  await goToView(page, 'Step by step')
  await page.getByText('The steps can’t be shown before there is a sheet.').waitFor()
  await goToView(page, 'Sheet')
  const confirm = page.getByRole('button', { name: 'Weigh it out all the same' })
  expect(await confirm.isDisabled()).toBe(true)
  const why = page.getByLabel('Or say why these lots are safe')
  await why.fill('x')
  await confirm.click()
  await page.getByText('"x" is no reason.').waitFor()
  expect(await print.isDisabled()).toBe(true)
  await why.fill('Titrated every lot myself')
  await confirm.click()
  await expect.poll(() => print.isEnabled(), SOON).toBe(true)
  expect(await page.getByRole('list', { name: 'Warnings' }).innerText()).toContain(
    'as the maker says: Titrated every lot myself',
  )
  await page.getByRole('button', { name: 'Take the confirmation back' }).click()
  const ask = page.getByRole('button', { name: /^Ask for \d/u })
  const least = Number((await ask.innerText()).replaceAll(/[^\d.]/gu, ''))
  await ask.click()
  await expect.poll(() => print.isEnabled(), SOON).toBe(true)
  expect(await field(page, 'Superfat, %').inputValue()).toBe(String(least))
  // It is the smallest: a tenth less has no sheet.
  await field(page, 'Superfat, %').fill((least - 0.1).toFixed(1))
  await expect.poll(() => print.isDisabled(), SOON).toBe(true)
})

pageTest('a warning’s button does what it says', async ({ open }) => {
  const page = await openBatch(open)
  await field(page, 'Water as lye concentration, %').fill('45')
  await page.getByRole('button', { name: 'Lye at 40 %' }).click()
  await expect
    .poll(() => field(page, 'Water as lye concentration, %').inputValue(), SOON)
    .toBe('40')
  expect(await page.getByRole('list', { name: 'Warnings' }).count()).toBe(0)
})

pageTest('on a phone lye is ticked off only once the caution is', async ({ open }) => {
  const page = await openBatch(open, { size: 'phone' })
  const lye = page.getByLabel('Sodium hydroxide weighed')
  expect(await lye.isDisabled()).toBe(true)
  await page.getByLabel('Caution read').first().check()
  await expect.poll(() => lye.isEnabled(), SOON).toBe(true)
  await lye.check()
  expect(await lye.isChecked()).toBe(true)
})

pageTest('nonsense in the fields of every group is refused beside them', async ({ open }) => {
  const page = await openBatch(open)
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /vinegar/u)
  await group(page, 'Water and liquids')
  await addFrom(page, 'Add milk, tea, purée …', /^Tea/u)
  await group(page, 'Fragrance')
  await addFrom(page, 'Add an essential oil', /^Lemon oil/u)
  const weights = await page.locator('[data-weigh]').allInnerTexts()
  for (const name of [
    'Size and scales',
    'Lye and superfat',
    'Lots',
    'Water and liquids',
    'Acids and additives',
    'Fragrance',
    'Cook and cure',
    'Papers and prices',
  ]) {
    const panel = await group(page, name)
    const inputs = await panel.locator('.field input').all()
    expect(inputs.length).toBeGreaterThan(0)
    for (const input of inputs) {
      await input.fill('5,,5 dragons')
      await input.press('Enter')
      await expect.poll(() => input.getAttribute('aria-invalid'), SOON).toBe('true')
      await input.press('Escape')
    }
  }
  expect(await page.locator('[data-weigh]').allInnerTexts()).toEqual(weights)
  expect(await page.locator('body').innerText()).not.toMatch(/NaN|undefined|Infinity|\[object/u)
})

pageTest(
  'words of the papers that can be misread are refused where they stand',
  async ({ open }) => {
    const page = await openBatch(open)
    await group(page, 'Papers and prices')
    await field(page, 'Product code').fill('OIL')
    await expect
      .poll(() => field(page, 'Product code').getAttribute('aria-invalid'), SOON)
      .toBe('true')
    await page.getByText('No weights until this is mended:').waitFor()
    await field(page, 'Product code').fill('L3')
    await row(page, 'naoh').waitFor()
    await field(page, 'Made on').fill('2026-02-30')
    await page
      .getByText(/is no day/u)
      .first()
      .waitFor()
  },
)

pageTest('the saved batch file gives the command line the same weights', async ({ open }) => {
  const page = await openBatch(open)
  await pick(page, 'Process', 'hot process')
  await group(page, 'Cook and cure')
  await pick(page, 'Extra fat', /kept back/u)
  await group(page, 'Acids and additives')
  await addFrom(page, 'Add an acid', /^Citric acid, anhydrous/u)
  await row(page, 'citric').waitFor()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save batch file' }).click(),
  ])
  expect(download.suggestedFilename()).toBe('kitchen-bar-for-the-harbour-shop.batch.json')
  const file = JSON.parse(String(await bytesOf(download))) as BatchFile
  const { exitCode, output } = await barwright<{
    ingredients: readonly { key: string; grams: number }[]
  }>('batch', file)
  expect(exitCode).toBe(0)
  const rows = await page
    .locator('[data-weigh]')
    .evaluateAll((lines) =>
      lines.map((line) => [
        line.getAttribute('data-key'),
        Number(line.querySelector('[data-grams]')?.getAttribute('data-grams')),
      ]),
    )
  expect(rows).toEqual(output.ingredients.map(({ key, grams }) => [key, grams]))
})

pageTest('groups, menus and picks are worked by keys alone', async ({ open }) => {
  const page = await openBatch(open)
  await page.getByRole('button', { name: 'Acids and additives' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Add an acid' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('menu').waitFor()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Enter')
  await row(page, 'citric-monohydrate').waitFor()
  await field(page, 'Citric acid, monohydrate, how much, % of oils').focus()
  await page.keyboard.press('Control+a')
  await page.keyboard.type('2')
  // By hand: 2 % of 5 000 g.
  await expect.poll(() => gramsOf(page, 'citric-monohydrate'), SOON).toBe(100)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await page.getByRole('listbox').waitFor()
  await page.keyboard.press('g')
  await page.keyboard.press('Enter')
  await expect
    .poll(() => field(page, 'Citric acid, monohydrate, how much, g').inputValue(), SOON)
    .toBe('100')
  expect(await gramsOf(page, 'citric-monohydrate')).toBe(100)
  await page.keyboard.press('Control+z')
  await expect
    .poll(() => field(page, 'Citric acid, monohydrate, how much, % of oils').inputValue(), SOON)
    .toBe('2')
})
