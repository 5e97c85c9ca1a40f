/** The places of the page, by the part of the address after #. */
export const PLACES = [
  { id: 'bar', name: 'Bar' },
  { id: 'map', name: 'Map' },
  { id: 'bench', name: 'Bench' },
  { id: 'batch', name: 'Batch' },
  { id: 'ledger', name: 'Ledger' },
] as const

export type PlaceId = (typeof PLACES)[number]['id']

/** Where the page is; the address keeps it, so that back and reload work. */
export class PagePlace {
  #hash = $state(location.hash)
  readonly id: PlaceId = $derived(placeIn(this.#hash))
  /** What stands after the slash, '' where nothing does. */
  readonly part: string = $derived(this.#hash.split('/')[1] ?? '')
  /** What stands after a second slash, such as an oil's id. */
  readonly of: string = $derived(this.#hash.split('/')[2] ?? '')

  /** Follows the address. */
  follow = () => {
    this.#hash = location.hash
  }
}

/** Leads to the page of an oil, of the library or of one's own. */
export function oilAddress(oil: string): string {
  return `#bar/oil/${oil}`
}

/** A place may have parts of its own after a slash. */
function placeIn(hash: string): PlaceId {
  const [first] = hash.replace('#', '').split('/')
  // Map's name of old.
  if (first === 'brief') return 'map'
  return PLACES.find(({ id }) => id === first)?.id ?? 'bar'
}
