import { expect } from 'vitest'
import { pageTest } from '../browser/page-test'
import { goToView, group, openBatch } from './batch-page'
import { overflow, sticksOut } from './sideways'

pageTest.for([1440, 390])(
  'the label says not released until a test is entered, and held when it is pink, %d px wide',
  async (width, { open }) => {
    const page = await openBatch(open)
    await page.setViewportSize({ width, height: 900 })
    const papers = await group(page, 'Papers and prices')
    await papers.getByRole('textbox', { name: 'Made on' }).fill('2026-01-10')
    await goToView(page, 'Label')
    const gate = page.getByRole('region', { name: 'Release' })
    expect(await gate.getByRole('status').innerText()).toMatch(/^Not released/u)

    // Nonsense is refused beside its field, and nothing is entered.
    const form = gate.getByRole('form', { name: 'Enter a test' })
    await form.getByRole('textbox', { name: 'Day of the test' }).fill('2026-01-10')
    await form.getByRole('textbox', { name: 'Tested by' }).fill('M.')
    await form.getByRole('textbox', { name: 'Which bar' }).fill('7')
    await form.getByRole('textbox', { name: 'Soap, g' }).fill('5')
    await form.getByRole('textbox', { name: 'Acid, ml' }).fill('0.4')
    await form.getByRole('button', { name: 'Enter the test' }).click()
    expect(await form.getByRole('alert').allInnerTexts()).toEqual([
      expect.stringContaining('before 2026-01-11') as string,
    ])
    expect(await gate.getByRole('list', { name: 'Tests' }).count()).toBe(0)

    await form.getByRole('textbox', { name: 'Day of the test' }).fill('2026-02-10')
    await form.getByRole('button', { name: 'Enter the test' }).click()
    expect(await gate.getByRole('status').innerText()).toContain('0.032 % free alkali as NaOH')
    expect([await overflow(page), await sticksOut(page)]).toEqual([0, []])

    // A pink bar holds the batch, whatever another said.
    await form.getByRole('combobox', { name: /^Test by/u }).click()
    await page.getByRole('option', { name: 'colour only' }).click()
    await form.getByRole('textbox', { name: 'Which bar' }).fill('8')
    await form.getByRole('radio', { name: 'pink' }).check()
    await form.getByRole('button', { name: 'Enter the test' }).click()
    expect(await gate.getByRole('status').innerText()).toMatch(/^Not released, held: Pink/u)
    expect(await gate.getByRole('list', { name: 'What to do' }).innerText()).toContain(
      'caustic waste',
    )

    // Kept over a reload.
    await page.reload()
    await gate.waitFor()
    expect(await gate.getByRole('list', { name: 'Tests' }).getByRole('listitem').count()).toBe(2)
  },
)
