import { type Browser, type BrowserServer, chromium } from 'playwright-core'
import { inject } from 'vitest'
import type { Environment } from './packaged-chromium'
import { findBrowser, type Machine, thisMachine } from './find-browser'

/** The pages under test are local; the browser's own traffic and any other is refused at once. */
const QUIET = [
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE 127.0.0.1',
  '--disable-gpu',
  '--disable-quic',
  '--disable-sync',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-domain-reliability',
  '--no-first-run',
  '--no-default-browser-check',
  '--no-pings',
]

/**
 * Starts a headless Chromium: see `findBrowser` for which one. The caller closes it. It goes without
 * its sandbox, which root and some kernels refuse: it opens nothing but this project's pages.
 */
export async function launchBrowser(machine: Machine = thisMachine): Promise<Browser> {
  return chromium.launch(await optionsOn(machine))
}

/** Starts the same Chromium for several processes, which `connect` to it. */
export async function launchServer(machine: Machine = thisMachine): Promise<BrowserServer> {
  return chromium.launchServer({ ...(await optionsOn(machine)), host: '127.0.0.1' })
}

/** Connects to the browser of the test run. Closing it ends this connection and its contexts only. */
export function connect(): Promise<Browser> {
  return chromium.connect(inject('browserAddress'))
}

async function optionsOn(machine: Machine) {
  const { executablePath, env } = await findBrowser(machine)
  return {
    executablePath,
    args: QUIET,
    chromiumSandbox: false,
    env: { ...definedOnly(machine.env), ...env },
  }
}

function definedOnly(env: Environment): Record<string, string> {
  return Object.fromEntries(
    Object.entries(env).filter((entry): entry is [string, string] => entry[1] !== undefined),
  )
}
