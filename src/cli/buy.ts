import { buyingFile } from '../data/buying-file'
import { fileSchema } from '../data/ledger-schemas'
import { parseJson } from '../data/problems'
import type { ReadyPlan } from '../domain/batch/result/plan'
import type { Problem } from '../domain/blend/check-blend'
import {
  type BuyingLine,
  type BuyingList,
  buyingList,
  type BuyingNeed,
} from '../domain/cost/buying'
import type { BoughtPacks } from '../domain/cost/cover'
import { mixedHighs } from '../domain/cost/mixed'
import { batchNeeds } from '../domain/cost/run-cost'
import { allInvalid, byStatus, type Command, type Result } from './command'
import { plannedPart, pricingOf } from './priced'

export const buy: Command = {
  flags: {},
  schema: () => fileSchema(buyingFile),
  run: answer,
}

async function answer(text: string): Promise<Result> {
  const file = parseJson(buyingFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const { prices, on, batches, needs, stock, wastePercent, seconds } = file.value
  const read = pricingOf(prices, on)
  if (read.status === 'invalid') return allInvalid(read.problems)
  const { pricing } = read
  const unknown = [
    ...strangers('needs', needs, pricing.materialOf),
    ...strangers('stock', stock, pricing.materialOf),
  ]
  if (unknown.length > 0) return allInvalid(unknown)
  const plans: { readonly plan: ReadyPlan; readonly times: number }[] = []
  for (const [at, { batch, times }] of batches.entries()) {
    const plan = plannedPart(batch, `batches[${at}].batch`)
    if (plan.status === 'invalid') return allInvalid(plan.problems)
    plans.push({ plan, times })
  }
  const { default: loadHighs } = await import('highs')
  const solve = mixedHighs(await loadHighs())
  const all = together(plans, needs, stock)
  const list = buyingList(all, pricing, { wastePercent, seconds }, solve)
  if (list.status !== 'ready') return byStatus(list)
  return byStatus(told(list, pricing.book.currency, pricing.on))
}

function strangers(
  path: string,
  amounts: Readonly<Record<string, number>>,
  materialOf: (id: string) => unknown,
): Problem[] {
  return Object.entries(amounts).flatMap(([id, amount]) => {
    if (materialOf(id) === undefined)
      return [
        {
          path: `${path}.${id}`,
          message: `There is no material "${id}". Name one of the library or of the prices.`,
        },
      ]
    return amount >= 0
      ? []
      : [{ path: `${path}.${id}`, message: `${amount} stands here; give 0 or more.` }]
  })
}

/** Needs of all batches, a material at a time. */
function together(
  plans: readonly { readonly plan: ReadyPlan; readonly times: number }[],
  needs: Readonly<Record<string, number>>,
  stock: Readonly<Record<string, number>>,
): BuyingNeed[] {
  const sums = new Map<string, number>()
  const add = (id: string, amount: number) => sums.set(id, (sums.get(id) ?? 0) + amount)
  for (const { plan, times } of plans)
    for (const { id, amount } of batchNeeds(plan, times)) add(id, amount)
  for (const [id, amount] of Object.entries(needs)) add(id, amount)
  return [...sums].map(([material, need]) => ({ material, need, stock: stock[material] ?? 0 }))
}

function told({ lines, ...list }: BuyingList, currency: string, on: string) {
  return {
    ...list,
    currency,
    on,
    lines: lines.map(({ packs, better, ...line }: BuyingLine) => ({
      ...line,
      packs: packs.map(boughtPack),
      better: better && { ...better, offer: packName(better.offer) },
    })),
  }
}

/** So many packs as a list tells them. */
export function boughtPack({ supply, packs, amount, minor }: BoughtPacks) {
  return { ...packName(supply.offer), packs, amount, minor }
}

function packName({ id, supplier, size, unit }: BoughtPacks['supply']['offer']) {
  return { offer: id, supplier, size, unit }
}
