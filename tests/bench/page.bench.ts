import type { Page } from 'playwright-core'
import { expect, inject } from 'vitest'
import { pageTest } from '../browser/page-test'
import { field, flag, landed, shelfNames, solved, SOON } from '../e2e/brief-page'
import { firstLoad } from './first-load'
import { fortyOils, MOVED } from './forty-oils'
import { circumstances } from './machine'
import { mainThreadDuring } from './main-thread'
import { arm, framesDuring, type Reaction, reaction, untilQuiet, withClock } from './page-clock'
import { type PageFigures, pageSection } from './page-report'
import { quick } from './quick'
import { writeSection } from './results-file'

const where = circumstances(quick)
const measured: { -readonly [K in keyof PageFigures]?: PageFigures[K] } = {}

const LOADS = quick ? 3 : 9
const TYPED = quick ? 6 : 24
const DRAGGED = quick ? 8 : 40
const BRUSH_MOVES = quick ? 60 : 240

/** Half a point, as a drag moves it. */
const STEP = 0.5
const STEPS = (MOVED.to - MOVED.from) / STEP

/** A drag of one step takes no more px than this. */
const MOST_PX = 40

pageTest('the first visit is timed and its JavaScript weighed', async ({ browser }) => {
  const loads = []
  for (let k = 0; k < LOADS; k++) loads.push(await firstLoad(browser, inject('pageAddress')))
  for (const { input, blend, map, scripts } of loads) {
    expect([input, blend, map].every(Number.isFinite)).toBe(true)
    expect(scripts.map(({ name }) => name).some((name) => /worker/u.test(name))).toBe(true)
  }
  measured.loads = loads
})

pageTest('a wish of forty oils is typed and dragged', async ({ open }) => {
  const page = await open('', { own: true })
  await openFortyOils(page)
  await withClock(page)
  const label = `${MOVED.name}, at least`
  const typed: Reaction[] = []
  const typing = await mainThreadDuring(page, async () => {
    for (let k = 0; k < TYPED; k++) {
      await arm(page)
      await field(page, label).fill(String(MOVED.from + STEP * (1 + (k % (STEPS - 1)))))
      typed.push(await reaction(page))
    }
  })
  const dragged = await drag(page, label)
  const all = [...typed, ...dragged]
  expect(all.every(({ drawn, blend, region }) => drawn >= Math.max(blend, region))).toBe(true)
  Object.assign(measured, { typed, dragged, typing })
})

pageTest('20,000 lines are brushed', async ({ open }) => {
  const page = await open('', { own: true })
  await openFortyOils(page)
  await withClock(page)
  await page.getByRole('button', { name: 'lines', exact: true }).click()
  await page.getByText(/20\D?000 blends that keep the brief/u).waitFor(SOON)
  const box = await page
    .getByRole('slider', { name: 'Lather, part of the blends kept' })
    .locator('.hit')
    .boundingBox()
  if (!box) throw new Error('There is no axis to brush')
  const x = box.x + box.width / 2
  await page.mouse.move(x, box.y + box.height / 4)
  await page.mouse.down()
  let frames: number[] = []
  const brushing = await mainThreadDuring(page, async () => {
    frames = await framesDuring(page, async () => {
      for (let k = 0; k < BRUSH_MOVES; k++)
        await page.mouse.move(x, box.y + (box.height * (2 + Math.sin(k / 20))) / 4)
    })
  })
  await page.mouse.up()
  await page.getByText(/of 20\D?000 sampled blends keep/u).waitFor()
  expect(frames.length).toBeGreaterThan(BRUSH_MOVES / 20)
  Object.assign(measured, { frames, brushing })
})

pageTest('the figures are written', async () => {
  const { loads, typed, dragged, typing, frames, brushing } = measured
  if (!loads || !typed || !dragged || !typing || !frames || !brushing)
    throw new Error('Something was not measured: see the tests above')
  const figures = { loads, typed, dragged, typing, frames, brushing }
  await writeSection('In the page', pageSection(figures, where))
})

async function openFortyOils(page: Page): Promise<void> {
  await solved(page)
  await page.locator('input[type=file]').setInputFiles({
    name: 'forty oils.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(fortyOils())),
  })
  await expect.poll(async () => (await shelfNames(page)).length, SOON).toBe(40)
  await solved(page)
  await landed(page)
  await untilQuiet(page)
}

/** Drags a flag back and forth by its steps; each step waits for the one before to be answered. */
async function drag(page: Page, label: string): Promise<Reaction[]> {
  const box = await flag(page, label).locator('path').boundingBox()
  if (!box) throw new Error(`${label} is not on the page`)
  let x = box.x + box.width / 2
  const y = box.y + box.height / 2
  await page.mouse.move(x, y)
  await page.mouse.down()
  const reactions: Reaction[] = []
  let way = -1
  while (reactions.length < DRAGGED) {
    const before = await valueOf(page, label)
    if (before - STEP <= MOVED.from) way = 1
    if (before + STEP >= MOVED.to) way = -1
    await arm(page)
    const start = x
    while ((await valueOf(page, label)) === before) {
      if (Math.abs(x - start) > MOST_PX) throw new Error(`${label} does not follow the pointer`)
      await page.mouse.move((x += way), y)
    }
    reactions.push(await reaction(page))
  }
  await page.mouse.up()
  return reactions
}

async function valueOf(page: Page, label: string): Promise<number> {
  return Number(await flag(page, label).getAttribute('aria-valuenow'))
}
