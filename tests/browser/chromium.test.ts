import { spawnSync } from 'node:child_process'
import { dirname } from 'node:path'
import { expect, test } from 'vitest'
import { launchBrowser } from './chromium'
import { findBrowser, type Machine, thisMachine } from './find-browser'

/** Without CHROMIUM, a browser in the usual places, or a library path: only the package is left. */
const bareMachine: Machine = {
  ...thisMachine,
  env: { ...process.env, CHROMIUM: undefined, LD_LIBRARY_PATH: undefined },
  exists: () => false,
}

const machineWithoutBrowser: Machine = {
  ...bareMachine,
  unpack: () => Promise.resolve(undefined),
}

async function wordsOnOnePage(machine: Machine): Promise<string | null> {
  const browser = await launchBrowser(machine)
  try {
    const page = await browser.newPage()
    await page.goto('data:text/html,<title>Bars</title><p id="words">Twelve bars cure</p>')
    return await page.textContent('#words')
  } finally {
    await browser.close()
  }
}

test('the browser of this machine opens a page and reads its text', async () => {
  expect(await wordsOnOnePage(thisMachine)).toBe('Twelve bars cure')
})

test('the packaged browser opens a page and reads its text on a machine without any other', async () => {
  expect((await findBrowser(bareMachine)).foundBy).toBe('package')
  expect(await wordsOnOnePage(bareMachine)).toBe('Twelve bars cure')
})

test('the packaged browser takes its rarer libraries from its own folder and lacks none', async () => {
  const { executablePath, env } = await findBrowser(bareMachine)
  const ldd = spawnSync('ldd', [executablePath], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  })
  for (const library of ['libnss3', 'libnssutil3', 'libnspr4', 'libexpat']) {
    expect(ldd.stdout).toMatch(new RegExp(`${library}\\.so\\S* => ${dirname(executablePath)}/`))
  }
  expect(ldd.stdout).not.toContain('not found')
})

test('several searches at once share one unpacked browser', async () => {
  const found = await Promise.all([1, 2, 3].map(() => findBrowser(bareMachine)))
  expect(new Set(found.map((browser) => browser.executablePath)).size).toBe(1)
})

test('a library path of the machine stays, after the packaged libraries', async () => {
  const machine = { ...bareMachine, env: { ...bareMachine.env, LD_LIBRARY_PATH: '/opt/own/lib' } }
  const { env } = await findBrowser(machine)
  expect(env['LD_LIBRARY_PATH']).toMatch(/libraries\/lib:\/opt\/own\/lib$/)
})

test('CHROMIUM goes before a browser in the usual places', async () => {
  const machine = { ...bareMachine, env: { CHROMIUM: '/opt/mine/chrome' }, exists: () => true }
  expect(await findBrowser(machine)).toMatchObject({
    executablePath: '/opt/mine/chrome',
    foundBy: 'variable',
  })
})

test.each([
  ['linux', '/usr/bin/google-chrome-stable'],
  ['darwin', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
  ['win32', 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
] as const)('on %s a browser is found at %s', async (platform, place) => {
  const env = { PROGRAMFILES: 'C:\\Program Files' }
  const machine = {
    ...machineWithoutBrowser,
    env,
    platform,
    exists: (path: string) => path === place,
  }
  expect(await findBrowser(machine)).toMatchObject({ executablePath: place, foundBy: 'system' })
})

test('a CHROMIUM that names no file is refused with its value and what to do', async () => {
  const machine = { ...bareMachine, env: { CHROMIUM: '/opt/gone/chrome' } }
  await expect(findBrowser(machine)).rejects.toThrow(
    /CHROMIUM is "\/opt\/gone\/chrome", and there is no such file\. Set it to/,
  )
})

test('a machine without any browser is told to install one or set CHROMIUM', async () => {
  await expect(launchBrowser(machineWithoutBrowser)).rejects.toThrow(
    /Install Chromium or Chrome, or set CHROMIUM to its full path, such as CHROMIUM=/,
  )
})
