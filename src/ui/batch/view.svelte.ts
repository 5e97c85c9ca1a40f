/** The ways of looking at a batch, by what follows `#batch` in the address. */
export const VIEWS = [
  { id: '', name: 'Sheet' },
  { id: 'work', name: 'Step by step' },
  { id: 'label', name: 'Label' },
] as const

export type ViewId = (typeof VIEWS)[number]['id']

/** Which of them is looked at; the address keeps it, so that back and reload work. */
export class BatchView {
  id: ViewId = $state(viewIn(location.hash))

  /** Follows the address. */
  follow = () => {
    this.id = viewIn(location.hash)
  }
}

/** The address of a view. */
export function addressOf(id: ViewId): string {
  return id === '' ? '#batch' : `#batch/${id}`
}

function viewIn(hash: string): ViewId {
  const [, part = ''] = hash.split('/')
  return VIEWS.find(({ id }) => id === part)?.id ?? ''
}
