import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { axeFaults, inTheDark } from '../browser/axe'
import { pageTest } from '../browser/page-test'
import { addFrom, goToView, group } from './batch-page'
import { field, goTo, solved } from './brief-page'

/** Contrast that WCAG 2.2 asks of text, criterion 1.4.3. */
const LEAST_CONTRAST = 4.5

/**
 * Text whose colour is too near to what lies behind it; axe can't tell where text is drawn or covered.
 * Behind drawn text lies its own halo, behind other text the nearest ground above it in the document.
 * What can't be used just now is exempt.
 */
function faintText(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const paint = document.createElement('canvas').getContext('2d', { willReadFrequently: true })
    if (!paint) throw new Error('This browser can’t paint')
    type Colour = readonly [number, number, number, number]
    const known = new Map<string, Colour>()
    const read = (colour: string): Colour => {
      const before = known.get(colour)
      if (before) return before
      paint.clearRect(0, 0, 1, 1)
      paint.fillStyle = colour
      paint.fillRect(0, 0, 1, 1)
      const [red = 0, green = 0, blue = 0, alpha = 0] = paint.getImageData(0, 0, 1, 1).data
      const channels: Colour = [red, green, blue, alpha / 255]
      known.set(colour, channels)
      return channels
    }
    const over = (front: Colour, back: Colour, part: number): Colour => {
      const mix = (at: 0 | 1 | 2) => front[at] * part + back[at] * (1 - part)
      return [mix(0), mix(1), mix(2), 1]
    }
    // Relative luminance and contrast as WCAG 2.2 defines them.
    const linear = (byte: number) => {
      const value = byte / 255
      return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
    }
    const luminance = ([red, green, blue]: Colour) =>
      0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)
    const contrast = (one: Colour, other: Colour) => {
      const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
      return (light + 0.05) / (dark + 0.05)
    }
    const ancestors = (element: Element): Element[] =>
      element.parentElement ? [element, ...ancestors(element.parentElement)] : [element]
    const groundOf = (element: Element): Colour => {
      const grounds = ancestors(element).map((one) => read(getComputedStyle(one).backgroundColor))
      return grounds.find(([, , , alpha]) => alpha === 1) ?? [255, 255, 255, 1]
    }
    const opacityOf = (element: Element) =>
      ancestors(element).reduce((all, one) => all * Number(getComputedStyle(one).opacity), 1)
    const hasText = (element: Element) =>
      [...element.childNodes].some(
        ({ nodeType, textContent }) => nodeType === 3 && textContent?.trim(),
      )
    const counts = (element: Element) =>
      hasText(element) &&
      element.checkVisibility() &&
      !element.closest('.vh, :disabled, style, script')
    return [...document.querySelectorAll('body *')].filter(counts).flatMap((element) => {
      const { color, fill, stroke } = getComputedStyle(element)
      const drawn = element instanceof SVGElement
      const ground = groundOf(element)
      const opacity = opacityOf(element)
      const back = drawn && stroke !== 'none' ? over(read(stroke), ground, opacity) : ground
      const found = contrast(over(read(drawn ? fill : color), ground, opacity), back)
      return found < least
        ? [`${element.textContent.trim().slice(0, 40)}: ${found.toFixed(2)}`]
        : []
    })
  }, LEAST_CONTRAST)
}

/** The foldable groups of the batch; the last one stays open. */
const BATCH_GROUPS = [
  'Size and scales',
  'Lye and superfat',
  'Lots',
  'Cook and cure',
  'Papers and prices',
  'Acids and additives',
] as const

interface State {
  readonly name: string
  readonly reach: (page: Page) => Promise<unknown>
}

/** Everything a person may come upon, one after another on one page. */
const STATES: readonly State[] = [
  { name: 'map', reach: solved },
  {
    name: 'menu of goals',
    reach: async (page) => {
      await page.getByRole('combobox', { name: /^Goal/u }).click()
      await page.getByRole('listbox').waitFor()
    },
  },
  {
    name: 'list of oils',
    reach: async (page) => {
      await page.keyboard.press('Escape')
      await page.getByRole('combobox', { name: /^Add an oil/u }).fill('co')
      await page.getByRole('option').first().waitFor()
    },
  },
  {
    name: 'wrong field',
    reach: async (page) => {
      await page.keyboard.press('Escape')
      await field(page, 'Wear, at most').fill('--')
      await page.keyboard.press('Enter')
      await page.getByRole('alert').waitFor()
    },
  },
  {
    name: 'clash',
    reach: async (page) => {
      await page.keyboard.press('Escape')
      await field(page, 'Lather, at least').fill('80')
      await page.getByText('No blend', { exact: true }).waitFor()
    },
  },
  {
    name: 'table',
    reach: async (page) => {
      await field(page, 'Lather, at least').fill('35')
      await page.getByRole('button', { name: 'table' }).click()
      await page.getByRole('table').first().waitFor()
    },
  },
  {
    name: 'batch',
    reach: async (page) => {
      await goTo(page, 'batch')
      await page.locator('[data-weigh="naoh"]').waitFor()
    },
  },
  ...BATCH_GROUPS.map((name) => ({
    name: `batch, ${name}`,
    reach: (page: Page) => group(page, name),
  })),
  {
    name: 'batch with everything in it',
    reach: async (page) => {
      await addFrom(page, 'Add an acid', /vinegar/u)
      await addFrom(page, 'Add an additive', /^Kaolin/u)
      await group(page, 'Water and liquids')
      await addFrom(page, 'Add milk, tea, purée …', /^Goat/u)
      await group(page, 'Fragrance')
      await addFrom(page, 'Add an essential oil', /^Lavender oil/u)
      await page.getByText('What the bars are made of').click()
      await field(page, 'Coconut oil, weighed, g').fill('0')
      await page.getByRole('region', { name: 'As really weighed' }).waitFor()
    },
  },
  {
    name: 'batch without a sheet',
    reach: async (page) => {
      await field(page, 'Superfat, %').fill('2')
      await page.getByRole('button', { name: 'Weigh it out all the same' }).waitFor()
    },
  },
  {
    name: 'label',
    reach: async (page) => {
      await field(page, 'Superfat, %').fill('8')
      await goToView(page, 'Label')
      await page.getByRole('region', { name: 'Allergens' }).waitFor()
    },
  },
  {
    name: 'workshop, caution',
    reach: async (page) => {
      await goToView(page, 'Step by step')
      await page.getByRole('button', { name: /^Read, /u }).waitFor()
    },
  },
  {
    name: 'workshop, weighing',
    reach: async (page) => {
      await page.getByRole('button', { name: /^Read, /u }).click()
      await page.getByRole('button', { name: /^Done, /u }).click()
      await page.locator('[data-big]').waitFor()
    },
  },
]

pageTest.for(['desktop', 'phone'] as const)(
  'axe finds nothing at fault in either theme: %s',
  async (size, { open }) => {
    const page = await open('', { size, reducedMotion: true })
    for (const { name, reach } of STATES) {
      await reach(page)
      expect([name, await axeFaults(page)]).toEqual([name, []])
      expect([name, await faintText(page)]).toEqual([name, []])
      expect([name, await inTheDark(page, () => faintText(page))]).toEqual([name, []])
    }
  },
)
