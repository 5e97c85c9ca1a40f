import type { Agreement, Reading } from './oil-agreement'

const HEADS = [
  'oil',
  'ranges',
  'saponification stated',
  'calculated',
  'iodine stated',
  'calculated',
] as const

/** Every value of the agreement chart, as a table. */
export function agreementTable(rows: readonly Agreement[]): HTMLTableElement {
  const table = document.createElement('table')
  const head = table.createTHead().insertRow()
  HEADS.forEach((text, column) => {
    const cell = document.createElement('th')
    cell.textContent = text
    if (column > 1) cell.className = 'number'
    head.append(cell)
  })
  const body = table.createTBody()
  for (const row of rows) fill(body.insertRow(), row)
  return table
}

function fill(line: HTMLTableRowElement, row: Agreement): void {
  const texts = [row.name, row.basis, ...textsOf(row.saponification), ...textsOf(row.iodine)]
  texts.forEach((text, column) => {
    const cell = line.insertCell()
    cell.textContent = text
    if (column > 1) cell.className = 'number'
  })
}

function textsOf({ low, high, calculated, inside }: Reading): string[] {
  return [`${low} to ${high}`, `${calculated.toFixed(1)}${inside ? '' : ' outside'}`]
}
