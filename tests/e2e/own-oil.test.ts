import type { Page } from 'playwright-core'
import { describe, expect } from 'vitest'
import { batchFile } from '../../src/data/batch-file'
import type { BatchPlan } from '../../src/domain/batch/result/plan'
import { axeFaults } from '../browser/axe'
import { pageTest } from '../browser/page-test'
import { goTo, SOON } from './brief-page'
import { barwright } from './command-line'
import { untilKept } from './kept'
import { bytesOf } from './saved'
import { overflow } from './sideways'

const NOTHING = { begin: 'nothing' } as const
const paper = (page: Page) => page.getByRole('textbox', { name: /^Your formula/u })
const certificate = (page: Page) => page.getByRole('textbox', { name: /^The certificate’s text/u })
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name })

/** A bar of two oils in hand, and the page of a third, begun under a name that no oil has. */
async function begun(page: Page): Promise<void> {
  await paper(page).fill('olive 700 g\ncoconut 300 g')
  await button(page, 'This is my bar').click()
  const search = page.getByRole('combobox', { name: 'Add an oil by name or tag' })
  await search.fill('Hillside laurel')
  await page.getByRole('option', { name: /^Begin “Hillside laurel” from Laurel/u }).click()
  await page.getByText('An oil of my own: Hillside laurel').waitFor()
}

const CERTIFICATE = `Certificate LB-0311, lot L7-22
Lauric C12:0 19.4 %
Myristic C14:0 1.1 %
Palmitic C16:0 14.2 %
Stearic C18:0 2.1 %
Oleic C18:1 41.5 %
Linoleic C18:2 18.6 %
Saponification value 199 ± 2 mg KOH/g`

describe('an oil of one’s own', () => {
  pageTest('goes from its certificate to the lye, as the command line has it', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    await button(page, 'Paste the certificate').click()
    await certificate(page).fill(CERTIFICATE)
    await button(page, 'Read it').click()
    await page.getByText(/^Read: 6 acids that add to 96\.9 %/u).waitFor()
    await button(page, 'Back to New bar').click()
    await page.getByRole('textbox', { name: /^Hillside laurel.*share in percent/u }).fill('20')
    await page.keyboard.press('Tab')
    await untilKept(page, 'L7-22')
    // The thread knows it too: what lies within reach of all three oils is drawn.
    await page.getByRole('group', { name: 'Harder, same lather' }).waitFor()
    await goTo(page, 'batch')
    const download = page.waitForEvent('download')
    await button(page, 'Save batch file').click()
    const text = (await bytesOf(await download)).toString('utf8')
    const file = batchFile.parse(JSON.parse(text))
    expect(file).toMatchObject({ ownOils: [{ name: 'Hillside laurel', certificate: 'LB-0311' }] })
    const { exitCode, output } = await barwright<BatchPlan>('batch', file)
    expect(exitCode).toBe(0)
    if (output.status !== 'ready') throw new Error('The command line made no batch')
    const weight = page.locator('[data-weigh="naoh"] [data-grams]').first()
    expect(Number(await weight.getAttribute('data-grams'))).toBe(output.alkaliGrams.naoh)
  })

  pageTest('is kept from lye while its two ways to the alkali differ', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    const value = page.getByRole('textbox', { name: 'Saponification value, mg KOH per g' })
    await page.getByRole('textbox', { name: /^Lauric/u }).fill('60')
    await page.keyboard.press('Tab')
    await value.fill('200')
    await page.keyboard.press('Tab')
    await page.getByText('No lye is reckoned with it.').waitFor()
    await page.getByLabel('Lot in hand').fill('L7-22')
    await page.getByLabel('Number of the certificate').fill('LB-0311')
    await page.keyboard.press('Tab')
    await expect.poll(() => page.getByText('No lye is reckoned with it.').count(), SOON).toBe(0)
  })

  pageTest('says what is wrong, and what stood before stays in force', async ({ open }) => {
    const page = await open('', NOTHING)
    await begun(page)
    const value = page.getByRole('textbox', { name: 'Saponification value, mg KOH per g' })
    // As NaOH per g, which is what many papers have.
    await value.fill('19')
    await page.keyboard.press('Tab')
    await page.getByText(/^The value is 19; acids like these take about/u).waitFor()
    await button(page, 'Go back to that').click()
    await expect.poll(() => value.inputValue(), SOON).toBe('')
    expect(await button(page, 'Take it out').isDisabled()).toBe(true)
  })

  pageTest('is no fault to axe, and fits a phone', async ({ open }) => {
    const page = await open('', { ...NOTHING, size: 'phone', reducedMotion: true })
    await begun(page)
    await button(page, 'Paste the certificate').click()
    expect(await axeFaults(page)).toEqual([])
    expect(await overflow(page)).toBe(0)
  })
})
