/** The places of the page, by the part of the address after #. */
export const PLACES = [
  { id: 'brief', name: 'Brief and Map' },
  { id: 'bench', name: 'Bench' },
  { id: 'batch', name: 'Batch' },
  { id: 'ledger', name: 'Ledger' },
] as const

export type PlaceId = (typeof PLACES)[number]['id']

/** Where the page is; the address keeps it, so that back and reload work. */
export class PagePlace {
  id: PlaceId = $state(placeIn(location.hash))

  /** Follows the address. */
  follow = () => {
    this.id = placeIn(location.hash)
  }
}

/** A place may have parts of its own after a slash. */
function placeIn(hash: string): PlaceId {
  const [first] = hash.replace('#', '').split('/')
  return PLACES.find(({ id }) => id === first)?.id ?? 'brief'
}
