import { mkdir, mkdtemp, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs'
import { build, type InlineConfig } from 'vite'
import type { SolverThread } from '../../src/worker/client'

const projectRoot = fileURLToPath(new URL('../..', import.meta.url))

/** A thread program that can be started as often as a test needs. */
export interface ThreadProgram {
  /** Starts a thread; `data` is what it finds as `workerData`. */
  start(data?: unknown): SolverThread & { readonly worker: Worker }
  remove(): Promise<void>
}

/**
 * Bundles a module of tests/worker for a thread of Node, which can't read TypeScript itself. The
 * folder lies in `dist/`: from there Node finds the packages.
 */
export async function buildThread(module: string): Promise<ThreadProgram> {
  await mkdir(join(projectRoot, 'dist'), { recursive: true })
  const folder = await mkdtemp(join(projectRoot, 'dist/for-tests-thread-'))
  const remove = () => rm(folder, { recursive: true, force: true })
  try {
    await build(threadBuild(module, folder))
  } catch (error) {
    await remove()
    throw error
  }
  return {
    start: (workerData) => startThread(new Worker(join(folder, 'thread.js'), { workerData })),
    remove,
  }
}

function threadBuild(module: string, outDir: string): InlineConfig {
  return {
    configFile: false,
    root: projectRoot,
    logLevel: 'warn',
    build: {
      ssr: fileURLToPath(new URL(module, import.meta.url)),
      outDir,
      target: 'node20',
      rolldownOptions: { output: { format: 'es', entryFileNames: 'thread.js' } },
    },
  }
}

function startThread(worker: Worker) {
  return {
    worker,
    endpoint: nodeEndpoint(worker),
    terminate: () => void worker.terminate(),
    onError: (report: (error: Error) => void) => worker.on('error', report),
  }
}
