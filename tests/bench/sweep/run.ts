import { spawn } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const projectRoot = fileURLToPath(new URL('../../..', import.meta.url))

/** The goals that a run found, line by line; null where there was no blend. */
export interface Timed {
  readonly seconds: number
  readonly goals: readonly (number | null)[]
}

/** One run of the built command line over a whole file. */
export async function sweepTimed(
  tool: string,
  path: string,
  out: string,
  threads: number,
): Promise<Timed> {
  const args = ['sweep', path, '--out', out, '--threads', String(threads), '--restart', '--quiet']
  const { seconds } = JSON.parse(await run([tool, ...args])) as { seconds: number }
  const answers = (await readFile(out, 'utf8')).split('\n').slice(0, -1)
  const goals = answers.map(
    (line) => (JSON.parse(line) as { goalValue?: number }).goalValue ?? null,
  )
  return { seconds, goals }
}

/** HiGHS called for each of the first lines, on one core. */
export async function highsTimed(folder: string, path: string, lines: number): Promise<Timed> {
  await build({
    configFile: false,
    root: projectRoot,
    logLevel: 'warn',
    build: {
      ssr: fileURLToPath(new URL('highs-lines.ts', import.meta.url)),
      outDir: folder,
      emptyOutDir: false,
      target: 'node20',
      rolldownOptions: { output: { format: 'es', entryFileNames: 'highs-lines.js' } },
    },
  })
  return JSON.parse(await run([join(folder, 'highs-lines.js'), path, String(lines)])) as Timed
}

async function run(args: readonly string[]): Promise<string> {
  const child = spawn(process.execPath, args, {
    cwd: projectRoot,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let output = ''
  child.stdout.setEncoding('utf8').on('data', (text: string) => (output += text))
  const code = await new Promise<number | null>((done, fail) => {
    child.once('error', fail)
    child.once('close', done)
  })
  if (code === 0) return output
  throw new Error(`${args.join(' ')} ended with code ${code}; see its lines above.`)
}
