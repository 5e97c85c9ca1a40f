import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { BriefFile } from '../../src/data/brief-file'
import { pageTest } from '../browser/page-test'
import { library } from '../../src/data/library'
import { expectNow, field, oilId, nowText, shares, solved, SOON, typed, wish } from './brief-page'
import { barwright, briefOnPage } from './command-line'

const EXIT = { solved: 0, infeasible: 3 }

/** Asks for more than the shelf has, and waits until the page says so. */
async function overAsk(page: Page, wishes: Readonly<Record<string, string>>): Promise<void> {
  await solved(page)
  for (const [name, value] of Object.entries(wishes)) await field(page, name).fill(value)
  await page.getByText('No blend', { exact: true }).waitFor()
  await expect.poll(() => clashWords(page), SOON).toContain(Object.values(wishes).at(-1))
}

/** Needles of the wishes: where the blend stands. */
const needles = (page: Page) => page.getByRole('region', { name: 'Wishes' }).locator('.needle')

const clashWords = (page: Page) => page.getByRole('status').innerText()

/** The limits that the clash line names, such as "Hardness at least 46". */
async function namedLimits(page: Page): Promise<string[]> {
  const words = await page.getByRole('status').locator('span').innerText()
  return words.split(/ can’t all| is out of/u)[0]?.split(/, | and /u) ?? []
}

/** The brief with only those of its limits. */
function onlyLimits(brief: BriefFile, names: readonly string[]): BriefFile {
  const oils: BriefFile['oils'] = {}
  for (const [oil, { pricePerKg }] of Object.entries(brief.oils)) oils[oil] = { pricePerKg }
  const measures: NonNullable<BriefFile['measures']> = {}
  for (const name of names) {
    const [, subject = '', side, value] = /^(.+) at (least|most) €?([\d.]+)/u.exec(name) ?? []
    const end = { [side === 'least' ? 'min' : 'max']: Number(value) }
    const measure = library.measures.find((one) => one.name === subject)
    if (measure) measures[measure.id] = { ...measures[measure.id], ...end }
    else oils[oilId(subject)] = { ...oils[oilId(subject)], ...end }
  }
  return { ...brief, oils, measures }
}

/** How the command line ends on it with another solver than the page's. */
const ending = async (brief: BriefFile) =>
  (await barwright('solve', brief, '--solver', 'highs')).exitCode

const HARD_AND_MILD = {
  'Hardness, at most': '48',
  'Hardness, at least': '46',
  'Conditioning, at least': '52',
}

pageTest('the words name wishes that clash, and none that could stay', async ({ open }) => {
  const page = await open()
  await overAsk(page, HARD_AND_MILD)
  const names = await namedLimits(page)
  const brief = await briefOnPage(page, { minimise: 'cost' })
  expect(names.length).toBeGreaterThan(1)
  // HiGHS, which the page asked only to confirm, on these wishes alone and on all but one of them.
  expect(await ending(onlyLimits(brief, names))).toBe(EXIT.infeasible)
  for (const name of names)
    expect([
      name,
      await ending(
        onlyLimits(
          brief,
          names.filter((other) => other !== name),
        ),
      ),
    ]).toEqual([name, EXIT.solved])
})

pageTest(
  'a clash shows its gaps and no needle, and a change offered mends it',
  async ({ open }) => {
    const page = await open()
    await overAsk(page, HARD_AND_MILD)
    expect(await needles(page).count()).toBe(0)
    for (const measure of ['Hardness', 'Cost', 'Keeping'])
      expect(await nowText(page, measure)).toBe('–')
    for (const measure of ['Hardness', 'Conditioning']) {
      expect(await wish(page, measure).locator('rect.gap').count()).toBe(1)
      expect(
        await wish(page, measure)
          .getByText(/\d short$/u)
          .isVisible(),
      ).toBe(true)
    }
    expect(await wish(page, 'Keeping').locator('rect.gap').count()).toBe(0)
    expect(await page.getByRole('link', { name: 'Take to Batch' }).isVisible()).toBe(false)

    const changes = page.getByRole('region', { name: 'Smallest changes' })
    const buttons = changes.getByRole('button', { name: /^Set to / })
    expect(await buttons.count()).toBeGreaterThan(0)
    const words = await changes.locator('.change p').first().innerText()
    const [, measure = '', value = ''] = /^(\w+) at least ([\d.]+) instead/u.exec(words) ?? []
    expect(await buttons.first().innerText()).toBe(`Set to ${value}`)
    await buttons.first().click()
    await solved(page)
    expect(await needles(page).count()).toBe(7)
    expect(await page.getByRole('status').count()).toBe(0)
    const total = Object.values(await shares(page)).reduce((sum, share) => sum + share, 0)
    expect(total).toBeCloseTo(100, 6)
    expect(await field(page, `${measure}, at least`).inputValue()).toBe(value)
    await expectNow(page, measure, Number(value).toFixed(1))
  },
)

pageTest('the gap beside a gauge is as large as the change that mends it', async ({ open }) => {
  const page = await open()
  await overAsk(page, HARD_AND_MILD)
  const gaps = await Promise.all(
    ['Hardness', 'Conditioning'].map(async (measure) => {
      const gap = await wish(page, measure)
        .getByText(/\d short$/u)
        .textContent()
      return `${measure} −${gap?.replace(' short', '')}`
    }),
  )
  const rows = await page.getByRole('region', { name: 'Smallest changes' }).locator('.change').all()
  const changes = rows.map(async (row) => {
    const [words = '', change] = await row.locator('p').allInnerTexts()
    return `${words.split(' ')[0]} ${change}`
  })
  const told = await Promise.all(changes)
  for (const gap of gaps) expect(told).toContain(gap)
})

pageTest('one wish out of reach is said as such', async ({ open }) => {
  const page = await open()
  await overAsk(page, { 'Lather, at least': '80' })
  expect(await namedLimits(page)).toEqual(['Lather at least 80'])
  expect(await clashWords(page)).toContain('is out of reach')
})

pageTest('dragging a flag past its reach shows the gap while it is held', async ({ open }) => {
  const page = await open()
  await solved(page)
  const flag = page.getByRole('slider', { name: 'Lather, at least' }).locator('path')
  const box = await flag.boundingBox()
  if (!box) throw new Error('There is no flag on lather')
  await page.mouse.move(box.x + 3, box.y + 7)
  await page.mouse.down()
  await page.mouse.move(box.x + 103, box.y + 7, { steps: 8 })
  await wish(page, 'Lather')
    .getByText(/\d short$/u)
    .waitFor()
  await page.mouse.move(box.x + 3, box.y + 7, { steps: 8 })
  await page.mouse.up()
  await solved(page)
  expect(await field(page, 'Lather, at least').inputValue()).toBe('35')
})

pageTest(
  'the loss of a clash is shared in one step, and the last change taken back',
  async ({ open }) => {
    const page = await open()
    await overAsk(page, HARD_AND_MILD)
    const changes = page.getByRole('region', { name: 'Smallest changes' })
    const asked = await typed(page, 'Hardness, at least')
    await changes.getByRole('button', { name: 'Share the loss' }).click()
    await solved(page)
    expect(await typed(page, 'Hardness, at least')).toBeLessThan(asked ?? NaN)
    await page.keyboard.press('Control+z')
    await changes.getByRole('button', { name: 'take back my last change' }).waitFor()
    expect(await typed(page, 'Hardness, at least')).toBe(asked)
    await changes.getByRole('button', { name: 'take back my last change' }).click()
    // The wish typed last is what it was in the example.
    expect(await typed(page, 'Conditioning, at least')).toBe(50)
    expect(await typed(page, 'Hardness, at least')).toBe(asked)
  },
)

pageTest(
  'where no single change is enough, the least together is offered and mends it',
  async ({ open }) => {
    const page = await open()
    // Each of these is out of reach by itself, so that two clashes stand behind one another.
    await overAsk(page, {
      'Hardness, at most': '',
      'Hardness, at least': '70',
      'Lather, at least': '80',
    })
    const changes = page.getByRole('region', { name: 'Smallest changes' })
    expect(await changes.getByRole('button', { name: /^Set to / }).count()).toBe(0)
    await changes.getByRole('button', { name: 'Make these changes' }).click()
    await solved(page)
    expect(await typed(page, 'Hardness, at least')).toBeLessThan(70)
    expect(await typed(page, 'Lather, at least')).toBeLessThan(80)
    await page.keyboard.press('Control+z')
    await expect.poll(() => typed(page, 'Lather, at least'), SOON).toBe(80)
  },
)
