import { shownLine } from '../result/shown-mass'
import { barsTitle, type Sheet, type SheetRow } from './sheet'
import type { WorkStep } from './steps'
import type { MassUnit } from '../../units'

/** Columns of a sheet in letters. */
const NAME_WIDTH = 30
const MASS_WIDTH = 13

/** A sheet as plain text, for a terminal or a plain printer. */
export function sheetText(sheet: Sheet, unit: MassUnit): string {
  return [
    ...headLines(sheet),
    '',
    'LYE BURNS SKIN AND EYES: STOP AND READ',
    ...sheet.cautions.map((caution, i) => `${i + 1}. ${caution}`),
    ...(sheet.warnings.length > 0 ? ['', 'Mind', ...sheet.warnings.map((one) => `! ${one}`)] : []),
    ...sheet.steps.flatMap((step, i) => ['', ...stepLines(step, i + 1, unit)]),
    '',
    'Lye',
    ...rowLines(sheet.lyeRows),
    '',
    'If one thing is wrong, the superfat is',
    ...rowLines(sheet.wrongRows),
    '',
    barsTitle(sheet),
    ...rowLines(sheet.barRows),
    ...(sheet.lots.length > 0 ? ['', 'Lots', ...rowLines(sheet.lots)] : []),
    ...costLines(sheet),
  ].join('\n')
}

function headLines({ title, batchCode, madeOn, readyOn, process }: Sheet): string[] {
  return [
    title,
    [
      `${process} process`,
      ...(batchCode === null ? [] : [`batch ${batchCode}`]),
      ...(madeOn === null ? [] : [`made on ${madeOn}`]),
      ...(readyOn === null ? [] : [`ready on ${readyOn}`]),
    ].join(', '),
  ]
}

function stepLines(step: WorkStep, number: number, unit: MassUnit): string[] {
  const { title, say, lines, tempC, minutes, cautions, checks } = step
  const hold = [
    ...(tempC ? [`${tempC.low} to ${tempC.high} °C`] : []),
    ...(minutes ? [`${minutes.low} to ${minutes.high} minutes`] : []),
  ].join(', ')
  return [
    `${number}  ${title}${hold === '' ? '' : ` (${hold})`}`,
    `   ${say}`,
    ...lines.flatMap(({ name, kind, grams, stepG, detail, note }) => [
      `   [ ] ${name.padEnd(NAME_WIDTH)}${shownLine({ kind, grams, stepG }, unit).padStart(MASS_WIDTH)}   really ________   ${detail}`,
      ...(note === null ? [] : [`       ${note}`]),
    ]),
    ...cautions.map((one) => `   ! ${one}`),
    ...checks.map((one) => `   ? ${one}`),
  ]
}

function rowLines(rows: readonly SheetRow[]): string[] {
  return rows.map(({ what, value }) => `   ${what.padEnd(NAME_WIDTH - 1)} ${value}`)
}

function costLines({ cost }: Sheet): string[] {
  if (!cost) return []
  const perBar = cost.perBar === null ? '' : `, ${cost.perBar.toFixed(2)} a bar`
  const unpriced = cost.unpriced.length > 0 ? `; without ${cost.unpriced.join(', ')}` : ''
  return ['', `Materials cost ${cost.total.toFixed(2)}${perBar}${unpriced}`]
}
