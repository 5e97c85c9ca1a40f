import type { Amount as Dose } from '../../domain/batch/order/additions'
import { WHOLE_PERCENT } from '../../domain/units'
import { type Amount, gramsOf } from '../amount-text'
import type { EntryReading } from '../formula-lines'
import { type FormulaOutcome, inUnit, type Stated, sumOf } from '../formula-outcome'
import { type Dosed, type Draft, type Entry, unread } from './draft'
import { FoundFacts } from './found-facts'
import type { LineRead, RecipeFacts } from './recipe-reading'
import { shown } from './said-facts'

/** A draft in its place. */
export interface Placed<D extends Draft = Draft> extends Entry {
  readonly draft: D
}

type DosedDraft = Extract<Draft, { kind: 'dosed' }>

/** What the oils came to, by which doses without a unit and in percent are reckoned. */
export interface OilScale {
  /** Unit of the oils' figures; empty for parts. */
  readonly unit: string
  /** Sum of their parts or percents; what a dose without a unit is a part of. */
  readonly parts: number
  /** Percent of everything that the oils are, where the text's percents are of everything. */
  readonly whole: number | undefined
}

/** Percents of a whole recipe may add up this far beside 100. */
const WHOLE_PLAY_PERCENT = 0.5

/** Figures that add to this or less are shares, also beside lye in grams. */
const MOST_SHARES = 110

/** Sums that the text gives may be this far off what is read, as a part. */
const SUM_PLAY = 0.005

function isDosed(one: Placed): one is Placed<DosedDraft> {
  return one.draft.kind === 'dosed'
}

/** Oils without any unit beside lye or water in grams are in grams too, unless they are shares of 100. */
export function inUnitOfLye<Oil extends EntryReading>(
  oils: readonly Oil[],
  placed: readonly Placed[],
): { oils: readonly Oil[]; unit?: string } {
  const amounts = oils.flatMap((oil) => oil.amounts)
  const units = placed
    .filter(isDosed)
    .filter(({ draft }) => draft.what.is === 'lye' || draft.what.is === 'water')
    .flatMap(({ draft }) => draft.amounts.flatMap((one) => (one.kind === 'mass' ? one.unit : [])))
  const [unit, ...others] = new Set(units)
  const isBare = amounts.length > 0 && amounts.every(({ kind }) => kind === 'bare')
  const isShare = unit === 'g' && sumOf(amounts.map(({ value }) => value)) <= MOST_SHARES
  if (!isBare || isShare || unit === undefined || others.length > 0) return { oils }
  return {
    oils: oils.map((oil) => ({ ...oil, amounts: oil.amounts.map((one) => inUnit(one, unit)) })),
    unit,
  }
}

/** The oils' part where all percents of the text, lye and water among them, add to 100 together. */
export function wholeShare(oils: readonly Stated[], placed: readonly Placed[]): number | undefined {
  if (
    oils.length === 0 ||
    oils.some(({ grams, percent }) => grams !== undefined || percent === undefined)
  )
    return undefined
  const own = sumOf(oils.map(({ percent }) => percent))
  const doses = placed.filter(isDosed).filter(({ draft }) => draft.what.is !== 'total')
  const others = sumOf(doses.map(({ draft }) => percentIn(draft.amounts)))
  const hasLye = doses.some(({ draft }) => draft.what.is === 'lye')
  const adds = Math.abs(own + others - WHOLE_PERCENT) <= WHOLE_PLAY_PERCENT
  return hasLye && adds && own < WHOLE_PERCENT - WHOLE_PLAY_PERCENT ? own : undefined
}

function percentIn(amounts: readonly Amount[]): number | undefined {
  return amounts.find(({ kind }) => kind === 'percent')?.value
}

/** All that is no oil, in the units it was meant in; what can't be reckoned is unread. */
export function reckonedDoses<One extends Placed>(
  placed: readonly One[],
  scale: OilScale,
): { reads: Map<One, LineRead>; found: RecipeFacts; totals: Total[] } {
  const facts = new FoundFacts()
  const reads = new Map<One, LineRead>()
  const totals: Total[] = []
  for (const one of placed) {
    const { draft } = one
    if (draft.kind === 'fact') reads.set(one, facts.say(one, draft))
    if (draft.kind !== 'dosed') continue
    const dose = doseOf(draft.amounts, scale)
    if (typeof dose === 'string')
      reads.set(one, unread(dose, 'no unit', { name: nameOf(draft.what) }))
    else if (draft.what.is === 'total') {
      reads.set(one, { kind: 'total', name: nameOf(draft.what), figure: figureOf(dose) })
      totals.push({ of: draft.what.of, grams: dose.grams })
      if (draft.what.of === 'oils' && dose.grams !== undefined) facts.oilTotal(one, dose.grams)
    } else
      reads.set(
        one,
        facts.dose(one, draft.what, dose, draft.strengthPercent) ?? {
          kind: draft.what.is,
          name: nameOf(draft.what),
          figure: figureOf(dose),
          note: noteOf(draft, scale),
        },
      )
  }
  return { reads, found: facts.found, totals }
}

/** A sum that the text gives. */
export interface Total {
  readonly of: 'oils' | 'all'
  readonly grams: number | undefined
}

/** Where the text's own sum of the oils is another than that of what was read. */
export function sumNotes(outcome: FormulaOutcome, totals: readonly Total[]): string[] {
  if (outcome.status !== 'blend' || outcome.grams === undefined) return []
  const read = outcome.grams
  return totals.flatMap(({ of, grams }) => {
    if (of !== 'oils' || grams === undefined || Math.abs(grams - read) <= read * SUM_PLAY) return []
    return [`The text gives ${shown(grams)} g of oils; those read add to ${shown(read)} g.`]
  })
}

function noteOf({ note, amounts }: DosedDraft, { unit }: OilScale): string | undefined {
  const isBare = amounts.every(({ kind }) => kind === 'bare')
  const said = isBare && unit !== '' ? `${unit}, as the oils` : undefined
  return [note, said].filter((one) => one !== undefined).join('; ') || undefined
}

/** Grams, or percent of the oils; a reason where it can't be said. */
function doseOf(amounts: readonly Amount[], { unit, parts, whole }: OilScale): Dose | string {
  const own = amounts.map((one) => inUnit(one, unit === '%' ? '' : unit))
  const grams = own.map(gramsOf).find((one) => one !== undefined)
  if (grams !== undefined) return { grams }
  const percent = percentIn(own)
  if (percent !== undefined)
    return { percentOfOils: whole === undefined ? percent : (percent * WHOLE_PERCENT) / whole }
  const bare = own.find(({ kind }) => kind === 'bare')?.value
  if (bare === undefined || unit === '%' || parts === 0)
    return 'The figure has no unit. Add g, or % of the oils'
  return { percentOfOils: (bare * WHOLE_PERCENT) / parts }
}

function figureOf({ grams, percentOfOils }: Dose): string {
  return grams === undefined ? `${shown(percentOfOils ?? 0)} % of the oils` : `${shown(grams)} g`
}

function nameOf(what: Dosed): string {
  if (what.is === 'lye') return 'Your lye'
  if (what.is === 'water') return 'Your water'
  if (what.is === 'total') return what.of === 'oils' ? 'All oils' : 'All of it'
  return what.name
}
