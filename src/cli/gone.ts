import { batchFacts } from '../data/batch-facts'
import { orderOf } from '../data/batch-file'
import { briefOf } from '../data/brief-file'
import { lyeCautions } from '../data/cautions'
import { type ChangeFile, changeInput, readChange } from '../data/change-file'
import { flagRules } from '../data/flags'
import { fileSchema } from '../data/ledger-schemas'
import { library } from '../data/library'
import type { BatchOrder } from '../domain/batch/order/order'
import type { Blend } from '../domain/blend/blend'
import { barMeasures } from '../domain/blend/compare'
import { type Brief, pricesOf } from '../domain/optimise/brief/brief'
import { solveBrief } from '../domain/optimise/solve/solve'
import { solveWithOwn } from '../domain/lp/solvers/own'
import { type GoneAnswer, type GoneOrder, oilGone } from '../domain/replace/gone'
import {
  allInvalid,
  byStatus,
  type Command,
  type Flags,
  invalid,
  type Result,
  solved,
} from './command'
import { readAll, readFigures } from './figures'
import { readNumber } from './number-flag'

const BARS_LIMITS = { least: 0, most: 1_000_000_000, whole: false }
const OILS_LIMITS = { least: 1, most: 10_000, whole: false }
const MOST_LIMITS = { least: 1, most: 100, whole: true }

/** What is taken of a batch that no file tells of; told with the answer. */
const PLAIN_BATCH: Omit<BatchOrder, 'blend'> = {
  oilGrams: 1000,
  alkali: { naoh: 100 },
  purity: { naoh: 100 },
  superfat: 5,
  water: { lyeConcentration: 33 },
}

export const gone: Command = {
  flags: {
    oil: { type: 'string' },
    'bars-per-year': { type: 'string', default: '0' },
    'oils-per-bar': { type: 'string', default: '75' },
    hold: { type: 'string' },
    tolerance: { type: 'string' },
    library: { type: 'boolean' },
    most: { type: 'string', default: '5' },
  },
  flagHelp: [
    '--oil palm                   the oil that is gone',
    '--bars-per-year 4000         for the cost of a year',
    '--oils-per-bar 75            g of oils in a bar, where the batch does not tell (75)',
    '--hold olive=60,palm=40      the formula in use; else the file’s, or the best of the brief',
    '--tolerance hardness=2       how far a measure may move; one tie each if left out',
    '--library                    any oil of the library may stand in, not only the shelf’s',
    '--most 5                     how many to give, of single oils and of pairs each',
  ],
  schema: () => fileSchema(changeInput),
  run: (text, flags) => Promise.resolve(answer(text, flags)),
}

function answer(text: string, flags: Flags): Result {
  const file = readChange(text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  if (typeof flags.oil !== 'string') return invalid('--oil', 'Name the oil that is gone.')
  const read = readAll({
    hold: readFigures(flags.hold, '--hold'),
    tolerances: readFigures(flags.tolerance, '--tolerance'),
    barsPerYear: readNumber(flags['bars-per-year'], '--bars-per-year', BARS_LIMITS),
    oilGramsPerBar: readNumber(flags['oils-per-bar'], '--oils-per-bar', OILS_LIMITS),
    most: readNumber(flags.most, '--most', MOST_LIMITS),
  })
  if ('problems' in read) return allInvalid(read.problems)
  const { hold, tolerances, ...figures } = read.values
  const brief = briefOf(file.value.brief)
  const base = formulaOf(brief, file.value, hold)
  if (!('blend' in base)) return byStatus(base)
  const batch: BatchOrder = { ...batchOf(file.value), blend: base.blend }
  const order: GoneOrder = {
    oil: flags.oil,
    base: base.blend,
    prices: pricesOf(brief),
    candidates: flags.library === true ? [...library.oils.keys()] : Object.keys(brief.oils),
    tolerances: tolerances ?? file.value.tolerances ?? ONE_TIE,
    batch,
    ...figures,
  }
  return told(oilGone(brief, order, library, batchFacts, flagRules), order)
}

/** One tie on every measure of the bar. */
const ONE_TIE = Object.fromEntries(barMeasures(library.measures).map(({ id, tie }) => [id, tie]))

/** The formula in use: as typed, as the file has it, else the best of the brief. */
function formulaOf(brief: Brief, { formula, batch }: ChangeFile, hold: Blend | undefined) {
  const stated = hold ?? formula ?? batch?.blend
  return stated ? { blend: stated } : solveBrief(brief, library, solveWithOwn)
}

function batchOf({ batch }: ChangeFile): Omit<BatchOrder, 'blend'> {
  return batch ? orderOf(batch) : PLAIN_BATCH
}

function told(answer: GoneAnswer, { base, batch, barsPerYear }: GoneOrder): Result {
  if (answer.status === 'none') return byStatus({ ...answer, status: 'infeasible' })
  if (answer.status === 'invalid') return allInvalid(answer.problems)
  const { superfat, alkali, purity, water } = batch
  return solved({
    ...answer,
    formula: base,
    barsPerYear,
    madeWith: { superfat, alkali, purity, water },
    cautions: lyeCautions,
  })
}
