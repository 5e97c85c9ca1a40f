import type { TestProject } from 'vitest/node'
import { launchServer } from '../browser/chromium'

declare module 'vitest' {
  export interface ProvidedContext {
    /** WebSocket address of the one browser of this test run; `connect` in `chromium.ts` goes there. */
    browserAddress: string
  }
}

/** Runs once, before the first browser test: all files share this browser, each in contexts of its own. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await launchServer()
  project.provide('browserAddress', server.wsEndpoint())
  return () => server.close()
}
