import { freeLyeLikely } from './free-lye-likely'
import type { Library } from '../../blend/library'
import { percentFromFraction } from '../../units'
import { type Actuals, actualWeights } from './actual-weights'
import { type BatchFacts, NO_FACTS } from '../order/facts'
import { dissolvedAcid, type Fix, oilFixes } from './fixes'
import { type LyeTopUp, lyeTopUp } from './lye-top-up'
import type { ReadyPlan } from '../result/plan'
import { oneIn } from '../result/warnings'
import { shownLine } from '../result/shown-mass'
import { type LikelySuperfat, likelySuperfat } from '../superfat/likely'
import { endsOf, errorsOf, EXACT, superfatAt, superfatSpan } from '../superfat/reach'
import { superfatsInWords } from '../superfat/superfats'
import type { Interval } from '../../interval'
import type { Reckoning } from '../weigh/reckoning'
import { ALKALI_NAMES, alkaliGrams } from '../../chemistry/alkali'
import type { Weights } from '../weigh/weights'
import { NOISE_PERCENT } from '../../noise'

export type { Actuals } from './actual-weights'
export type { Fix } from './fixes'
export type { LyeTopUp } from './lye-top-up'

/** A line that was not weighed as planned. */
export interface Deviation {
  readonly key: string
  readonly name: string
  readonly plannedG: number
  readonly actualG: number
  readonly percent: number
}

/** How a batch really stands. */
export interface ActualReport {
  /** Weights as they really are. */
  readonly weights: Weights
  /** Superfat of typical lots, and the worst there can be by lots and scale, percent. */
  readonly superfatPercent: number
  readonly reachPercent: Interval
  /** Nineteen lots in twenty, and how many would hold free alkali. */
  readonly likely: LikelySuperfat
  /** Hydroxide left over in typical lots and in the leanest, g as NaOH. */
  readonly freeAlkaliG: number
  readonly freeAlkaliWorstG: number
  readonly verdict: 'freeLye' | 'freeLyePossible' | 'lean' | 'asPlanned' | 'rich'
  /** Lines more than half a percent (and more than a step of the scale) off. */
  readonly deviations: readonly Deviation[]
  /** What to put in: first what is missing, then, if lye is still over, one of the oils. */
  readonly fixes: readonly Fix[]
  /**
   * Alkali that is missing, where the batch is richer than asked. It is safe without; null where there is
   * none or the leanest lots leave no room for it.
   */
  readonly topUp: LyeTopUp | null
  /** What to do, in order; plain sentences. */
  readonly advice: readonly string[]
}

/** What was entered, or what is wrong with it. */
export type ActualAnswer =
  | { readonly status: 'reckoned'; readonly report: ActualReport }
  | {
      readonly status: 'invalid'
      readonly problems: readonly { readonly path: string; readonly message: string }[]
    }

/** A line this far off its plan is worth a word, percent: common practice, half a percent. */
const NOTEWORTHY_PERCENT = 0.5

/** A superfat this far from the one asked still counts as planned, points: an assumption. */
const AS_PLANNED_POINTS = 0.5
const RICH_POINTS = 1.5

/** The real superfat of what was weighed: s = 1 − (alkali × purity − acids) / T, and how to mend it. */
export function actualReport(
  plan: ReadyPlan,
  actuals: Actuals,
  library: Library,
  facts: BatchFacts = NO_FACTS,
): ActualAnswer {
  const problems = actualProblems(plan, actuals)
  if (problems.length > 0) return { status: 'invalid', problems }
  const weights = actualWeights(plan, actuals)
  const reckoning: Reckoning = { order: plan.order, weights, library, facts }
  if (!hasFat(reckoning)) return { status: 'invalid', problems: [NO_FAT] }
  const superfatPercent = superfatAt(reckoning, 'typical')
  const reachPercent = superfatSpan(reckoning, errorsOf(plan.order))
  const likely = likelySuperfat(reckoning)
  const verdict = verdictOf(plan, reckoning, superfatPercent)
  const deviations = deviationsOf(plan, actuals)
  const fixes = fixesFor(plan, actuals, reckoning, verdict)
  const topUp = verdict === 'rich' ? lyeTopUp(plan, filledUp(plan, actuals, reckoning)) : null
  return {
    status: 'reckoned',
    report: {
      weights,
      superfatPercent,
      reachPercent,
      likely,
      freeAlkaliG: freeAlkali(reckoning, 'typical'),
      freeAlkaliWorstG: freeAlkali(reckoning, 'low'),
      verdict,
      deviations,
      fixes,
      topUp,
      advice: [
        ...adviceOn(verdict, fixes, superfatPercent, likely),
        ...(topUp ? topUpAdvice(topUp) : []),
      ],
    },
  }
}

function actualProblems(plan: ReadyPlan, actuals: Actuals) {
  const keys = new Set(plan.ingredients.map(({ key }) => key))
  const wrong = Object.entries(actuals).flatMap(([key, grams]) => {
    const path = `actual.${key}`
    if (!keys.has(key))
      return [
        { path, message: `The plan has no line "${key}". Use one of ${[...keys].join(', ')}.` },
      ]
    if (Number.isFinite(grams) && grams >= 0) return []
    return [{ path, message: `The weight is ${grams} g. Give 0 or more.` }]
  })
  return wrong
}

const NO_FAT = {
  path: 'actual',
  message: 'There is no fat to speak of, or no more than the scale may be off. Enter the oils.',
}

/** Whether there is fat by which a superfat can be reckoned, also where the scale was off. */
function hasFat(reckoning: Reckoning): boolean {
  const lean = endsOf(reckoning, 'low', errorsOf(reckoning.order), 'all')
  return Number.isFinite(lean.alkaliMol / lean.fatMol)
}

function verdictOf(
  plan: ReadyPlan,
  reckoning: Reckoning,
  superfatPercent: number,
): ActualReport['verdict'] {
  const asked = plan.superfat.askedPercent
  if (superfatPercent < -NOISE_PERCENT) return 'freeLye'
  if (freeLyeLikely(plan, reckoning)) return 'freeLyePossible'
  if (superfatPercent < asked - AS_PLANNED_POINTS) return 'lean'
  return superfatPercent > asked + RICH_POINTS ? 'rich' : 'asPlanned'
}

function deviationsOf(plan: ReadyPlan, actuals: Actuals): Deviation[] {
  return plan.ingredients.flatMap(({ key, name, grams, stepG }) => {
    const actualG = actuals[key] ?? grams
    const percent = percentFromFraction(actualG / grams - 1)
    const small = Math.abs(actualG - grams) <= (stepG ?? 0)
    if (small || Math.abs(percent) <= NOTEWORTHY_PERCENT) return []
    return [{ key, name, plannedG: grams, actualG, percent }]
  })
}

/**
 * Fat weighed short goes in first; more oil only if lye is then still over. Acid weighed short is not put
 * in: the lye may be in, and oil takes its place; dissolved it is the second best.
 */
function fixesFor(
  plan: ReadyPlan,
  actuals: Actuals,
  reckoning: Reckoning,
  verdict: ActualReport['verdict'],
): Fix[] {
  if (verdict === 'asPlanned') return []
  const putIn = shortLines(plan, actuals, SHORT_FAT).map(
    ({ key, name, plannedG, actualG }): Fix => ({
      kind: 'putIn',
      key,
      name,
      grams: plannedG - actualG,
    }),
  )
  if (verdict === 'rich') return putIn
  const oils = oilFixes(plan, filledUp(plan, actuals, reckoning))
  const acids = oils.length > 0 ? shortLines(plan, actuals, SHORT_ACID) : []
  return [
    ...putIn,
    ...oils,
    ...acids.map((line) => dissolvedAcid(plan, line, line.plannedG - line.actualG)),
  ]
}

const SHORT_FAT = /^(oil|extraFat):/u
const SHORT_ACID = /^acid:/u

/** Lines of a kind that were weighed short or forgotten. */
function shortLines(plan: ReadyPlan, actuals: Actuals, kind: RegExp): Deviation[] {
  return deviationsOf(plan, actuals).filter(
    ({ key, actualG, plannedG }) => actualG < plannedG && kind.test(key),
  )
}

/** The batch with the fat that was short put in. */
function filledUp(plan: ReadyPlan, actuals: Actuals, reckoning: Reckoning): Reckoning {
  const filled = Object.fromEntries(
    shortLines(plan, actuals, SHORT_FAT).map(({ key, plannedG }) => [key, plannedG]),
  )
  return { ...reckoning, weights: actualWeights(plan, { ...actuals, ...filled }) }
}

function freeAlkali(reckoning: Reckoning, end: 'typical' | 'low'): number {
  const errors = end === 'typical' ? EXACT : errorsOf(reckoning.order)
  const { alkaliMol, acidMol, fatMol } = endsOf(reckoning, end, errors, 'all')
  return alkaliGrams(Math.max(0, alkaliMol - acidMol - fatMol), 'naoh')
}

const ONLY_WHILE_LIQUID =
  'Only while it is still liquid in the pot: stir it in until even, then pour. Once poured, do not use or sell it: test for free alkali, and make it over with this oil or throw it away as caustic waste.'

function adviceOn(
  verdict: ActualReport['verdict'],
  fixes: readonly Fix[],
  superfatPercent: number,
  likely: LikelySuperfat,
): string[] {
  const missing = fixes.filter((fix) => fix.kind === 'putIn')
  const [oil] = fixes.filter((fix) => fix.kind === 'addOil')
  return [
    ...VERDICT_SAYS[verdict](superfatPercent, likely),
    ...missing.map(({ name, grams }) => `Put in what is missing: ${fat(grams)} ${name}.`),
    ...(oil
      ? [
          `${missing.length > 0 ? 'Then add' : 'Add'} ${fat(oil.grams)} ${oil.name} on top: superfat ${superfatsInWords(oil)}.`,
        ]
      : []),
    ...fixes.flatMap((fix) => (fix.kind === 'dissolveAcid' ? acidAdvice(fix) : [])),
    ...(fixes.length > 0 && verdict !== 'rich' ? [ONLY_WHILE_LIQUID] : []),
  ]
}

/** Weights in sentences, cut to a tenth of a gram the way that is never more alkaline. */
const fat = (grams: number) => shownLine({ kind: 'oil', grams, stepG: null }, 'g')
const acid = (grams: number) => shownLine({ kind: 'acid', grams, stepG: null }, 'g')
const water = (grams: number, stepG: number | null = null) =>
  shownLine({ kind: 'water', grams, stepG }, 'g')
const hydroxide = (grams: number) => shownLine({ kind: 'alkali', grams, stepG: null }, 'g')

/** Acid in caustic batter boils up: oil stands first, dry acid never. */
function acidAdvice({ name, grams, waterG }: Extract<Fix, { kind: 'dissolveAcid' }>): string[] {
  const as = waterG > 0 ? `dissolved in ${water(waterG, 1)} cold water` : 'as it comes, cold'
  return [
    `${acid(grams)} ${name} is missing. While there is no hydroxide in the water yet, put it into the water. Once there is: never dry acid into lye or raw soap, it boils up and throws caustic about. The oil named above takes its place.`,
    `Only where there is no oil to add: ${acid(grams)} ${name} ${as}, by spoonfuls, off the heat, stirring, goggles and gloves on. Else throw the batch away as caustic waste.`,
  ]
}

function topUpAdvice(topUp: LyeTopUp): string[] {
  const { alkaliGrams, waterGrams } = topUp
  const alkalis = (['naoh', 'koh'] as const).flatMap((kind) => {
    const grams = alkaliGrams[kind] ?? 0
    return grams > 0 ? [`${hydroxide(grams)} ${ALKALI_NAMES[kind]}`] : []
  })
  const as =
    waterGrams > 0
      ? `${alkalis.join(' and ')}, dissolved in ${water(waterGrams)} cold water`
      : `${alkalis.join(' and ')} as the solution it comes in`
  return [
    `Only if you are sure how much lye is in, and only while it is liquid: ${as}, left to cool to the warmth of the pot and stirred in slowly, brings it to ${superfatsInWords(topUp)}. It is lye: the cautions hold again. Where in doubt leave it rich.`,
  ]
}

const VERDICT_SAYS: Readonly<
  Record<
    ActualReport['verdict'],
    (superfatPercent: number, likely: LikelySuperfat) => readonly string[]
  >
> = {
  freeLye: (s) => [
    `There is more lye than the fat can use: superfat ${s.toFixed(1)} %. It burns. Stop, gloves and goggles on.`,
  ],
  freeLyePossible: (s, likely) => [
    `Typical lots leave ${s.toFixed(1)} % superfat, but ${oneIn(likely)} would leave free lye. Mend it before pouring.`,
  ],
  lean: (s) => [`Leaner than asked: superfat ${s.toFixed(1)} %. Safe as weighed, less mild.`],
  asPlanned: (s) => [`As planned: superfat ${s.toFixed(1)} %.`],
  rich: (s) => [
    `Richer than asked: superfat ${s.toFixed(1)} %. Safe; softer, less lather, sooner rancid. Do not add lye by guess.`,
  ],
}
