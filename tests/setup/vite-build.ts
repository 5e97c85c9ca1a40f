import { spawn } from 'node:child_process'
import { mkdir, mkdtemp, rm } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const projectRoot = fileURLToPath(new URL('../..', import.meta.url))

export interface Build {
  /** Absolute path of the folder with the built files. */
  readonly folder: string
  readonly remove: () => Promise<void>
}

/**
 * Builds with Vite's own command into a folder of this test run only, so that two runs (or a run
 * and `npm run build`) never disturb each other. The folder lies in `dist/`: from there Node finds
 * the packages and knows the files as modules.
 */
export async function viteBuild(mode: 'production' | 'cli'): Promise<Build> {
  await mkdir(join(projectRoot, 'dist'), { recursive: true })
  const folder = await mkdtemp(join(projectRoot, `dist/for-tests-${mode}-`))
  const remove = () => rm(folder, { recursive: true, force: true })
  try {
    await runVite(['build', '--mode', mode, '--outDir', folder, '--logLevel', 'warn'])
  } catch (error) {
    await remove()
    throw error
  }
  return { folder, remove }
}

/** In a process of its own: inside Vitest, NODE_ENV is "test" and would give a development build. */
async function runVite(args: readonly string[]): Promise<void> {
  const packageJson = createRequire(import.meta.url).resolve('vite/package.json')
  const vite = resolve(dirname(packageJson), 'bin/vite.js')
  const child = spawn(process.execPath, [vite, ...args], {
    cwd: projectRoot,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  const code = await new Promise<number | null>((done, fail) => {
    child.once('error', fail)
    child.once('close', done)
  })
  if (code !== 0)
    throw new Error(`"vite ${args.join(' ')}" ended with code ${code}; see its lines above.`)
}
