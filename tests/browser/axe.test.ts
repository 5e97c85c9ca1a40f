import { expect } from 'vitest'
import { axeFaults } from './axe'
import { pageTest } from './page-test'

/** A line of text in colours for the light theme and for the dark one. */
const page = (light: string, dark: string, more = '') => `<!doctype html><html lang="en">
  <title>A line</title><style>p { ${light} } @media (prefers-color-scheme: dark) { p { ${dark} } }</style>
  <main><h1>A line</h1><p>It can be read</p>${more}</main></html>`

const CLEAR = 'color: #000; background: #fff'
const FAINT = 'color: #ddd; background: #fff'
const FAULT = 'color-contrast: <p>It can be read</p>'

pageTest.for([
  ['nothing', page(CLEAR, CLEAR), []],
  ['a colour of the light', page(FAINT, CLEAR), [FAULT]],
  ['a colour of the dark', page(CLEAR, FAINT), [`in the dark, ${FAULT}`]],
  [
    'a button without a name',
    page(CLEAR, CLEAR, '<button></button>'),
    ['button-name: <button></button>'],
  ],
] as const)('axe finds what is at fault: %s', async ([, html, faults], { open }) => {
  const blank = await open('', { reducedMotion: true })
  await blank.goto('about:blank')
  await blank.setContent(html)
  expect(await axeFaults(blank)).toEqual(faults)
})
