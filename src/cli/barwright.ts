#!/usr/bin/env node
import { readFile } from 'node:fs/promises'
import { text as textOf } from 'node:stream/consumers'
import { parseArgs } from 'node:util'
import { run } from './commands'

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    schema: { type: 'boolean', default: false },
    solver: { type: 'string', default: 'javascript-lp-solver' },
    help: { type: 'boolean', short: 'h', default: false },
  },
})

const readInput = (path: string) => (path === '-' ? textOf(process.stdin) : readFile(path, 'utf8'))

const { exitCode, output } = await run(positionals, values, readInput)
process.stdout.write(`${typeof output === 'string' ? output : JSON.stringify(output, null, 2)}\n`)
process.exitCode = exitCode
