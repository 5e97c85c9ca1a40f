import type { Oil } from '../../domain/blend/oil'
import { type FormulaAnswers, outcomeOf, sumOf, withUnits } from '../formula-outcome'
import { OilNames } from '../oil-names'
import type { EntryReading } from '../formula-lines'
import { type Draft, unread } from './draft'
import { draftsOf } from './entry-drafts'
import { inUnitOfLye, type Placed, reckonedDoses, sumNotes, wholeShare } from './doses'
import { asWritten, recipeEntries } from './recipe-entries'
import type { LineRead, RecipeLine, RecipeReading, UnreadRecipeLine } from './recipe-reading'
import { shown } from './said-facts'

type OilDraft = Extract<Draft, { kind: 'oil' }>

/** Reads whole recipes as people write them, with lye, water and all, against the oils of a library. */
export class RecipeReader {
  readonly #oils: readonly Oil[]
  readonly #names: OilNames

  constructor(oils: Iterable<Oil>) {
    this.#oils = [...oils]
    this.#names = new OilNames(this.#oils)
  }

  /** Reads a text; `answers` are what a person said to the questions of its outcome. */
  read(text: string, answers: FormulaAnswers = {}): RecipeReading {
    const { entries, isCut } = recipeEntries(text, this.#oils, this.#names)
    const placed = withMentions(
      entries.flatMap((entry) =>
        draftsOf(entry, this.#names).map((draft) => ({
          line: entry.line,
          text: asWritten(entry.text, this.#oils),
          draft,
        })),
      ),
    )
    const { oils, unit: ofLye } = inUnitOfLye(
      placed.filter(isOil).map((one) => ({ ...one.draft.entry, placed: one })),
      placed,
    )
    const { stated, wrong, unit = ofLye } = withUnits(oils)
    const whole = wholeShare(stated, placed)
    const { outcome, shares, notes } = outcomeOf(stated, {
      ...answers,
      spread: answers.spread === true || whole !== undefined,
    })
    const parts = sumOf(stated.map((one) => one.parts ?? one.percent))
    const { reads, found, totals } = reckonedDoses(placed, {
      unit: unit ?? unitOf(oils),
      parts,
      whole,
    })
    for (const one of stated)
      reads.set(one.entry.placed, {
        kind: 'oil',
        oil: one.oil,
        sharePercent: shares.get(one),
        grams: one.grams,
        note: together(one.note, assumed(one.entry.placed.draft.entry, unit)),
      })
    for (const { entry, reason } of wrong)
      reads.set(entry.placed, unread(reason, 'no unit', asked(entry.oil)))
    const lines = placed.map((one): RecipeLine => ({
      line: one.line,
      text: one.text,
      read: reads.get(one) ?? readOf(one.draft),
    }))
    return {
      lines,
      unread: lines.filter(isUnread),
      notes: [
        ...(isCut ? ['Only the first 300 entries were read; the text goes on.'] : []),
        ...(whole === undefined ? notes : [wholeNote(whole)]),
        ...sumNotes(outcome, totals),
      ],
      outcome,
      found,
    }
  }
}

const wholeNote = (whole: number) =>
  `The percents are of the whole batch, lye and water in it; the oils are ${shown(whole)} of them.`

/** The unit of all oils; empty where they are parts, or have several. */
function unitOf(oils: readonly EntryReading[]): string {
  const units = oils.map(({ amounts }) => {
    const weighed = amounts.find((one) => one.kind === 'mass')
    return weighed?.unit ?? (amounts.some(({ kind }) => kind === 'percent') ? '%' : '')
  })
  const [unit = '', ...others] = new Set(units)
  return others.length === 0 ? unit : ''
}

const asked = (oil: Oil) => ({ name: oil.name, oil, candidates: [oil] })

function together(...said: readonly (string | undefined)[]): string | undefined {
  const words = said.filter((one) => one !== undefined)
  return words.length === 0 ? undefined : words.join('; ')
}

/** An oil without a figure that has one elsewhere is only mentioned: a title, a sentence. */
function withMentions(placed: readonly Placed[]): Placed[] {
  const weighed = new Set(placed.filter(isOil).map(({ draft }) => draft.entry.oil.id))
  return placed.map((one) => {
    const { draft } = one
    const isMention =
      draft.kind === 'unread' && draft.short === 'no figure' && weighed.has(draft.oil?.id ?? '')
    return isMention ? { ...one, draft: { kind: 'words' } } : one
  })
}

function isOil(one: Placed): one is Placed<OilDraft> {
  return one.draft.kind === 'oil'
}

function isUnread(line: RecipeLine): line is UnreadRecipeLine {
  return line.read.kind === 'unread'
}

function assumed({ amounts }: EntryReading, unit: string | undefined): string | undefined {
  const isBare = amounts.every(({ kind }) => kind === 'bare')
  return isBare && unit !== undefined ? `${unit}, as the others` : undefined
}

function readOf(draft: Draft): LineRead {
  if (draft.kind === 'unread' || draft.kind === 'words') return draft
  if (draft.kind === 'fact')
    return { kind: draft.about, name: draft.name, figure: draft.figure, note: draft.note }
  throw new Error(`A ${draft.kind} entry was not reckoned`)
}
