import type { QuotePapers } from '../data/quote-shape'
import { formatMinor } from '../domain/cost/money'
import { releaseLine } from '../domain/batch/release/release'
import type { Quote } from '../domain/cost/quote'

const STYLE = `
@page { size: A4; margin: 20mm }
body { font: 14px/1.45 system-ui, sans-serif; max-width: 170mm; margin: 0 auto; color: #000; background: #fff }
h1 { font-size: 22px; margin: 0 0 2px } h2 { font-size: 16px; margin: 28px 0 6px } p { margin: 2px 0 }
table { width: 100%; border-collapse: collapse; margin: 14px 0; break-inside: avoid }
th { font-weight: 600; border-bottom: 1.5px solid #000 } td { border-bottom: 1px solid #999 }
th, td { padding: 5px 8px; text-align: right; white-space: nowrap }
th:first-child, td:first-child { text-align: left; padding-left: 0 } ul { padding-left: 18px; margin: 4px 0 }
`

/** A quote as one HTML page to print; it says nothing of costs. */
export function quoteHtml(
  quote: Quote,
  { maker, makerLines, customer, product, number, terms }: QuotePapers,
  currency: string,
  locale: string,
): string {
  const money = (minor: number) => text(formatMinor(minor, currency, locale))
  const day = (on: string) =>
    text(
      new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(
        Date.parse(on),
      ),
    )
  const retail = quote.tiers.some(({ retailMinor }) => retailMinor !== null)
  const heads = [
    'Bars',
    'Each',
    'Sum',
    `Tax ${quote.taxPercent} %`,
    'To pay',
    ...(retail ? ['Retail, with tax'] : []),
    'Ready',
  ]
  const rows = quote.tiers.map((tier) => [
    text(new Intl.NumberFormat(locale).format(tier.quantity)),
    money(tier.priceMinor),
    money(tier.netMinor),
    money(tier.taxMinor),
    money(tier.grossMinor),
    ...(retail ? [tier.retailMinor === null ? '' : money(tier.retailMinor)] : []),
    `${tier.leadDays} days`,
  ])
  return [
    `<!doctype html><html lang="${text(locale)}"><head><meta charset="utf-8">`,
    `<title>${text(`Quote ${number}`.trim())}, ${text(maker)}</title><link rel="icon" href="data:,"><style>${STYLE}</style></head><body>`,
    `<h1>${text(maker)}</h1>${makerLines.map((line) => `<p>${text(line)}</p>`).join('')}`,
    `<h2>Quote ${text(number)}${customer === '' ? '' : ` for ${text(customer)}`}</h2>`,
    `<p>${day(quote.quotedOn)}, valid until ${day(quote.validUntil)}</p>`,
    `<p><b>${text(releaseLine(quote.release))}</b></p>`,
    product === ''
      ? ''
      : `<p>${text(product)}, about ${quote.barGrams.toFixed(0)} g when cured</p>`,
    `<table><thead><tr>${heads.map((head) => `<th>${text(head)}</th>`).join('')}</tr></thead>`,
    `<tbody>${rows.map((row) => `<tr>${row.map((cell) => `<td>${cell}</td>`).join('')}</tr>`).join('')}</tbody></table>`,
    `<p>Ready counts from the order and has ${quote.cureDays} days of cure in it. No order under ${quote.minimumRun} bars.</p>`,
    terms.length > 0 ? `<ul>${terms.map((line) => `<li>${text(line)}</li>`).join('')}</ul>` : '',
    '</body></html>',
  ].join('\n')
}

const ESCAPED: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
}

/** Text that a file may hold, made harmless in a page. */
function text(value: string): string {
  return value.replaceAll(/[&<>"]/gu, (sign) => ESCAPED[sign] ?? '')
}
