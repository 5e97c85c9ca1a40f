/** The places of the page, by the part of the address after #. */
export const PLACES = [
  { id: 'brief', name: 'Brief and Map' },
  { id: 'bench', name: 'Bench' },
  { id: 'batch', name: 'Batch' },
  { id: 'ledger', name: 'Ledger' },
] as const

export type PlaceId = (typeof PLACES)[number]['id']

/** What some places are parted into, by what follows a slash; without one it is the first. */
export const PARTS = {
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
export class Place {
  #address: readonly string[] = $state.raw(addressNow())

  readonly id: PlaceId = $derived(
    PLACES.find(({ id }) => id === this.#address[0])?.id ?? PLACES[0].id,
  )

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
