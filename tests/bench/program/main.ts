import { writeFile } from 'node:fs/promises'
import { loadRivals } from './rivals/all'
import { effort, type TaskResult } from './task'
import { alternatives, alternativesSamePool } from './tasks/alternatives'
import { coldSolve, growth } from './tasks/cold'
import { threeAxes, twoAxes } from './tasks/frontier'
import { memory, type MemoryResult } from './tasks/memory'
import { pointAndSolve } from './tasks/point'
import { ranges } from './tasks/ranges'
import { rules } from './tasks/rules'
import { terrain } from './tasks/terrain'

/** What the program writes. */
export interface BenchResult {
  readonly tasks: readonly TaskResult[]
  readonly growth: readonly TaskResult[]
  readonly memory: MemoryResult
}

/** Runs every task in this one process: `node --expose-gc main.js FILE [--quick]`. */
async function main([file, ...options]: readonly string[]): Promise<void> {
  if (file === undefined) throw new Error('Name the file to write the results to.')
  const amount = effort(options.includes('--quick'))
  const collect = globalThis.gc
  if (!collect) throw new Error('Start Node with --expose-gc, or memory cannot be measured.')
  const rivals = await loadRivals()
  const timed = <T>(what: string, task: () => T): T => {
    const start = performance.now()
    const result = task()
    console.log(`${what}: ${((performance.now() - start) / 1000).toFixed(1)} s`)
    collect()
    return result
  }
  const tasks = [
    coldSolve,
    ranges,
    twoAxes,
    threeAxes,
    terrain,
    pointAndSolve,
    alternatives,
    alternativesSamePool,
    rules,
  ].map((task) => timed(task.name, () => task(rivals, amount)))
  const result: BenchResult = {
    tasks,
    growth: timed('growth', () => growth(rivals, amount)),
    memory: timed('memory', () => memory(100_000, () => void collect())),
  }
  await writeFile(file, JSON.stringify(result))
}

await main(process.argv.slice(2))
