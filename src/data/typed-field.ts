/** Unit of fields that hold shares. */
export const PERCENT = '%'

/** What a field holds, and so what may be typed into it. */
export interface TypedField {
  /** What quantities become: `%`, or g, kg, oz, lb, ml, l. Left out for points, counts and prices. */
  readonly unit?: string | undefined
  /** Of a price: its ISO 4217 code. */
  readonly currency?: string | undefined
  /** A price of 1 kg, which takes that of a pack too; the density turns litres into kg. */
  readonly perKg?: { readonly densityGPerMl?: number | null | undefined } | undefined
  /** One end of a wish, which takes both; `about` is how far around a figure still counts as it. */
  readonly ends?: { readonly about: number } | undefined
}

/** What a person typed into a field. */
export type Typed =
  | { readonly status: 'empty' }
  /** `understood` is said below the field until it is left, where more than a bare figure was typed. */
  | {
      readonly status: 'number'
      readonly value: number
      readonly understood?: string | undefined
    }
  /** Both ends of a wish, or one of them. */
  | {
      readonly status: 'ends'
      readonly min?: number | undefined
      readonly max?: number | undefined
      readonly understood: string
    }
  | { readonly status: 'invalid'; readonly message: string }

/** A figure as it is said back. */
export function said(value: number, decimals = 4): string {
  return String(Number(value.toFixed(decimals)))
}
