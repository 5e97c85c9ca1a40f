import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import type { BatchPlan } from '../../src/domain/batch/result/plan'
import { demo } from '../../src/data/demo'
import { SOON } from './brief-page'
import { barwright } from './command-line'
import { untilKept } from './kept'
import { overflow } from './sideways'

const NOTHING = { begin: 'nothing' } as const
const paper = (page: Page) => page.getByRole('textbox', { name: /^Your formula/u })
const share = (page: Page, oil: string) =>
  page.getByRole('textbox', { name: `${oil}, share in percent` })
const main = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

/** Grams of what is weighed, unrounded as the page has them. */
async function grams(page: Page, what: string): Promise<number> {
  const weight = page
    .locator(`[data-weigh="${what}"][data-grams], [data-weigh="${what}"] [data-grams]`)
    .first()
  await weight.waitFor()
  return Number(await weight.getAttribute('data-grams'))
}

async function valueOf(page: Page, measure: string): Promise<number> {
  return Number(await page.locator(`[data-measure="${measure}"]`).getAttribute('data-value'))
}

/** What the command line weighs out of a blend as a first batch is: 1 kg, 5 % superfat, lye at 33 %. */
async function weighedOut(blend: Readonly<Record<string, number>>, oilGrams: number) {
  const { exitCode, output } = await barwright<BatchPlan>('batch', {
    format: 'barwright-batch/1',
    blend,
    oilGrams,
    alkali: { naoh: 100 },
    purity: { naoh: demo.batch.purity.naoh },
    superfat: 5,
    water: { lyeConcentration: 33 },
    scale: demo.batch.scale,
  })
  expect(exitCode).toBe(0)
  if (output.status !== 'ready') throw new Error('The command line made no batch')
  return output
}

describe('a first visit', () => {
  pageTest('comes to a lye weight by paste, as the command line has it', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('olive 450 g\ncoconut 250 g\nshea 150\nrice bran 100\ncastor 50')
    const blend = { olive: 45, coconut: 25, shea: 15, 'rice-bran': 10, castor: 5 }
    const plan = await weighedOut(blend, 1000)
    expect(await grams(page, 'naoh')).toBe(plan.alkaliGrams.naoh)
    expect(await grams(page, 'water')).toBe(plan.waterGrams)
    await main(page, 'This is my bar').click()
    await expect.poll(() => share(page, 'Olive').inputValue()).toBe('45.0')
    expect(await grams(page, 'naoh')).toBe(plan.alkaliGrams.naoh)
    // No price was given: that is one sentence, and everything else is there.
    expect(await page.getByRole('group', { name: 'Cost' }).innerText()).toContain('left out while')
    expect(await page.getByRole('group', { name: 'Harder, same lather' }).innerText()).not.toBe('')
    expect(await page.getByRole('alert').count()).toBe(0)
  })

  pageTest('comes to a lye weight by picking oils, on a phone', async ({ open }) => {
    const page = await open('', { ...NOTHING, size: 'phone' })
    for (const name of ['Olive', 'Coconut'])
      await page.getByRole('button', { name, exact: true }).tap()
    await main(page, /^Begin with these/u).tap()
    const plan = await weighedOut({ olive: 50, coconut: 50 }, 1000)
    expect(await grams(page, 'naoh')).toBe(plan.alkaliGrams.naoh)
    expect(await overflow(page)).toBe(0)
  })

  pageTest('comes to a lye weight by keys alone', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).focus()
    await page.keyboard.type('tallow 800\ncoconut 200')
    await page.keyboard.press('Control+Enter')
    await expect.poll(() => share(page, 'Beef tallow').inputValue()).toBe('80.0')
    const plan = await weighedOut({ 'tallow-beef': 80, coconut: 20 }, 1000)
    expect(await grams(page, 'naoh')).toBe(plan.alkaliGrams.naoh)
  })

  pageTest('shows the example, and goes back to nothing by Undo', async ({ open }) => {
    const page = await open('', NOTHING)
    await main(page, demo.name).click()
    await page.getByRole('region', { name: 'This bar' }).waitFor()
    await main(page, 'Undo').click()
    await paper(page).waitFor()
  })

  pageTest('shows a known bar on the scales', async ({ open }) => {
    const page = await open('', NOTHING)
    await main(page, 'O all olive').click()
    await expect.poll(() => valueOf(page, 'mildness')).toBeGreaterThan(0)
    expect(await page.locator('[data-weigh]').count()).toBe(0)
  })
})

describe('a whole recipe', () => {
  pageTest('lands in Batch, its lye compared and never taken', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill(
      'olive 700 g\ncoconut 300 g\nlye 150 g\nwater 300 g\nsuperfat 6 %\nlavender essential oil 20 g\nhot process',
    )
    const text = page.getByText(/^Your lye was/u)
    await text.waitFor()
    expect(await text.innerText()).toMatch(/^Your lye was 150\.0 g, ours is \d+\.\d g: /u)
    await main(page, 'This is my bar').click()
    await page.evaluate(() => (location.hash = '#batch'))
    await page.locator('[data-weigh="naoh"]').first().waitFor()
    expect(await grams(page, 'naoh')).toBeLessThan(150)
    expect(await page.getByText('hot process').count()).toBeGreaterThan(0)
    expect(await page.getByRole('main').innerText()).toContain('Lavender')
  })

  pageTest('with a line not understood is not taken before that is answered', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('olive 700 g\ncoconut 300 g\nunicorn tears 50 g')
    const asked = page.getByRole('list', { name: 'To ask about' })
    expect(await asked.innerText()).toContain('unicorn tears')
    expect(await main(page, 'This is my bar').isDisabled()).toBe(true)
    expect(await page.getByText('Not to be weighed before').count()).toBe(1)
    await asked.getByRole('button', { name: 'leave it out' }).click()
    await main(page, 'This is my bar').click()
    await expect.poll(() => share(page, 'Olive').inputValue()).toBe('70.0')
  })

  pageTest('whose shares do not add to 100 is asked about', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('olive 60 %\ncoconut 36 %')
    await page.getByText('The oils add to 96.0').waitFor()
    expect(await main(page, 'This is my bar').isDisabled()).toBe(true)
    await main(page, 'Spread them over 100').click()
    await main(page, 'This is my bar').click()
    await expect.poll(() => share(page, 'Olive').inputValue()).toBe('62.5')
  })
})

describe('the paper', () => {
  pageTest('keeps what is typed before it is a bar', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('olive oil 500 g\ncocnut 250 g\ndragon fat 10 g')
    await untilKept(page, 'dragon fat 10 g')
    await page.reload()
    await expect.poll(() => paper(page).inputValue(), SOON).toContain('dragon fat 10 g')
    expect(await page.getByRole('list', { name: 'What was read' }).innerText()).toContain('Coconut')
  })

  pageTest('asks how percent beside weights are meant', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('olive 300 g, lard 100 g, coconut 20 %')
    expect(await main(page, 'This is my bar').isDisabled()).toBe(true)
    await page.getByRole('radio', { name: /the weights share the rest/u }).check()
    await main(page, 'This is my bar').click()
    // By hand: the weights share 80 % as 3 to 1.
    await expect.poll(() => share(page, 'Olive').inputValue()).toBe('60.0')
    expect(await share(page, 'Lard').inputValue()).toBe('20.0')
  })

  pageTest.for([
    ['nothing', ''],
    ['signs of soap', '🧼🧼'],
    ['HTML', '<img src=x onerror=alert(1)> 60'],
    ['semicolons', '; ; ;'],
    ['one endless word', 'x'.repeat(60_000)],
    ['ten thousand lines', 'dragon fat 10 g\n'.repeat(10_000)],
  ] as const)('takes no bar from %s and breaks nothing', async ([, text], { open }) => {
    const page = await open('', NOTHING)
    await paper(page).evaluate((area, value) => {
      if (area instanceof HTMLTextAreaElement) area.value = value
      area.dispatchEvent(new Event('input', { bubbles: true }))
    }, text)
    const take = main(page, 'This is my bar')
    expect((await take.count()) === 0 || (await take.isDisabled())).toBe(true)
    expect(await page.locator('img').count()).toBe(0)
  })
})

describe('the bar in hand', () => {
  const begun = async (page: Page) => {
    await paper(page).fill('olive 450 g\ncoconut 250 g\nshea 150 g\nrice bran 100 g\ncastor 50 g')
    await main(page, 'This is my bar').click()
    await share(page, 'Shea').waitFor()
  }

  pageTest('stays at 100 as one oil gives way, and keeps a locked one', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    await share(page, 'Shea').fill('22')
    await expect.poll(() => share(page, 'Olive').inputValue()).toBe('38.0')
    await main(page, 'Lock Olive').click()
    await share(page, 'Castor').fill('8')
    await expect.poll(() => share(page, 'Coconut').inputValue()).toBe('22.0')
    expect(await share(page, 'Olive').inputValue()).toBe('38.0')
  })

  pageTest('grows by a weight that is typed, and no other weight moves', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    const weight = (oil: string) => page.getByRole('textbox', { name: `${oil}, weight in g` })
    await weight('Olive').fill('650')
    await expect
      .poll(() => page.getByRole('textbox', { name: /^Weight of all oils/u }).inputValue())
      .toBe('1200')
    expect(await weight('Coconut').inputValue()).toBe('250')
  })

  pageTest('moves share between neighbours by a grip, by key', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    await page.getByRole('slider', { name: 'Between Shea and Olive' }).focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => share(page, 'Shea').inputValue()).toBe('16.0')
    expect(await share(page, 'Olive').inputValue()).toBe('44.0')
  })

  pageTest(
    'is bettered in one press, kept as a version, and goes to Map and Batch',
    async ({ open }) => {
      const page = await open('', NOTHING)
      await begun(page)
      const before = await valueOf(page, 'hardness')
      await main(page, 'Take Harder, same lather').click(SOON)
      await expect.poll(() => valueOf(page, 'hardness')).toBeGreaterThan(before + 4.99)
      await main(page, 'Keep as version 2').click()
      const hydroxide = await grams(page, 'naoh')
      await main(page, 'Ask on the Map').click()
      await page.getByRole('region', { name: 'Wishes' }).waitFor()
      expect(await page.locator('.sentence').innerText()).toContain('nearest to')
      await page.evaluate(() => (location.hash = '#batch'))
      expect(await grams(page, 'naoh')).toBe(hydroxide)
    },
  )

  pageTest('is there again after a reload', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    await page.getByText(/^kept on this machine/u).waitFor()
    await page.reload()
    await expect.poll(() => share(page, 'Shea').inputValue(), SOON).toBe('15.0')
  })

  pageTest('says where its figures can not be trusted', async ({ open }) => {
    const page = await open('', NOTHING)
    await paper(page).fill('castor 60\nstearic acid 40')
    await main(page, 'This is my bar').click()
    await page.getByText('beyond what the measures can say').first().waitFor()
  })
})
