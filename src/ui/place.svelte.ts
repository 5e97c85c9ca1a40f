/** The places of the page, by the part of the address after #. */
export const PLACES = [
  { id: 'bar', name: 'Bar' },
  { id: 'map', name: 'Map' },
  { id: 'bench', name: 'Bench' },
  { id: 'batch', name: 'Batch' },
  { id: 'ledger', name: 'Ledger' },
] as const

export type PlaceId = (typeof PLACES)[number]['id']

/** What some places are parted into, by what follows a slash; without one it is the first. */
export const PARTS = {
  bar: [
    { id: 'formula', name: 'Formula' },
    { id: 'paste', name: 'Paste a formula' },
    { id: 'oil', name: 'An oil of my own' },
  ],
  batch: [
    { id: 'sheet', name: 'Sheet' },
    { id: 'work', name: 'Step by step' },
    { id: 'label', name: 'Label' },
  ],
  ledger: [
    { id: 'prices', name: 'Prices' },
    { id: 'buying', name: 'Buying' },
    { id: 'cost', name: 'Bar cost' },
    { id: 'quote', name: 'Quote' },
    { id: 'change', name: 'If prices change' },
  ],
} as const

type Parted = keyof typeof PARTS
export type PartId<P extends Parted> = (typeof PARTS)[P][number]['id']

/** Where the page is; the address keeps it, so that back and reload work. */
export class PagePlace {
  #address: readonly string[] = $state.raw(addressNow())

  readonly id: PlaceId = $derived(placeAt(this.#address[0] ?? ''))
  /** What stands after a second slash, such as an oil's id; '' where nothing does. */
  readonly of: string = $derived(this.#address[2] ?? '')

  partOf<P extends Parted>(place: P): PartId<P> {
    const parts: readonly { readonly id: PartId<P> }[] = PARTS[place]
    const [first] = PARTS[place]
    return parts.find(({ id }) => id === this.#address[1])?.id ?? first.id
  }

  /** Follows the address. */
  follow = () => {
    this.#address = addressNow()
  }
}

/** What leads to a place, or to a part of it. */
export function addressOf(place: PlaceId): string
export function addressOf<P extends Parted>(place: P, part: PartId<P>): string
export function addressOf(place: PlaceId, part?: string): string {
  const isFirst = Object.values(PARTS).some(([first]) => first.id === part)
  return part === undefined || isFirst ? `#${place}` : `#${place}/${part}`
}

/** Goes there, as a link would. */
export function goTo(place: PlaceId): void {
  location.hash = addressOf(place)
}

function addressNow(): readonly string[] {
  return location.hash.replace('#', '').split('/')
}

function placeAt(first: string): PlaceId {
  // Map's name of old.
  if (first === 'brief') return 'map'
  return PLACES.find(({ id }) => id === first)?.id ?? PLACES[0].id
}

/** Leads to the page of an oil, of the library or of one's own. */
export function oilAddress(oil: string): string {
  return `${addressOf('bar', 'oil')}/${oil}`
}
