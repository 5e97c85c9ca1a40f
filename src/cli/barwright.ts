#!/usr/bin/env node
import { writeSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import process from 'node:process'
import { EXIT, failed } from './command'
import { main, printed, type Surroundings } from './main'

const around: Surroundings = {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  env: process.env,
  readFile: (path) => readFile(path),
  onStop: (stop) => {
    let asked = false
    const heard = () => {
      if (asked) process.exit(EXIT.failed)
      asked = true
      stop()
    }
    process.on('SIGINT', heard).on('SIGTERM', heard)
    return () => process.off('SIGINT', heard).off('SIGTERM', heard)
  },
}

process.on('uncaughtException', (error) => {
  writeSync(process.stderr.fd, printed(failed(error)) ?? '')
  process.exit(EXIT.failed)
})
// All is written by then; a connection that does not close must not keep the call.
process.exit(await main(process.argv.slice(2), around))
