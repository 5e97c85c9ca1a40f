import type { BuyingList } from '../../domain/cost/buying'
import { amountFrom } from '../../domain/cost/money'
import type { Quote } from '../../domain/cost/quote'
import type { RunCost } from '../../domain/cost/run-cost'
import type { Waterfall } from '../../domain/cost/waterfall'
import { type Cell, fileNumber } from '../kit/csv'
import { STEP_NAMES, UNIT_NAMES } from './words'

/** A buying list as a table for a file: a row for each pack to buy. */
export function buyingRows(list: BuyingList, currency: string): Cell[][] {
  const money = (minor: number) => amountFrom(minor, currency)
  return [
    [
      'Material',
      'Supplier',
      'Packs',
      'Pack size',
      'Unit',
      `Cost, ${currency}`,
      'Needed',
      'In stock',
    ],
    ...list.lines.flatMap(({ name, packs, need, stock }) =>
      packs.map(({ supply: { offer }, packs: count, minor }): Cell[] => [
        name,
        offer.supplier,
        count,
        offer.size,
        offer.unit,
        money(minor),
        fileNumber(need),
        fileNumber(stock),
      ]),
    ),
    ...list.orders.map(({ supplier, freightMinor }): Cell[] => [
      'Freight',
      supplier,
      undefined,
      undefined,
      '',
      money(freightMinor),
      undefined,
      undefined,
    ]),
    ['To pay', '', undefined, undefined, '', money(list.totalMinor), undefined, undefined],
  ]
}

/** What a bar costs as a table for a file: the lines of a batch, then the steps of the waterfall. */
export function costRows(cost: RunCost, waterfall: Waterfall, currency: string): Cell[][] {
  return [
    ['Of one batch', 'Goes into', 'Amount, g, pieces or minutes', currency],
    ...cost.lines.map(({ name, group, amount, minor }): Cell[] => [
      name,
      STEP_NAMES[group],
      amount === null ? undefined : fileNumber(amount),
      amountFrom(minor, currency),
    ]),
    ['Sum', '', undefined, amountFrom(cost.totalMinor, currency)],
    [],
    [`Where the money of ${UNIT_NAMES[waterfall.unit]} goes`, '', undefined, currency],
    ...waterfall.steps.map(({ what, value }): Cell[] => [
      STEP_NAMES[what],
      '',
      undefined,
      fileNumber(amountFrom(value, currency)),
    ]),
    ['Sum', '', undefined, fileNumber(amountFrom(waterfall.total, currency))],
  ]
}

/** A quote with its costs as a table for a file: for the maker, not for the shop. */
export function quoteRows(quote: Quote, currency: string): Cell[][] {
  const money = (minor: number | null) =>
    minor === null ? undefined : fileNumber(amountFrom(minor, currency))
  return [
    [
      'Bars',
      'Batches',
      `Cost a bar, ${currency}`,
      `Price a bar, ${currency}`,
      'Margin, %',
      'Markup, %',
      `Sum, ${currency}`,
      `Tax, ${currency}`,
      `To pay, ${currency}`,
      `Retail with tax, ${currency}`,
      'Margin of the shop, %',
      'Lead time, days',
      'Break-even, bars',
      'Aim kept from, bars',
    ],
    ...quote.tiers.map((tier): Cell[] => [
      tier.quantity,
      tier.batches,
      money(tier.costPerBar),
      money(tier.priceMinor),
      fileNumber(tier.marginPercent),
      fileNumber(tier.markupPercent),
      money(tier.netMinor),
      money(tier.taxMinor),
      money(tier.grossMinor),
      money(tier.retailMinor),
      tier.shopMarginPercent === null ? undefined : fileNumber(tier.shopMarginPercent),
      tier.leadDays,
      tier.breakEven ?? undefined,
      tier.aimKeptFrom ?? undefined,
    ]),
  ]
}
