import { z } from 'zod'
import { figure } from './bounds'
import { bookOf, priceBookShape } from './price-book-file'
import { batchFile } from './batch-file'
import { briefOfLibrary } from './brief-file'
import { noOwnOilsShape } from './own-oil-file'
import { materialsWith } from './price-materials'
import { parseJson, type Parsed, parseValue } from './problems'
import { spreadsIn } from '../domain/cost/price-history'

const shares = z.record(z.string(), figure)

/** A brief with the formula in use and how it is made and bought, for what a change does to it; version 1. */
export const changeFile = z.strictObject({
  format: z.literal('barwright-change/1'),
  brief: briefOfLibrary.describe('The shelf with its prices, and what the bar must be'),
  formula: shares
    .optional()
    .describe('The formula in use, in percent; the best of the brief if left out'),
  batch: batchFile
    .extend({ ownOils: noOwnOilsShape })
    .optional()
    .describe('How it is made; its blend is the formula where none is given'),
  prices: priceBookShape
    .optional()
    .describe('A price book, for how widely the price of each oil has moved'),
  spreads: shares
    .optional()
    .describe(
      'By oil: the standard deviation of the log of a year’s change; goes before the book’s',
    ),
  tolerances: shares
    .optional()
    .describe('How far each measure may move, in its unit; one tie each if left out'),
})

export type ChangeFile = z.output<typeof changeFile>

/** What the command line reads for a change: a change file, or a brief alone. */
export const changeInput = z.union([changeFile, briefOfLibrary])

/** Reads a change file, or a brief as one with nothing else in it. */
export function readChange(text: string): Parsed<ChangeFile> {
  const json = parseJson(z.looseObject({ format: z.unknown() }), text)
  if (json.status === 'invalid') return json
  if (json.value.format !== 'barwright-brief/1') return parseValue(changeFile, json.value)
  const brief = parseValue(briefOfLibrary, json.value)
  if (brief.status === 'invalid') return brief
  return { status: 'parsed', value: { format: 'barwright-change/1', brief: brief.value } }
}

/** The spreads a file states or its price book shows, by oil of its shelf. */
export function spreadsOf({
  brief,
  prices,
  spreads,
}: ChangeFile): Readonly<Record<string, number>> {
  const book = prices && bookOf(prices)
  const shown = book ? spreadsIn(book, Object.keys(brief.oils), materialsWith(book.materials)) : {}
  return { ...shown, ...spreads }
}
