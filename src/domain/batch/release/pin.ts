import type { Actuals } from '../actual/actuals'
import type { BatchOrder } from '../order/order'

/** What a pin tells apart, in the order of its parts. */
export const PIN_PARTS = [
  'the oils',
  'the alkali',
  'the superfat',
  'the size',
  'what else goes in, or how it is made',
  'the day or number of the batch',
  'what was really weighed',
] as const

const PIN = /^(?:[0-9a-f]{8}-){6}[0-9a-f]{8}$/u

/** Whether a text is written as `batchPin` writes one. */
export function isPin(text: string): boolean {
  return PIN.test(text)
}

/** Keys of an order by the part they belong to; all others belong to *what else goes in*. */
const OF_OILS = ['blend', 'extraFat', 'lots']
const OF_ALKALI = ['alkali', 'alkaliBy', 'purity', 'purityIs', 'purityUpTo', 'lyeSolution']
const OF_SUPERFAT = ['superfat']
const OF_SIZE = ['oilGrams', 'mould', 'bars', 'scale']
/** What changes nothing in the bars. */
const OF_NOTHING = ['pricesPerKg', 'cure', 'cut', 'confirmedLean', 'leanSeen', 'papers']
const NAMED = new Set([OF_OILS, OF_ALKALI, OF_SUPERFAT, OF_SIZE, OF_NOTHING].flat())

/**
 * What a test is pinned to: seven hashes of eight hexadecimal figures, one for each of `PIN_PARTS`, of all
 * in an order that decides what is in the bars. Whatever an order may say beside prices, cure, cut and
 * names counts, so that nothing new is forgotten here.
 */
export function batchPin(order: BatchOrder, actual: Actuals): string {
  const entries = Object.entries(order)
  const of = (keys: readonly string[]) =>
    Object.fromEntries(entries.filter(([key]) => keys.includes(key)))
  const others = Object.fromEntries(entries.filter(([key]) => !NAMED.has(key)))
  const { madeOn, productCode, number } = order.papers ?? {}
  const made = { madeOn, productCode, number }
  const parts = [of(OF_OILS), of(OF_ALKALI), of(OF_SUPERFAT), of(OF_SIZE), others, made, actual]
  return parts.map((part) => fnv1a(canonical(part))).join('-')
}

/** What differs between the batch of a pin and another, by name; empty where they are the same. */
export function pinChanges(from: string, to: string): string[] {
  const before = from.split('-')
  return to.split('-').flatMap((hash, i) => (hash === before[i] ? [] : [PIN_PARTS[i] ?? '']))
}

/** JSON with sorted keys, and without what is undefined. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const entries = Object.entries(value).filter(([, one]) => one !== undefined)
  const sorted = entries.sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${sorted.map(([key, one]) => `${JSON.stringify(key)}:${canonical(one)}`).join()}}`
}

const FNV_OFFSET = 0x811c9dc5
const FNV_PRIME = 0x01000193
const HEX = 16
const HEX_FIGURES = 8

/**
 * FNV-1a of 32 bits (Fowler, Noll and Vo; RFC 9923, recalled) over code points, as eight hexadecimal
 * figures. It tells changes apart that happen; it is no lock against one who means to deceive.
 */
export function fnv1a(text: string): string {
  const hash = [...text].reduce(
    (before, sign) => Math.imul(before ^ (sign.codePointAt(0) ?? 0), FNV_PRIME) >>> 0,
    FNV_OFFSET,
  )
  return hash.toString(HEX).padStart(HEX_FIGURES, '0')
}
