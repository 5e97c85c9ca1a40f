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

/** On how much of the machine a sweep runs. */
export interface Room {
  readonly threads: number
  /** Whether all of the process, what reads and writes too, is held to one core. */
  readonly oneCore?: boolean
}

/** One run of the built command line over a whole file. */
export async function sweepTimed(
  tool: string,
  path: string,
  out: string,
  { threads, oneCore = false }: Room,
): Promise<Timed> {
  const args = ['sweep', path, '--out', out, '--threads', String(threads), '--restart', '--quiet']
  const before = oneCore ? HELD_TO_ONE_CORE : []
  const { seconds } = JSON.parse(await run([tool, ...args], before)) as { seconds: number }
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

/** util-linux has it, and so has every Linux; elsewhere the bench fails and says that it is missing. */
const HELD_TO_ONE_CORE = ['taskset', '--cpu-list', '0']

async function run(args: readonly string[], before: readonly string[] = []): Promise<string> {
  const [command = '', ...rest] = [...before, process.execPath, ...args]
  const child = spawn(command, rest, {
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
