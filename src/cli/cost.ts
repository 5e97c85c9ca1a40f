import { costFile } from '../data/cost-file'
import { fileSchema } from '../data/ledger-schemas'
import { parseJson } from '../data/problems'
import { checkCostChoices } from '../domain/cost/check-choices'
import { type CostLine, runCost } from '../domain/cost/run-cost'
import { waterfallOf } from '../domain/cost/waterfall'
import { boughtPack } from './buy'
import { allInvalid, type Command, invalid, type Result, solved } from './command'
import { plannedPart, pricingOf } from './priced'

export const cost: Command = {
  flags: {},
  schema: () => fileSchema(costFile),
  run: (text) => Promise.resolve(answer(text)),
}

function answer(text: string): Result {
  const file = parseJson(costFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const { prices, on, batch, work, batches } = file.value
  const read = pricingOf(prices, on)
  if (read.status === 'invalid') return allInvalid(read.problems)
  const wrong = checkCostChoices(work, 'work')
  if (wrong.length > 0) return allInvalid(wrong)
  const plan = plannedPart(batch, 'batch')
  if (plan.status === 'invalid') return allInvalid(plan.problems)
  const run = runCost(plan, work, read.pricing, batches)
  if (run.status !== 'ready') return invalid('batch', run.message)
  const { lines, ...figures } = run.cost
  return solved({
    status: figures.missing.length > 0 ? 'incomplete' : 'ready',
    currency: read.pricing.book.currency,
    on: read.pricing.on,
    rounding: ROUNDING,
    ...figures,
    lines: lines.map(told),
    waterfall: (['bar', 'batch', 'kg'] as const).map((unit) => waterfallOf(run.cost, unit)),
  })
}

/** Stated with every table of money. */
export const ROUNDING =
  'Money in minor units. Every line is rounded once, a half away from zero; totals are sums of lines. perBar, perBatch and perKg are not rounded.'

function told({ landed, ...line }: CostLine) {
  if (!landed) return line
  const { cover, marginalPerUnit, proRataMinor, leftover, leftoverMinor } = landed
  return {
    ...line,
    marginalPerUnit,
    proRataMinor,
    boughtMinor: cover.minor,
    bought: cover.bought.map(boughtPack),
    leftover,
    leftoverMinor,
  }
}
