import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import type { BatchPlan } from '../../src/domain/batch/result/plan'
import type { Blend } from '../../src/domain/blend/blend'
import type { Answer } from '../../src/domain/optimise/brief/answer'
import {
  expectNow,
  field,
  figure,
  flag,
  landed,
  map,
  nowText,
  SOON,
  shares,
  solved,
  typed,
} from './brief-page'
import { barwright, batchOnPage, briefOnPage, costOf } from './command-line'

/**
 * Page and command line solve the same program with the same solver; what differs is the way there and
 * back, so only the last digits of floating point may.
 */
const SAME = 1e-6

const weight = async (page: Page, what: string) =>
  Number(await page.locator(`[data-weigh="${what}"] [data-grams]`).getAttribute('data-grams'))

/** Drags a flag sideways by some px. */
async function drag(page: Page, name: string, byPx: number): Promise<void> {
  const box = await flag(page, name).locator('path').boundingBox()
  if (!box) throw new Error(`${name} is not on the page`)
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + byPx, y, { steps: 6 })
  await page.mouse.up()
}

/** Waits for a blend other than the one that was, and gives it. */
async function changedFrom(page: Page, before: unknown): Promise<unknown> {
  await expect.poll(() => shares(page), SOON).not.toEqual(before)
  return shares(page)
}

/** Solves what the page shows with the command line and gives the command line's blend. */
async function expectSameAsCommandLine(page: Page): Promise<Blend> {
  const { exitCode, output } = await barwright<Answer>(
    'solve',
    await briefOnPage(page, { minimise: 'cost' }),
  )
  expect(exitCode).toBe(0)
  if (output.status !== 'optimal') throw new Error('The command line found no blend')
  const onPage = await shares(page)
  expect(Object.keys(onPage).sort()).toEqual(Object.keys(output.blend).sort())
  for (const [oil, share] of Object.entries(output.blend))
    expect(Math.abs((onPage[oil] ?? NaN) - share)).toBeLessThanOrEqual(SAME)
  expect(Math.abs((await figure(page)) - costOf(output.measures))).toBeLessThanOrEqual(SAME)
  return output.blend
}

async function expectSameWeights(page: Page, blend: Blend): Promise<void> {
  const order = await batchOnPage(page, { ...blend })
  const { exitCode, output } = await barwright<BatchPlan>('batch', order)
  expect(exitCode).toBe(0)
  if (output.status !== 'ready') throw new Error('The command line made no batch')
  expect(await weight(page, 'naoh')).toBe(output.alkaliGrams.naoh)
  expect(await weight(page, 'water')).toBe(output.waterGrams)
  for (const [oil, grams] of Object.entries(output.oilGrams))
    expect(await weight(page, oil)).toBe(grams)
}

pageTest('from a brief to the hydroxide, as the command line has it', async ({ open }) => {
  const page = await open()
  const firstCost = await solved(page)
  const first = await shares(page)
  expect(await page.locator('[data-figure]').innerText()).toBe(`€${firstCost.toFixed(2)}`)
  expect(Object.values(first).reduce((sum, share) => sum + share)).toBeCloseTo(100, 6)

  await field(page, 'Hardness, at least').fill('40')
  await expectNow(page, 'Hardness', '40.0')
  const typedBlend = await changedFrom(page, first)
  expect(await figure(page)).toBeGreaterThan(firstCost)

  await drag(page, 'Lather, at least', 8)
  const lather = await typed(page, 'Lather, at least')
  expect(lather).toBeGreaterThan(35)
  expect(((lather ?? NaN) * 2) % 1).toBe(0)
  await expectNow(page, 'Lather', (lather ?? NaN).toFixed(1))
  const draggedBlend = await changedFrom(page, typedBlend)

  await flag(page, 'Wear, at most').press('ArrowRight')
  expect(await typed(page, 'Wear, at most')).toBe(55)
  await changedFrom(page, draggedBlend)

  const found = await expectSameAsCommandLine(page)
  await page.getByRole('link', { name: 'Take to Batch' }).click()
  await page.locator('[data-weigh="naoh"]').waitFor()
  await expectSameWeights(page, found)
})

pageTest('a blend picked on the map by mouse or keys goes to the batch', async ({ open }) => {
  const page = await open()
  await solved(page)
  await landed(page)
  const found = await shares(page)
  const dot = await page.locator('.map .dot').boundingBox()
  if (!dot) throw new Error('The map shows no blend')
  await page.mouse.click(dot.x + dot.width / 2 - 60, dot.y + dot.height / 2 + 90)
  await page.getByText('picked on the map').waitFor()
  const clicked = await shares(page)
  expect(clicked).not.toEqual(found)

  await map(page).focus()
  await page.keyboard.press('n')
  await expect.poll(() => shares(page), SOON).toEqual(found)

  const [hardness, lather] = [await nowText(page, 'Hardness'), await nowText(page, 'Lather')]
  for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'Shift+ArrowRight'])
    await page.keyboard.press(key)
  await page.keyboard.press('Enter')
  await page.getByText('picked on the map').waitFor()
  // By hand: an arrow moves half a point, with Shift a tenth.
  await expectNow(page, 'Hardness', (Number(hardness) + 0.6).toFixed(1))
  await expectNow(page, 'Lather', (Number(lather) - 1.5).toFixed(1))

  const picked = await shares(page)
  await page.getByRole('link', { name: 'Take to Batch' }).click()
  await page.locator('[data-weigh="naoh"]').waitFor()
  await expectSameWeights(page, picked)
  await page.goBack()
  await map(page).press('N')
  await expect.poll(() => shares(page), SOON).toEqual(found)
})
