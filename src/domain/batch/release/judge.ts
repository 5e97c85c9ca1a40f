import { ALKALI_FORMULAS, type AlkaliKind } from '../../chemistry/alkali'
import type { AlkaliLimits, AlkaliTest, ColourTest, Titration } from './alkali-test'
import { pinChanges } from './pin'
import { alkaliPercent, readingPercent, takenMl } from './titration'

/** What a test says of the batch it was made on. */
export type TestOutcome =
  /** No more free alkali than the limit allows. */
  | 'passes'
  /** More than the limit, or pink. */
  | 'over'
  /** The test is too coarse to tell. */
  | 'cannotTell'
  /** It was made on another batch than this one. */
  | 'void'

/** A test judged. */
export interface JudgedTest {
  readonly test: AlkaliTest
  readonly outcome: TestOutcome
  /** Free alkali in percent of the bar as the hydroxide named; null where only a colour was seen. */
  readonly percent: number | null
  readonly as: AlkaliKind | null
  /** The same in percent as NaOH, as the limit is. */
  readonly naohPercent: number | null
  /** How far reading the burette may put it off, percent of the same. */
  readonly withinPercent: number | null
  /** The result in a sentence, and what to do about it. */
  readonly says: string
}

/** Judges one test against the limits, for the batch of the pin. */
export function judged(test: AlkaliTest, pin: string, limits: AlkaliLimits): JudgedTest {
  const found = test.way === 'titration' ? titrated(test, limits) : seen(test)
  const elsewhere = otherBatch(test.batch, pin)
  return elsewhere === null ? found : { ...found, outcome: 'void', says: elsewhere }
}

/** Why a test does not hold for the batch of the pin; null where it does. */
function otherBatch(batch: string | undefined, pin: string): string | null {
  if (batch === undefined)
    return `Void: it does not say which batch it was made on. If it was this one, give "batch": "${pin}".`
  const changes = pinChanges(batch, pin)
  if (changes.length === 0) return null
  return `Void: the order has changed since, in ${listed(changes)}. Test a bar of this batch, or change the order back.`
}

function seen(test: ColourTest): JudgedTest {
  const pink = test.colour === 'pink'
  return {
    test,
    outcome: pink ? 'over' : 'passes',
    percent: null,
    as: null,
    naohPercent: null,
    withinPercent: null,
    says: pink
      ? 'Pink in warm neutral alcohol: alkali is left.'
      : 'Colourless in warm neutral alcohol: no caustic alkali is seen.',
  }
}

function titrated(test: Titration, limits: AlkaliLimits): JudgedTest {
  const as = test.as ?? 'naoh'
  const naoh = alkaliPercent(takenMl(test), test, 'naoh')
  const seesNaoh = readingPercent(test, limits, 'naoh')
  const percent = alkaliPercent(takenMl(test), test, as)
  const withinPercent = readingPercent(test, limits, as)
  const outcome = outcomeOf(naoh, seesNaoh, limits)
  return {
    test,
    outcome,
    percent,
    as,
    naohPercent: naoh,
    withinPercent,
    says: `${resultText(percent, withinPercent, as, naoh)} ${adviceOn(outcome, test, seesNaoh, limits)}`.trim(),
  }
}

/**
 * Over where the figure itself is; passing only where it is under the limit by more than the burette may
 * have been misread, and where free alkali at `seePercent` would have shown at all.
 */
function outcomeOf(naoh: number, sees: number, limits: AlkaliLimits): TestOutcome {
  if (naoh > limits.mostPercent) return 'over'
  if (sees > limits.seePercent || naoh + sees > limits.mostPercent) return 'cannotTell'
  return 'passes'
}

/** Acid that most bottles for this test hold, mol per litre: common practice. */
const USUAL_NORMALITY = 0.1

function resultText(percent: number, within: number, as: AlkaliKind, naoh: number): string {
  const asNaoh = as === 'naoh' ? '' : `, ${figures(naoh)} % as NaOH`
  return `${figures(percent)} % free alkali as ${ALKALI_FORMULAS[as]}${asNaoh}, within ${figures(within)}.`
}

function adviceOn(
  outcome: TestOutcome,
  test: Titration,
  sees: number,
  limits: AlkaliLimits,
): string {
  const { mostPercent, seePercent, normality } = limits
  if (outcome === 'over') return `More than ${mostPercent} % as NaOH.`
  if (sees > seePercent)
    return `Too coarse to see ${seePercent} %: ${figures(test.sampleG)} g of soap with ${test.normality} N acid shows steps of ${figures(sees)} %. Take at least ${figures((test.sampleG * sees) / seePercent)} g, or weaker acid.`
  if (outcome === 'cannotTell')
    return `Too near to ${mostPercent} % to tell. Titrate again with more soap.`
  return test.normality < normality.weakUnder
    ? `The acid was weak: were it ${USUAL_NORMALITY} N and not ${test.normality} N, the figure would be ${figures(USUAL_NORMALITY / test.normality)} times this. Read the bottle again.`
    : ''
}

/** A figure as people write it: 0.008, 0.12, 12.3. */
function figures(value: number): string {
  return String(Number(value.toFixed(value < 1 ? 3 : 1)))
}

function listed(words: readonly string[]): string {
  return words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`
}
