import { isDay, noDay } from '../batch/order/dates'
import { type Problem, problem } from '../blend/check-blend'
import { WHOLE_PERCENT } from '../units'
import { isCurrency } from './money'
import type { MaterialOf, Offer, PriceBook, SupplierTerms } from './offer'
import { sameSupplier } from './buying-program'

/** More than any price or pack; a slip of the hand. */
const LARGEST = 1e12

/** All that is wrong with a price book, by path; empty where everything in it can be reckoned with. */
export function checkBook(book: PriceBook, materialOf: MaterialOf, path = ''): Problem[] {
  const at = (place: string) => (path === '' ? place : `${path}.${place}`)
  return [
    ...checkCurrency(book.currency, at('currency')),
    ...Object.entries(book.rates).flatMap(([currency, rate]) => [
      ...checkCurrency(currency, at(`rates.${currency}`)),
      ...(rate > 0 && rate < LARGEST
        ? []
        : [problem(at(`rates.${currency}`), `The rate is ${rate}; give one above 0.`)]),
    ]),
    ...book.materials.flatMap(({ id, densityGPerMl: density }, index) => [
      ...(book.materials.findIndex((one) => one.id === id) < index
        ? [
            problem(
              at(`materials[${index}].id`),
              `"${id}" stands twice. Give each material one id.`,
            ),
          ]
        : []),
      ...(density === undefined || (density > 0 && density < LARGEST)
        ? []
        : [
            problem(
              at(`materials[${index}].densityGPerMl`),
              `The density is ${density} g/ml; give one above 0.`,
            ),
          ]),
    ]),
    ...book.suppliers.flatMap((terms, index) => checkTerms(terms, book, at(`suppliers[${index}]`))),
    ...book.offers.flatMap((offer, index) => checkOffer(offer, materialOf, at(`offers[${index}]`))),
    ...mixedUnits(book, at),
  ]
}

function checkCurrency(currency: string, path: string): Problem[] {
  if (isCurrency(currency)) return []
  return [problem(path, `"${currency}" is no currency. Give three capital letters, such as EUR.`)]
}

function checkTerms(terms: SupplierTerms, { suppliers }: PriceBook, path: string): Problem[] {
  const { supplier, freightMinor, freeFromMinor, leastOrderMinor, deliveryDays } = terms
  const twice = suppliers.some((one) => one !== terms && sameSupplier(one.supplier, supplier))
  const figures = { freightMinor, freeFromMinor, leastOrderMinor, deliveryDays }
  return [
    ...(twice
      ? [problem(`${path}.supplier`, `${supplier} stands twice. Put its terms together.`)]
      : []),
    ...Object.entries(figures).flatMap(([key, value]) =>
      value === undefined || (value >= 0 && value < LARGEST)
        ? []
        : [problem(`${path}.${key}`, `${value} stands here; give 0 or more.`)],
    ),
  ]
}

function checkOffer(offer: Offer, materialOf: MaterialOf, path: string): Problem[] {
  const { material, supplier, size, steps, currency, tax, freightMinor = 0, on } = offer
  return [
    ...(materialOf(material)
      ? []
      : [
          problem(
            `${path}.material`,
            `There is no material "${material}". Name one of the library, or add it to materials.`,
          ),
        ]),
    ...(supplier.trim() === '' ? [problem(`${path}.supplier`, 'No supplier. Give a name.')] : []),
    ...(size > 0 && size < LARGEST
      ? []
      : [problem(`${path}.size`, `The pack holds ${size}; give a size above 0.`)]),
    ...checkSteps(offer, path),
    ...(currency === undefined ? [] : checkCurrency(currency, `${path}.currency`)),
    ...(tax === undefined || (tax.percent >= 0 && tax.percent <= WHOLE_PERCENT)
      ? []
      : [problem(`${path}.tax.percent`, `The tax is ${tax.percent} %; give 0 to 100 %.`)]),
    ...(freightMinor >= 0 && freightMinor < LARGEST
      ? []
      : [problem(`${path}.freightMinor`, `The freight is ${freightMinor}; give 0 or more.`)]),
    ...(isDay(on) ? [] : [problem(`${path}.on`, noDay(on))]),
    ...(steps.length === 0 ? [problem(`${path}.steps`, 'No price. Give one step at least.')] : []),
  ]
}

function checkSteps({ steps }: Offer, path: string): Problem[] {
  return steps.flatMap(({ fromPacks, priceMinor }, index) => {
    const before = steps[index - 1]?.fromPacks ?? 0
    const place = `${path}.steps[${index}]`
    const found: Problem[] = []
    if (!(Number.isSafeInteger(fromPacks) && fromPacks > before && fromPacks < LARGEST))
      found.push(
        problem(
          `${place}.fromPacks`,
          `From ${fromPacks} packs; give a whole number above ${before}.`,
        ),
      )
    if (!(Number.isSafeInteger(priceMinor) && priceMinor >= 0 && priceMinor < LARGEST))
      found.push(
        problem(
          `${place}.priceMinor`,
          `The price is ${priceMinor}; give a whole number of minor units from 0.`,
        ),
      )
    return found
  })
}

/** A need is in g or in pieces: one material can't be sold both ways. */
function mixedUnits({ offers }: PriceBook, at: (place: string) => string): Problem[] {
  return offers.flatMap(({ material, unit }, index) => {
    const first = offers.findIndex((one) => one.material === material)
    const other = offers[first]?.unit
    if (first === index || (other === 'piece') === (unit === 'piece')) return []
    const message = `${material} is sold by the piece and by weight. Price all its packs one way.`
    return [problem(at(`offers[${index}].unit`), message)]
  })
}
