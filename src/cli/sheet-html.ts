import { shownLine } from '../domain/batch/result/shown-mass'
import { barsTitle, type Sheet, type SheetRow } from '../domain/batch/sheet/sheet'
import type { WorkStep } from '../domain/batch/sheet/steps'
import type { MassUnit } from '../domain/units'

const STYLE = `
@page { margin: 14mm }
body { font: 14px/1.35 system-ui, sans-serif; max-width: 190mm; margin: 0 auto; color: #000; background: #fff }
h1 { font-size: 22px; margin: 0 } h2 { font-size: 16px; margin: 14px 0 2px } p { margin: 2px 0 }
.caution { border: 2px solid #000; padding: 6px 10px; margin: 10px 0; break-inside: avoid }
section { break-inside: avoid } table { width: 100%; border-collapse: collapse }
td { border-bottom: 1px solid #999; padding: 3px 6px; vertical-align: baseline }
.grams { font-size: 22px; font-weight: 700; text-align: right; white-space: nowrap }
.tick, .actual { border: 1px solid #000; width: 14px } .actual { width: 80px } .detail { color: #333 }
`

/** A sheet as one HTML page that needs nothing else. */
export function sheetHtml(sheet: Sheet, unit: MassUnit): string {
  const { title, batchCode, madeOn, readyOn, process, cautions, warnings } = sheet
  const head = [
    `${process} process`,
    batchCode && `batch ${batchCode}`,
    madeOn && `made on ${madeOn}`,
    readyOn && `ready on ${readyOn}`,
  ].filter((part) => part !== null)
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<title>${text(title)}</title><link rel="icon" href="data:,"><style>${STYLE}</style></head><body>`,
    `<h1>${text(title)}</h1><p>${text(head.join(', '))}</p>`,
    `<div class="caution" role="note"><b>Lye burns skin and eyes: stop and read</b>${list('ol', cautions)}</div>`,
    warnings.length > 0 ? `<section><h2>Mind</h2>${list('ul', warnings)}</section>` : '',
    ...sheet.steps.map((step, i) => stepHtml(step, i + 1, unit)),
    rowsHtml('Lye', sheet.lyeRows),
    rowsHtml('If one thing is wrong, the superfat is', sheet.wrongRows),
    rowsHtml(barsTitle(sheet), sheet.barRows),
    sheet.lots.length > 0 ? rowsHtml('Lots', sheet.lots) : '',
    costHtml(sheet),
    '</body></html>',
  ].join('\n')
}

function stepHtml(step: WorkStep, number: number, unit: MassUnit): string {
  const { title, say, lines, tempC, minutes, cautions, checks } = step
  const hold = [
    tempC && `${tempC.low} to ${tempC.high} °C`,
    minutes && `${minutes.low} to ${minutes.high} minutes`,
  ].filter((part) => part !== null)
  const rows = lines.map(
    ({ name, kind, grams, stepG, detail, note }) =>
      `<tr><td class="tick"></td><td>${text(name)}<br><span class="detail">${text(note === null ? detail : `${detail}. ${note}`)}</span></td>` +
      `<td class="grams">${text(shownLine({ kind, grams, stepG }, unit))}</td><td class="actual"></td></tr>`,
  )
  return [
    `<section><h2>${number} ${text(title)}</h2><p>${text(say)}${hold.length > 0 ? ` <b>${text(hold.join(', '))}</b>` : ''}</p>`,
    rows.length > 0 ? `<table>${rows.join('')}</table>` : '',
    cautions.length > 0 ? list('ul', cautions) : '',
    checks.length > 0 ? list('ul', checks) : '',
    '</section>',
  ].join('')
}

function rowsHtml(title: string, rows: readonly SheetRow[]): string {
  const lines = rows.map(
    ({ what, value }) => `<tr><td>${text(what)}</td><td>${text(value)}</td></tr>`,
  )
  return `<section><h2>${text(title)}</h2><table>${lines.join('')}</table></section>`
}

function costHtml({ cost }: Sheet): string {
  if (!cost) return ''
  const perBar = cost.perBar === null ? '' : `, ${cost.perBar.toFixed(2)} a bar`
  const unpriced = cost.unpriced.length > 0 ? `; without ${cost.unpriced.join(', ')}` : ''
  return `<p>Materials cost ${cost.total.toFixed(2)}${perBar}${text(unpriced)}</p>`
}

function list(tag: 'ol' | 'ul', items: readonly string[]): string {
  return `<${tag}>${items.map((item) => `<li>${text(item)}</li>`).join('')}</${tag}>`
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
