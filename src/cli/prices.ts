import { fileSchema } from '../data/ledger-schemas'
import { bookAsFile, bookOf, priceBookFile } from '../data/price-book-file'
import { materialsWith } from '../data/price-materials'
import { parseJson } from '../data/problems'
import { today } from '../data/today'
import { isDay, noDay } from '../domain/batch/order/dates'
import { checkBook } from '../domain/cost/check-book'
import { isCurrency } from '../domain/cost/money'
import { landedSteps, packAmount, type PriceBook } from '../domain/cost/offer'
import { currentOffers, historyOf, priceAge } from '../domain/cost/price-age'
import { GRAMS_PER_KG, WHOLE_PERCENT } from '../domain/units'
import { EXIT, allInvalid, type Command, type Flags, invalid, type Result, solved } from './command'

export const prices: Command = {
  flags: {
    currency: { type: 'string' },
    supplier: { type: 'string' },
    decimal: { type: 'string' },
    dates: { type: 'string' },
    unknown: { type: 'boolean' },
    csv: { type: 'boolean' },
    need: { type: 'string' },
    waste: { type: 'string' },
    on: { type: 'string' },
  },
  flagHelp: [
    '--currency EUR          of a list that names none, and of the book; EUR if left out',
    '--supplier NAME         of rows that name none',
    '--decimal point|comma   where a list leaves it open',
    '--dates day|month       which comes first, where a list leaves it open',
    '--unknown               takes names that nobody knows as materials of your own',
    '--csv                   writes a price book as a list',
    '--need olive=12kg       what needed quantities cost: packs parted, and whole packs with leftovers',
    '--waste 2               lost before the pot, percent; 0 if left out',
    '--on 2026-11-25         the day; today if left out',
  ],
  schema: () => fileSchema(priceBookFile),
  run: (text, flags) =>
    /^\uFEFF?\s*\{/u.test(text) ? tellBook(text, flags) : readList(text, flags),
}

async function tellBook(text: string, flags: Flags): Promise<Result> {
  const file = parseJson(priceBookFile, text)
  if (file.status === 'invalid') return allInvalid(file.problems)
  const book = bookOf(file.value)
  const materialOf = materialsWith(book.materials)
  const wrong = checkBook(book, materialOf)
  if (wrong.length > 0) return allInvalid(wrong)
  if (flags.csv === true) {
    const { priceListOf } = await import('../data/price-export')
    return solved(priceListOf(book, materialOf))
  }
  const on = dayOf(flags)
  if (!isDay(on)) return invalid('--on', noDay(on))
  if (typeof flags.need === 'string') {
    const waste = Number(flags.waste ?? 0)
    if (!(waste >= 0 && waste < WHOLE_PERCENT))
      return invalid('--waste', `A waste of ${String(flags.waste)} %; give 0 to under 100.`)
    const { neededResult } = await import('./prices-need')
    return neededResult(flags.need, waste, { book, materialOf, on })
  }
  return solved({ status: 'ready', currency: book.currency, prices: told(book, on) })
}

/** The prices in force on a day, landed, with their age and what they were before. */
function told(book: PriceBook, on: string) {
  const materialOf = materialsWith(book.materials)
  return currentOffers(book, on).map((offer) => {
    const amount = packAmount(offer, materialOf(offer.material))
    const first = landedSteps(offer, book)?.[0]
    const perUnit = first && amount !== undefined ? first.packMinor / amount : null
    const piece = offer.unit === 'piece'
    return {
      material: offer.material,
      name: materialOf(offer.material)?.name ?? offer.material,
      supplier: offer.supplier,
      size: offer.size,
      unit: offer.unit,
      steps: landedSteps(offer, book) ?? null,
      minorPerKg: piece || perUnit === null ? null : perUnit * GRAMS_PER_KG,
      minorPerPiece: piece ? perUnit : null,
      on: offer.on,
      ...priceAge(offer, on),
      before: historyOf(book, offer)
        .filter((one) => one !== offer && one.on <= offer.on)
        .map((one) => ({ on: one.on, steps: one.steps })),
    }
  })
}

function dayOf({ on }: Flags): string {
  return typeof on === 'string' ? on : today()
}

async function readList(text: string, flags: Flags): Promise<Result> {
  const { currency = 'EUR', supplier, decimal, dates, unknown } = flags
  if (typeof currency !== 'string' || !isCurrency(currency))
    return invalid('--currency', `"${String(currency)}" is no currency. Write it as EUR.`)
  if (decimal !== undefined && decimal !== 'point' && decimal !== 'comma')
    return invalid('--decimal', `"${String(decimal)}" parts no decimals. Use point or comma.`)
  if (dates !== undefined && dates !== 'day' && dates !== 'month')
    return invalid('--dates', `"${String(dates)}" can't come first. Use day or month.`)
  const setting = {
    currency,
    materials: [],
    today: dayOf(flags),
    ...(typeof supplier === 'string' ? { supplier } : {}),
  }
  const { readPriceList } = await import('../data/price-csv')
  const list = readPriceList(text, setting, {
    decimal,
    dayFirst: dates === undefined ? undefined : dates === 'day',
    takeUnknown: unknown === true,
  })
  if (list.lacking.length > 0)
    return invalid(
      '',
      `No column is headed as ${list.lacking.join(', ')}. Head the columns: ${HEADINGS}.`,
    )
  const { offers, materials, readRows, unread, notes } = list
  const book: PriceBook = { currency, taxBack: true, rates: {}, materials, suppliers: [], offers }
  const output = { status: 'read', readRows, unread, notes, book: bookAsFile(book) }
  return { exitCode: readRows > 0 ? EXIT.solved : EXIT.invalid, output }
}

const HEADINGS =
  'Material, Supplier, Pack size, Price, and as there are Unit, From packs, Currency, Tax %, Tax included, Freight share, Date'
