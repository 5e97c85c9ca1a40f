import type { TestProject } from 'vitest/node'
import { viteBuild } from './vite-build'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of the page built for this test run. */
    builtPage: string
  }
}

/** Runs once, before the first browser test; hands the folder to `serveBuilt`. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { folder, remove } = await viteBuild('production')
  project.provide('builtPage', folder)
  return remove
}
