import { readFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import loadHighs from 'highs'
import { briefFile, briefOf } from '../../../src/data/brief-file'
import { library } from '../../../src/data/library'
import { readSweepLine } from '../../../src/data/sweep-file'
import type { Brief } from '../../../src/domain/optimise/brief/brief'
import { briefProgram } from '../../../src/domain/optimise/space/brief-program'
import { withPrices } from '../../../src/domain/optimise/brief/prices'
import { highsSolver } from '../../../src/domain/lp/solvers/highs'

/*
 * What somebody would write who has HiGHS and a file of lines: read a line, make its program, solve it
 * from nothing, on one core. Its answers are not checked, and no measures are worked out.
 */

const [path = '', most = ''] = process.argv.slice(2)
const solve = highsSolver(await loadHighs())
const lines = readFileSync(path, 'utf8').split('\n').slice(0, Number(most))
const briefs = new Map<string, Brief>()

const startMs = performance.now()
const goals = lines.map((line) => {
  const outcome = solve(briefProgram(briefIn(line), library))
  return outcome.status === 'optimal' ? outcome.objective : null
})
const seconds = (performance.now() - startMs) / 1000
process.stdout.write(JSON.stringify({ seconds, goals }))

function briefIn(line: string): Brief {
  const read = readSweepLine(line)
  if (read.status === 'invalid') throw new Error(`A line of the bench is wrong: ${line}`)
  if (read.value.kind === 'brief') return briefOf(read.value.brief)
  const { brief, prices } = read.value.scenario
  const base = typeof brief === 'string' ? named(brief) : briefOf(brief)
  return withPrices(base, prices)
}

function named(name: string): Brief {
  const kept = briefs.get(name)
  if (kept) return kept
  const text = readFileSync(resolve(dirname(path), name), 'utf8')
  const brief = briefOf(briefFile.parse(JSON.parse(text)))
  briefs.set(name, brief)
  return brief
}
