import type { Page } from 'playwright-core'

/** px by which a page may be scrolled sideways: none. */
export const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)

/** Elements that stick out of the page to the right or left although they can be seen. */
export const sticksOut = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main *, header *')].flatMap((element) => {
      const { left, right, width } = element.getBoundingClientRect()
      const hidden = width === 0 || element.closest('.vh, [clip-path], .scroll, defs, clipPath')
      const out = right > window.innerWidth + 0.5 || left < -0.5
      return out && !hidden ? [`${element.tagName} ${element.textContent.trim().slice(0, 40)}`] : []
    }),
  )

/** Buttons, fields and links smaller than 24 px either way: WCAG 2.2, criterion 2.5.8 (level AA). */
export const smallTargets = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('main button, main input, nav a, header button')].flatMap(
      (it) => {
        const { width, height } = it.getBoundingClientRect()
        return width > 0 && (width < 24 || height < 24)
          ? [`${it.getAttribute('aria-label') ?? it.textContent}: ${width} by ${height}`]
          : []
      },
    ),
  )
