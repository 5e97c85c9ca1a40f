import type { Basis } from '../../../domain/chemistry/fatty-acid'

const WORDS: Readonly<Record<Basis, string>> = {
  certificate: 'certificate',
  own: 'your word',
  published: 'read',
  memory: 'recalled',
  derived: 'reckoned',
  'common practice': 'practice',
  assumption: 'assumed',
}

/** What a figure stands on, in a word or two. */
export function basisInWords(basis: Basis): string {
  return WORDS[basis]
}
