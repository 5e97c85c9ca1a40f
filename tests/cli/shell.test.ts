import { execFile, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { promisify } from 'node:util'
import { describe, expect, inject, onTestFinished, test } from 'vitest'
import { COMMANDS } from '../../src/cli/commands'
import { MOST_PROBLEMS } from '../../src/data/capped'
import { barwright, BRIEF, builtMain, Caught, SURROUNDINGS } from './run-cli'

const run = promisify(execFile)

const tool = () => join(inject('builtCli'), 'barwright.js')

/** What bash offers after some words, by the script that is told. */
async function offeredAfter(...words: string[]): Promise<string[]> {
  const { output } = await barwright(['completion', 'bash'])
  const script = `${output}
COMP_WORDS=(barwright "$@"); COMP_CWORD=$#; _barwright; printf '%s\\n' "\${COMPREPLY[@]}"`
  const { stdout } = await run('bash', ['--norc', '-c', script, 'bash', ...words])
  return stdout.split('\n').filter((word) => word !== '')
}

async function flagsInHelp(name: string): Promise<string[]> {
  const { output } = await barwright(['help', name])
  return [...output.matchAll(/^ {2}(--[a-z-]+)/gmu)].map(([, flag]) => flag ?? '')
}

describe('bash completes', () => {
  test('every command, and those that begin as typed', async () => {
    const offered = await offeredAfter('')
    expect(offered).toEqual(expect.arrayContaining([...COMMANDS.keys(), 'help', '--version']))
    expect(await offeredAfter('so')).toEqual(['solve'])
  })

  test.each([...COMMANDS.keys()])('every flag of %s that its help names', async (name) => {
    expect(await offeredAfter(name, '--')).toEqual(expect.arrayContaining(await flagsInHelp(name)))
  })

  test('commands after help', async () => {
    expect(await offeredAfter('help', 'fro')).toEqual(['frontier'])
  })
})

test.each(['zsh', 'fish'])('%s is told every command and the flags of each', async (shell) => {
  const { output } = await barwright(['completion', shell])
  for (const name of COMMANDS.keys()) {
    expect(output).toContain(name)
    for (const flag of await flagsInHelp(name)) expect(output).toContain(flag.replace('--', ''))
  }
})

/** ESC [ … m is what colours (ECMA-48, SGR). */
const COLOUR = new RegExp(`${String.fromCharCode(27)}\\[[\\d;:]*m`, 'u')

test('nothing is ever coloured, so that NO_COLOR has nothing to take away: not on a screen either', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'barwright-shell-'))
  onTestFinished(() => rm(folder, { recursive: true, force: true }))
  const input = join(folder, 'in.ndjson')
  await writeFile(
    input,
    `${JSON.stringify({ brief: JSON.parse(await readFile(BRIEF, 'utf8')) as object })}\n`,
  )
  const main = await builtMain()
  for (const args of [
    ['sweep', input, '--out', join(folder, 'out.ndjson')],
    ['solve', BRIEF],
    ['solve', '--nonsense'],
    ['help'],
  ]) {
    const [stdout, stderr] = [new Caught(), Object.assign(new Caught(), { isTTY: true })]
    const env = { FORCE_COLOR: '3', COLORTERM: 'truecolor', TERM: 'xterm-256color' }
    await main(args, { ...SURROUNDINGS, env, stdin: process.stdin, stdout, stderr })
    expect(stdout.text + stderr.text).not.toMatch(COLOUR)
  }
})

test('sweep - stays: each line is answered before the next is written, bad ones too, until the input ends', async () => {
  const child = spawn(process.execPath, [tool(), 'sweep', '-'])
  onTestFinished(() => void child.kill('SIGKILL'))
  const exit = once(child, 'close')
  const answers = createInterface(child.stdout)[Symbol.asyncIterator]()
  const brief = JSON.parse(await readFile(BRIEF, 'utf8')) as { oils: object }
  const ask = async (line: string) => {
    child.stdin.write(`${line}\n`)
    const { value } = (await answers.next()) as { readonly value: string }
    return JSON.parse(value) as Record<string, unknown>
  }
  for (let number = 1; number <= 200; number++) {
    const bad = number % 10 === 0
    const answer = await ask(bad ? 'no JSON' : JSON.stringify({ key: number, brief }))
    expect(answer).toMatchObject({ line: number, status: bad ? 'invalid' : 'solved' })
  }
  child.stdin.end()
  expect(await exit).toEqual([0, null])
})

/** What a brief of 4 MB may take, in MB, of which Node itself takes 50: it took 213 when this was written. */
const MOST_MB = 320

test(`a brief of 4 MB in which all is wrong is told in a few problems, within ${MOST_MB} MB`, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'barwright-shell-'))
  onTestFinished(() => rm(folder, { recursive: true, force: true }))
  const path = join(folder, 'bad.json')
  const oils = Array.from({ length: 100_000 }, (_, k) => [`no-oil-${k}`, { max: 'x', min: -5 }])
  const brief = { format: 'barwright-brief/1', goal: { minimise: 'cost' }, measures: {} }
  await writeFile(path, JSON.stringify({ ...brief, oils: Object.fromEntries(oils) as object }))
  const told = `process.on('exit', () => process._rawDebug(process.resourceUsage().maxRSS))`
  const flags = ['--import', `data:text/javascript,${encodeURIComponent(told)}`]
  const child = spawn(process.execPath, [...flags, tool(), 'solve', path])
  const text = { out: '', errors: '' }
  child.stdout.setEncoding('utf8').on('data', (piece: string) => (text.out += piece))
  child.stderr.setEncoding('utf8').on('data', (piece: string) => (text.errors += piece))
  expect(await once(child, 'close')).toEqual([2, null])
  const { problems } = JSON.parse(text.out) as { problems: unknown[] }
  expect(problems.length).toBe(MOST_PROBLEMS + 1)
  const megabytes = Number(text.errors) / 1024
  expect(megabytes).toBeGreaterThan(30)
  expect(megabytes).toBeLessThan(MOST_MB)
})
