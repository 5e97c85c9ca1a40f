import type { TestProject } from 'vitest/node'
import { serve } from '../browser/serve'
import { viteBuild } from './vite-build'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of the page built for this test run. */
    builtPage: string
    /** Address of that page, with a slash at its end. */
    pageAddress: string
  }
}

/** Runs once, before the first browser test: builds the page and serves it to all files. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { folder, remove } = await viteBuild('production')
  const site = await serve(folder)
  project.provide('builtPage', folder)
  project.provide('pageAddress', site.url)
  return async () => {
    await site.close()
    await remove()
  }
}
