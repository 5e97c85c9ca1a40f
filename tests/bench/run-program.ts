import { spawn } from 'node:child_process'
import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import type { BenchResult } from './program/main'

const projectRoot = fileURLToPath(new URL('../..', import.meta.url))

/**
 * Bundles the program that measures, as page and command line are bundled, and runs it in a process of
 * its own: inside Vitest every imported name is looked up at each use, which would slow our solver only.
 */
export async function runProgram(quick: boolean): Promise<BenchResult> {
  await mkdir(join(projectRoot, 'dist'), { recursive: true })
  const folder = await mkdtemp(join(projectRoot, 'dist/for-bench-'))
  try {
    await bundle(folder)
    const results = join(folder, 'results.json')
    await run([join(folder, 'main.js'), results, ...(quick ? ['--quick'] : [])])
    return JSON.parse(await readFile(results, 'utf8')) as BenchResult
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function bundle(outDir: string): Promise<void> {
  await build({
    configFile: false,
    root: projectRoot,
    logLevel: 'warn',
    build: {
      ssr: fileURLToPath(new URL('program/main.ts', import.meta.url)),
      outDir,
      target: 'node20',
      rolldownOptions: { output: { format: 'es', entryFileNames: 'main.js' } },
    },
  })
}

async function run(args: readonly string[]): Promise<void> {
  const child = spawn(process.execPath, ['--expose-gc', ...args], {
    cwd: projectRoot,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  const code = await new Promise<number | null>((done, fail) => {
    child.once('error', fail)
    child.once('close', done)
  })
  if (code !== 0) throw new Error(`The bench program ended with code ${code}; see its lines above.`)
}
