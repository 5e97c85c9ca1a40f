import { fileSchema } from '../data/ledger-schemas'
import { alkaliLimits } from '../data/free-alkali'
import { parseJson } from '../data/problems'
import { quoteFile } from '../data/quote-file'
import { today } from '../data/today'
import { NO_TESTS } from '../domain/batch/release/alkali-test'
import { releaseAnswer } from '../domain/batch/release/release'
import { checkCostChoices } from '../domain/cost/check-choices'
import { checkQuote } from '../domain/cost/check-quote'
import { quoteOf } from '../domain/cost/quote'
import { allInvalid, type Command, type Flags, type Result, solved } from './command'
import { plannedPart, pricingOf } from './priced'
import { quoteHtml } from './quote-html'

export const quote: Command = {
  flags: { html: { type: 'boolean' }, locale: { type: 'string' } },
  flagHelp: [
    '--html           the quote as a page to print, in the maker’s name and without costs',
    '--locale en-GB   how money and days are written on it',
  ],
  schema: () => fileSchema(quoteFile),
  run: (text, flags) => Promise.resolve(answer(text, flags)),
}

function answer(text: string, { html, locale = 'en-GB' }: Flags): Result {
  if (typeof locale !== 'string' || !isLocale(locale))
    return allInvalid([
      { path: '--locale', message: `"${String(locale)}" is no locale. Write it as en-GB.` },
    ])
  const file = parseJson(quoteFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const { prices, batch, work, quote: choices, papers } = file.value
  const read = pricingOf(prices, choices.quotedOn)
  const wrong = [
    ...(read.status === 'invalid' ? read.problems : []),
    ...checkCostChoices(work, 'work'),
    ...checkQuote(choices, 'quote'),
  ]
  if (read.status === 'invalid' || wrong.length > 0) return allInvalid(wrong)
  const plan = plannedPart(batch, 'batch')
  if (plan.status === 'invalid') return allInvalid(plan.problems)
  const made = { order: plan.order, actual: batch.actual ?? {}, record: batch.release ?? NO_TESTS }
  const tested = releaseAnswer(made, alkaliLimits, today())
  if (tested.status === 'invalid')
    return allInvalid(tested.problems.map((one) => ({ ...one, path: `batch.${one.path}` })))
  const found = quoteOf(plan, work, choices, read.pricing, tested.release)
  if (found.status === 'refused')
    return allInvalid(found.reasons.map((message) => ({ path: 'prices', message })))
  const { currency } = read.pricing.book
  if (html === true) return solved(quoteHtml(found.quote, papers, currency, locale))
  return solved({ status: 'ready', currency, aim: choices.aim, ...found.quote, papers })
}

function isLocale(text: string): boolean {
  try {
    return Intl.getCanonicalLocales(text).length > 0
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}
