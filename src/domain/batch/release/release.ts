import type { Problem } from '../../blend/check-blend'
import type { Actuals } from '../actual/actuals'
import type { BatchOrder } from '../order/order'
import type { AlkaliLimits, ReleaseRecord } from './alkali-test'
import { testProblems } from './check-tests'
import { judged, type JudgedTest } from './judge'
import { batchPin } from './pin'

/** Where a batch stands with its test for free alkali. Never a statement that it may be sold. */
export type ReleaseState = 'notReleased' | 'held' | 'testPassed'

/** What is known of the free alkali of a batch, and what to do about it. */
export interface Release {
  readonly state: ReleaseState
  /** The state in one line, as label and quote print it. */
  readonly says: string
  /** What to do now, first things first. */
  readonly todo: readonly string[]
  /** Every test, as entered, judged. */
  readonly tests: readonly JudgedTest[]
  /** What the limit is and rests on. */
  readonly limit: string
  /** What a test of this batch is pinned to. */
  readonly pin: string
}

const NOT_RELEASED = 'Not released: no test for free alkali stands.'

const GO_FIRST =
  'It holds for this batch alone and is no clearance for sale: local rules and a safety assessor go first.'

const HOW_TO_TEST =
  'Titrate the soap for free alkali, or see whether phenolphthalein stays colourless in warm neutral alcohol. A pH strip can’t tell.'

const WHEN_HELD = [
  'Do not use, sell or give away any bar of it. Gloves on: treat it as caustic.',
  'Let it rest two weeks, then test the same bar again by titration.',
  'Still over: rebatch it with oil as a new batch, or discard it as caustic waste under local rules.',
]

/** A batch of which nothing is known: what label and quote take where no tests are given. */
export const UNTESTED: Release = {
  state: 'notReleased',
  says: NOT_RELEASED,
  todo: [HOW_TO_TEST],
  tests: [],
  limit: '',
  pin: '',
}

/** The state in words, with what the limit rests on once it was held against it. */
export function releaseLine({ says, limit, tests }: Release): string {
  return tests.length > 0 ? `${says} ${limit}` : says
}

/** How a batch stands, or what is wrong with its tests as entered. */
export type ReleaseAnswer =
  | { readonly status: 'ready'; readonly release: Release }
  | { readonly status: 'invalid'; readonly problems: readonly Problem[] }

/** A batch with what is known of it after it was made. */
export interface MadeBatch {
  readonly order: BatchOrder
  /** What was really weighed, g; empty where as planned. */
  readonly actual: Actuals
  readonly record: ReleaseRecord
}

/** Checks the tests of a batch and says how it stands; `today` is YYYY-MM-DD. */
export function releaseAnswer(
  { order, actual, record }: MadeBatch,
  limits: AlkaliLimits,
  today: string,
): ReleaseAnswer {
  const problems = testProblems(record, order, limits, today)
  if (problems.length > 0) return { status: 'invalid', problems }
  return { status: 'ready', release: releaseOf(record, batchPin(order, actual), limits) }
}

/**
 * How a batch stands by its tests, which `testProblems` has found nothing wrong with. The worst of them
 * counts; a later test of the same bar takes the place of an earlier one of that bar, but a colour never
 * takes the place of a titration.
 */
export function releaseOf({ tests }: ReleaseRecord, pin: string, limits: AlkaliLimits): Release {
  const all = tests.map((test) => judged(test, pin, limits))
  const { mostPercent, restsOn } = limits
  const limit = `Limit: ${mostPercent} % free caustic alkali as NaOH. ${restsOn}`
  return { ...stateOf(all), tests: all, limit, pin }
}

function stateOf(all: readonly JudgedTest[]): Pick<Release, 'state' | 'says' | 'todo'> {
  const standing = all.filter(({ outcome }) => outcome !== 'void')
  const counting = standing.filter((one) => !standing.some((other) => replaces(other, one)))
  const worst = mostAlkali(counting.filter(({ outcome }) => outcome === 'over'))
  if (worst)
    return {
      state: 'held',
      says: `Not released, held: ${worst.says}`,
      todo: WHEN_HELD,
    }
  const unsure = counting.find(({ outcome }) => outcome === 'cannotTell')
  if (unsure)
    return { state: 'notReleased', says: `Not released: ${unsure.says}`, todo: [HOW_TO_TEST] }
  const most = mostAlkali(counting)
  if (!most) return { state: 'notReleased', says: NOT_RELEASED, todo: [HOW_TO_TEST] }
  return {
    state: 'testPassed',
    says: `Tested for free alkali on ${most.test.on}: ${most.says} ${GO_FIRST}`,
    todo: [],
  }
}

/** Whether a test takes the place of an earlier one: of the same bar, on a later day, and no coarser. */
function replaces({ test: later, outcome }: JudgedTest, { test: earlier }: JudgedTest): boolean {
  return (
    outcome !== 'cannotTell' &&
    sameBar(later.bar, earlier.bar) &&
    later.on > earlier.on &&
    (later.way === 'titration' || earlier.way === 'phenolphthalein')
  )
}

function sameBar(a: string, b: string): boolean {
  return a.trim().toLowerCase() === b.trim().toLowerCase()
}

/** The test that found most alkali; a colour only where nothing was measured. */
function mostAlkali(tests: readonly JudgedTest[]): JudgedTest | undefined {
  const [first, ...others] = tests
  const naohOf = ({ naohPercent }: JudgedTest) => naohPercent ?? -1
  return others.reduce((most, one) => (most && naohOf(most) >= naohOf(one) ? most : one), first)
}
