import { batchFacts } from '../data/batch-facts'
import { alkaliLimits } from '../data/free-alkali'
import { library } from './library'
import { today } from '../data/today'
import type { Actuals } from '../domain/batch/actual/actuals'
import type { BatchOrder } from '../domain/batch/order/order'
import type { ReadyPlan } from '../domain/batch/result/plan'
import { type AlkaliTest, NO_TESTS, type ReleaseRecord } from '../domain/batch/release/alkali-test'
import {
  type Release,
  type ReleaseAnswer,
  releaseAnswer,
  UNTESTED,
} from '../domain/batch/release/release'
import { standingOf } from '../domain/batch/workshop/standing'
import type { BatchChoices } from './batch-choices'

/** Really weighed, of the lines there are; another blend may have lost some. */
export function weighedOf(plan: ReadyPlan | undefined, { run }: BatchChoices): Actuals {
  return plan ? onlyLines(plan, run?.actual ?? {}) : {}
}

/**
 * What is in the pot, g by line: what was weighed; where lines were left off the plan or only a part of the lye
 * was used, what follows from that for every line.
 */
export function inPotOf(plan: ReadyPlan | undefined, choices: BatchChoices): Actuals {
  const { actual = {}, left, part } = choices.run ?? {}
  if (!plan || (!left && !part)) return weighedOf(plan, choices)
  const run = { actual, left: left ?? {}, part }
  return onlyLines(plan, standingOf(plan, run, { library, facts: batchFacts }).inPot)
}

function onlyLines({ ingredients }: ReadyPlan, grams: Actuals): Actuals {
  return Object.fromEntries(
    ingredients.flatMap(({ key }) => {
      const g = grams[key]
      return g === undefined ? [] : [[key, g]]
    }),
  )
}

/** How the batch stands by its tests, or what is wrong with them. */
export function batchRelease(
  order: BatchOrder,
  plan: ReadyPlan,
  choices: BatchChoices,
  record: ReleaseRecord = choices.release ?? NO_TESTS,
): ReleaseAnswer {
  return releaseAnswer({ order, actual: inPotOf(plan, choices), record }, alkaliLimits, today())
}

/** What label and quote say: with anything wrong in the tests none of them counts. */
export function releaseSaid(answer: ReleaseAnswer | undefined): Release {
  if (answer?.status === 'ready') return answer.release
  const [first] = answer?.problems ?? []
  return first ? { ...UNTESTED, says: `${UNTESTED.says} ${first.message}` } : UNTESTED
}

/** What is wrong with a test about to be entered, by the key of its field. */
export function testFaults(
  test: AlkaliTest,
  order: BatchOrder,
  plan: ReadyPlan,
  choices: BatchChoices,
): Readonly<Record<string, string>> {
  const answer = batchRelease(order, plan, choices, { tests: [test] })
  if (answer.status === 'ready') return {}
  return Object.fromEntries(
    answer.problems.map(({ path, message }) => [path.replace('release.tests[0].', ''), message]),
  )
}
