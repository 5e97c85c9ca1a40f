import { expect, test } from 'vitest'
import { circumstances } from './machine'
import { quick } from './quick'
import { isFlat, solverSection } from './report'
import { writeSection } from './results-file'
import { runProgram } from './run-program'
import { isOurs } from './verdict'

test('every task is measured beside its rivals, and our answers are right and memory flat', async () => {
  const where = circumstances(quick)
  const result = await runProgram(quick)
  await writeSection('Solver', solverSection(result, where))
  const wrong = [...result.tasks, ...result.growth].flatMap(({ id, standings }) =>
    standings
      .filter((one) => isOurs(one) && (one.differing > 0 || one.none > 0))
      .map(({ name, differing, none }) => `${id}, ${name}: ${differing} differ, ${none} missing`),
  )
  expect(wrong).toEqual([])
  expect(isFlat(result.memory), 'memory after 100,000 solves').toBe(true)
})
