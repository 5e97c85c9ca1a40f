#!/usr/bin/env node
import { readFile } from 'node:fs/promises'
import { text as textOf } from 'node:stream/consumers'
import { run } from './run'

const { exitCode, output } = await run(process.argv.slice(2), (path) =>
  path === '-' ? textOf(process.stdin) : readFile(path, 'utf8'),
)
process.stdout.write(`${typeof output === 'string' ? output : JSON.stringify(output, null, 2)}\n`)
process.exitCode = exitCode
