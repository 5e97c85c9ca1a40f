import type { PriceColumns } from '../data/price-fields'
import type { QuotePapers } from '../data/quote-shape'
import type { Offer, OwnMaterial, PriceBook, SupplierTerms } from '../domain/cost/offer'
import type { QuoteChoices } from '../domain/cost/quote'
import type { CostChoices } from '../domain/cost/run-cost'
import type { CostUnit } from '../domain/cost/waterfall'
import type { Work } from './work'

/** A batch kept on the buying list, with what one of it needs, in g by material. */
export interface BuyingRun {
  readonly id: string
  readonly name: string
  readonly times: number
  readonly needs: Readonly<Record<string, number>>
}

/** What the buying list is made for. */
export interface Buying {
  /** How often the batch in hand is made. */
  readonly times: number
  readonly runs: readonly BuyingRun[]
  /** What is there, in g or pieces by material. */
  readonly stock: Readonly<Record<string, number>>
}

/** A price list being pasted, before its prices go into the book. */
export interface PastedPrices {
  readonly text: string
  readonly columns?: PriceColumns | undefined
  readonly decimal?: 'point' | 'comma' | undefined
  readonly dayFirst?: boolean | undefined
  readonly takeUnknown?: boolean | undefined
  readonly supplier?: string | undefined
}

/** A quote as it is settled here; its day is today where left out. */
export interface QuoteDraft extends Omit<QuoteChoices, 'quotedOn'> {
  readonly quotedOn?: string | undefined
}

/** Everything a person has put into the Ledger. */
export interface Ledger {
  readonly book: PriceBook
  readonly work: CostChoices
  /** Weight of a bar as poured, g, where the batch does not say how it is cut. */
  readonly barGrams: number
  readonly unit: CostUnit
  readonly buying: Buying
  readonly quote: QuoteDraft
  readonly papers: QuotePapers
  /** Left out while no list is being pasted. */
  readonly pasting?: PastedPrices | undefined
}

/** Weight of a bar as poured, g: common practice for a bar of about 100 g when cured. */
const USUAL_BAR_GRAMS = 125

/** A Ledger with nothing in it but figures that a maker would begin with. */
export function emptyLedger(currency: string): Ledger {
  return {
    book: { currency, taxBack: true, rates: {}, materials: [], suppliers: [], offers: [] },
    work: {
      charge: 'proRata',
      wastePercent: 0,
      packaging: [],
      minutesPerBatch: 0,
      minutesPerBar: 0,
      rateMinorPerHour: 0,
      overheadMinorPerBatch: 0,
      overheadMinorPerMonth: 0,
      batchesPerMonth: 1,
      rejectPercent: 0,
    },
    barGrams: USUAL_BAR_GRAMS,
    unit: 'bar',
    buying: { times: 1, runs: [], stock: {} },
    quote: {
      quantities: [50, 100, 250],
      aim: { margin: 50 },
      points: { stepMinor: 5 },
      orderMinor: 0,
      surplus: 'stock',
      taxPercent: 0,
      leastBars: 1,
      batchesPerWeek: 1,
      packingDays: 2,
      validDays: 30,
    },
    papers: { maker: '', makerLines: [], customer: '', product: '', number: '', terms: [] },
  }
}

/** The Ledger of the work; an empty one in the brief's currency where nothing was put in. */
export function ledgerOf({ ledger, brief }: Work): Ledger {
  return ledger ?? emptyLedger(brief.currency)
}

/** The work with its Ledger changed. */
export function withLedger(work: Work, change: (ledger: Ledger) => Ledger): Work {
  const before = ledgerOf(work)
  const ledger = change(before)
  return ledger === before ? work : { ...work, ledger }
}

/** The Ledger with its price book changed. */
export function withBook(ledger: Ledger, change: Partial<PriceBook>): Ledger {
  return { ...ledger, book: { ...ledger.book, ...change } }
}

/** The Ledger with one offer changed, or added where none has its id. */
export function withOffer(ledger: Ledger, offer: Offer): Ledger {
  const { offers } = ledger.book
  const known = offers.some(({ id }) => id === offer.id)
  return withBook(ledger, {
    offers: known ? offers.map((one) => (one.id === offer.id ? offer : one)) : [...offers, offer],
  })
}

/** The Ledger without an offer. */
export function withoutOffer(ledger: Ledger, id: string): Ledger {
  return withBook(ledger, { offers: ledger.book.offers.filter((one) => one.id !== id) })
}

/** The Ledger with a supplier's terms changed; terms that say nothing are dropped. */
export function withTerms(ledger: Ledger, terms: SupplierTerms): Ledger {
  const others = ledger.book.suppliers.filter(({ supplier }) => supplier !== terms.supplier)
  const says = Object.entries(terms).some(
    ([key, figure]) => key !== 'supplier' && figure !== undefined,
  )
  return withBook(ledger, { suppliers: says ? [...others, terms] : others })
}

/** The Ledger with prices and materials of a list put into its book, and the list put away. */
export function withImported(
  ledger: Ledger,
  offers: readonly Offer[],
  materials: readonly OwnMaterial[],
): Ledger {
  const { book } = ledger
  const fresh = offers.map((offer, at) => ({ ...offer, id: freshId(book.offers, offer.id, at) }))
  return withBook(
    { ...ledger, pasting: undefined },
    {
      offers: [...book.offers, ...fresh],
      materials: [...book.materials, ...materials],
    },
  )
}

/** An id that no offer of the book has. */
export function freshId(offers: readonly Offer[], stem: string, at = 0): string {
  const taken = new Set(offers.map(({ id }) => id))
  let number = at
  let id = stem
  while (taken.has(id)) id = `${stem}#${++number}`
  return id
}

/** Longest list that is kept while it is pasted, characters. */
const LONGEST_LIST = 500_000

/** The Ledger with what is being pasted changed. */
export function withPastedPrices(ledger: Ledger, change: Partial<PastedPrices>): Ledger {
  const pasting = { ...(ledger.pasting ?? { text: '' }), ...change }
  return { ...ledger, pasting: { ...pasting, text: pasting.text.slice(0, LONGEST_LIST) } }
}
