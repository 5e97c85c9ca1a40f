import type { TestProject } from 'vitest/node'
import { viteBuild } from './vite-build'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of the command-line tool built for this test run; it holds `barwright.js`. */
    builtCli: string
  }
}

/** Runs once, before the first CLI test: `inject('builtCli')` then names the folder. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { folder, remove } = await viteBuild('cli')
  project.provide('builtCli', folder)
  return remove
}
