import { isCurrency, minorFrom } from '../domain/cost/money'
import type { Offer, OwnMaterial, PriceStep } from '../domain/cost/offer'
import { packOf } from '../domain/cost/price-age'
import { WHOLE_PERCENT } from '../domain/units'
import { type Cell, type Conventions, readDay, readNumber, readSize, readYes } from './price-cells'
import { unguarded } from './csv'
import { FIELD_NAMES, type PriceColumns, type PriceField } from './price-fields'
import { findMaterial, ownId } from './price-materials'

/** What a person may say about a list that it doesn't say itself. */
export interface ImportChoices {
  /** Columns in place of those recognised. */
  readonly columns?: PriceColumns | undefined
  readonly decimal?: 'point' | 'comma' | undefined
  readonly dayFirst?: boolean | undefined
  /** Whether names that nobody knows become materials of the maker's own; pieces always do. */
  readonly takeUnknown?: boolean | undefined
}

/** What a list is read beside. */
export interface ImportSetting {
  readonly currency: string
  readonly materials: readonly OwnMaterial[]
  /** The day for rows without one, YYYY-MM-DD. */
  readonly today: string
  /** The supplier for rows without one. */
  readonly supplier?: string | undefined
}

/** A row that could not be used. */
export interface UnreadRow {
  /** Counted from 1, headings and all. */
  readonly row: number
  readonly text: string
  readonly reason: string
}

/** A row as it stands in the list. */
export interface Row {
  readonly number: number
  readonly cells: readonly string[]
}

/** Letters of a row that a report shows. */
const SHOWN_LETTERS = 90

/** What rows come to. */
export interface RowsRead {
  readonly offers: readonly Offer[]
  /** Materials of the maker's own that the list brings. */
  readonly materials: readonly OwnMaterial[]
  /** Rows that are in the offers. */
  readonly readRows: number
  /** What was taken for granted. */
  readonly notes: readonly string[]
}

/** One price of one row, before rows of the same pack are put together. */
interface PricedRow {
  readonly offer: Omit<Offer, 'steps'>
  readonly step: PriceStep
  readonly row: Row
}

/** Reads the rows of a list one by one, and notes those it can't use. */
export class RowReader {
  readonly unread: UnreadRow[] = []
  readonly #priced: PricedRow[] = []
  readonly #own: OwnMaterial[] = []
  readonly #notes = new Set<string>()

  constructor(
    private readonly setting: ImportSetting,
    private readonly choices: ImportChoices,
    private readonly columns: PriceColumns,
    private readonly conventions: Conventions,
  ) {}

  read(row: Row): void {
    const priced = this.#parse(row)
    if (typeof priced === 'string') this.unread.push(unread(row, priced))
    else this.#priced.push(priced)
  }

  /** Rows of the same pack and day become one offer with steps; a second price of one step is reported. */
  result(): RowsRead {
    const offers = new Map<string, Offer>()
    let readRows = 0
    for (const { offer, step, row } of this.#priced) {
      const key = `${packOf({ ...offer, steps: [] })}/${offer.on}`
      const before = offers.get(key)
      if (before?.steps.some(({ fromPacks }) => fromPacks === step.fromPacks)) {
        this.unread.push(unread(row, 'The same pack has a price for that day already'))
        continue
      }
      readRows++
      const steps = [...(before?.steps ?? []), step].sort((a, b) => a.fromPacks - b.fromPacks)
      offers.set(key, { ...(before ?? offer), steps })
    }
    return { offers: [...offers.values()], materials: this.#own, readRows, notes: [...this.#notes] }
  }

  #parse(row: Row): PricedRow | string {
    const size = readSize(this.#cell(row, 'size'), this.#cell(row, 'unit'), this.conventions)
    if (size.status === 'unread') return this.#wrong(row, 'size', size)
    const number = (field: PriceField, empty: number) => {
      const text = this.#cell(row, field)
      return text === ''
        ? ({ status: 'read', value: empty } as const)
        : readNumber(text, this.conventions)
    }
    const price = readNumber(this.#cell(row, 'price'), this.conventions)
    if (price.status === 'unread') return this.#wrong(row, 'price', price)
    const from = number('fromPacks', 1)
    if (from.status === 'unread') return this.#wrong(row, 'fromPacks', from)
    if (!Number.isSafeInteger(from.value) || from.value < 1)
      return this.#wrong(row, 'fromPacks', { reason: 'is no whole number of packs' })
    const freight = number('freight', 0)
    if (freight.status === 'unread') return this.#wrong(row, 'freight', freight)
    const tax = this.#tax(row)
    if (typeof tax === 'string') return tax
    const on = this.#day(row)
    if (on.status === 'unread') return this.#wrong(row, 'on', on)
    const money = this.#currency(row)
    if (money === undefined)
      return this.#wrong(row, 'currency', { reason: 'is no currency such as EUR' })
    const supplier = this.#cell(row, 'supplier') || this.setting.supplier
    if (supplier === undefined) return 'It names no supplier. Give one'
    const material = this.#material(row, size.value.unit === 'piece')
    if ('reason' in material) return material.reason
    return {
      offer: {
        id: `${material.id}/${supplier}/${size.value.size}${size.value.unit}/${on.value}`,
        material: material.id,
        supplier,
        ...size.value,
        ...(money === this.setting.currency ? {} : { currency: money }),
        ...(tax === undefined ? {} : { tax }),
        ...(freight.value === 0 ? {} : { freightMinor: minorFrom(freight.value, money) }),
        on: on.value,
      },
      step: { fromPacks: from.value, priceMinor: minorFrom(price.value, money) },
      row,
    }
  }

  #cell({ cells }: Row, field: PriceField): string {
    const at = this.columns.indexOf(field)
    return at < 0 ? '' : unguarded(cells[at] ?? '')
  }

  #wrong(row: Row, field: PriceField, { reason }: { readonly reason: string }): string {
    const text = this.#cell(row, field)
    return `${FIELD_NAMES[field]} ${text === '' ? '' : `“${text}” `}${reason}`
  }

  #tax(row: Row): Offer['tax'] | string {
    const text = this.#cell(row, 'taxPercent')
    const included = readYes(this.#cell(row, 'taxIncluded'), false)
    if (included.status === 'unread') return this.#wrong(row, 'taxIncluded', included)
    if (text === '') return undefined
    const percent = readNumber(text, this.conventions)
    if (percent.status === 'unread') return this.#wrong(row, 'taxPercent', percent)
    if (percent.value > WHOLE_PERCENT)
      return this.#wrong(row, 'taxPercent', { reason: 'is over 100 %' })
    return percent.value === 0 ? undefined : { percent: percent.value, included: included.value }
  }

  #day(row: Row): Cell<string> {
    const text = this.#cell(row, 'on')
    if (text !== '') return readDay(text, this.conventions)
    this.#notes.add(`Rows without a date are taken as seen on ${this.setting.today}.`)
    return { status: 'read', value: this.setting.today }
  }

  /** From its own column, or from letters beside the price. */
  #currency(row: Row): string | undefined {
    const own = this.#cell(row, 'currency').toUpperCase()
    if (own !== '') return isCurrency(own) ? own : undefined
    return (
      /(?<![A-Z])[A-Z]{3}(?![A-Z])/u.exec(this.#cell(row, 'price'))?.[0] ?? this.setting.currency
    )
  }

  #material(row: Row, byPiece: boolean): { readonly id: string } | { readonly reason: string } {
    const own = [...this.setting.materials, ...this.#own]
    const [id, name] = [this.#cell(row, 'id'), this.#cell(row, 'material')]
    const byId = id === '' ? undefined : findMaterial(id, own)
    if (byId?.status === 'material' && byId.id === id) return { id }
    if (name === '') return { reason: 'It names no material' }
    const found = findMaterial(name, own)
    if (found.status === 'material') {
      if (found.note !== undefined) this.#notes.add(`“${name}” is ${found.note}.`)
      return { id: found.id }
    }
    if (found.status === 'several')
      return {
        reason: `Material “${name}” can be ${found.names.join(' or ')}. Name the one that is meant`,
      }
    if (!byPiece && this.choices.takeUnknown !== true)
      return {
        reason: `Material “${name}” is not known. Correct it, or take it as one of your own`,
      }
    const made = { id: id === '' ? ownId(name, own) : id, name }
    this.#own.push(made)
    this.#notes.add(`“${name}” is new, as a material of your own.`)
    return { id: made.id }
  }
}

/** A row that could not be used, with its reason. */
export function unread({ number, cells }: Row, reason: string): UnreadRow {
  const text = cells.join(' | ')
  const shown = text.length > SHOWN_LETTERS ? `${text.slice(0, SHOWN_LETTERS)}…` : text
  return { row: number, text: shown, reason }
}
